//! The kinds of numbers that a project holds: how each is shown and read, and between which limits.

use core::hint::black_box;

use dewrun_document::limits;
use dewrun_quantity::measure::{
    ABSOLUTE_PRESSURE, AIR_FLOW, AIR_SPEED, BORE, CONDUCTIVITY, ENTHALPY, HEAT, HEAT_TRACING,
    HUMIDITY_RATIO, Measure, RELATIVE_HUMIDITY, Shown, TEMPERATURE, TUBE_LENGTH, Unit, Written,
};
use dewrun_quantity::parse::{self, ParseError};
use dewrun_quantity::{
    Conductivity, HumidityRatio, Length, Limits, Power, PowerPerLength, Pressure, RelativeHumidity,
    SpecificEnthalpy, Speed, Style, Temperature, Units, VolumeFlow, format,
};

/// Nobody types more digits; a number that has more comes of a conversion.
const MOST_TYPED: usize = 6;
/// Digits of such a number that are shown.
const CONVERTED: usize = 4;

/// A bare number between 0 and 1, the same in all units.
const BARE: Unit<f64> = Unit {
    name: "",
    also: &[],
    make: f64::from,
    read: f64::from,
    decimals: 2,
};

/// The share of black-body radiation that a surface gives off.
const EMISSIVITY: Measure<f64> = Measure {
    name: "emissivity",
    si: BARE,
    inch_pound: BARE,
    others: &[],
    shown: Shown::Significant,
};

/// A height between two things that a tube joins: none, or no more than the longest leg.
const HEIGHT_M: Limits = Limits::new("height", "m", 0.0, limits::LENGTH_M.max);

/// Between two hangers: 0 where that is not known.
const HANGERS_M: Limits = Limits::new("hanger spacing", "m", 0.0, limits::HANGER_SPACING_M.max);

/// What a number of the project is, in the unit that the project keeps it in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    Temperature,
    DewPoint,
    FrostPoint,
    WetBulb,
    Relative,
    Ratio,
    Enthalpy,
    Pressure,
    Altitude,
    Flow,
    Length,
    Height,
    Hangers,
    Bore,
    Outside,
    Thickness,
    Heat,
    Rating,
    Tracing,
    Wind,
    TubeConductivity,
    InsulationConductivity,
    Emissivity,
}

/// Does something with the measure of a kind and the doors of the unit that the project keeps.
macro_rules! with_measure {
    ($kind:expr, $do:ident) => {
        match $kind {
            Kind::Temperature | Kind::DewPoint | Kind::FrostPoint | Kind::WetBulb => {
                $do!(TEMPERATURE, Temperature::celsius, Temperature::to_celsius)
            }
            Kind::Relative | Kind::Rating => $do!(
                RELATIVE_HUMIDITY,
                RelativeHumidity::percent,
                RelativeHumidity::to_percent
            ),
            Kind::Ratio => $do!(
                HUMIDITY_RATIO,
                HumidityRatio::kilograms_per_kilogram,
                HumidityRatio::to_kilograms_per_kilogram
            ),
            Kind::Enthalpy => $do!(
                ENTHALPY,
                SpecificEnthalpy::kilojoules_per_kilogram,
                SpecificEnthalpy::to_kilojoules_per_kilogram
            ),
            Kind::Pressure => $do!(ABSOLUTE_PRESSURE, Pressure::pascals, Pressure::to_pascals),
            Kind::Altitude | Kind::Length | Kind::Height | Kind::Hangers => {
                $do!(TUBE_LENGTH, Length::metres, Length::to_metres)
            }
            Kind::Flow => $do!(
                AIR_FLOW,
                VolumeFlow::litres_per_minute,
                VolumeFlow::to_litres_per_minute
            ),
            Kind::Bore | Kind::Outside | Kind::Thickness => {
                $do!(BORE, Length::millimetres, Length::to_millimetres)
            }
            Kind::Heat => $do!(HEAT, Power::watts, Power::to_watts),
            Kind::Tracing => $do!(
                HEAT_TRACING,
                PowerPerLength::watts_per_metre,
                PowerPerLength::to_watts_per_metre
            ),
            Kind::TubeConductivity | Kind::InsulationConductivity => $do!(
                CONDUCTIVITY,
                Conductivity::watts_per_metre_kelvin,
                Conductivity::to_watts_per_metre_kelvin
            ),
            Kind::Emissivity => $do!(EMISSIVITY, f64::from, f64::from),
            Kind::Wind => $do!(
                AIR_SPEED,
                Speed::metres_per_second,
                Speed::to_metres_per_second
            ),
        }
    };
}

impl Kind {
    /// The number as it was entered, with its unit.
    pub(crate) fn show(self, value: f64, style: Style) -> Written {
        macro_rules! show {
            ($measure:expr, $make:path, $read:path) => {
                shown(black_box(&$measure), $make(value), style)
            };
        }
        with_measure!(self, show)
    }

    /// The number that a text holds, in the unit that the project keeps.
    pub(crate) fn parse(self, text: &str, units: Units) -> Result<f64, ParseError> {
        if self.is_kept_as_typed(text, units) {
            // Not through the quantity and back, so that 19 mm stays 19.
            return parse::number(text);
        }
        macro_rules! read {
            ($measure:expr, $make:path, $read:path) => {
                parsed(black_box(&$measure), text, units).map($read)
            };
        }
        with_measure!(self, read)
    }

    /// Whether a text without unit is a number in the very unit that the project keeps.
    fn is_kept_as_typed(self, text: &str, units: Units) -> bool {
        units == Units::Si && self != Self::Ratio && parse::split_unit(text).1.is_empty()
    }

    /// Between which it must lie, in the unit that the project keeps.
    pub(crate) const fn limits(self) -> Limits {
        match self {
            Self::Temperature => limits::TEMPERATURE_C,
            Self::DewPoint => limits::DEW_POINT_C,
            Self::FrostPoint => limits::FROST_POINT_C,
            Self::WetBulb => limits::WET_BULB_C,
            Self::Relative => limits::RELATIVE_PERCENT,
            Self::Ratio => limits::RATIO_KG_KG,
            Self::Enthalpy => limits::ENTHALPY_KJ_KG,
            Self::Pressure => limits::ABSOLUTE_PA,
            Self::Altitude => limits::ALTITUDE_M,
            Self::Flow => limits::VOLUME_L_MIN,
            Self::Length => limits::LENGTH_M,
            Self::Height => HEIGHT_M,
            Self::Hangers => HANGERS_M,
            Self::Bore => limits::BORE_MM,
            Self::Outside => limits::OUTSIDE_DIAMETER_MM,
            Self::Thickness => limits::THICKNESS_MM,
            Self::Heat => limits::HEAT_W,
            Self::Rating => limits::HUMIDITY_RATING_PERCENT,
            Self::Tracing => limits::HEAT_TRACING_W_M,
            Self::Wind => limits::WIND_M_S,
            Self::TubeConductivity => limits::TUBE_CONDUCTIVITY_W_MK,
            Self::InsulationConductivity => limits::INSULATION_CONDUCTIVITY_W_MK,
            Self::Emissivity => limits::EMISSIVITY,
        }
    }

    /// The figure of a library row that it may be assumed from.
    pub(crate) const fn figure(self) -> &'static str {
        match self {
            Self::Temperature => "temperature_c",
            Self::DewPoint => "dew_point_c",
            Self::Relative => "percent",
            Self::Pressure => "absolute_pa",
            Self::Flow => "volume_l_min",
            Self::Length | Self::Height => "length_m",
            Self::Bore => "bore_mm",
            Self::Outside => "outside_diameter_mm",
            Self::Heat => "heat_w",
            Self::Rating => "humidity_rating_percent",
            Self::Wind => "wind_m_s",
            Self::TubeConductivity | Self::InsulationConductivity => "conductivity_w_mk",
            Self::Emissivity => "emissivity",
            Self::FrostPoint
            | Self::WetBulb
            | Self::Ratio
            | Self::Enthalpy
            | Self::Altitude
            | Self::Thickness
            | Self::Tracing
            | Self::Hangers => "",
        }
    }

    /// Whether it may lie below zero, so that a keypad without a minus won't do.
    pub(crate) fn may_be_negative(self) -> bool {
        self.limits().min < 0.0
    }

    /// Checks a number against its limits; the sentence is in the person's own units.
    pub(crate) fn check(self, value: f64, style: Style) -> Result<f64, String> {
        let Limits { min, max, .. } = self.limits();
        if min <= value && value <= max {
            return Ok(value);
        }
        let (least, most) = (self.show(min, style).number, self.show(max, style));
        Err(format!(
            "{} can\u{2019}t be used. {least} to {most} would be right.",
            self.show(value, style)
        ))
    }
}

// Quantities are numbers to the machine, so that all copies of these two are one in the end.
// Written out in each place, or with each its own measure written into it, they would not be.

#[inline(never)]
fn shown<Q: Copy>(measure: &Measure<Q>, quantity: Q, style: Style) -> Written {
    let entered = measure.show_entered(quantity, style);
    let digits = entered.number.chars().filter(char::is_ascii_digit).count();
    if digits <= MOST_TYPED {
        return entered;
    }
    // One that was entered in other units, to the digits that say as much.
    let value = (measure.unit(style.units).read)(quantity);
    let number = format::significant(value, CONVERTED, CONVERTED, style.mark);
    let number = match number.contains(['.', ',']) {
        true => number
            .trim_end_matches('0')
            .trim_end_matches(['.', ','])
            .to_owned(),
        false => number,
    };
    Written { number, ..entered }
}

#[inline(never)]
fn parsed<Q: Copy>(measure: &Measure<Q>, text: &str, units: Units) -> Result<Q, ParseError> {
    measure.parse(text, units)
}
