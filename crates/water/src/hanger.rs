//! Sag of a tube full of water between its hangers, and the spacing at which it still drains.

use core::f64::consts::PI;

use dewrun_numeric::elementary::cbrt;
use dewrun_quantity::{Density, ForcePerLength, Length, Limits, Modulus, OutOfRange};
use thiserror::Error;

use crate::{GRAVITY_M_S2, Incline};

const BORE: Limits = Limits::new("the bore", "mm", 0.5, 500.0);
const OUTSIDE: Limits = Limits::new("the outside diameter", "mm", 0.6, 600.0);
const DENSITY: Limits = Limits::new("the density of the tube", "kg/m3", 100.0, 25_000.0);
const MODULUS: Limits = Limits::new("the long-term modulus", "MPa", 0.1, 1e6);
const SPACING: Limits = Limits::new("the spacing of the hangers", "m", 0.01, 100.0);

/// Why there is no sag.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[non_exhaustive]
pub enum HangerError {
    /// A number lies where no tube is: bring it within the limits.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// The tube has no wall: its outside diameter must be larger than its bore.
    #[error("the outside diameter of {} mm must be larger than the bore of {} mm", dewrun_quantity::format::entered(*.outside_mm), dewrun_quantity::format::entered(*.bore_mm))]
    NoWall {
        /// Outside diameter, mm.
        outside_mm: f64,
        /// Bore, mm.
        bore_mm: f64,
    },
}

/// How a span of tube is held at its ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Support {
    /// Jointed at its hangers.
    Simple,
    /// Held so that it cannot turn at either hanger.
    Clamped,
    /// The outer of two spans of a continuous tube.
    EndSpanOfTwo,
    /// The outer of three or more spans of a continuous tube: what most tubes are.
    EndSpanOfMore,
}

impl Support {
    /// Every kind, in the order from most to least sag.
    pub const ALL: [Self; 4] = [
        Self::Simple,
        Self::EndSpanOfMore,
        Self::EndSpanOfTwo,
        Self::Clamped,
    ];

    /// `k` of the greatest sag `w L^4 / (k E I)`.
    const fn of_sag(self) -> f64 {
        match self {
            Self::Simple => 384.0 / 5.0,
            Self::Clamped => 384.0,
            Self::EndSpanOfTwo => 185.0,
            Self::EndSpanOfMore => 145.26,
        }
    }

    /// `c` of the steepest slope `w L^3 / (c E I)`.
    fn of_slope(self) -> f64 {
        match self {
            Self::Simple => 24.0,
            Self::Clamped => 216.0 / 3.0_f64.sqrt(),
            Self::EndSpanOfTwo => 48.0,
            Self::EndSpanOfMore => 40.0,
        }
    }
}

/// A tube as its hangers feel it, full of water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HungTube {
    /// Inside diameter.
    pub bore: Length,
    /// Outside diameter.
    pub outside_diameter: Length,
    /// Density of its material.
    pub density: Density,
    /// Modulus after years under load (creep) at the warmest temperature of the tube: a third to a half of the short-term one in plastics.
    pub long_term_modulus: Modulus,
    /// Density of the water in it.
    pub water: Density,
}

/// How a span hangs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sag {
    /// Greatest depth below the line of the hangers.
    pub depth: Length,
    /// Steepest slope of the sag line; a leg drains only if its fall exceeds it.
    pub steepest: Incline,
}

impl HungTube {
    fn checked(&self) -> Result<(f64, f64), HangerError> {
        let bore_mm = BORE.check(self.bore.to_millimetres())?;
        let outside_mm = OUTSIDE.check(self.outside_diameter.to_millimetres())?;
        DENSITY.check(self.density.to_kilograms_per_cubic_metre())?;
        MODULUS.check(self.long_term_modulus.to_megapascals())?;
        if outside_mm <= bore_mm {
            return Err(HangerError::NoWall {
                outside_mm,
                bore_mm,
            });
        }
        Ok((self.bore.to_metres(), self.outside_diameter.to_metres()))
    }

    /// Stiffness of the section, `E I` [N m2].
    fn stiffness_n_m2(&self) -> Result<f64, HangerError> {
        Ok(self.long_term_modulus.to_pascals() * second_moment_m4(self)?)
    }
}

/// Second moment of area of a tube's wall, `I = pi/64 (OD^4 - ID^4)` \[m4\].
///
/// # Range
/// Bores from 0.5 to 500 mm.
/// # Accuracy
/// Exact for a round tube.
/// # Errors
/// [`HangerError`] where the tube is none.
/// # Source
/// Timoshenko, Strength of Materials, part I, 3rd ed. (1955), app. A.
///
/// ```
/// # use dewrun_quantity::{Density, Length, Modulus};
/// # use dewrun_water::hanger::{HungTube, second_moment_m4};
/// let tube = HungTube {
///     bore: Length::millimetres(19.0),
///     outside_diameter: Length::millimetres(25.0),
///     density: Density::kilograms_per_cubic_metre(1400.0),
///     long_term_modulus: Modulus::megapascals(1000.0),
///     water: Density::kilograms_per_cubic_metre(998.2),
/// };
/// assert!((second_moment_m4(&tube).unwrap() - 12_777.6e-12).abs() < 0.1e-12);
/// ```
pub fn second_moment_m4(tube: &HungTube) -> Result<f64, HangerError> {
    let (bore_m, outside_m) = tube.checked()?;
    let (bore2, outside2) = (bore_m * bore_m, outside_m * outside_m);
    Ok(PI / 64.0 * (outside2 * outside2 - bore2 * bore2))
}

/// Weight of the tube full of water, `g pi/4 (rho_t (OD^2 - ID^2) + rho_w ID^2)`.
///
/// Insulation and heating cable come on top; where there are any, take a spacing shorter in the proportion of the cube root.
///
/// # Range
/// Bores from 0.5 to 500 mm.
/// # Accuracy
/// Exact.
/// # Errors
/// [`HangerError`] where the tube is none.
/// # Source
/// Geometry.
///
/// ```
/// # use dewrun_quantity::{Density, Length, Modulus};
/// # use dewrun_water::hanger::{HungTube, load};
/// let tube = HungTube {
///     bore: Length::millimetres(19.0),
///     outside_diameter: Length::millimetres(25.0),
///     density: Density::kilograms_per_cubic_metre(1400.0),
///     long_term_modulus: Modulus::megapascals(1000.0),
///     water: Density::kilograms_per_cubic_metre(998.2),
/// };
/// assert!((load(&tube).unwrap().to_newtons_per_metre() - 5.62217).abs() < 1e-4);
/// ```
pub fn load(tube: &HungTube) -> Result<ForcePerLength, HangerError> {
    let (bore_m, outside_m) = tube.checked()?;
    let (inner, outer) = (bore_m * bore_m, outside_m * outside_m);
    let kg_m = 0.25
        * PI
        * (tube.density.to_kilograms_per_cubic_metre() * (outer - inner)
            + tube.water.to_kilograms_per_cubic_metre() * inner);
    Ok(ForcePerLength::newtons_per_metre(GRAVITY_M_S2 * kg_m))
}

/// Sag and steepest slope of a span.
///
/// `y = w L^4/(k E I)`, slope `w L^3/(c E I)`: simple 384/5 and 24, clamped 384 and 216/sqrt(3), end span of two 185 and 48, of more 145.26 and 40.
///
/// # Range
/// Spacings from 0.01 to 100 m, as long as the sag stays small against the spacing. Coiled flexible tube is no beam: it needs continuous support.
/// # Accuracy
/// 0.3 % of the beam equation; the long-term modulus is known to a third at best.
/// # Errors
/// [`HangerError`] where the tube or the spacing is none.
/// # Source
/// Timoshenko, Strength of Materials, part I, 3rd ed. (1955), ch. 5; end spans: Roark's Formulas for Stress and Strain, 7th ed. (2002), table 8.1, case 2c,
/// and the three-moment equation over three equal spans.
///
/// ```
/// # use dewrun_quantity::{Density, Length, Modulus};
/// # use dewrun_water::hanger::{HungTube, Support, sag};
/// let tube = HungTube {
///     bore: Length::millimetres(19.0),
///     outside_diameter: Length::millimetres(25.0),
///     density: Density::kilograms_per_cubic_metre(1400.0),
///     long_term_modulus: Modulus::megapascals(1000.0),
///     water: Density::kilograms_per_cubic_metre(998.2),
/// };
/// let span = sag(&tube, Support::Simple, Length::metres(0.8)).unwrap();
/// assert!((span.depth.to_millimetres() - 2.34667).abs() < 1e-3);
/// assert!((span.steepest.tangent() - 0.009_386_67).abs() < 1e-6);
/// ```
pub fn sag(tube: &HungTube, support: Support, spacing: Length) -> Result<Sag, HangerError> {
    let l_m = SPACING.check(spacing.to_metres())?;
    let load_over_stiffness = load(tube)?.to_newtons_per_metre() / tube.stiffness_n_m2()?;
    let cubed = load_over_stiffness * l_m * l_m * l_m;
    Ok(Sag {
        depth: Length::metres(cubed * l_m / support.of_sag()),
        steepest: Incline::per_horizontal(cubed / support.of_slope()),
    })
}

/// Largest spacing of the hangers at which a leg of that fall still drains: `(fall c E I / w)^(1/3)`.
///
/// # Range
/// Falls up to 1:2, beyond which a leg is no beam across; a level leg has no such spacing and gets zero.
/// # Accuracy
/// That of [`sag`]; a tenth less modulus is 3.5 % less spacing.
/// # Errors
/// [`HangerError`] where the tube is none.
/// # Source
/// As [`sag`], with the steepest slope set equal to the fall.
///
/// ```
/// # use dewrun_quantity::{Density, Length, Modulus};
/// # use dewrun_water::Incline;
/// # use dewrun_water::hanger::{HungTube, Support, largest_spacing};
/// let tube = HungTube {
///     bore: Length::millimetres(19.0),
///     outside_diameter: Length::millimetres(25.0),
///     density: Density::kilograms_per_cubic_metre(1400.0),
///     long_term_modulus: Modulus::megapascals(1000.0),
///     water: Density::kilograms_per_cubic_metre(998.2),
/// };
/// let spacing = largest_spacing(&tube, Support::Simple, Incline::per_horizontal(0.02)).unwrap();
/// assert!((spacing.to_metres() - 1.02943).abs() < 1e-4);
/// ```
pub fn largest_spacing(
    tube: &HungTube,
    support: Support,
    fall: Incline,
) -> Result<Length, HangerError> {
    let slope = fall.size().tangent();
    let load_n_m = load(tube)?.to_newtons_per_metre();
    let cubed = slope * support.of_slope() * tube.stiffness_n_m2()? / load_n_m;
    Ok(Length::metres(cbrt(cubed)))
}

/// Whether a leg of that fall drains between hangers so far apart: its fall exceeds the steepest slope of the sag.
///
/// # Range
/// That of [`sag`].
/// # Accuracy
/// That of [`sag`].
/// # Errors
/// [`HangerError`] where the tube or the spacing is none.
/// # Source
/// As [`sag`].
///
/// ```
/// # use dewrun_quantity::{Density, Length, Modulus};
/// # use dewrun_water::Incline;
/// # use dewrun_water::hanger::{HungTube, Support, drains};
/// let tube = HungTube {
///     bore: Length::millimetres(6.0),
///     outside_diameter: Length::millimetres(8.0),
///     density: Density::kilograms_per_cubic_metre(1020.0),
///     long_term_modulus: Modulus::megapascals(400.0),
///     water: Density::kilograms_per_cubic_metre(998.2),
/// };
/// let fall = Incline::per_horizontal(0.02);
/// assert!(!drains(&tube, Support::Simple, Length::millimetres(400.0), fall).unwrap());
/// ```
pub fn drains(
    tube: &HungTube,
    support: Support,
    spacing: Length,
    fall: Incline,
) -> Result<bool, HangerError> {
    let steepest = sag(tube, support, spacing)?.steepest;
    Ok(steepest.tangent() < fall.size().tangent())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{prop_assert, proptest};

    fn tube(bore_mm: f64, wall_mm: f64, modulus_mpa: f64) -> HungTube {
        HungTube {
            bore: Length::millimetres(bore_mm),
            outside_diameter: Length::millimetres(bore_mm + 2.0 * wall_mm),
            density: Density::kilograms_per_cubic_metre(1400.0),
            long_term_modulus: Modulus::megapascals(modulus_mpa),
            water: Density::kilograms_per_cubic_metre(998.2),
        }
    }

    #[test]
    fn what_is_no_tube_says_why() {
        let sentence = |tube: HungTube| load(&tube).map_err(|error| error.to_string());
        assert_eq!(
            sentence(tube(19.0, 0.0, 1000.0)),
            Err("the outside diameter of 19 mm must be larger than the bore of 19 mm".to_owned()),
            "no wall"
        );
        assert!(
            sentence(tube(19.0, 1.0, f64::NAN)).is_err(),
            "no modulus is no number"
        );
        let spacing = sag(&tube(19.0, 3.0, 1e3), Support::Simple, Length::ZERO);
        assert!(spacing.is_err(), "hangers have a distance");
    }

    #[test]
    fn a_level_leg_drains_at_no_spacing() {
        let spacing = largest_spacing(&tube(19.0, 3.0, 1e3), Support::Clamped, Incline::LEVEL);
        assert_eq!(spacing, Ok(Length::ZERO), "any sag holds water there");
    }

    proptest! {
        #[test]
        fn a_steeper_fall_never_asks_for_closer_hangers(
            bore_mm in 2.0..40.0_f64, wall_mm in 0.3..4.0_f64, modulus_mpa in 50.0..2e5_f64,
            fall in 1e-4..0.5_f64, more in 1.0..3.0_f64,
        ) {
            let tube = tube(bore_mm, wall_mm, modulus_mpa);
            for support in Support::ALL {
                let at = |fall| largest_spacing(&tube, support, Incline::per_horizontal(fall));
                prop_assert!(at(fall)? <= at(fall * more)?, "{support:?}");
            }
        }

        #[test]
        fn a_leg_drains_up_to_its_largest_spacing(
            bore_mm in 4.0..40.0_f64, wall_mm in 0.5..4.0_f64, modulus_mpa in 50.0..2e5_f64, fall in 1e-3..0.2_f64,
        ) {
            let tube = tube(bore_mm, wall_mm, modulus_mpa);
            let fall = Incline::per_horizontal(fall);
            for support in Support::ALL {
                let largest = largest_spacing(&tube, support, fall)?;
                prop_assert!(drains(&tube, support, largest * 0.999, fall)?, "{support:?} just below");
                prop_assert!(!drains(&tube, support, largest * 1.001, fall)?, "{support:?} just above");
            }
        }
    }
}
