//! What a figure measures: how its number is written in SI and inch-pound.

use dewrun_quantity::measure::{
    ABSOLUTE_PRESSURE, AIR_DENSITY, AIR_FLOW, AIR_SPEED, BORE, CONDUCTIVITY, ENTHALPY, HEAT,
    HEAT_TRACING, HUMIDITY_RATIO, MIST, Measure, RELATIVE_HUMIDITY, SPECIFIC_VOLUME, TEMPERATURE,
    TUBE_LENGTH, VAPOUR_PRESSURE, WATER, WATER_PER_LENGTH, Written,
};
use dewrun_quantity::{
    Conductivity, Density, HumidityRatio, Length, MassFlow, MassFlowPerLength, Power,
    PowerPerLength, Pressure, RelativeHumidity, SpecificEnthalpy, SpecificVolume, Speed, Style,
    Temperature, Units, VolumeFlow, format,
};

/// Digits of a number that has no measure of its own.
const DIGITS: usize = 3;
/// Btu/(h ft² °F) in a W/(m² K), NIST SP 811 (2008), app. B.8.
const BTU_FILM: f64 = 1.0 / 5.678_263;
/// h ft °F/Btu in a m K/W, the same.
const BTU_RESISTANCE: f64 = 1.730_735;
/// ft²/h in a mm²/s: 3600 s over 304.8² mm².
const SQUARE_FEET_PER_HOUR: f64 = 3600.0 / 92_903.04;
/// lb/(ft h) in a µPa s, NIST SP 811: 1 lb/(ft h) = 4.133 789e-4 Pa s.
const POUNDS_PER_FOOT_HOUR: f64 = 1e-6 / 4.133_789e-4;

/// Inches of water in a Pa, NIST SP 811: the conventional inch of water is 249.088 91 Pa.
const INCH_OF_WATER: f64 = 1.0 / 249.088_91;
/// Ounces in a g: the avoirdupois ounce is 28.349 523 125 g.
const OUNCE: f64 = 1.0 / 28.349_523_125;
/// Cubic inches in a mL: the inch is 25.4 mm.
const CUBIC_INCH: f64 = 1.0 / 16.387_064;
/// Thousand pounds per square inch in an MPa, NIST SP 811: 1 psi is 6 894.757 Pa.
const KSI: f64 = 1.0 / 6.894_757;

/// What a figure measures; its number is kept in the unit that the project file and the answer file use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Water in time, g/h.
    Water,
    /// Water in time per length of tube, g/(h m).
    WaterPerLength,
    /// Dry air in time, kg/s.
    AirMass,
    /// A place or length along the tube, m.
    Place,
    /// A diameter or thickness, mm.
    Diameter,
    /// A temperature, °C.
    Temperature,
    /// Vapour per dry air, kg/kg.
    Ratio,
    /// Suspended water per dry air, kg/kg.
    Mist,
    /// Relative humidity, %.
    Relative,
    /// Absolute pressure, Pa.
    Pressure,
    /// Pressure of vapour, Pa.
    VapourPressure,
    /// Volume flow, L/min.
    Flow,
    /// Air speed, m/s.
    Speed,
    /// Power, W.
    Heat,
    /// Power per length, W/m.
    HeatPerLength,
    /// Conductivity, W/(m K).
    Conductivity,
    /// Coefficient of heat transfer, W/(m² K).
    Film,
    /// Thermal resistance of a length of tube, m K/W.
    Resistance,
    /// Diffusivity, mm²/s.
    Diffusivity,
    /// Viscosity, µPa s.
    Viscosity,
    /// Density, kg/m³.
    Density,
    /// Heat per mass, kJ/kg.
    Enthalpy,
    /// Volume per dry air, m³/kg.
    SpecificVolume,
    /// A pressure against a room, Pa.
    Gauge,
    /// A share, %.
    Percent,
    /// A mass of water, g.
    Mass,
    /// A mass of water per length of tube, g/m.
    MassPerLength,
    /// A mass of water per area of wall, g/m².
    MassPerArea,
    /// A volume, mL.
    Volume,
    /// A time in days.
    Days,
    /// A time in hours.
    Hours,
    /// A time in seconds.
    Seconds,
    /// A modulus of elasticity, MPa.
    Modulus,
    /// Resistance of a filter, Pa per L/min.
    FilterResistance,
    /// A difference of temperatures, K.
    Kelvin,
    /// A number without unit.
    Number,
    /// How many there are.
    Count,
}

/// How a number is to be written.
#[derive(Clone, Copy)]
enum How {
    Computed,
    Entered,
}

impl Kind {
    /// A computed number, with no more digits than it deserves.
    ///
    /// ```
    /// use dewrun_quantity::Style;
    /// use dewrun_run::figure::Kind;
    /// assert_eq!(Kind::Film.show(9.137, Style::default()).to_string(), "9.14\u{a0}W/(m² K)");
    /// ```
    #[must_use]
    pub fn show(self, value: f64, style: Style) -> Written {
        self.written(value, style, How::Computed)
    }

    /// A number that was entered, with the digits that it was entered with.
    #[must_use]
    pub fn show_entered(self, value: f64, style: Style) -> Written {
        self.written(value, style, How::Entered)
    }

    /// Its unit.
    #[must_use]
    pub fn unit(self, style: Style) -> &'static str {
        self.show(0.0, style).unit
    }

    fn written(self, value: f64, style: Style, how: How) -> Written {
        let (si, inch_pound, factor) = match self {
            Self::Film => ("W/(m² K)", "Btu/(h ft² °F)", BTU_FILM),
            Self::Resistance => ("m K/W", "h ft °F/Btu", BTU_RESISTANCE),
            Self::Diffusivity => ("mm²/s", "ft²/h", SQUARE_FEET_PER_HOUR),
            Self::Viscosity => ("µPa s", "lb/(ft h)", POUNDS_PER_FOOT_HOUR),
            Self::Gauge => ("Pa", "in wg", INCH_OF_WATER),
            Self::Percent => ("%", "%", 1.0),
            Self::Mass => ("g", "oz", OUNCE),
            Self::MassPerLength => ("g/m", "oz/ft", 0.3048 * OUNCE),
            Self::MassPerArea => ("g/m²", "oz/ft²", 0.092_903_04 * OUNCE),
            Self::Volume => ("mL", "in³", CUBIC_INCH),
            Self::Days => ("d", "d", 1.0),
            Self::Hours => ("h", "h", 1.0),
            Self::Seconds => ("s", "s", 1.0),
            Self::Modulus => ("MPa", "ksi", KSI),
            Self::FilterResistance => (
                "Pa per L/min",
                "in wg per cfm",
                28.316_846_592 * INCH_OF_WATER,
            ),
            Self::Kelvin => ("K", "°F", 1.8),
            Self::Number | Self::Count => ("", "", 1.0),
            _ => return self.measured(value, style, how),
        };
        let (unit, value) = match style.units {
            Units::Si => (si, value),
            Units::InchPound => (inch_pound, value * factor),
        };
        let number = match (self, how) {
            (Self::Count, _) | (_, How::Entered) => format::entered_with(value, style.mark),
            _ => format::significant(value, DIGITS, DIGITS, style.mark),
        };
        Written { number, unit }
    }

    fn measured(self, value: f64, style: Style, how: How) -> Written {
        match self {
            Self::Water => show(&WATER, MassFlow::grams_per_hour(value), style, how),
            Self::AirMass => show(&WATER, MassFlow::kilograms_per_second(value), style, how),
            Self::WaterPerLength => {
                let flow = MassFlowPerLength::grams_per_hour_metre(value);
                show(&WATER_PER_LENGTH, flow, style, how)
            }
            Self::Place => show(&TUBE_LENGTH, Length::metres(value), style, how),
            Self::Diameter => show(&BORE, Length::millimetres(value), style, how),
            Self::Temperature => show(&TEMPERATURE, Temperature::celsius(value), style, how),
            Self::Ratio => {
                let ratio = HumidityRatio::kilograms_per_kilogram(value);
                show(&HUMIDITY_RATIO, ratio, style, how)
            }
            Self::Mist => {
                let ratio = HumidityRatio::kilograms_per_kilogram(value);
                show(&MIST, ratio, style, how)
            }
            Self::Relative => {
                let humidity = RelativeHumidity::percent(value);
                show(&RELATIVE_HUMIDITY, humidity, style, how)
            }
            Self::Pressure => show(&ABSOLUTE_PRESSURE, Pressure::pascals(value), style, how),
            Self::VapourPressure => show(&VAPOUR_PRESSURE, Pressure::pascals(value), style, how),
            Self::Flow => show(&AIR_FLOW, VolumeFlow::litres_per_minute(value), style, how),
            Self::Speed => show(&AIR_SPEED, Speed::metres_per_second(value), style, how),
            Self::HeatPerLength => {
                let power = PowerPerLength::watts_per_metre(value);
                show(&HEAT_TRACING, power, style, how)
            }
            Self::Conductivity => {
                let conductivity = Conductivity::watts_per_metre_kelvin(value);
                show(&CONDUCTIVITY, conductivity, style, how)
            }
            Self::Density => {
                let density = Density::kilograms_per_cubic_metre(value);
                show(&AIR_DENSITY, density, style, how)
            }
            Self::Enthalpy => {
                let enthalpy = SpecificEnthalpy::kilojoules_per_kilogram(value);
                show(&ENTHALPY, enthalpy, style, how)
            }
            Self::SpecificVolume => {
                let volume = SpecificVolume::cubic_metres_per_kilogram(value);
                show(&SPECIFIC_VOLUME, volume, style, how)
            }
            _ => show(&HEAT, Power::watts(value), style, how),
        }
    }
}

#[inline(never)]
fn show<Q: Copy>(measure: &Measure<Q>, quantity: Q, style: Style, how: How) -> Written {
    match how {
        How::Computed => measure.show(quantity, style),
        How::Entered => measure.show_entered(quantity, style),
    }
}
