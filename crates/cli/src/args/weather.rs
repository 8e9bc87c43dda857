//! A weather file, and what a person says of it instead of having it looked at.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::System;

/// Reads a weather or logger file and says what was understood.
///
/// EPW, TMY3, TM2, PVGIS, satellite data and logger exports of any form; what is not said here is found by looking,
/// and each decision is told with line numbers.
/// Nothing is changed or kept.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Weather {
    /// The file; `-` reads it from the standard input.
    #[arg(value_name = "FILE")]
    pub(crate) file: PathBuf,
    /// Answer in JSON.
    #[arg(long)]
    pub(crate) json: bool,
    /// The rows as they are used, as CSV, instead of what was understood.
    #[arg(long, conflicts_with = "json")]
    pub(crate) rows: bool,
    /// Units of the text.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// What a person says of a file instead of having it looked at.
#[derive(Debug, Args)]
#[command(next_help_heading = "Said instead of found by looking")]
pub(crate) struct Said {
    /// Form of the file.
    #[arg(long, value_enum)]
    pub(crate) form: Option<FileForm>,
    /// What stands between cells.
    #[arg(long, value_enum)]
    pub(crate) delimiter: Option<Between>,
    /// What parts whole from broken digits.
    #[arg(long, value_enum)]
    pub(crate) decimal_mark: Option<Mark>,
    /// Order of day, month and year.
    #[arg(long, value_enum)]
    pub(crate) date_order: Option<Order>,
    /// Number of the first line with a reading, from 1.
    #[arg(long, value_name = "LINE")]
    pub(crate) first_reading: Option<u64>,
    /// A column by its number, what it holds and, if need be, in which unit: `3=temperature`, `4=pressure:hPa`, `5=other`.
    #[arg(long = "column", value_name = "N=WHAT[:UNIT]")]
    pub(crate) columns: Vec<String>,
    /// The station whose rows are taken, where a file holds several.
    #[arg(long, value_name = "NAME")]
    pub(crate) station: Option<String>,
    /// What the time beside a reading means.
    #[arg(long, value_enum)]
    pub(crate) stamps: Option<Meaning>,
    /// Hours that the stamps are ahead of UTC.
    #[arg(long, value_name = "HOURS", allow_hyphen_values = true)]
    pub(crate) utc_offset: Option<String>,
    /// Elevation of the place above sea level.
    #[arg(long, value_name = "Z", allow_hyphen_values = true)]
    pub(crate) elevation: Option<String>,
    /// One pressure for all rows.
    #[arg(long, value_name = "P")]
    pub(crate) pressure: Option<String>,
    /// What dew points below freezing refer to.
    #[arg(long, value_enum)]
    pub(crate) dew_point_over: Option<Surface>,
    /// What relative humidities below freezing refer to.
    #[arg(long, value_enum)]
    pub(crate) relative_humidity_over: Option<Surface>,
    /// Which counts where a row has both dew point and relative humidity.
    #[arg(long, value_enum)]
    pub(crate) lead: Option<Lead>,
}

/// A form of weather file.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum FileForm {
    /// Eight lines of header and 35 columns.
    Epw,
    /// Third US set of typical years, CSV.
    Tmy3,
    /// Second US set of typical years, fixed columns.
    Tm2,
    /// Any table with one reading a line.
    Table,
}

/// What stands between cells.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Between {
    /// `,`
    Comma,
    /// `;`
    Semicolon,
    /// A tabulator.
    Tab,
    /// `|`
    Bar,
    /// Any run of spaces.
    Spaces,
}

/// A decimal mark.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Mark {
    /// `21.5`
    Point,
    /// `21,5`
    Comma,
}

/// An order of dates.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Order {
    /// Day, month, year.
    Dmy,
    /// Month, day, year.
    Mdy,
    /// Year, month, day.
    Ymd,
}

/// What a stamp means.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Meaning {
    /// The start of the step.
    Start,
    /// The end of the step.
    End,
    /// The moment of the reading.
    Moment,
}

/// A humidity that counts before the other.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Lead {
    /// The dew point.
    DewPoint,
    /// The relative humidity.
    RelativeHumidity,
}

/// A surface to which humidity refers.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Surface {
    /// Liquid water, as weather services and sensors count.
    Water,
    /// Ice below 0.01 °C, as handbooks count.
    Ice,
}
