//! The papers that sheets are printed on, and what they have room for.

/// A size of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Paper {
    /// 210 mm by 297 mm.
    #[default]
    A4,
    /// 8.5 in by 11 in.
    Letter,
}

impl Paper {
    /// As CSS names it, in small letters.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }

    /// Height that the content of a sheet has, mm.
    pub(crate) const fn height_mm(self) -> f64 {
        match self {
            Self::A4 => 297.0 - 15.5,
            Self::Letter => 279.4 - 15.5,
        }
    }

    /// So many legs stand on each sheet after the first.
    pub(crate) const fn legs_on_further(self) -> usize {
        match self {
            Self::A4 => 40,
            Self::Letter => 36,
        }
    }
}
