//! Units of columns: from the heading, or from the values where it names none.

use super::Role;

/// The unit of a column's numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Unit {
    /// °C
    Celsius,
    /// °F
    Fahrenheit,
    /// K
    Kelvin,
    /// %
    Percent,
    /// A share of one.
    Fraction,
    /// Pa
    Pascal,
    /// hPa or mbar
    Hectopascal,
    /// kPa
    Kilopascal,
    /// inHg
    InchOfMercury,
    /// mmHg or torr
    MillimetreOfMercury,
    /// psi
    PoundPerSquareInch,
    /// bar
    Bar,
    /// kg/kg
    KilogramPerKilogram,
    /// g/kg
    GramPerKilogram,
    /// gr/lb
    GrainPerPound,
    /// m/s
    MetrePerSecond,
    /// km/h
    KilometrePerHour,
    /// mph
    MilePerHour,
    /// kn
    Knot,
    /// mm
    Millimetre,
    /// cm
    Centimetre,
    /// in
    Inch,
    /// W/m²
    WattPerSquareMetre,
    /// Tenths of the sky.
    Tenth,
    /// °
    Degree,
    /// As it is.
    Plain,
}

impl Unit {
    /// Its sign.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
            Self::Kelvin => "K",
            Self::Percent => "%",
            Self::Fraction => "share of 1",
            Self::Pascal => "Pa",
            Self::Hectopascal => "hPa",
            Self::Kilopascal => "kPa",
            Self::InchOfMercury => "inHg",
            Self::MillimetreOfMercury => "mmHg",
            Self::PoundPerSquareInch => "psi",
            Self::Bar => "bar",
            Self::KilogramPerKilogram => "kg/kg",
            Self::GramPerKilogram => "g/kg",
            Self::GrainPerPound => "gr/lb",
            Self::MetrePerSecond => "m/s",
            Self::KilometrePerHour => "km/h",
            Self::MilePerHour => "mph",
            Self::Knot => "kn",
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Inch => "in",
            Self::WattPerSquareMetre => "W/m²",
            Self::Tenth => "tenths",
            Self::Degree => "°",
            Self::Plain => "",
        }
    }

    /// The unit that a word names, as it is typed for a column.
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        let word = super::names::folded(word.as_bytes());
        ALL.into_iter()
            .find(|unit| super::names::folded(unit.sign().as_bytes()) == word)
            .or(match word.as_str() {
                "c" => Some(Self::Celsius),
                "f" => Some(Self::Fahrenheit),
                "mbar" => Some(Self::Hectopascal),
                "torr" => Some(Self::MillimetreOfMercury),
                "kt" => Some(Self::Knot),
                _ => None,
            })
    }

    /// What a number in this unit is in the unit that is kept: °C, %, Pa, kg/kg, m/s, mm, W/m², share of 1.
    pub(crate) const fn scale(self) -> (f64, f64) {
        match self {
            Self::Fahrenheit => (1.0 / 1.8, -32.0 / 1.8),
            Self::Kelvin => (1.0, -273.15),
            Self::Fraction | Self::Hectopascal => (100.0, 0.0),
            Self::Kilopascal => (1000.0, 0.0),
            Self::InchOfMercury => (3386.389, 0.0),
            Self::MillimetreOfMercury => (133.322_4, 0.0),
            Self::PoundPerSquareInch => (6_894.757_293, 0.0),
            Self::Bar => (1.0e5, 0.0),
            Self::GramPerKilogram => (1.0e-3, 0.0),
            Self::GrainPerPound => (1.0 / 7000.0, 0.0),
            Self::KilometrePerHour => (1.0 / 3.6, 0.0),
            Self::MilePerHour => (0.447_04, 0.0),
            Self::Knot => (1852.0 / 3600.0, 0.0),
            Self::Centimetre => (10.0, 0.0),
            Self::Inch => (25.4, 0.0),
            Self::Tenth => (0.1, 0.0),
            _ => (1.0, 0.0),
        }
    }
}

const ALL: [Unit; 25] = [
    Unit::Celsius,
    Unit::Fahrenheit,
    Unit::Kelvin,
    Unit::Percent,
    Unit::Fraction,
    Unit::Pascal,
    Unit::Hectopascal,
    Unit::Kilopascal,
    Unit::InchOfMercury,
    Unit::MillimetreOfMercury,
    Unit::PoundPerSquareInch,
    Unit::Bar,
    Unit::KilogramPerKilogram,
    Unit::GramPerKilogram,
    Unit::GrainPerPound,
    Unit::MetrePerSecond,
    Unit::KilometrePerHour,
    Unit::MilePerHour,
    Unit::Knot,
    Unit::Millimetre,
    Unit::Centimetre,
    Unit::Inch,
    Unit::WattPerSquareMetre,
    Unit::Tenth,
    Unit::Degree,
];

/// Words of a heading that name a unit, for the roles that may have it.
const WORDS: &[(&str, Unit)] = &[
    ("fahrenheit", Unit::Fahrenheit),
    ("degf", Unit::Fahrenheit),
    ("f", Unit::Fahrenheit),
    ("celsius", Unit::Celsius),
    ("degc", Unit::Celsius),
    ("c", Unit::Celsius),
    ("tmpf", Unit::Fahrenheit),
    ("dwpf", Unit::Fahrenheit),
    ("tempf", Unit::Fahrenheit),
    ("tmpc", Unit::Celsius),
    ("dwpc", Unit::Celsius),
    ("tempc", Unit::Celsius),
    ("sknt", Unit::Knot),
    ("kelvin", Unit::Kelvin),
    ("degk", Unit::Kelvin),
    ("k", Unit::Kelvin),
    ("%", Unit::Percent),
    ("%rh", Unit::Percent),
    ("percent", Unit::Percent),
    ("pct", Unit::Percent),
    ("0-1", Unit::Fraction),
    ("pascal", Unit::Pascal),
    ("pa", Unit::Pascal),
    ("hpa", Unit::Hectopascal),
    ("mbar", Unit::Hectopascal),
    ("mb", Unit::Hectopascal),
    ("millibar", Unit::Hectopascal),
    ("millibars", Unit::Hectopascal),
    ("kpa", Unit::Kilopascal),
    ("inhg", Unit::InchOfMercury),
    ("in-hg", Unit::InchOfMercury),
    ("mmhg", Unit::MillimetreOfMercury),
    ("torr", Unit::MillimetreOfMercury),
    ("psi", Unit::PoundPerSquareInch),
    ("psia", Unit::PoundPerSquareInch),
    ("bar", Unit::Bar),
    ("kg/kg", Unit::KilogramPerKilogram),
    ("g/kg", Unit::GramPerKilogram),
    ("gr/lb", Unit::GrainPerPound),
    ("m/s", Unit::MetrePerSecond),
    ("m s-1", Unit::MetrePerSecond),
    ("ms-1", Unit::MetrePerSecond),
    ("km/h", Unit::KilometrePerHour),
    ("kmh", Unit::KilometrePerHour),
    ("kph", Unit::KilometrePerHour),
    ("mph", Unit::MilePerHour),
    ("kn", Unit::Knot),
    ("kt", Unit::Knot),
    ("kts", Unit::Knot),
    ("knots", Unit::Knot),
    ("mm", Unit::Millimetre),
    ("cm", Unit::Centimetre),
    ("in", Unit::Inch),
    ("inch", Unit::Inch),
    ("inches", Unit::Inch),
    ("tenths", Unit::Tenth),
];

/// Whether a role may have a unit.
const fn fits(role: Role, unit: Unit) -> bool {
    use Unit::{
        Bar, Celsius, Centimetre, Fahrenheit, Fraction, GrainPerPound, GramPerKilogram,
        Hectopascal, Inch, InchOfMercury, Kelvin, KilogramPerKilogram, KilometrePerHour,
        Kilopascal, Knot, MetrePerSecond, MilePerHour, Millimetre, MillimetreOfMercury, Pascal,
        Percent, PoundPerSquareInch, Tenth,
    };
    match role {
        Role::Temperature | Role::DewPoint | Role::WetBulb => {
            matches!(unit, Celsius | Fahrenheit | Kelvin)
        }
        Role::RelativeHumidity | Role::Sky => matches!(unit, Percent | Fraction | Tenth),
        Role::HumidityRatio => {
            matches!(unit, KilogramPerKilogram | GramPerKilogram | GrainPerPound)
        }
        Role::Pressure | Role::SeaLevelPressure | Role::VapourPressure => matches!(
            unit,
            Pascal
                | Hectopascal
                | Kilopascal
                | InchOfMercury
                | MillimetreOfMercury
                | PoundPerSquareInch
                | Bar
        ),
        Role::Wind => matches!(unit, MetrePerSecond | KilometrePerHour | MilePerHour | Knot),
        Role::Rain => matches!(unit, Millimetre | Centimetre | Inch),
        _ => false,
    }
}

/// The unit that a folded heading names for a role.
pub(crate) fn of_heading(role: Role, heading: &str) -> Option<Unit> {
    let named = |word: &str| {
        WORDS
            .iter()
            .find(|(name, unit)| *name == word && fits(role, *unit))
            .map(|(_, unit)| *unit)
    };
    // The unit stands last as a rule, and a letter alone may be part of a name: look from the end.
    let words: Vec<&str> = heading
        .split([
            ' ', ',', '(', ')', '[', ']', '_', ':', ';', '*', '|', '°', '{', '}', '=',
        ])
        .filter(|word| !word.is_empty())
        .collect();
    words.iter().rev().find_map(|word| named(word)).or_else(|| {
        let joined = heading.replace(' ', "");
        ["deg.f", "degreesf", "degreef", "gradf"]
            .iter()
            .any(|word| joined.contains(word))
            .then_some(Unit::Fahrenheit)
            .filter(|unit| fits(role, *unit))
    })
}

/// The unit that a role has where nothing else is known.
pub(crate) const fn usual(role: Role) -> Unit {
    match role {
        Role::Temperature | Role::DewPoint | Role::WetBulb => Unit::Celsius,
        Role::RelativeHumidity | Role::Sky => Unit::Percent,
        Role::HumidityRatio => Unit::KilogramPerKilogram,
        Role::Pressure | Role::SeaLevelPressure => Unit::Pascal,
        Role::VapourPressure => Unit::Hectopascal,
        Role::Wind => Unit::MetrePerSecond,
        Role::Rain => Unit::Millimetre,
        Role::Global | Role::Direct | Role::Diffuse | Role::Infrared => Unit::WattPerSquareMetre,
        Role::WindDirection => Unit::Degree,
        _ => Unit::Plain,
    }
}

/// Units of a pressure with the range of numbers that the air has in each; a number lies in one of them at most, save mmHg, which nothing but a heading names.
const PRESSURES: [(Unit, f64, f64); 6] = [
    (Unit::Pascal, 31_000.0, 120_000.0),
    (Unit::Hectopascal, 310.0, 1200.0),
    (Unit::Kilopascal, 31.0, 120.0),
    (Unit::InchOfMercury, 17.0, 30.999),
    (Unit::PoundPerSquareInch, 4.5, 16.9),
    (Unit::Bar, 0.31, 1.2),
];

/// The unit that a middle value shows, where the unit it is thought to have is impossible or unknown.
pub(crate) fn of_values(role: Role, thought: Option<Unit>, middle: f64) -> Option<Unit> {
    match role {
        Role::Pressure | Role::SeaLevelPressure => {
            let as_thought = thought.map(|unit| middle * unit.scale().0);
            if as_thought.is_some_and(|p_pa| (31_000.0..=120_000.0).contains(&p_pa)) {
                return thought;
            }
            let shown = PRESSURES
                .iter()
                .find(|(_, least, most)| (*least..=*most).contains(&middle));
            shown.map(|(unit, _, _)| *unit)
        }
        Role::Temperature | Role::DewPoint | Role::WetBulb if thought.is_none() => {
            let unit = if 200.0 < middle {
                Unit::Kelvin
            } else if 45.0 < middle {
                Unit::Fahrenheit
            } else {
                Unit::Celsius
            };
            Some(unit)
        }
        _ => thought,
    }
}

#[cfg(test)]
mod tests {
    use super::super::names::folded;
    use super::*;

    #[track_caller]
    fn check(role: Role, heading: &str, expected: Option<Unit>) {
        assert_eq!(
            of_heading(role, &folded(heading.as_bytes())),
            expected,
            "{heading}"
        );
    }

    #[test]
    fn units_of_headings() {
        use Role::{Pressure, Rain, RelativeHumidity, Temperature, Wind};
        check(Temperature, "Temp., °F (S/N: 0)", Some(Unit::Fahrenheit));
        check(Temperature, "Temp, (*F)", Some(Unit::Fahrenheit));
        check(Temperature, "Temp °F", Some(Unit::Fahrenheit));
        check(Temperature, "temp_c", Some(Unit::Celsius));
        check(Temperature, "T [Deg C]", Some(Unit::Celsius));
        check(Temperature, "AirTC_Avg | Deg C | Avg", Some(Unit::Celsius));
        check(Temperature, "Temperature (K)", Some(Unit::Kelvin));
        check(Temperature, "Temperatuur", None);
        check(Pressure, "BP_mbar_Avg", Some(Unit::Hectopascal));
        check(Pressure, "Pressure (kPa)", Some(Unit::Kilopascal));
        check(Pressure, "Barometer in-Hg", Some(Unit::InchOfMercury));
        check(RelativeHumidity, "RH, % (LGR S/N: 0)", Some(Unit::Percent));
        check(Wind, "Windsnelheid [km/h]", Some(Unit::KilometrePerHour));
        check(Rain, "Rain (in)", Some(Unit::Inch));
    }

    #[test]
    fn values_show_a_unit() {
        let of = |thought, middle| of_values(Role::Pressure, thought, middle);
        assert_eq!(
            of(Some(Unit::Pascal), 872.0),
            Some(Unit::Hectopascal),
            "no pascals"
        );
        assert_eq!(
            of(Some(Unit::Pascal), 87_200.0),
            Some(Unit::Pascal),
            "pascals"
        );
        assert_eq!(
            of(None, 101.3),
            Some(Unit::Kilopascal),
            "unnamed kilopascals"
        );
        assert_eq!(
            of(Some(Unit::MillimetreOfMercury), 760.0),
            Some(Unit::MillimetreOfMercury),
            "as named"
        );
        assert_eq!(
            of(None, 29.92),
            Some(Unit::InchOfMercury),
            "inches of mercury"
        );
        assert_eq!(of(None, 3.0), None, "no air");
        assert_eq!(
            of_values(Role::Temperature, None, 72.0),
            Some(Unit::Fahrenheit),
            "too warm for °C"
        );
        assert_eq!(
            of_values(Role::Temperature, Some(Unit::Celsius), 72.0),
            Some(Unit::Celsius),
            "as named"
        );
    }

    #[test]
    fn every_unit_is_found_by_its_sign() {
        for unit in ALL {
            assert_eq!(Unit::named(unit.sign()), Some(unit), "{}", unit.sign());
        }
    }
}
