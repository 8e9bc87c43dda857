//! The length axis that the elevation and the profile under it share.

use dewrun_quantity::Length;

use crate::geometry::kept;

/// Wide drawings have room for words beside their things; narrow ones are for a phone.
const NARROW_BELOW: f64 = 600.0;
/// A metre is never drawn longer than this, px.
const MOST_PX_PER_M: f64 = 400.0;

/// The room that a drawing is given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Width, px.
    pub width: f64,
    /// The page's text over its usual size, 1 as a rule.
    pub text: f64,
}

/// What takes room beside the tube, px.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Margins {
    /// Left of the tube's inlet.
    pub before: f64,
    /// Right of the tube's outlet in the elevation.
    pub after: f64,
    /// Widening of the elevation where the tube turns around walls.
    pub jogs: f64,
}

/// The length axis: where each metre along the tube lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// Width of the drawing, px.
    pub width: f64,
    /// The page's text over its usual size.
    pub text: f64,
    /// For a phone.
    pub narrow: bool,
    /// For a sheet of paper, on which height is dear.
    pub on_paper: bool,
    /// Where the tube begins, px.
    pub origin: f64,
    /// Scale, px per m.
    pub px_per_m: f64,
    /// Length of the whole tube, m.
    pub length_m: f64,
}

impl Room {
    /// A sheet of A4 with margins of 10 mm, 190 mm at 96 px an inch; its text is set at 900 px for the 210 mm of the sheet.
    pub const PAPER: Self = Self {
        width: 718.0,
        text: 0.882,
    };

    /// For a phone.
    #[must_use]
    pub fn is_narrow(&self) -> bool {
        self.width < NARROW_BELOW
    }
}

impl Frame {
    /// The largest scale at which both fit: the tube drawn out along the axis, and its elevation, which is shorter by what it climbs.
    #[must_use]
    pub fn new(room: Room, length: Length, across: Length, margins: Margins) -> Self {
        let (length_m, across_m) = (length.to_metres(), across.to_metres());
        let end = if room.is_narrow() { 10.0 } else { 20.0 };
        let along = (room.width - margins.before - end) / length_m;
        let drawn = (room.width - margins.before - margins.after - margins.jogs) / across_m;
        let px_per_m = kept(along.min(drawn), 0.0, MOST_PX_PER_M);
        Self {
            width: room.width,
            text: room.text,
            narrow: room.is_narrow(),
            on_paper: room == Room::PAPER,
            origin: margins.before,
            px_per_m,
            length_m,
        }
    }

    /// Where a place along the tube lies on the axis, px.
    #[must_use]
    pub fn px(&self, along_m: f64) -> f64 {
        self.origin + along_m * self.px_per_m
    }

    /// Where the axis ends, px.
    #[must_use]
    pub fn end(&self) -> f64 {
        self.px(self.length_m)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(width: f64, length_m: f64, across_m: f64) -> Frame {
        let margins = Margins {
            before: 100.0,
            after: 160.0,
            jogs: 0.0,
        };
        let room = Room { width, text: 1.0 };
        let frame = Frame::new(
            room,
            Length::metres(length_m),
            Length::metres(across_m),
            margins,
        );
        assert!(frame.end() <= width, "the axis ends inside {width} px");
        let drawn = 100.0 + across_m * frame.px_per_m + 160.0;
        assert!(drawn <= width + 1e-9, "so does the elevation: {drawn}");
        frame
    }

    #[test]
    fn both_fit() {
        check(1440.0, 12.1, 10.6);
        check(800.0, 25.0, 25.0);
        check(1440.0, 12.0, 0.0);
    }

    #[test]
    fn short_tube_is_not_blown_up() {
        let frame = check(1440.0, 0.5, 0.5);
        assert_eq!(frame.px_per_m, 400.0, "a metre stays within bounds");
    }
}
