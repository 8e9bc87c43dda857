//! The hatches of the states: water level lines, frost crossed lines, ice slanting ones, mist dots, sweat uprights, and the cut.

/// How an area is filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hatch {
    /// Level lines.
    Water,
    /// Crossed lines.
    Frost,
    /// Dots.
    Mist,
    /// Short uprights.
    Sweat,
    /// Wide level lines in a light colour: the ground above saturation.
    Above,
    /// Fine slanting lines: a wall or slab that is cut.
    Cut,
    /// Slanting lines of paper on solid frost.
    Ice,
}

impl Hatch {
    /// All of them.
    pub const ALL: [Self; 7] = [
        Self::Water,
        Self::Frost,
        Self::Mist,
        Self::Sweat,
        Self::Above,
        Self::Cut,
        Self::Ice,
    ];

    /// The word in ids.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Water => "water",
            Self::Frost => "frost",
            Self::Mist => "mist",
            Self::Sweat => "sweat",
            Self::Above => "above",
            Self::Cut => "cut",
            Self::Ice => "ice",
        }
    }

    /// Side of the repeated square, px.
    const fn side(self) -> u8 {
        match self {
            Self::Water => 4,
            Self::Frost | Self::Mist => 8,
            Self::Sweat => 7,
            Self::Ice => 5,
            Self::Above | Self::Cut => 6,
        }
    }

    /// What is drawn in the square.
    const fn strokes(self) -> &'static str {
        match self {
            Self::Water => "<path d=\"M0 1.5H4\"/>",
            Self::Frost => "<path d=\"M-1 -1L9 9M9 -1L-1 9\"/>",
            Self::Mist => {
                "<circle cx=\"2\" cy=\"2\" r=\".9\"/><circle cx=\"6\" cy=\"6\" r=\".9\"/>"
            }
            Self::Sweat => "<path d=\"M2 1V4M5.5 4.5V7.5M5.5 -2.5V.5\"/>",
            Self::Above => "<path d=\"M0 2.5H6\"/>",
            Self::Ice => "<path d=\"M-1 1L1 -1M0 5L5 0M4 6L6 4\"/>",
            Self::Cut => "<path d=\"M-1 7L7 -1M-1 1L1 -1M5 7L7 5\"/>",
        }
    }

    /// The pattern's element, its id made of `prefix` and the state's word.
    #[must_use]
    pub fn element(self, prefix: &str) -> String {
        let (name, side, strokes) = (self.name(), self.side(), self.strokes());
        format!(
            "<pattern id=\"{prefix}-{name}\" class=\"dw-h-{name}\" width=\"{side}\" height=\"{side}\" patternUnits=\"userSpaceOnUse\">{strokes}</pattern>"
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn states_differ_without_colour() {
        let all = Hatch::ALL;
        for (place, hatch) in all.iter().enumerate() {
            for other in all.iter().skip(place + 1) {
                assert_ne!(
                    hatch.strokes(),
                    other.strokes(),
                    "{} and {} must not look alike",
                    hatch.name(),
                    other.name()
                );
            }
        }
    }

    #[test]
    fn ids_keep_drawings_apart() {
        assert!(
            Hatch::Water
                .element("profile")
                .contains("id=\"profile-water\""),
            "the id begins with the drawing's own word"
        );
    }
}
