//! Moist air: saturation, humidity, dew point, wet bulb, enthalpy, density, transport.
//!
//! The relations work on bare numbers with the unit in the name and say where each comes from;
//! [`fast`] holds fits of them whose derivative is right too.
//!
//! ```
//! use dewrun_moist_air::{enhancement, saturation};
//! let e_pa = saturation::pressure_over_water_pa(25.0);
//! let x = enhancement::over_water(25.0, 101_325.0) * e_pa / 101_325.0;
//! assert!((x - 0.0314).abs() < 1e-4);
//! ```

pub mod dew_point;
pub mod enhancement;
pub mod fast;
pub mod humidity;
pub mod latent;
pub mod liquid;
pub mod mixture;
pub mod saturation;
pub mod transport;

/// 0 °C on the thermodynamic scale, K.
pub const ZERO_CELSIUS_K: f64 = 273.15;
