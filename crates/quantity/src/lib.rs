//! Quantities with units.
//!
//! A quantity keeps one private number in one raw unit and is entered and left by doors named for units,
//! so that a length is never taken for a diameter in other units and relative humidity never for a humidity ratio.
//!
//! ```
//! use dewrun_quantity::{Length, Temperature};
//! let bore = Length::millimetres(19.0);
//! assert_eq!(bore.to_metres(), 0.019);
//! let rise = Temperature::celsius(21.5) - Temperature::celsius(20.0);
//! assert_eq!(rise.to_kelvins(), 1.5);
//! ```

mod angle;
pub mod decimal;
mod fall;
mod flow;
mod force;
pub mod format;
mod heat;
mod humidity;
mod length;
mod macros;
mod mass;
pub mod measure;
mod noted;
pub mod parse;
mod pressure;
mod range;
mod resistance;
mod temperature;
mod time;
mod viscosity;
mod volume;

pub use angle::Angle;
pub use fall::{Fall, FallForm};
pub use flow::{MassFlow, MassFlowPerLength, VolumeFlow};
pub use force::{Force, ForcePerLength, Modulus};
pub use format::DecimalMark;
pub use heat::{Conductivity, Power, PowerPerLength, SpecificEnthalpy};
pub use humidity::{HumidityRatio, RelativeHumidity};
pub use length::{Length, Speed};
pub use mass::{Density, Mass, MassPerArea, MassPerLength, SpecificVolume};
pub use measure::{Style, Units};
pub use noted::Noted;
pub use pressure::Pressure;
pub use range::{Limits, OutOfRange};
pub use resistance::FlowResistance;
pub use temperature::{Temperature, TemperatureDifference};
pub use time::Time;
pub use viscosity::Viscosity;
pub use volume::{Area, Volume};
