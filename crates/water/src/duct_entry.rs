//! Water that the duct itself lets into a tube: where the tube enters, and which way its part in the duct falls.

/// The side of the duct by which a tube enters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Entry {
    /// From below.
    Bottom,
    /// From the side.
    Side,
    /// From above.
    Top,
}

/// Which way the part of the tube inside the duct falls.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InsideFall {
    /// Away from the tube outside: what gets in drips back into the duct.
    IntoDuct,
    /// Towards the tube outside.
    IntoTube,
    /// Level, or not known.
    Level,
}

/// What the duct lets into the tube, which no balance of vapour can rule out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FromDuct {
    /// Water that lies on the floor of the duct runs in.
    LyingWater,
    /// Drops that meet the sampling holes run in; water that lies in the duct does not.
    Drops,
    /// Neither runs in by itself.
    Nothing,
}

/// What water a tube may take from its duct by the way it enters.
///
/// # Range
/// Ducts that may carry drops or hold water: behind coils and humidifiers, outdoor air, washed ducts.
/// # Accuracy
/// A rule, not a figure.
/// # Errors
/// None.
/// # Source
/// Water runs downhill; that a hole in the bottom takes lying water is common practice, no source.
///
/// ```
/// use dewrun_water::duct_entry::{Entry, FromDuct, InsideFall, from_duct};
/// assert_eq!(from_duct(Entry::Bottom, InsideFall::IntoDuct), FromDuct::LyingWater);
/// assert_eq!(from_duct(Entry::Side, InsideFall::IntoDuct), FromDuct::Nothing);
/// ```
#[must_use]
pub const fn from_duct(entry: Entry, inside: InsideFall) -> FromDuct {
    match (entry, inside) {
        (Entry::Bottom, _) => FromDuct::LyingWater,
        (_, InsideFall::IntoDuct) => FromDuct::Nothing,
        (_, InsideFall::IntoTube | InsideFall::Level) => FromDuct::Drops,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn from_the_side_and_from_above_drops_run_in_unless_the_tube_falls_back() {
        for entry in [Entry::Side, Entry::Top] {
            let drops = from_duct(entry, InsideFall::IntoTube);
            assert_eq!(drops, FromDuct::Drops, "{entry:?}");
            let level = from_duct(entry, InsideFall::Level);
            assert_eq!(level, FromDuct::Drops, "{entry:?}, level");
            let back = from_duct(entry, InsideFall::IntoDuct);
            assert_eq!(back, FromDuct::Nothing, "{entry:?}, back");
        }
    }
}
