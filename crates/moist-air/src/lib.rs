//! Moist air: saturation, humidity, dew point, wet bulb, enthalpy, density, transport.
//!
//! [`MoistAir`] is one state with units, made of any [`Pair`], and answers every quantity of it.
//!
//! ```
//! use dewrun_moist_air::{Humidity, MoistAir, Pair};
//! use dewrun_quantity::{Pressure, Temperature};
//! let wet_bulb = Humidity::WetBulb(Temperature::celsius(-1.5));
//! let pair = Pair::Temperature(Temperature::celsius(5.0), wet_bulb);
//! let air = MoistAir::new(pair, Pressure::pascals(101_325.0)).unwrap().value;
//! assert!((air.frost_point().unwrap().to_celsius() - -14.9).abs() < 0.1);
//! ```
//!
//! The relations below it work on bare numbers with the unit in the name and say where each comes from;
//! [`fast`] holds fits of them whose derivative is right too.
//!
//! ```
//! use dewrun_moist_air::{enhancement, saturation};
//! let e_pa = saturation::pressure_over_water_pa(25.0);
//! let x = enhancement::over_water(25.0, 101_325.0) * e_pa / 101_325.0;
//! assert!((x - 0.0314).abs() < 1e-4);
//! ```

mod atmosphere;
pub mod dew_point;
pub mod enhancement;
mod error;
pub mod fast;
pub mod fog;
pub mod humidity;
pub mod latent;
pub mod liquid;
pub mod mixture;
mod pair;
pub mod saturation;
mod state;
pub mod transport;
pub mod wet_bulb;

pub use atmosphere::standard_pressure;
pub use error::{AirError, AirNote};
pub use pair::{Humidity, Over, Pair, Part};
pub use state::{MoistAir, ZERO_FAHRENHEIT_OFFSET};

/// 0 °C on the thermodynamic scale, K.
pub const ZERO_CELSIUS_K: f64 = 273.15;
