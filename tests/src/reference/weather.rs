//! Weather and logger files among the cases: each is read by the product, and what it understood is held.

mod design;
mod epw;
mod hyland_wexler;
mod loggers;
mod minutes;
mod numbers;
mod real_loggers;
mod real_weather;

use std::fs;
use std::path::{Path, PathBuf};

use dewrun_weather::{Reader, Series, Understanding, Weather};
use serde_json::Value;

use super::compare::{Comparison, Tolerance};
use super::inputs::Inputs;
use super::report::{Answer, Values};

pub(super) use design::design_conditions;
pub(super) use real_weather::annual_hours;

/// The files that a case names, found in the folder of cases.
#[derive(Debug, Clone)]
pub struct Files {
    folder: PathBuf,
    paths: Vec<String>,
}

/// Holds a case that reads files.
type Hold = fn(&Inputs<'_>, &Files) -> Result<Answer, String>;

const CASES: &[(&str, Hold)] = &[
    ("W01", epw::leap_february),
    ("W04", epw::fillers),
    ("W06", epw::hectopascals),
    ("W08", epw::dew_point_above_dry_bulb),
    ("W10", epw::latin_name),
    ("W12", epw::tail),
    ("W14", epw::quarters),
    ("W16", epw::one_day),
    ("W18", epw::daylight_saving),
    ("W19", epw::two_midnights),
    ("W21", epw::column_counts),
    ("W25", epw::tenths),
    ("L01", loggers::semicolon_and_comma),
    ("L04", loggers::byte_order_mark),
    ("L05", loggers::one_order_of_dates),
    ("L07", loggers::twelve_hours),
    ("L10", loggers::over_saturation),
    ("L11", loggers::events),
    ("L13", loggers::headings_below_the_first_line),
    ("L16", loggers::nothing_is_not_zero),
    ("F05", minutes::a_year_of_minutes),
    ("R01", real_weather::year),
    ("R02", real_weather::year),
    ("R03", real_weather::year),
    ("R04", real_weather::year),
    ("R05", real_weather::year),
    ("R06", real_weather::year),
    ("R07", real_weather::year),
    ("R13", real_weather::year),
    ("R14", real_weather::year),
    ("R15", real_weather::year),
    ("R16", real_weather::year),
    ("R23", real_loggers::one_station),
    ("R24", real_loggers::one_station),
    ("R25", real_loggers::one_station),
    ("R26", real_loggers::one_variable),
    ("R27", real_loggers::one_variable),
    ("R28", real_loggers::one_station),
    ("R29", real_loggers::two_stations),
    ("R30", real_loggers::known_columns),
];

/// The answer to a case that reads files; none where it is no such case, or its files are not in the folder.
#[must_use]
pub fn hold(id: &str, case: &Value, folder: &Path) -> Option<Result<Answer, String>> {
    let (_, hold) = CASES.iter().find(|(known, _)| *known == id)?;
    let files = Files::of(case, folder)?;
    Some(hold(&Inputs::of(&case["expected"]), &files))
}

impl Files {
    /// The files of a case; none where one is absent. Of a recipe, the file of that name beside the other weather.
    fn of(case: &Value, folder: &Path) -> Option<Self> {
        let mut paths: Vec<String> = case["fixture"]
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(|path| Some(path.as_str()?.to_owned()))
            .collect();
        if paths.is_empty()
            && case["area"]
                .as_str()
                .is_some_and(|area| area.contains("recipe"))
        {
            let origin = case["origin"].as_str()?;
            paths.push(format!("weather/{}", origin.rsplit('/').next()?));
        }
        let all = paths.iter().all(|path| folder.join(path).exists());
        all.then(|| Self {
            folder: folder.to_owned(),
            paths,
        })
    }

    /// The one file of that path in a folder.
    #[must_use]
    pub fn at(folder: &Path, path: &str) -> Self {
        Self {
            folder: folder.to_owned(),
            paths: vec![path.to_owned()],
        }
    }

    /// The file at a place, read.
    fn read(&self, at: usize, given: Understanding) -> Result<Weather, String> {
        let path = self.paths.get(at).ok_or("the case names too few files")?;
        let bytes = fs::read(self.folder.join(path)).map_err(|error| format!("{path}: {error}"))?;
        read_bytes(&bytes, given).map_err(|error| format!("{path}: {error}"))
    }

    fn first(&self) -> Result<Weather, String> {
        self.read(0, Understanding::default())
    }
}

/// Bytes read in pieces, as the page does.
fn read_bytes(bytes: &[u8], given: Understanding) -> Result<Weather, String> {
    let mut reader = Reader::new(given);
    for piece in bytes.chunks(100_003) {
        reader.push(piece).map_err(|error| error.to_string())?;
    }
    reader.finish().map_err(|error| error.to_string())
}

/// The rows of a file at a path.
///
/// # Errors
/// Why it can't be read.
pub(super) fn series_of(path: &Path) -> Result<Series, String> {
    let said = |error: &dyn core::fmt::Display| format!("{}: {error}", path.display());
    let bytes = fs::read(path).map_err(|error| said(&error))?;
    let weather = read_bytes(&bytes, Understanding::default()).map_err(|error| said(&error))?;
    Ok(weather.series)
}

/// Gathers values beside what is expected of them.
#[derive(Debug, Default)]
struct Held {
    values: Values,
    comparisons: Vec<Comparison>,
}

impl Held {
    /// A value against the expected one of the same key.
    fn value(&mut self, expected: &Value, key: &str, got: impl Into<Value>, tolerance: Tolerance) {
        let got = got.into();
        self.values.insert(key.to_owned(), got.clone());
        self.comparisons.push(Comparison {
            key: key.to_owned(),
            got,
            expected: expected[key].clone(),
            tolerance,
        });
    }

    /// A value that has to be the same.
    fn same(&mut self, expected: &Value, key: &str, got: impl Into<Value>) {
        self.value(expected, key, got, Tolerance::default());
    }

    fn fact(&mut self, key: &str, is_so: bool) {
        self.values.insert(key.to_owned(), is_so.into());
        self.comparisons.push(Comparison::fact(key, is_so));
    }

    fn near(&mut self, key: &str, got: f64, expected: f64, tolerance: Tolerance) {
        self.values.insert(key.to_owned(), got.into());
        self.comparisons
            .push(Comparison::number(key, got, expected, tolerance));
    }

    fn done(self) -> Result<Answer, String> {
        Ok(Answer {
            values: self.values,
            comparisons: self.comparisons,
        })
    }
}

/// Whether a note says these words.
fn says(weather: &Weather, words: &str) -> bool {
    weather
        .notes
        .iter()
        .any(|note| note.sentence.contains(words))
}
