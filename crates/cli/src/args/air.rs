//! A state of moist air.

use clap::Args;

use super::{Surface, System};

/// Answers one state of moist air from any two of its quantities.
///
/// Numbers may carry a unit: 32C, 90F, 26, 101325Pa, 29.92inHg, 300m, 12g/kg, 85gr/lb; without one they are in the
/// units of `--units`. Point and comma are both decimal marks.
/// Refused are pairs that say the same twice, such as dew point with humidity ratio, and enthalpy with wet bulb, whose
/// lines nearly coincide.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Air {
    /// Temperature of the air.
    #[arg(short, long, value_name = "T", allow_hyphen_values = true)]
    pub(crate) temperature: Option<String>,
    /// Relative humidity, %.
    #[arg(short, long, value_name = "RH", allow_hyphen_values = true)]
    pub(crate) relative_humidity: Option<String>,
    /// Dew point, over water also below freezing.
    #[arg(short, long, value_name = "T", allow_hyphen_values = true)]
    pub(crate) dew_point: Option<String>,
    /// Frost point, over ice.
    #[arg(short, long, value_name = "T", allow_hyphen_values = true)]
    pub(crate) frost_point: Option<String>,
    /// Humidity ratio, vapour per dry air.
    #[arg(short = 'w', long, value_name = "W", allow_hyphen_values = true)]
    pub(crate) humidity_ratio: Option<String>,
    /// Wet bulb.
    #[arg(short = 'b', long, value_name = "T", allow_hyphen_values = true)]
    pub(crate) wet_bulb: Option<String>,
    /// Enthalpy per dry air, counted from 0 °C, in Btu/lb from 0 °F.
    #[arg(short = 'e', long, value_name = "H", allow_hyphen_values = true)]
    pub(crate) enthalpy: Option<String>,
    /// Absolute pressure; without it, that at sea level.
    #[arg(
        short,
        long,
        value_name = "P",
        allow_hyphen_values = true,
        conflicts_with = "altitude"
    )]
    pub(crate) pressure: Option<String>,
    /// Altitude above sea level, which gives the pressure of the standard atmosphere.
    #[arg(short, long, value_name = "Z", allow_hyphen_values = true)]
    pub(crate) altitude: Option<String>,
    /// What a relative humidity below freezing refers to.
    #[arg(long, value_enum, default_value_t = Surface::Water)]
    pub(crate) over: Surface,
    /// Units of the answer, and of numbers that carry none.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    /// Answer in JSON.
    #[arg(long)]
    pub(crate) json: bool,
}
