//! The cells of a route: where each lies, and all that stays the same through the year.

use core::f64::consts::PI;

use dewrun_numeric::elementary::{cbrt, pow};
use dewrun_numeric::integrate::gauss_legendre_8;
use dewrun_tube::Factors;
use dewrun_tube::film_inside::{local, vdi_g1_laminar};
use dewrun_tube::film_outside::STEFAN_BOLTZMANN;
use dewrun_tube::film_outside::plain::slender_shape;
use dewrun_tube::layers::cylinder_resistance_mk_w;

use super::lanes::LANES;
use crate::route::{Leg, Route};

/// Coefficients of the film's number over a cell.
pub(super) const NUMBER: usize = 7;
/// Natural convection and radiation of a bare tube indoors, for first guesses only, W/(m2 K).
const USUAL_OUTSIDE_W_M2K: f64 = 9.0;
/// Conductivity of air, for first guesses only, W/(m K).
const USUAL_AIR_W_MK: f64 = 0.026;

/// A length that changes nothing, m: the balance at one place.
pub(super) const AT_ONE_PLACE_M: f64 = 1e-9;

/// One cell, or the same of many cells side by side.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
#[repr(align(64))]
pub(super) struct Cell<T> {
    /// Length, m, and its reciprocal.
    pub(super) length: T,
    pub(super) per_length: T,
    /// Circumference of the bore, m.
    pub(super) inner: T,
    /// Area of the wall, m2.
    pub(super) area: T,
    /// Nought where the wall's temperature is told, else without bound, K: within one bore of an inlet it is not.
    pub(super) uncounted_k: T,
    /// Reciprocal of the circumference.
    pub(super) per_inner: T,
    /// `4 / (pi D)` of the bore, 1/m.
    pub(super) per_bore: T,
    /// Mean of the laminar film's number over the cell, in powers of the scaled cube root of Re Pr or Re Sc.
    pub(super) number: [T; NUMBER],
    /// Middle and reciprocal of the half range of that cube root.
    pub(super) root_middle: T,
    pub(super) root_per_half: T,
    /// Mean factor of the entry in turbulent flow.
    pub(super) entry: T,
    /// Circumference of the outer surface, m.
    pub(super) outer: T,
    /// Reciprocal of its diameter, 1/m.
    pub(super) per_outer: T,
    /// Square root of the diameter or, of a riser, of its height.
    pub(super) size: T,
    /// Emissivity times Stefan and Boltzmann's constant.
    pub(super) radiative: T,
    /// Resistance of the insulation and of the tube's wall, m K/W.
    pub(super) insulation: T,
    pub(super) tube: T,
    /// Heat tracing, W/m.
    pub(super) tracing: T,
    /// What the wall keeps, kg/m2.
    pub(super) retained: T,
    /// `1 / (3 R^(2/3))` and `R^(-1/3)` of it.
    pub(super) root_step: T,
    pub(super) per_root: T,
    /// Factors on natural convection outside and on the diffusivity of vapour: 1 as published.
    pub(super) natural: T,
    pub(super) diffusivity: T,
    /// Share of the difference between the air and the space by which the surface is first guessed to be warmer than the space.
    pub(super) warmth: T,
    /// Resistance of the film inside, m K/W, that over the others, and by how much that makes the surface of this cell farther from its space than the one before in its leg.
    pub(super) inside: T,
    pub(super) follows: T,
    pub(super) eases: T,
}

/// What happens at a cell besides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Place {
    /// Position of its leg among all.
    pub(super) leg: usize,
    /// Position of its space.
    pub(super) space: usize,
    /// It is the first, or the last, of its leg.
    pub(super) first: bool,
    pub(super) last: bool,
    /// The air comes from the detector.
    pub(super) behind_detector: bool,
    /// It is the last of the intake.
    pub(super) before_detector: bool,
    /// It lies in the exhaust, and where along its tube, m.
    pub(super) behind: bool,
    pub(super) from_m: f64,
    pub(super) to_m: f64,
    /// It is the last of its tube.
    pub(super) ends: bool,
    /// Outer diameter over height of the riser that it is part of, and what both make of its slenderness at 1 Pa.
    pub(super) riser: Option<(f64, f64)>,
}

/// How finely legs are cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Grid {
    /// Of each leg as many cells as what it exchanges asks for, times this share; shorter behind its start.
    Units(f64),
    /// That many cells a leg, shorter behind its start.
    Cells(usize),
    /// Cells of a length, m, shorter behind an inlet: to hold answers against.
    Even(f64),
}

impl Grid {
    /// For answers.
    pub const PRODUCT: Self = Self::Units(1.0);
}

/// Cells of a leg in which next to nothing is exchanged, more for each transfer unit of vapour, and most.
const FEWEST: f64 = 4.0;
const FOR_EACH_UNIT: f64 = 0.55;
const MOST: f64 = 40.0;
/// Viscosity of air, Pa s, its density times the diffusivity of vapour, kg/(m s), and its Schmidt number, to count cells.
const USUAL_VISCOSITY: f64 = 1.8e-5;
const USUAL_DIFFUSIVE: f64 = 3.0e-5;
const USUAL_SCHMIDT: f64 = 0.6;

/// Ratio of the last cell of a leg to its first: little, as the means over a cell know the entry and the nearing of the air to the wall.
const GROWTH: f64 = 1.25;
/// The first cell over what it were without this: where a leg begins frost grows fastest, and closes the bore.
const FIRST: f64 = 0.2;
/// First cell behind an inlet of an even grid, m, and its growth.
const EVEN_FIRST_M: f64 = 1e-3;
const EVEN_GROWTH: f64 = 1.2;

impl Grid {
    /// Ends of the cells of a leg, m from its start.
    fn ends(self, leg: &Leg, flow_kg_s: f64, legs: usize, at_inlet: bool) -> Vec<f64> {
        let length_m = leg.length_m;
        match self {
            Self::Units(share) => {
                let cells = FEWEST + FOR_EACH_UNIT * units(leg, flow_kg_s);
                #[expect(
                    clippy::cast_possible_truncation,
                    clippy::cast_sign_loss,
                    reason = "between nought and a few dozen"
                )]
                let count = (share * cells.min(MOST)).ceil().max(1.0) as usize;
                Self::Cells(count).ends(leg, flow_kg_s, legs, at_inlet)
            }
            Self::Cells(count) => {
                // The lanes need as many cells as they are.
                let count = count.max(LANES.div_ceil(legs.max(1))).max(2);
                graded(length_m, count)
            }
            Self::Even(cell_m) => even(length_m, cell_m, at_inlet),
        }
    }
}

/// Transfer units of vapour in a leg.
fn units(leg: &Leg, flow_kg_s: f64) -> f64 {
    let reynolds = 4.0 * flow_kg_s / (PI * leg.bore_m * USUAL_VISCOSITY);
    let sherwood = local(reynolds, USUAL_SCHMIDT, leg.length_m / leg.bore_m);
    PI * USUAL_DIFFUSIVE * sherwood * leg.length_m / flow_kg_s
}

#[expect(clippy::cast_precision_loss, reason = "a leg has few cells")]
fn graded(length_m: f64, count: usize) -> Vec<f64> {
    let ratio = pow(GROWTH, 1.0 / (count as f64 - 1.0));
    let mut lengths = Vec::with_capacity(count);
    let (mut one, mut all) = (1.0, 0.0);
    for number in 0..count {
        let length = if number == 0 { FIRST * one } else { one };
        lengths.push(length);
        all += length;
        one *= ratio;
    }
    let mut end = 0.0;
    lengths
        .into_iter()
        .map(|one| {
            end += one / all * length_m;
            end
        })
        .collect()
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a leg has few cells"
)]
fn even(length_m: f64, cell_m: f64, at_inlet: bool) -> Vec<f64> {
    let mut ends = Vec::new();
    let mut from = 0.0;
    if at_inlet {
        let mut step = EVEN_FIRST_M;
        while step < cell_m && from + step < length_m {
            from += step;
            ends.push(from);
            step *= EVEN_GROWTH;
        }
    }
    let left = ((length_m - from) / cell_m).ceil().max(1.0) as usize;
    for number in 1..=left {
        ends.push(from + (length_m - from) * number as f64 / left as f64);
    }
    ends
}

impl Cell<f64> {
    /// The same with relations that are taken as factors say.
    pub(super) fn with_factors(self, factors: Factors) -> Self {
        Self {
            number: self.number.map(|of_power| of_power * factors.inside),
            entry: self.entry * factors.inside,
            natural: factors.outside,
            diffusivity: factors.diffusivity,
            ..self
        }
    }
}

/// Range of the cube root of Re Pr and Re Sc times the bore, over a year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Roots {
    /// Least and greatest dry air that flows, kg/s.
    pub(super) flow_kg_s: (f64, f64),
    /// The flow that cells are made for, kg/s.
    pub(super) usual_kg_s: f64,
}

impl Roots {
    /// Between two flows, both of which are as usual as any other.
    pub(super) fn between(flow_kg_s: (f64, f64)) -> Self {
        let (least, most) = flow_kg_s;
        Self {
            flow_kg_s,
            usual_kg_s: (least.max(1e-3 * most) * most).sqrt(),
        }
    }

    /// Lower and upper end in a bore: heat capacity over conductivity from 3.2e4 to 7.5e4, and `1 / (rho D)` about the same.
    fn of_bore(self, bore_m: f64) -> (f64, f64) {
        let at = |flow: f64, per: f64| cbrt(4.0 * flow / (PI * bore_m) * per);
        (at(self.flow_kg_s.0, 2.6e4), at(self.flow_kg_s.1, 7.5e4))
    }
}

/// All cells of a route in flow order.
pub(super) fn cells(route: &Route, grid: Grid, roots: Roots) -> Vec<(Cell<f64>, Place)> {
    let legs = route.intake.len() + route.exhaust.len();
    let mut cells = Vec::new();
    let mut number = 0;
    for (tube, behind) in [(&route.intake, false), (&route.exhaust, true)] {
        let mut inlet_m = 0.0;
        for (position, leg) in tube.iter().enumerate() {
            let ends = grid.ends(leg, roots.usual_kg_s, legs, position == 0);
            let count = ends.len();
            let mut from = 0.0;
            let mut before: Option<f64> = None;
            for (cell, end) in ends.into_iter().enumerate() {
                let stretch = (inlet_m + from, inlet_m + end);
                let last = cell + 1 == count;
                let place = Place {
                    leg: number,
                    space: leg.space,
                    first: cell == 0,
                    last,
                    behind_detector: behind && position == 0 && cell == 0,
                    before_detector: !behind && position + 1 == tube.len() && last,
                    behind,
                    from_m: stretch.0,
                    to_m: stretch.1,
                    ends: position + 1 == tube.len() && last,
                    riser: leg.riser_m.map(|height_m| slender(height_m, leg.outer_m())),
                };
                let made = one(leg, stretch, roots);
                let eases = before.map_or(1.0, |before| (1.0 + before) / (1.0 + made.follows));
                before = Some(made.follows);
                cells.push((Cell { eases, ..made }, place));
                from = end;
            }
            inlet_m += leg.length_m;
            number += 1;
        }
    }
    cells
}

fn slender(height_m: f64, diameter_m: f64) -> (f64, f64) {
    let shape = slender_shape(height_m, diameter_m, 1.0);
    (diameter_m / height_m, shape)
}

fn one(leg: &Leg, (from_m, to_m): (f64, f64), roots: Roots) -> Cell<f64> {
    let outer_m = leg.outer_m();
    let length = to_m - from_m;
    let insulation = if 0.0 < leg.insulation_m {
        cylinder_resistance_mk_w(leg.tube_outside_m, outer_m, leg.insulation_w_mk)
    } else {
        0.0
    };
    let tube = cylinder_resistance_mk_w(leg.bore_m, leg.tube_outside_m, leg.tube_w_mk);
    let (low, high) = roots.of_bore(leg.bore_m);
    let (middle, half) = (0.5 * (low + high), 0.5 * (high - low));
    let extent = leg.riser_m.unwrap_or(outer_m);
    let retained = leg.retained_kg_m2;
    let outside = 1.0 / (PI * outer_m * USUAL_OUTSIDE_W_M2K);
    let number = number(leg.bore_m, (from_m, to_m), (middle, half));
    let inside = 1.0 / (PI * USUAL_AIR_W_MK * number[0]);
    let others = outside + tube + insulation;
    Cell {
        length,
        per_length: length.recip(),
        inner: PI * leg.bore_m,
        area: PI * leg.bore_m * length,
        uncounted_k: if leg.bore_m <= 0.5 * (from_m + to_m) {
            0.0
        } else {
            f64::INFINITY
        },
        per_inner: 1.0 / (PI * leg.bore_m),
        per_bore: 4.0 / (PI * leg.bore_m),
        number,
        root_middle: middle,
        root_per_half: half.recip(),
        entry: 1.0 + cbrt(leg.bore_m) * cbrt(leg.bore_m) * (cbrt(to_m) - cbrt(from_m)) / length,
        outer: PI * outer_m,
        per_outer: outer_m.recip(),
        size: extent.sqrt(),
        radiative: leg.emissivity * STEFAN_BOLTZMANN,
        insulation,
        tube,
        tracing: leg.tracing_w_m,
        retained,
        root_step: 1.0 / (3.0 * cbrt(retained) * cbrt(retained)),
        per_root: 1.0 / cbrt(retained),
        natural: 1.0,
        diffusivity: 1.0,
        warmth: outside / others,
        inside,
        follows: inside / others,
        eases: 1.0,
    }
}

/// Mean of the local laminar number over a stretch, as a polynomial in the cube root of Re Pr about a middle, scaled by half its range.
///
/// Interpolated at Chebyshev's points; the mean is taken in the cube root of the distance, in which the film is smooth up to the inlet.
fn number(bore_m: f64, (from_m, to_m): (f64, f64), (middle, half): (f64, f64)) -> [f64; NUMBER] {
    let mean = |root: f64| {
        let (low, high) = (cbrt(from_m), cbrt(to_m));
        let sum: f64 = gauss_legendre_8(low, high)
            .iter()
            .map(|(s, weight)| {
                let graetz = root * root * root * bore_m / (s * s * s);
                weight * 3.0 * s * s * vdi_g1_laminar(graetz)
            })
            .sum();
        sum / (to_m - from_m)
    };
    let points = CHEBYSHEV.map(|point| (point, mean(middle + half * point)));
    through(points)
}

/// Chebyshev's points of degree six: cosines of odd fourteenths of a half turn.
const CHEBYSHEV: [f64; NUMBER] = [
    0.974_927_912_181_823_6,
    0.781_831_482_468_029_8,
    0.433_883_739_117_558_1,
    0.0,
    -0.433_883_739_117_558_1,
    -0.781_831_482_468_029_8,
    -0.974_927_912_181_823_6,
];

/// Coefficients of the polynomial through points, by Newton's divided differences.
fn through(points: [(f64, f64); NUMBER]) -> [f64; NUMBER] {
    let mut differences = points.map(|(_, y)| y);
    for order in 1..NUMBER {
        for at in (order..NUMBER).rev() {
            let (x, before) = (points[at].0, points[at - order].0);
            differences[at] = (differences[at] - differences[at - 1]) / (x - before);
        }
    }
    let mut sum = [0.0; NUMBER];
    for at in (0..NUMBER).rev() {
        // sum = sum (x - x_at) + difference
        let x = points[at].0;
        for power in (1..NUMBER).rev() {
            sum[power] = sum[power - 1] - x * sum[power];
        }
        sum[0] = differences[at] - x * sum[0];
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mean_number_is_that_of_the_relation() {
        let bore = 0.019;
        for (from, to) in [(0.0, 0.02), (0.0, 0.3), (0.5, 1.5), (10.0, 12.0)] {
            let coefficients = number(bore, (from, to), (9.0, 4.0));
            for root in [5.1, 7.0, 9.0, 12.9] {
                let re: f64 = root * root * root / 0.7;
                let steps = 20_000;
                let mean: f64 = (0..steps)
                    .map(|i| {
                        let x = from + (to - from) * (f64::from(i) + 0.5) / f64::from(steps);
                        local(
                            re.min(2299.0),
                            root * root * root / re.min(2299.0),
                            x / bore,
                        ) / f64::from(steps)
                    })
                    .sum();
                let scaled = (root - 9.0) / 4.0;
                let got = coefficients
                    .iter()
                    .rev()
                    .fold(0.0, |sum, c| sum * scaled + c);
                assert!(
                    (got / mean - 1.0).abs() < 2e-3,
                    "{got} for {mean} at {root}, {from} to {to} m"
                );
            }
        }
    }

    #[test]
    fn cells_fill_their_leg() {
        let leg = Leg::plastic(12.5);
        for grid in [Grid::PRODUCT, Grid::Cells(10), Grid::Even(0.05)] {
            let ends = grid.ends(&leg, 6e-4, 4, true);
            let last = ends.last().copied().unwrap_or(0.0);
            assert!((last - 12.5).abs() < 1e-9, "{ends:?}");
            assert!(ends.is_sorted(), "{ends:?}");
        }
    }
}
