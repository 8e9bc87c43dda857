//! What a state of moist air can be made of: the pairs that are answered, and the sentence for those that are not.

use crate::error::AirError;
use dewrun_quantity::{HumidityRatio, RelativeHumidity, SpecificEnthalpy, Temperature};

/// What saturation is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Over {
    /// Over liquid water at every temperature, supercooled below 0 °C: the custom of weather services and sensors.
    #[default]
    Water,
    /// Over ice below 0.01 °C and over water from there up: the custom of handbooks.
    Ice,
}

/// The humidity of air whose temperature is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Humidity {
    /// Relative humidity, and over what.
    Relative {
        /// The relative humidity.
        value: RelativeHumidity,
        /// Over what it is meant.
        over: Over,
    },
    /// Dew point over liquid water, supercooled below 0 °C.
    DewPoint(Temperature),
    /// Frost point over ice.
    FrostPoint(Temperature),
    /// Humidity ratio.
    Ratio(HumidityRatio),
    /// Wet bulb: ice on the wick at or below 0 °C, water above.
    WetBulb(Temperature),
    /// Enthalpy, counted from dry air at 0 °C and liquid water at the triple point.
    Enthalpy(SpecificEnthalpy),
}

/// Two quantities that make a state, the pressure known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pair {
    /// The air's temperature and its humidity.
    Temperature(Temperature, Humidity),
    /// Dew point over liquid water and relative humidity; the temperature follows.
    DewPointAndRelative {
        /// Dew point over liquid water.
        dew_point: Temperature,
        /// The relative humidity.
        value: RelativeHumidity,
        /// Over what it is meant.
        over: Over,
    },
    /// Frost point over ice and relative humidity; the temperature follows.
    FrostPointAndRelative {
        /// Frost point over ice.
        frost_point: Temperature,
        /// The relative humidity.
        value: RelativeHumidity,
        /// Over what it is meant.
        over: Over,
    },
    /// Humidity ratio and relative humidity; the temperature follows.
    RatioAndRelative {
        /// The humidity ratio.
        ratio: HumidityRatio,
        /// The relative humidity.
        value: RelativeHumidity,
        /// Over what it is meant.
        over: Over,
    },
}

/// One quantity of a state, as somebody gives it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Part {
    /// The air's temperature.
    Temperature(Temperature),
    /// One of its humidities.
    Humidity(Humidity),
}

impl Part {
    /// The quantity in words.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Temperature(_) => "temperature",
            Self::Humidity(humidity) => humidity.name(),
        }
    }
}

impl Humidity {
    /// The quantity in words.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Relative { .. } => "relative humidity",
            Self::DewPoint(_) => "dew point",
            Self::FrostPoint(_) => "frost point",
            Self::Ratio(_) => "humidity ratio",
            Self::WetBulb(_) => "wet bulb",
            Self::Enthalpy(_) => "enthalpy",
        }
    }

    /// Whether it says how much vapour there is, whatever the temperature.
    const fn is_amount(&self) -> bool {
        matches!(
            self,
            Self::DewPoint(_) | Self::FrostPoint(_) | Self::Ratio(_)
        )
    }
}

impl Pair {
    /// The pair that any two quantities make, in any order.
    ///
    /// # Errors
    /// A sentence for each combination that is not answered: the same information twice, ill-conditioned, not a pair, or not two.
    ///
    /// ```
    /// use dewrun_moist_air::{Humidity, Pair, Part};
    /// use dewrun_quantity::{HumidityRatio, Temperature};
    /// let dew_point = Part::Humidity(Humidity::DewPoint(Temperature::celsius(9.0)));
    /// let ratio = Part::Humidity(Humidity::Ratio(HumidityRatio::grams_per_kilogram(7.0)));
    /// assert!(Pair::from_parts(&[dew_point, Part::Temperature(Temperature::celsius(20.0))]).is_ok());
    /// let sentence = Pair::from_parts(&[dew_point, ratio]).unwrap_err().to_string();
    /// assert!(sentence.starts_with("dew point with humidity ratio is the same information twice"));
    /// ```
    pub fn from_parts(parts: &[Part]) -> Result<Self, AirError> {
        let [first, second] = parts else {
            return Err(AirError::PartCount { count: parts.len() });
        };
        match (*first, *second) {
            (Part::Temperature(_), Part::Temperature(_)) => Err(AirError::SameInformation {
                first: first.name(),
                second: second.name(),
            }),
            (Part::Temperature(temperature), Part::Humidity(humidity))
            | (Part::Humidity(humidity), Part::Temperature(temperature)) => {
                Ok(Self::Temperature(temperature, humidity))
            }
            (Part::Humidity(one), Part::Humidity(other)) => Self::from_humidities(one, other),
        }
    }

    /// Two humidities make a state only where one of them is relative and the other an amount of vapour.
    fn from_humidities(one: Humidity, other: Humidity) -> Result<Self, AirError> {
        use Humidity::{DewPoint, Enthalpy, FrostPoint, Ratio, Relative, WetBulb};
        let (first, second) = (one.name(), other.name());
        match (one, other) {
            (Relative { value, over }, DewPoint(dew_point))
            | (DewPoint(dew_point), Relative { value, over }) => Ok(Self::DewPointAndRelative {
                dew_point,
                value,
                over,
            }),
            (Relative { value, over }, FrostPoint(frost_point))
            | (FrostPoint(frost_point), Relative { value, over }) => {
                Ok(Self::FrostPointAndRelative {
                    frost_point,
                    value,
                    over,
                })
            }
            (Relative { value, over }, Ratio(ratio)) | (Ratio(ratio), Relative { value, over }) => {
                Ok(Self::RatioAndRelative { ratio, value, over })
            }
            (WetBulb(_), Enthalpy(_)) | (Enthalpy(_), WetBulb(_)) => {
                Err(AirError::IllConditioned { first, second })
            }
            _ if first == second || (one.is_amount() && other.is_amount()) => {
                Err(AirError::SameInformation { first, second })
            }
            _ => Err(AirError::NotAPair { first, second }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn every_part() -> [Part; 7] {
        let t = Temperature::celsius(-3.0);
        [
            Part::Temperature(t),
            Part::Humidity(Humidity::Relative {
                value: RelativeHumidity::percent(50.0),
                over: Over::Ice,
            }),
            Part::Humidity(Humidity::DewPoint(t)),
            Part::Humidity(Humidity::FrostPoint(t)),
            Part::Humidity(Humidity::Ratio(HumidityRatio::grams_per_kilogram(2.0))),
            Part::Humidity(Humidity::WetBulb(t)),
            Part::Humidity(Humidity::Enthalpy(
                SpecificEnthalpy::kilojoules_per_kilogram(2.0),
            )),
        ]
    }

    #[test]
    fn order_does_not_matter() {
        for one in every_part() {
            for other in every_part() {
                let (there, back) = (
                    Pair::from_parts(&[one, other]),
                    Pair::from_parts(&[other, one]),
                );
                assert_eq!(
                    there.is_ok(),
                    back.is_ok(),
                    "{} with {}",
                    one.name(),
                    other.name()
                );
                if let (Ok(there), Ok(back)) = (there, back) {
                    assert_eq!(there, back, "{} with {}", one.name(), other.name());
                }
            }
        }
    }

    #[test]
    fn nine_pairs_are_answered() {
        let parts = every_part();
        let answered = parts
            .iter()
            .enumerate()
            .flat_map(|(at, one)| parts.iter().skip(at).map(move |other| [*one, *other]))
            .filter(|pair| Pair::from_parts(pair).is_ok())
            .count();
        assert_eq!(
            answered, 9,
            "temperature with six humidities, relative humidity with three amounts"
        );
    }

    #[test]
    fn refused_pairs_say_why() {
        let [
            _,
            relative,
            dew_point,
            frost_point,
            ratio,
            wet_bulb,
            enthalpy,
        ] = every_part();
        let check = |parts: &[Part], sentence: &str| {
            let answer = Pair::from_parts(parts).map_err(|error| error.to_string());
            assert_eq!(
                answer,
                Err(sentence.to_owned()),
                "refused with its sentence"
            );
        };
        check(
            &[dew_point, ratio],
            "dew point with humidity ratio is the same information twice: give the temperature or the relative humidity with one of them",
        );
        check(
            &[dew_point, frost_point],
            "dew point with frost point is the same information twice: give the temperature or the relative humidity with one of them",
        );
        check(
            &[enthalpy, wet_bulb],
            "enthalpy with wet bulb is ill-conditioned, their lines nearly coincide: give the temperature with one of them",
        );
        check(
            &[wet_bulb, relative],
            "wet bulb with relative humidity is not answered: give the temperature with one of them",
        );
        check(
            &[dew_point],
            "a state of moist air takes two quantities beside the pressure, 1 are given",
        );
    }
}
