//! Numbers with their units, as the drawings and the answer write them.

use dewrun_quantity::measure::{TEMPERATURE, TUBE_LENGTH, WATER};
use dewrun_quantity::{Fall, Length, MassFlow, Style, Temperature, Time, Units, format};
#[cfg(feature = "water-and-air")]
use dewrun_quantity::{Pressure, measure::DRAUGHT};
#[cfg(feature = "water-and-air")]
use dewrun_run::figure::Kind;
use dewrun_run::{AirPoint, Leg};

use crate::view::View;

/// With a capital letter first.
pub(crate) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_ascii_uppercase(), letters.as_str())
    })
}

/// A place along a tube, or a length.
pub(crate) fn metres(metres: f64, style: Style) -> String {
    TUBE_LENGTH.show(Length::metres(metres), style).to_string()
}

/// The length of a leg as it was entered, without the unit.
pub(crate) fn length_number(length: Length, style: Style) -> String {
    TUBE_LENGTH.show_entered(length, style).number
}

/// From one place to another, the unit said once.
pub(crate) fn span(from_m: f64, to_m: f64, style: Style) -> String {
    let from = TUBE_LENGTH.show(Length::metres(from_m), style).number;
    format!("{from} to {}", metres(to_m, style))
}

/// The unit of water per length, in words.
pub(crate) fn per_length(style: Style) -> &'static str {
    match style.units {
        Units::Si => "g/h per metre",
        Units::InchPound => "oz/h per foot",
    }
}

/// An amount of water in time.
pub(crate) fn water(flow: MassFlow, style: Style) -> String {
    WATER.show(flow, style).to_string()
}

/// A temperature that was computed.
pub(crate) fn celsius(temperature: Temperature, style: Style) -> String {
    TEMPERATURE.show(temperature, style).to_string()
}

/// The dew point of an air; in bone-dry air there is none.
pub(crate) fn dew_point(air: &AirPoint, style: Style) -> String {
    air.dew_point
        .map_or_else(|| "no dew point".to_owned(), |t| celsius(t, style))
}

/// The fall of a leg in the form it was typed, or the word for a steep one; without its sign where a triangle shows the way.
pub(crate) fn fall(view: &View<'_>, place: usize, leg: &Leg, signed: bool) -> String {
    let steep = if leg.rise.to_metres() < 0.0 {
        "drop"
    } else {
        "riser"
    };
    if leg.is_steep() {
        return format!("{steep} {}", metres(leg.rise.to_metres().abs(), view.style));
    }
    let Some(fall) = Fall::of(leg.length, leg.rise, view.fall_form(place)) else {
        return steep.to_owned();
    };
    let number = if signed {
        fall.number
    } else {
        fall.number.abs()
    };
    fall_number(number, fall, view.style)
}

/// A number in the form of a fall, to what a level shows.
#[must_use]
pub fn fall_number(number: f64, fall: Fall, style: Style) -> String {
    let number = drawn(number);
    Fall { number, ..fall }.show(style.mark)
}

/// No level shows a fall finer than this: whole numbers from 10 on, else hundredths.
fn drawn(number: f64) -> f64 {
    if 10.0 <= number.abs() {
        number.round()
    } else {
        (number * 100.0).round() / 100.0
    }
}

/// Under this many hours a time is told in hours, above in days.
const HOURS: f64 = 72.0;

/// A time in hours while it is short, else in days.
pub(crate) fn time(time: Time, style: Style) -> String {
    let hours = time.to_hours();
    let (number, unit) = if hours < HOURS {
        (hours, "h")
    } else {
        (time.to_days(), "days")
    };
    let number = format::significant(number, 2, 1, style.mark);
    format!("{number}\u{a0}{unit}")
}

/// A number with the unit of its kind.
#[cfg(feature = "water-and-air")]
pub(crate) fn measured(kind: Kind, value: f64, style: Style) -> String {
    kind.show(value, style).to_string()
}

/// Standing water, known to two digits while there is little of it.
#[cfg(feature = "water-and-air")]
pub(crate) fn volume(millilitres: f64, style: Style) -> String {
    if style.units == Units::InchPound {
        return measured(Kind::Volume, millilitres, style);
    }
    let (number, unit, digits) = match millilitres {
        little if little < 100.0 => (little, "mL", 2),
        more if more < 1000.0 => (more, "mL", 3),
        much => (much / 1000.0, "L", 2),
    };
    let number = format::significant(number, digits, 1, style.mark);
    format!("{number}\u{a0}{unit}")
}

/// A length that something needs at least, in whole millimetres.
#[cfg(feature = "water-and-air")]
pub(crate) fn at_least(length: Length, style: Style) -> String {
    let millimetres = length.to_millimetres().ceil();
    match style.units {
        Units::Si => Kind::Diameter.show_entered(millimetres, style).to_string(),
        Units::InchPound => measured(Kind::Diameter, millimetres, style),
    }
}

/// A pressure against a room, in whole pascals.
#[cfg(feature = "water-and-air")]
pub(crate) fn gauge(pressure: Pressure, style: Style) -> String {
    let unit = Kind::Gauge.unit(style);
    format!("{}\u{a0}{unit}", gauge_number(pressure, style))
}

/// Its number alone.
#[cfg(feature = "water-and-air")]
pub(crate) fn gauge_number(pressure: Pressure, style: Style) -> String {
    let value = (DRAUGHT.unit(style.units).read)(pressure);
    let decimals = match style.units {
        Units::Si => 0,
        Units::InchPound => 2,
    };
    format::fixed(value, decimals, style.mark)
}
