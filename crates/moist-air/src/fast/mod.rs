//! Fits of the relations for the inner loop, whose derivative is right too.
//!
//! Small driving forces amplify the error of a fit, so each is held against its relation in value and in slope.
//!
//! ```
//! use dewrun_moist_air::fast::SaturationCurve;
//! let curve = SaturationCurve::at(101_325.0);
//! let (x, slope) = curve.mole_fraction(25.0);
//! assert!((x / 0.0314170 - 1.0).abs() < 5e-4 && (slope / 0.00187365 - 1.0).abs() < 5e-4); // CoolProp 8.0.0, HAPropsSI
//! ```

mod coefficients;
mod dew_point;
mod plain;
mod saturation_curve;
mod transport;

pub(crate) use dew_point::saturation_c;
pub use dew_point::{
    COLDEST_C, dew_or_frost_point_c, dew_or_frost_point_of_c, dew_point_c, dew_point_of_c,
    frost_point_of_c,
};
pub use plain::{plain_fraction_over_ice, plain_fraction_over_water};
pub use saturation_curve::SaturationCurve;
pub use transport::{Transport, conductivity_w_mk, diffusivity_m2_s, transport, viscosity_pa_s};
