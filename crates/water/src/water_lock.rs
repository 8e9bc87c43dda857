//! Bores narrow enough for water to span them and stay: level ones, upright ones, and those under suction.

use dewrun_numeric::polynomial::polynomial;
use dewrun_quantity::{Angle, Length, Limits, OutOfRange};
use thiserror::Error;

use crate::Water;

use core::f64::consts::FRAC_PI_2;

/// Bore below which water is seen to stay in an upright tube whose lower end is open while the upper is closed or under suction, from and to.
///
/// Air pressure carries it, not surface tension alone. Source: Langmuir 33 (2017) 12903.
pub const CLOSED_ABOVE: (Length, Length) = (Length::millimetres(10.0), Length::millimetres(15.0));

/// Largest ratio of weight to surface tension, `rho g R^2 / sigma`, at which a bubble does not rise in an upright tube.
const BRETHERTON_1961: f64 = 0.842;

const ANGLE: Limits = Limits::new("the contact angle", "degrees", 20.0, 90.0);

/// Why there is no bore at which water locks.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[non_exhaustive]
pub enum LockError {
    /// The contact angle lies where the criterion was not solved: bring it within the limits.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
}

/// What a bore does to water that once fills it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lock {
    /// It runs out.
    Runs,
    /// It stays in a level tube.
    Level,
    /// It stays even upright with both ends open.
    Upright,
}

/// Bore below which water that spans an upright tube, open at both ends under equal pressure, does not run out.
///
/// `rho g R^2 / sigma = 0.842`, wetted wall.
///
/// # Range
/// Contact angle near zero, as in a tube that was wet before.
/// # Accuracy
/// 0.1 %.
/// # Errors
/// None.
/// # Source
/// Bretherton, J. Fluid Mech. 10 (1961) 166, <https://doi.org/10.1017/S0022112061000160>.
///
/// ```
/// use dewrun_quantity::Temperature;
/// use dewrun_water::{Water, water_lock::bretherton_1961_bore};
/// let bore = bretherton_1961_bore(Water::at(Temperature::celsius(20.0)));
/// assert!((bore.to_millimetres() - 5.0025).abs() < 0.005);
/// ```
#[must_use]
pub fn bretherton_1961_bore(water: Water) -> Length {
    water.capillary_length() * (2.0 * BRETHERTON_1961.sqrt())
}

/// Largest `rho g R^2 / sigma` at which water can span a level round tube, by contact angle.
///
/// # Range
/// Contact angles from 20 to 90 degrees, where it is 3 exactly.
/// # Accuracy
/// 1e-5 of the criterion solved.
/// # Errors
/// [`LockError`] for other angles.
/// # Source
/// Criterion of Manning, Collicott & Finn, J. Fluid Mech. 682 (2011) 397,
/// solved by `tests/generate/horizontal_lock.py`; polynomial in the square of 90 degrees less the angle.
///
/// ```
/// use dewrun_quantity::Angle;
/// let bond = dewrun_water::water_lock::manning_2011_bond(Angle::degrees(90.0)).unwrap();
/// assert!((bond - 3.0).abs() < 1e-4);
/// ```
pub fn manning_2011_bond(contact_angle: Angle) -> Result<f64, LockError> {
    ANGLE.check(contact_angle.to_degrees())?;
    let from_right = FRAC_PI_2 - contact_angle.to_radians();
    let coefficients = [
        2.999_992_27,
        -0.932_239_26,
        0.081_163_318_4,
        -0.001_615_181_31,
        -0.001_879_790_2,
    ];
    Ok(polynomial(&coefficients, from_right * from_right))
}

/// Bore below which water can fill a level tube and stay.
///
/// # Range
/// Contact angles from 20 to 90 degrees: 7.3 to 9.4 mm at 20 °C.
/// # Accuracy
/// As [`manning_2011_bond`]; the contact angle is rarely known better than 20 degrees.
/// # Errors
/// [`LockError`] for other angles.
/// # Source
/// As [`manning_2011_bond`].
///
/// ```
/// use dewrun_quantity::{Angle, Temperature};
/// use dewrun_water::{Water, water_lock::level_bore};
/// let bore = level_bore(Angle::degrees(60.0), Water::at(Temperature::celsius(20.0))).unwrap();
/// assert!((bore.to_millimetres() - 9.0423).abs() < 0.01);
/// ```
pub fn level_bore(contact_angle: Angle, water: Water) -> Result<Length, LockError> {
    let bond = manning_2011_bond(contact_angle)?;
    Ok(water.capillary_length() * (2.0 * bond.sqrt()))
}

/// What a bore does to water that once fills it.
///
/// # Range
/// As [`level_bore`].
/// # Accuracy
/// As [`level_bore`].
/// # Errors
/// [`LockError`] for other angles.
/// # Source
/// [`bretherton_1961_bore`] and [`level_bore`].
///
/// ```
/// use dewrun_quantity::{Angle, Length, Temperature};
/// use dewrun_water::{Water, water_lock::{Lock, lock_of}};
/// let water = Water::at(Temperature::celsius(20.0));
/// let of = |mm| lock_of(Length::millimetres(mm), Angle::degrees(60.0), water).unwrap();
/// assert_eq!([of(4.0), of(8.0), of(12.0)], [Lock::Upright, Lock::Level, Lock::Runs]);
/// ```
pub fn lock_of(bore: Length, contact_angle: Angle, water: Water) -> Result<Lock, LockError> {
    let level = level_bore(contact_angle, water)?;
    Ok(if bore < bretherton_1961_bore(water) {
        Lock::Upright
    } else if bore < level {
        Lock::Level
    } else {
        Lock::Runs
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_quantity::Temperature;

    #[test]
    fn a_better_wetted_tube_locks_at_a_smaller_bore() {
        let mut before = 0.0;
        for degrees in 20..=90 {
            let bond = manning_2011_bond(Angle::degrees(f64::from(degrees)));
            let rises = bond.is_ok_and(|bond| before < bond);
            assert!(rises, "{bond:?} at {degrees} degrees, {before} before");
            before = bond.unwrap_or(before);
        }
    }

    #[test]
    fn other_angles_are_refused() {
        for degrees in [0.0, 19.0, 91.0, f64::NAN] {
            let bond = manning_2011_bond(Angle::degrees(degrees));
            assert!(bond.is_err(), "{degrees} degrees: {bond:?}");
        }
    }

    #[test]
    fn a_warm_surface_holds_less() {
        let bore = |t_c| bretherton_1961_bore(Water::at(Temperature::celsius(t_c)));
        assert!(bore(40.0) < bore(5.0), "surface tension falls");
    }
}
