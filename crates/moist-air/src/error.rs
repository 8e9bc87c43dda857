//! Why a state of moist air cannot be made of what was given.

use dewrun_quantity::format::entered;
use thiserror::Error;

/// Why there is no state of moist air.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[non_exhaustive]
pub enum AirError {
    /// A number is missing (NaN): measure it or leave the state out.
    #[error("{quantity} is missing")]
    Missing {
        /// What is missing, in words.
        quantity: &'static str,
    },
    /// A number lies where no air is or the relations do not hold: bring it within the limits.
    #[error("{quantity} is {} {unit}, must be from {} to {} {unit}", entered(*.value), entered(*.min), entered(*.max))]
    OutOfRange {
        /// What is out of range, in words.
        quantity: &'static str,
        /// The value given.
        value: f64,
        /// Unit of value and limits.
        unit: &'static str,
        /// Least value allowed.
        min: f64,
        /// Largest value allowed.
        max: f64,
    },
    /// Relative humidity is so far over saturation that its sensor must be at fault: do not use the reading.
    #[error("relative humidity is {} %, over {} %: its sensor is at fault", entered(*.percent), entered(*.max))]
    SensorFault {
        /// Relative humidity as given, %.
        percent: f64,
        /// Most that is still clipped, %.
        max: f64,
    },
    /// A dew or frost point lies above the air's own temperature: one of the two readings is wrong.
    #[error("{quantity} of {} °C is above the air's temperature of {} °C: one of them is wrong", entered(*.point_c), entered(*.temperature_c))]
    PointAboveTemperature {
        /// Dew point or frost point.
        quantity: &'static str,
        /// That point, °C.
        point_c: f64,
        /// Temperature of the air, °C.
        temperature_c: f64,
    },
    /// At this pressure water boils before the air is that humid: there is no air left.
    #[error("at {} kPa water boils before air at {} °C is that humid", entered(*.pressure_kpa), entered(*.temperature_c))]
    Boils {
        /// Temperature of saturation, °C.
        temperature_c: f64,
        /// Pressure, kPa.
        pressure_kpa: f64,
    },
    /// Two quantities that say the same: give the temperature or the relative humidity with one of them.
    #[error(
        "{first} with {second} is the same information twice: give the temperature or the relative humidity with one of them"
    )]
    SameInformation {
        /// One of the two.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// Two quantities whose lines nearly coincide, so that a small error in one moves the answer far: give the temperature with one of them.
    #[error(
        "{first} with {second} is ill-conditioned, their lines nearly coincide: give the temperature with one of them"
    )]
    IllConditioned {
        /// One of the two.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// Two quantities that make no pair here: give the temperature with one of them.
    #[error("{first} with {second} is not answered: give the temperature with one of them")]
    NotAPair {
        /// One of the two.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A state takes two quantities beside the pressure: give exactly two.
    #[error("a state of moist air takes two quantities beside the pressure, {count} are given")]
    PartCount {
        /// How many were given.
        count: usize,
    },
    /// No temperature in the range has this point or humidity ratio at this relative humidity: check both.
    #[error("no temperature from {} to {} °C has a {quantity} of {} {unit} at a relative humidity of {} %", entered(*.min_c), entered(*.max_c), entered(*.value), entered(*.percent))]
    NoTemperature {
        /// Dew point, frost point or humidity ratio.
        quantity: &'static str,
        /// Its value.
        value: f64,
        /// Its unit.
        unit: &'static str,
        /// Relative humidity, %.
        percent: f64,
        /// Coldest temperature sought, °C.
        min_c: f64,
        /// Warmest temperature sought, °C.
        max_c: f64,
    },
}

/// What stands beside a state of moist air or one of its quantities.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum AirNote {
    /// Relative humidity was up to 2 points over saturation and was clipped to it; count these.
    Clipped {
        /// Relative humidity over water before clipping, %.
        percent: f64,
    },
    /// Relative humidity was 2 to 5 points over saturation and was clipped to it: the sensor is saturated, perhaps wet.
    SaturatedSensor {
        /// Relative humidity over water before clipping, %.
        percent: f64,
    },
    /// The dew or frost point was up to half a kelvin above the air's temperature and was lowered to it.
    PointLowered {
        /// Dew point or frost point.
        quantity: &'static str,
        /// That point before, °C.
        point_c: f64,
        /// The air's temperature, °C.
        temperature_c: f64,
    },
    /// The air holds more vapour than ice allows, though less than water does: frost may form, and the frost point lies above the air's temperature.
    AboveIceSaturation {
        /// Relative humidity over ice, %.
        percent: f64,
    },
    /// The wet bulb has two answers near 0 °C; the one with water on the wick was taken.
    IceOnWickReads {
        /// What the wet bulb reads with ice on the wick, °C.
        wet_bulb_c: f64,
    },
    /// The search for the wet bulb ended before its tolerance: the answer is the middle of this bracket.
    WetBulbBracket {
        /// Lower end, °C.
        low_c: f64,
        /// Upper end, °C.
        high_c: f64,
    },
}

impl core::fmt::Display for AirNote {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Clipped { percent } => write!(
                f,
                "relative humidity of {} % is clipped to saturation",
                entered(*percent)
            ),
            Self::SaturatedSensor { percent } => write!(
                f,
                "relative humidity of {} % is clipped to saturation; its sensor is saturated, perhaps wet",
                entered(*percent)
            ),
            Self::PointLowered {
                quantity,
                point_c,
                temperature_c,
            } => write!(
                f,
                "{quantity} of {} °C is above the air's temperature and is lowered to {} °C",
                entered(*point_c),
                entered(*temperature_c)
            ),
            Self::AboveIceSaturation { percent } => write!(
                f,
                "the air holds more vapour than ice allows, {} % over ice",
                entered(*percent)
            ),
            Self::IceOnWickReads { wet_bulb_c } => write!(
                f,
                "the wet bulb has two answers here; with ice on the wick it reads {} °C",
                entered(*wet_bulb_c)
            ),
            Self::WetBulbBracket { low_c, high_c } => write!(
                f,
                "the wet bulb is known only to lie from {} to {} °C",
                entered(*low_c),
                entered(*high_c)
            ),
        }
    }
}
