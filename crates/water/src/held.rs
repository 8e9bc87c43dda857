//! Water that stays on the wall before any of it runs: the retained film, the pinned puddle, the corrugations.

use core::f64::consts::PI;

use dewrun_numeric::circular_segment::{area, chord, whole_area};
use dewrun_numeric::elementary::sin;
use dewrun_quantity::{Angle, Area, Length, MassPerArea, MassPerLength};

use crate::{Incline, Water};

/// A puddle on the floor of a tube, as its contact line pins it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Puddle {
    /// Mean contact angle, which sets its depth.
    pub mean_angle: Angle,
    /// Cosine of the receding less that of the advancing contact angle: 0.3 on clean glass-like walls to 0.7 on dusty plastic.
    pub cosine_difference: f64,
    /// Its length along the tube.
    pub length: Length,
}

impl Puddle {
    /// Where nobody says otherwise: 60 degrees, 0.5, and 0.2 m, which runs at about 1:100 in a bore of 16 mm.
    ///
    /// Common practice, no source; the length may be from 0.05 to 0.5 m.
    pub const USUAL: Self = Self {
        mean_angle: Angle::degrees(60.0),
        cosine_difference: 0.5,
        length: Length::millimetres(200.0),
    };
}

/// What a wall keeps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Keeping {
    /// Film that drops and streaks leave on the whole wall.
    pub film: MassPerArea,
    /// The puddle that stays on the floor of a flat leg.
    pub puddle: Puddle,
    /// What the corrugations of a corrugated bore keep besides; zero in a plain one.
    pub corrugations: MassPerLength,
}

impl Keeping {
    /// Where nobody says otherwise: 50 g/m2 (25 to 100), the usual puddle, a plain bore. Common practice, no source.
    pub const USUAL: Self = Self {
        film: MassPerArea::grams_per_square_metre(50.0),
        puddle: Puddle::USUAL,
        corrugations: MassPerLength::ZERO,
    };
}

/// The cross-section of a puddle in a bore.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PuddleSection {
    /// Depth over the floor; the bore where the puddle fills it.
    pub depth: Length,
    /// Area of the cross-section.
    pub area: Area,
    /// Width of the wetted strip; the bore where the puddle stands over the middle.
    pub width: Length,
}

/// Cross-section of a puddle on the floor of a bore: depth `2 sin(theta/2)` capillary lengths, a circular segment.
///
/// # Range
/// Contact angles from 0 to 180 degrees; in a bore no larger than the depth the puddle fills it.
/// # Accuracy
/// The depth is that of a wide puddle on a flat floor; in a bore of a few capillary lengths it is 10 to 20 % off.
/// # Errors
/// None.
/// # Source
/// de Gennes, Brochard-Wyart & Quéré, Capillarity and Wetting Phenomena (2004), ch. 2, puddles.
///
/// ```
/// use dewrun_quantity::{Length, Temperature};
/// use dewrun_water::{Water, held::{Puddle, puddle_section}};
/// let water = Water::at(Temperature::celsius(20.0));
/// let section = puddle_section(Length::millimetres(16.0), &Puddle::USUAL, water);
/// assert!((section.area.to_square_millimetres() - 22.736).abs() < 0.02);
/// ```
#[must_use]
pub fn puddle_section(bore: Length, puddle: &Puddle, water: Water) -> PuddleSection {
    let d_m = bore.to_metres();
    let free_m =
        2.0 * sin(0.5 * puddle.mean_angle.to_radians()) * water.capillary_length().to_metres();
    let depth_m = free_m.max(0.0).min(d_m);
    let width_m = if depth_m < 0.5 * d_m {
        chord(depth_m, d_m)
    } else {
        d_m
    };
    PuddleSection {
        depth: Length::metres(depth_m),
        area: Area::square_metres(area(depth_m, d_m)),
        width: Length::metres(width_m),
    }
}

/// The incline at which a pinned puddle begins to run: `rho g A L sin a = sigma (cos th_r - cos th_a) w`.
///
/// A longer puddle runs at less; upright where the puddle stays at any incline.
///
/// # Range
/// Puddles with a length above zero.
/// # Accuracy
/// A factor of two: the difference of the cosines is rarely known better.
/// # Errors
/// None.
/// # Source
/// Furmidge, J. Colloid Sci. 17 (1962) 309, <https://doi.org/10.1016/0095-8522(62)90011-9>, with the weight of a puddle of even section.
///
/// ```
/// use dewrun_quantity::{Length, Temperature};
/// use dewrun_water::{Water, held::{Puddle, incline_that_moves}};
/// let water = Water::at(Temperature::celsius(20.0));
/// let puddle = Puddle { length: Length::millimetres(50.0), ..Puddle::USUAL };
/// let moves = incline_that_moves(Length::millimetres(16.0), &puddle, water);
/// assert!((moves.sine() - 0.03932).abs() < 1e-4);
/// ```
#[must_use]
pub fn incline_that_moves(bore: Length, puddle: &Puddle, water: Water) -> Incline {
    let section = puddle_section(bore, puddle, water);
    let pinned_n = water.surface_tension.to_newtons_per_metre()
        * puddle.cosine_difference
        * section.width.to_metres();
    let weight_n =
        water.weight_n_m3() * section.area.to_square_metres() * puddle.length.to_metres();
    Incline::per_length(pinned_n / weight_n).unwrap_or(Incline::UPRIGHT)
}

/// What a leg of that bore and incline holds before any of it runs, per metre.
///
/// The larger of the film on the whole wall and, in legs flatter than the incline that moves it (and than 45 degrees), the pinned puddle; corrugations besides.
///
/// # Range
/// Bores above zero.
/// # Accuracy
/// A factor of two, as the retained film.
/// # Errors
/// None.
/// # Source
/// [`puddle_section`] and [`incline_that_moves`]; that the larger of both counts is a choice of this project.
///
/// ```
/// use dewrun_quantity::{Length, Temperature};
/// use dewrun_water::{Incline, Water, held::{Keeping, held_per_length}};
/// let water = Water::at(Temperature::celsius(20.0));
/// let bore = Length::millimetres(16.0);
/// let level = held_per_length(bore, Incline::LEVEL, &Keeping::USUAL, water);
/// let steep = held_per_length(bore, Incline::per_horizontal(0.05), &Keeping::USUAL, water);
/// assert!((level.to_grams_per_metre() - 22.70).abs() < 0.05, "a puddle");
/// assert!((steep.to_grams_per_metre() - 2.513).abs() < 0.001, "a film: pi 16 mm times 50 g/m2");
/// ```
#[must_use]
pub fn held_per_length(
    bore: Length,
    incline: Incline,
    keeping: &Keeping,
    water: Water,
) -> MassPerLength {
    let film_kg_m = PI * bore.to_metres() * keeping.film.to_kilograms_per_square_metre();
    let mut held_kg_m = film_kg_m;
    if is_flat(bore, incline, &keeping.puddle, water) {
        let section = puddle_section(bore, &keeping.puddle, water).area;
        held_kg_m = held_kg_m
            .max(section.to_square_metres() * water.density.to_kilograms_per_cubic_metre());
    }
    let full_kg_m = whole_area(bore.to_metres()) * water.density.to_kilograms_per_cubic_metre();
    MassPerLength::kilograms_per_metre(held_kg_m.min(full_kg_m)) + keeping.corrugations
}

/// Whether a puddle stays in a leg of that bore and incline.
///
/// # Range
/// As [`incline_that_moves`].
/// # Accuracy
/// As [`incline_that_moves`].
/// # Errors
/// None.
/// # Source
/// As [`incline_that_moves`].
///
/// ```
/// use dewrun_quantity::{Length, Temperature};
/// use dewrun_water::{Incline, Water, held::{Puddle, is_flat}};
/// let water = Water::at(Temperature::celsius(20.0));
/// let flat = |fall| is_flat(Length::millimetres(19.0), Incline::per_horizontal(fall), &Puddle::USUAL, water);
/// assert!(flat(1.0 / 200.0) && !flat(1.0 / 50.0));
/// ```
#[must_use]
pub fn is_flat(bore: Length, incline: Incline, puddle: &Puddle, water: Water) -> bool {
    let moves = incline_that_moves(bore, puddle, water);
    !incline.is_steep() && incline.sine().abs() < moves.sine()
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_quantity::Temperature;
    use proptest::prelude::{prop_assert, proptest};

    fn water() -> Water {
        Water::at(Temperature::celsius(20.0))
    }

    /// By hand at 20 °C: capillary length 2.7259 mm, depth 2 sin 30° = 1 of it.
    /// In a bore of 12 mm: cos u = 1 − 2 · 2.7259/12 = 0.545 68, u = 0.993 60; area 36 (u − sin u cos u) = 36 (0.993 60 − 0.838 00 · 0.545 68) = 19.31 mm2;
    /// width 12 sin u = 10.06 mm; with 0.3 and 0.1 m: sin a = 0.07274 · 0.3 · 0.01006/(9789 · 19.31e-6 · 0.1) = 0.011 61.
    #[test]
    fn a_long_puddle_on_a_clean_wall_by_hand() {
        let puddle = Puddle {
            cosine_difference: 0.3,
            length: Length::millimetres(100.0),
            ..Puddle::USUAL
        };
        let bore = Length::millimetres(12.0);
        let section = puddle_section(bore, &puddle, water());
        let got = [
            section.depth.to_millimetres(),
            section.area.to_square_millimetres(),
            section.width.to_millimetres(),
            incline_that_moves(bore, &puddle, water()).sine() * 1e3,
        ];
        for (got, expected) in got.into_iter().zip([2.7259, 19.307, 10.056, 11.61]) {
            assert!((got / expected - 1.0).abs() < 5e-3, "{got}, {expected}");
        }
    }

    #[test]
    fn a_narrow_bore_is_filled_and_no_more() {
        let bore = Length::millimetres(2.0);
        let held = held_per_length(bore, Incline::LEVEL, &Keeping::USUAL, water());
        let full = PI * 1e-6 * 998.2;
        assert!(
            (held.to_kilograms_per_metre() / full - 1.0).abs() < 1e-3,
            "{held:?}"
        );
    }

    #[test]
    fn corrugations_hold_besides() {
        let more = MassPerLength::grams_per_metre(7.0);
        let corrugated = Keeping {
            corrugations: more,
            ..Keeping::USUAL
        };
        let bore = Length::millimetres(20.0);
        let held = |keeping| held_per_length(bore, Incline::LEVEL, keeping, water());
        let besides = held(&corrugated) - held(&Keeping::USUAL);
        assert!(
            (besides / more - 1.0).abs() < 1e-12,
            "{besides:?} instead of {more:?}"
        );
    }

    proptest! {
        #[test]
        fn a_steeper_fall_never_holds_more(
            bore_mm in 2.0..60.0_f64, film in 0.0..200.0_f64, length_m in 0.01..2.0_f64,
            fall in 0.0..2.0_f64, more in 1.0..5.0_f64,
        ) {
            let keeping = Keeping {
                film: MassPerArea::grams_per_square_metre(film),
                puddle: Puddle { length: Length::metres(length_m), ..Puddle::USUAL },
                corrugations: MassPerLength::ZERO,
            };
            let held = |fall| held_per_length(Length::millimetres(bore_mm), Incline::per_horizontal(fall), &keeping, water());
            prop_assert!(held(fall * more) <= held(fall), "at {fall} and {}", fall * more);
        }
    }
}
