//! How humid an air of the library is, in the measure that hangs least on its temperature.

use dewrun_moist_air::{Humidity, Over};
use dewrun_quantity::{RelativeHumidity, Temperature};

use super::Span;
use super::record::Record;

/// Low, usual and high of a humidity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HumiditySpan {
    /// Relative humidity, and over what it is meant.
    Relative {
        /// The relative humidity.
        value: Span<RelativeHumidity>,
        /// Over what it is meant; over ice means over water above 0 °C.
        over: Over,
    },
    /// Dew point over liquid water, also below freezing.
    DewPoint(Span<Temperature>),
}

impl HumiditySpan {
    /// The three humidities as the engine takes them.
    #[must_use]
    pub fn span(self) -> Span<Humidity> {
        match self {
            Self::Relative { value, over } => value.map(|value| Humidity::Relative { value, over }),
            Self::DewPoint(value) => value.map(Humidity::DewPoint),
        }
    }
}

/// The relative humidity of a record.
pub(super) fn relative(record: &mut Record) -> HumiditySpan {
    HumiditySpan::Relative {
        value: record
            .span_as("relative_percent", "percent")
            .map(RelativeHumidity::percent),
        over: record.choice("over", ("water", Over::Water), [("ice", Over::Ice)]),
    }
}

/// The dew point of a record, or else its relative humidity.
pub(super) fn dew_point_or_relative(record: &mut Record) -> HumiditySpan {
    match record.optional_span("dew_point_c") {
        Some(span) => HumiditySpan::DewPoint(span.map(Temperature::celsius)),
        None => relative(record),
    }
}
