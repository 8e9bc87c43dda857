//! From what a project says of its year to the engine's season, by hand; what is left out is assumed, and said.

mod duct;
mod period;
pub(crate) mod reading;
mod space;

use dewrun_run::air::{MoistAir, Over, Pair};
use dewrun_run::library;
use dewrun_season::{DesignState, Room, Season};

use crate::convert::{checked_run, to_run};
use crate::field_path::Here;
use crate::{DesignBy, DocumentError, FieldPath, Input, MonthName, Project, WeatherReference};

/// What a project says of the year of a run, and what stands in for what it leaves out.
#[derive(Debug, Clone, PartialEq)]
pub struct YearSaid {
    /// As the engine takes it.
    pub season: Season,
    /// The weather file.
    pub weather: Option<WeatherReference>,
    /// Pressure of the project's air, Pa.
    pub pressure_pa: f64,
    /// The file that was measured in the duct.
    pub measured: Option<WeatherReference>,
    /// Numbers that stand in for what is left out.
    pub assumed: Vec<YearAssumed>,
    /// What else is taken for granted, in sentences.
    pub said: Vec<String>,
}

/// A number of the year that stands in for one that the project leaves out.
#[derive(Debug, Clone, PartialEq)]
pub struct YearAssumed {
    /// The field that is left out.
    pub path: FieldPath,
    /// The row of the library.
    pub row: &'static str,
    /// The value assumed, in the unit of the field.
    pub value: f64,
    /// The lowest value that is plausible.
    pub low: f64,
    /// The highest.
    pub high: f64,
}

/// What a project says of the year of a run.
///
/// A project that says nothing of it has the air of its duct from outdoors where it is make-up air, spaces under a roof that follow the weather, and all others as they are entered.
///
/// # Errors
/// [`DocumentError`] where the project has no such run, leaves a limit, or says something of its year that is none.
///
/// ```
/// use dewrun_document::{read, to_season};
/// let text = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json"));
/// let year = to_season(&read(text)?, 0)?;
/// assert_eq!(year.season.spaces.len(), 3);
/// assert!(year.weather.is_none());
/// # Ok::<(), dewrun_document::DocumentError>(())
/// ```
pub fn to_season(project: &Project, run_index: usize) -> Result<YearSaid, DocumentError> {
    let (run, names) = to_run(project, run_index)?;
    let (entered, _) = checked_run(project, run_index)?;
    let weather = project.weather.as_ref();
    let mut year = YearSaid {
        season: Season {
            source: dewrun_season::Source::Outdoors,
            steps: Vec::new(),
            spaces: Vec::new(),
            fan_off: Vec::new(),
        },
        weather: weather
            .map(|file| file.get_at(&Here::at("weather")))
            .transpose()?,
        pressure_pa: run.pressure.to_pascals(),
        measured: None,
        assumed: Vec::new(),
        said: Vec::new(),
    };
    if let Some(file) = &year.weather {
        file.understanding_at(&Here::at("weather"))?;
    }
    let air = air_of(run.duct_air, &run)?;
    year.duct(&entered.duct, run_index, air)?;
    let spaces = project.spaces.iter().zip(&run.spaces).zip(&names.spaces);
    for (at, ((space, converted), name)) in spaces.enumerate() {
        let air = air_of(
            Pair::Temperature(converted.temperature, converted.humidity),
            &run,
        )?;
        year.space(at, space, name, air)?;
    }
    Ok(year)
}

impl YearSaid {
    /// The value given, or that of a row, which is then on record.
    fn or_row(
        &mut self,
        given: Option<&Input<f64>>,
        path: impl FnOnce() -> FieldPath,
        row: &'static str,
    ) -> f64 {
        if let Some(given) = given {
            return given.value;
        }
        let Some(found) = library::find(library::assumptions(), row) else {
            return 0.0;
        };
        let value = found.value.usual;
        self.assumed.push(YearAssumed {
            path: path(),
            row,
            value,
            low: found.value.low,
            high: found.value.high,
        });
        value
    }
}

/// The temperature and relative humidity of an air that is entered.
fn air_of(pair: Pair, run: &dewrun_run::Run) -> Result<Room, DocumentError> {
    let air = MoistAir::new(pair, run.pressure).map_err(|error| DocumentError::Told {
        path: FieldPath::root(),
        sentence: error.to_string(),
    })?;
    let temperature_c = air.value.temperature().to_celsius();
    let over = if temperature_c < 0.0 {
        Over::Ice
    } else {
        Over::Water
    };
    Ok(Room {
        temperature_c,
        humidity: air.value.relative_humidity(over).to_fraction().min(1.0),
    })
}

/// What a project says of a weather file: its name, what it holds, and the design states counted from it.
///
/// ```
/// use dewrun_document::weather_reference;
/// use dewrun_weather::{Reader, Understanding};
/// let mut reader = Reader::new(Understanding::default());
/// reader.push(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/gull-harbour.csv")))?;
/// let file = weather_reference("gull-harbour.csv", &reader.finish()?);
/// assert_eq!((file.place.as_str(), file.step_s, file.design.len()), ("Gull Harbour", 3600.0, 5));
/// # Ok::<(), dewrun_weather::WeatherError>(())
/// ```
#[must_use]
pub fn weather_reference(file: &str, weather: &dewrun_weather::Weather) -> WeatherReference {
    let series = &weather.series;
    WeatherReference {
        file: file.to_owned(),
        place: weather.place.name.clone().unwrap_or_default(),
        rows: count(series.len()),
        step_s: period::seconds(series.timing.step_s),
        sha256: weather.sha256_digits(),
        reading: None,
        design: dewrun_season::design_states(series)
            .into_iter()
            .map(reference_state)
            .collect(),
    }
}

fn reference_state(state: DesignState) -> crate::DesignState {
    let month = usize::from(state.month).saturating_sub(1);
    crate::DesignState {
        by: match state.by {
            dewrun_season::DesignBy::DewPoint => DesignBy::DewPoint,
            dewrun_season::DesignBy::Temperature => DesignBy::Temperature,
        },
        exceeded_percent: state.exceeded_percent,
        outdoor_c: rounded(state.t_c),
        outdoor_dew_point_c: rounded(state.dew_point_c),
        month: MonthName::ALL.get(month).copied().unwrap_or(MonthName::Jan),
    }
}

/// To hundredths of a degree, which no weather file is better than.
fn rounded(celsius: f64) -> f64 {
    (celsius * 100.0).round() / 100.0
}

#[expect(clippy::cast_precision_loss, reason = "rows are far fewer than 2^52")]
const fn count(rows: usize) -> f64 {
    rows as f64
}

impl From<&crate::DesignState> for DesignState {
    fn from(state: &crate::DesignState) -> Self {
        let month = MonthName::ALL
            .iter()
            .zip(1..)
            .find(|(name, _)| **name == state.month);
        Self {
            by: match state.by {
                DesignBy::DewPoint => dewrun_season::DesignBy::DewPoint,
                DesignBy::Temperature => dewrun_season::DesignBy::Temperature,
            },
            exceeded_percent: state.exceeded_percent,
            t_c: state.outdoor_c,
            dew_point_c: state.outdoor_dew_point_c,
            month: month.map_or(1, |(_, number)| number),
        }
    }
}
