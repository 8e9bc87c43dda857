//! Rows as they stand in a file: stamps whose order is still open, numbers in the file's own units.

use crate::column::{Role, Unit};
use crate::error::WeatherError;
use crate::instant::stamp::Stamp;
use crate::note::{LinesMet, Note};
use crate::place::Place;
use crate::understanding::{Stamps, Understanding};

/// Most rows that are kept of one file: almost six years of minutes, some 300 MB while they are settled.
pub(crate) const MOST_ROWS: usize = 3_000_000;
/// Most numbers that are kept of one file, over all columns: 240 MB.
const MOST_NUMBERS: usize = 30_000_000;

/// A column of readings.
#[derive(Debug, Clone)]
pub(crate) struct RawColumn {
    pub(crate) role: Role,
    /// The unit that the person or the heading says.
    pub(crate) unit: Option<Unit>,
    pub(crate) name: String,
    /// Number of the column in the file, from 1.
    pub(crate) number: usize,
    /// NaN where nothing stands.
    pub(crate) values: Vec<f64>,
}

/// Everything that was read of a file, before anything is made of it.
#[derive(Debug, Default)]
pub(crate) struct RawTable {
    pub(crate) stamps: Vec<Stamp>,
    pub(crate) lines: Vec<u32>,
    pub(crate) columns: Vec<RawColumn>,
    pub(crate) place: Place,
    pub(crate) notes: Vec<Note>,
    /// Filled in as far as the reader knows.
    pub(crate) understood: Understanding,
    /// Seconds that a step is known to have from the header.
    pub(crate) step_s: Option<i64>,
    /// Seconds from each stamp as written to the time it means.
    pub(crate) shift_s: i64,
    /// Free words of the file.
    pub(crate) comments: Vec<String>,
    /// What the stamps mean where nobody says otherwise.
    pub(crate) stamps_mean: Option<Stamps>,
    /// Order of dates that a heading names.
    pub(crate) named_order: Option<crate::instant::DateOrder>,
    /// Hours ahead of UTC that a heading names for the stamps.
    pub(crate) utc_offset_h: Option<f64>,
    /// Dew points lead over relative humidities.
    pub(crate) dew_point_leads: bool,
    /// Numbers that stand for "missing", by role, in the file's own units.
    pub(crate) fillers: Fillers,
    pub(crate) events: LinesMet,
    pub(crate) tail: LinesMet,
    pub(crate) stations: Vec<String>,
    pub(crate) column_names: Vec<String>,
}

impl RawTable {
    /// Makes room for a row.
    ///
    /// # Errors
    /// [`WeatherError::TooManyRows`].
    pub(crate) fn begin_row(&mut self, stamp: Stamp, line: u64) -> Result<(), WeatherError> {
        let rows = self.stamps.len();
        if MOST_ROWS <= rows || MOST_NUMBERS < (rows + 1) * self.columns.len() {
            return Err(WeatherError::TooManyRows { line, most: rows });
        }
        self.stamps.push(stamp);
        self.lines.push(u32::try_from(line).unwrap_or(u32::MAX));
        Ok(())
    }
}

/// Which numbers stand for "missing".
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Fillers {
    /// Those of EPW: one for each field.
    Epw,
    /// Those of loggers and services: nines, all bits set, and what no sensor reads.
    #[default]
    Common,
}

impl Fillers {
    /// Whether a number, in the file's own unit, says that there is none.
    pub(crate) fn is_one(self, role: Role, value: f64) -> bool {
        match self {
            Self::Epw => epw_filler(role) <= value,
            Self::Common => is_common_filler(role, value),
        }
    }
}

/// # Source
/// US Department of Energy, EnergyPlus documentation, Auxiliary Programs, EPW data dictionary: "missing is".
const fn epw_filler(role: Role) -> f64 {
    match role {
        Role::Temperature | Role::DewPoint => 99.9,
        Role::RelativeHumidity | Role::Wind | Role::WindDirection | Role::Rain => 999.0,
        Role::Pressure => 999_999.0,
        Role::Global | Role::Direct | Role::Diffuse | Role::Infrared => 9999.0,
        Role::Sky => 99.0,
        _ => f64::INFINITY,
    }
}

const NINES: [f64; 10] = [
    9999.0, 9999.9, 99_999.0, 99_999.9, 999_999.0, 8888.0, 88_888.0, 32_767.0, 65_535.0, 6999.0,
];
const NEGATIVE: [f64; 13] = [
    -99.0, -99.9, -99.99, -999.0, -999.9, -999.99, -888.0, -888.8, -888.88, -7999.0, -6999.0,
    -8888.0, -9900.0,
];

fn is_common_filler(role: Role, value: f64) -> bool {
    let is = |known: &[f64]| {
        known
            .iter()
            .any(|filler| (filler - value).abs() < 1.0e-6 * value.abs())
    };
    if value < 0.0 {
        return value <= -9990.0 || is(&NEGATIVE);
    }
    match role {
        Role::Pressure | Role::SeaLevelPressure => is(&[9999.0, 9999.9, 999_999.0]),
        Role::Temperature
        | Role::DewPoint
        | Role::WetBulb
        | Role::RelativeHumidity
        | Role::Wind => is(&NINES) || is(&[999.0, 999.9, 888.0, 888.8]),
        _ => is(&NINES),
    }
}
