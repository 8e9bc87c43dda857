//! What is measured in which units: how each quantity is shown and read in SI and inch-pound.

mod air;
mod tube;

use core::fmt;

use crate::format::{self, DecimalMark, UNIT_SPACE};
use crate::parse::{self, ParseError};

pub use air::{
    ABSOLUTE_PRESSURE, AIR_DENSITY, AIR_FLOW, AIR_SPEED, DRAUGHT, ENTHALPY, HUMIDITY_RATIO, MIST,
    RELATIVE_HUMIDITY, SPECIFIC_VOLUME, TEMPERATURE, TEMPERATURE_DIFFERENCE, VAPOUR_PRESSURE,
};
pub use tube::{BORE, CONDUCTIVITY, HEAT, HEAT_TRACING, TUBE_LENGTH, WATER, WATER_PER_LENGTH};

/// The units in which a person thinks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Units {
    /// Metres, degrees Celsius, grams.
    #[default]
    Si,
    /// Feet, degrees Fahrenheit, ounces.
    InchPound,
}

/// How a person reads numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Style {
    /// The units.
    pub units: Units,
    /// The decimal mark.
    pub mark: DecimalMark,
}

/// One unit of a quantity.
#[derive(Debug, Clone, Copy)]
pub struct Unit<Q: 'static> {
    /// As it is written.
    pub name: &'static str,
    /// Other ways to type it.
    pub also: &'static [&'static str],
    /// The quantity that so many of the unit are.
    pub make: fn(f64) -> Q,
    /// How many of the unit the quantity is.
    pub read: fn(Q) -> f64,
    /// The finest decimals a result is shown with.
    pub decimals: usize,
}

/// A quantity as it is met at the edges: its name and its units.
#[derive(Debug, Clone, Copy)]
pub struct Measure<Q: 'static> {
    /// What it is, in words.
    pub name: &'static str,
    /// Its unit in SI.
    pub si: Unit<Q>,
    /// Its unit in inch-pound.
    pub inch_pound: Unit<Q>,
    /// Units that are understood besides.
    pub others: &'static [Unit<Q>],
    /// How its results are shown.
    pub shown: Shown,
}

/// How results of a measure are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// With the unit's decimals, whatever the size.
    Fixed,
    /// As an amount that may be none or too small to show.
    Amount,
    /// With three significant digits.
    Significant,
}

/// A row: name, other names, constructor, reader, decimals.
macro_rules! unit {
    ($name:literal, $also:expr, $make:path, $read:path, $decimals:literal) => {
        $crate::measure::Unit {
            name: $name,
            also: &$also,
            make: $make,
            read: $read,
            decimals: $decimals,
        }
    };
}
pub(crate) use unit;

/// A number and its unit, as shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// The number.
    pub number: String,
    /// The unit; empty for a bare number.
    pub unit: &'static str,
}

impl fmt::Display for Written {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.unit.is_empty() {
            return f.write_str(&self.number);
        }
        write!(f, "{}{UNIT_SPACE}{}", self.number, self.unit)
    }
}

impl<Q: Copy + 'static> Measure<Q> {
    /// Its unit in a system of units.
    #[must_use]
    pub const fn unit(&self, units: Units) -> &Unit<Q> {
        match units {
            Units::Si => &self.si,
            Units::InchPound => &self.inch_pound,
        }
    }

    /// A result, with no more digits than it deserves.
    ///
    /// ```
    /// use dewrun_quantity::measure::{Style, TEMPERATURE, Units, WATER};
    /// use dewrun_quantity::{DecimalMark, MassFlow, Temperature};
    /// let style = Style { units: Units::InchPound, mark: DecimalMark::Point };
    /// assert_eq!(TEMPERATURE.show(Temperature::celsius(20.0), style).to_string(), "68.0\u{a0}°F");
    /// assert_eq!(WATER.show(MassFlow::grams_per_hour(0.03), Style::default()).to_string(), "under 0.1\u{a0}g/h");
    /// ```
    #[must_use]
    pub fn show(&self, quantity: Q, style: Style) -> Written {
        let unit = self.unit(style.units);
        let value = (unit.read)(quantity);
        let number = match self.shown {
            Shown::Fixed => format::fixed(value, unit.decimals, style.mark),
            Shown::Amount => format::amount(value, unit.decimals, style.mark),
            Shown::Significant => format::significant(value, 3, unit.decimals, style.mark),
        };
        Written {
            number,
            unit: unit.name,
        }
    }

    /// An input, with all the digits it was entered with.
    #[must_use]
    pub fn show_entered(&self, quantity: Q, style: Style) -> Written {
        let unit = self.unit(style.units);
        Written {
            number: format::entered_with((unit.read)(quantity), style.mark),
            unit: unit.name,
        }
    }

    /// The quantity that a text names; without a unit, in that of the system.
    ///
    /// ```
    /// use dewrun_quantity::measure::{TEMPERATURE, Units};
    /// let t = TEMPERATURE.parse("80.6F", Units::Si)?;
    /// assert!((t.to_celsius() - 27.0).abs() < 1e-12);
    /// # Ok::<(), dewrun_quantity::parse::ParseError>(())
    /// ```
    ///
    /// # Errors
    /// [`ParseError`] where it holds no number, or a unit of something else.
    pub fn parse(&self, text: &str, units: Units) -> Result<Q, ParseError> {
        let (number, unit) = match parse::split_unit(text) {
            ("", _) => (text, ""),
            parts => parts,
        };
        let number = parse::number(number)?;
        if unit.is_empty() {
            return Ok((self.unit(units).make)(number));
        }
        let found = self.units().find(|known| known.is_called(unit));
        let unit = found.ok_or_else(|| ParseError::UnknownUnit {
            quantity: self.name,
            unit: unit.to_owned(),
            known: self
                .units()
                .map(|unit| unit.name)
                .collect::<Vec<_>>()
                .join(", "),
        })?;
        Ok((unit.make)(number))
    }

    fn units(&self) -> impl Iterator<Item = &Unit<Q>> {
        [&self.si, &self.inch_pound].into_iter().chain(self.others)
    }
}

impl<Q> Unit<Q> {
    fn is_called(&self, name: &str) -> bool {
        core::iter::once(&self.name)
            .chain(self.also)
            .any(|known| known.eq_ignore_ascii_case(name))
    }
}

#[cfg(test)]
mod tests {
    use super::{
        ABSOLUTE_PRESSURE, AIR_FLOW, BORE, ENTHALPY, HUMIDITY_RATIO, Measure, RELATIVE_HUMIDITY,
        Style, TEMPERATURE, TUBE_LENGTH, Units, WATER,
    };
    use crate::{DecimalMark, SpecificEnthalpy};
    use proptest::prelude::{prop_assert, proptest};

    const IP: Style = Style {
        units: Units::InchPound,
        mark: DecimalMark::Comma,
    };

    #[track_caller]
    fn check<Q: Copy>(measure: &Measure<Q>, typed: &str, si: &str, inch_pound: &str) {
        let read = measure.parse(typed, Units::Si);
        let shown = read.map(|quantity| {
            (
                measure.show(quantity, Style::default()).to_string(),
                measure.show(quantity, IP).to_string(),
            )
        });
        let expected = (si.replace(' ', "\u{a0}"), inch_pound.replace(' ', "\u{a0}"));
        assert_eq!(shown, Ok(expected), "`{typed}` in both systems");
    }

    /// Conversion factors: NIST SP 811 (2008), app. B.8.
    #[test]
    fn one_text_in_both_systems() {
        check(&TEMPERATURE, "26 \u{b0}C", "26.0 \u{b0}C", "78,8 \u{b0}F");
        check(&TEMPERATURE, "300 K", "26.9 \u{b0}C", "80,3 \u{b0}F");
        check(&TUBE_LENGTH, "82 ft", "25.0 m", "82,0 ft");
        check(&BORE, "0,5 in", "12.7 mm", "0,500 in");
        check(&AIR_FLOW, "30", "30.0 L/min", "1,06 cfm");
        check(&WATER, "10.6 g/h", "10.6 g/h", "0,37 oz/h");
        check(&HUMIDITY_RATIO, "70 gr/lb", "10.0 g/kg", "70,0 gr/lb");
        check(&RELATIVE_HUMIDITY, "50%", "50.0 %", "50,0 %");
        check(
            &ABSOLUTE_PRESSURE,
            "1013.25 hPa",
            "101\u{2009}325 Pa",
            "14,70 psi",
        );
    }

    #[test]
    fn enthalpy_counts_dry_air_from_its_own_zero() {
        let dry_air_at_0_f = SpecificEnthalpy::joules_per_kilogram(1006.0 * (0.0 - 32.0) / 1.8);
        let shown = (ENTHALPY.inch_pound.read)(dry_air_at_0_f);
        assert!(
            shown.abs() < 1e-12,
            "dry air at 0 \u{b0}F has none: {shown}"
        );
    }

    #[test]
    fn a_unit_of_something_else_is_refused_with_those_that_fit() {
        let sentence = ABSOLUTE_PRESSURE
            .parse("30 C", Units::Si)
            .map_err(|error| error.to_string());
        assert_eq!(
            sentence.map(|_| ()),
            Err("pressure has no unit `C`, must be one of Pa, psi, hPa, kPa, inHg".to_owned()),
            "what and what would be right"
        );
    }

    #[test]
    fn a_text_without_a_number_names_the_sign_that_is_none() {
        let sentence = TEMPERATURE
            .parse("warm", Units::Si)
            .map_err(|error| error.to_string());
        assert_eq!(
            sentence.map(|_| ()),
            Err("`w` does not belong in a number such as 12.5".to_owned()),
            "rather than to call it empty"
        );
    }

    proptest! {
        #[test]
        fn what_was_typed_is_shown_again_in_either_system(hundredths in 1_i32..1_000_000, inch_pound in proptest::bool::ANY) {
            let units = if inch_pound { Units::InchPound } else { Units::Si };
            let style = Style { units, mark: DecimalMark::Point };
            let text = (f64::from(hundredths) / 100.0).to_string();
            macro_rules! survives {
                ($($measure:expr),*) => {$(
                    let shown = $measure.parse(&text, units).map(|quantity| $measure.show_entered(quantity, style).number.replace('\u{2009}', ""));
                    prop_assert!(shown == Ok(text.clone()), "{} {text} came back as {shown:?}", $measure.name);
                )*};
            }
            survives!(TEMPERATURE, TUBE_LENGTH, BORE, AIR_FLOW, WATER, HUMIDITY_RATIO, RELATIVE_HUMIDITY, ENTHALPY, ABSOLUTE_PRESSURE);
        }
    }
}
