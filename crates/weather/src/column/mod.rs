//! Columns: what each holds, in which unit, found by its heading.

pub(crate) mod names;
pub(crate) mod unit;

pub use unit::Unit;

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Role {
    /// Date, or date and time.
    Date,
    /// Time of day.
    Time,
    /// Year, in a column of its own.
    Year,
    /// Month, in a column of its own.
    Month,
    /// Day of the month, in a column of its own.
    Day,
    /// Day of the year, in a column of its own.
    DayOfYear,
    /// Hour, in a column of its own.
    Hour,
    /// Minute, in a column of its own.
    Minute,
    /// Name of the station or sensor.
    Station,
    /// Temperature of the air.
    Temperature,
    /// Dew point.
    DewPoint,
    /// Wet bulb.
    WetBulb,
    /// Relative humidity.
    RelativeHumidity,
    /// Humidity ratio.
    HumidityRatio,
    /// Partial pressure of the vapour.
    VapourPressure,
    /// Pressure of the air at the station.
    Pressure,
    /// Pressure reduced to sea level.
    SeaLevelPressure,
    /// Speed of the wind.
    Wind,
    /// Direction that the wind comes from.
    WindDirection,
    /// Sun on the level, from everywhere.
    Global,
    /// Sun from its own direction, on a plane that faces it.
    Direct,
    /// Sun on the level, from the sky.
    Diffuse,
    /// Heat radiation of the sky on the level.
    Infrared,
    /// Rain.
    Rain,
    /// Share of the sky that is covered.
    Sky,
    /// Something else.
    Other,
}

impl Role {
    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Date => "date",
            Self::Time => "time",
            Self::Year => "year",
            Self::Month => "month",
            Self::Day => "day",
            Self::DayOfYear => "day of the year",
            Self::Hour => "hour",
            Self::Minute => "minute",
            Self::Station => "station",
            Self::Temperature => "temperature",
            Self::DewPoint => "dew point",
            Self::WetBulb => "wet bulb",
            Self::RelativeHumidity => "relative humidity",
            Self::HumidityRatio => "humidity ratio",
            Self::VapourPressure => "vapour pressure",
            Self::Pressure => "pressure",
            Self::SeaLevelPressure => "pressure at sea level",
            Self::Wind => "wind",
            Self::WindDirection => "wind direction",
            Self::Global => "global radiation",
            Self::Direct => "direct radiation",
            Self::Diffuse => "diffuse radiation",
            Self::Infrared => "infrared radiation",
            Self::Rain => "rain",
            Self::Sky => "sky cover",
            Self::Other => "not used",
        }
    }

    /// Every role.
    const ALL: [Self; 26] = [
        Self::Date,
        Self::Time,
        Self::Year,
        Self::Month,
        Self::Day,
        Self::DayOfYear,
        Self::Hour,
        Self::Minute,
        Self::Station,
        Self::Temperature,
        Self::DewPoint,
        Self::WetBulb,
        Self::RelativeHumidity,
        Self::HumidityRatio,
        Self::VapourPressure,
        Self::Pressure,
        Self::SeaLevelPressure,
        Self::Wind,
        Self::WindDirection,
        Self::Global,
        Self::Direct,
        Self::Diffuse,
        Self::Infrared,
        Self::Rain,
        Self::Sky,
        Self::Other,
    ];

    /// The role of that name; `other` is one that is not used.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        if name == "other" {
            return Some(Self::Other);
        }
        Self::ALL.into_iter().find(|role| role.name() == name)
    }

    /// The names of all roles.
    #[must_use]
    pub fn names() -> Vec<&'static str> {
        Self::ALL.iter().map(|role| role.name()).collect()
    }

    /// A part of the time.
    pub(crate) const fn is_time(self) -> bool {
        matches!(
            self,
            Self::Date
                | Self::Time
                | Self::Year
                | Self::Month
                | Self::Day
                | Self::DayOfYear
                | Self::Hour
                | Self::Minute
        )
    }

    /// A reading, kept as a number.
    pub(crate) const fn is_reading(self) -> bool {
        !self.is_time() && !matches!(self, Self::Station | Self::Other)
    }

    /// Says how humid the air is.
    pub(crate) const fn is_humidity(self) -> bool {
        matches!(
            self,
            Self::DewPoint
                | Self::WetBulb
                | Self::RelativeHumidity
                | Self::HumidityRatio
                | Self::VapourPressure
        )
    }
}
