//! One piece of tube beside a low point, and the water in it below a level.

use dewrun_numeric::circular_segment::{area, area_integral, chord};
use dewrun_quantity::Length;

use super::Side;
use crate::Incline;

/// Flatter than this a piece is taken as level: the wedge in it is then as deep at both ends to a micrometre a metre.
const LEVEL_TANGENT: f64 = 1e-6;

/// A straight piece of tube that rises from the low point, or lies level at some height over it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// On which side of the low point; a level piece at the low point itself may be on either.
    pub side: Side,
    /// Height of the invert of its lower end over the low point.
    pub foot: Length,
    /// How it rises away from the low point.
    pub incline: Incline,
    /// Its length along the tube; infinite where it rises without end.
    pub length: Length,
    /// Its bore.
    pub bore: Length,
}

impl Piece {
    /// Rises from the low point itself without end.
    pub(super) fn is_endless(&self) -> bool {
        self.foot <= Length::ZERO && !self.length.is_finite() && !self.is_level()
    }

    fn is_level(&self) -> bool {
        self.incline.tangent().abs() < LEVEL_TANGENT
    }

    /// Depth at its lower end, how far the water reaches, and the depth there.
    fn reach(&self, depth_m: f64) -> (f64, f64, f64) {
        let lower_m = (depth_m - self.foot.to_metres()).max(0.0);
        let tangent = self.incline.tangent();
        let length_m = self.length.to_metres();
        if self.is_level() {
            let wet_m = if 0.0 < lower_m { length_m } else { 0.0 };
            return (lower_m, wet_m, lower_m);
        }
        let to_the_edge_m = lower_m / tangent;
        if to_the_edge_m <= length_m {
            return (lower_m, to_the_edge_m, 0.0);
        }
        (lower_m, length_m, (lower_m - tangent * length_m).max(0.0))
    }

    /// Water in it when it stands so deep at the low point \[m3\].
    pub(super) fn volume_m3(&self, depth_m: f64) -> f64 {
        let (lower_m, wet_m, upper_m) = self.reach(depth_m);
        let d_m = self.bore.to_metres();
        if self.is_level() {
            return area(lower_m, d_m) * wet_m;
        }
        (area_integral(lower_m, d_m) - area_integral(upper_m, d_m)) / self.incline.tangent()
    }

    /// Free surface of that water \[m2\].
    pub(super) fn surface_m2(&self, depth_m: f64) -> f64 {
        let (lower_m, wet_m, upper_m) = self.reach(depth_m);
        let d_m = self.bore.to_metres();
        if self.is_level() {
            return chord(lower_m, d_m) * wet_m;
        }
        (area(lower_m, d_m) - area(upper_m, d_m)) / self.incline.sine()
    }

    /// How far that water reaches along its floor \[m\].
    pub(super) fn wetted_m(&self, depth_m: f64) -> f64 {
        self.reach(depth_m).1
    }
}
