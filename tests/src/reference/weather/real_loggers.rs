//! Real logger exports.

use dewrun_moist_air::{Humidity, MoistAir, Over, Pair};
use dewrun_quantity::{Pressure, RelativeHumidity, Temperature};
use dewrun_weather::{ColumnChoice, Role, Series, Understanding, Weather};
use serde_json::Value;

use super::numbers::{at, count, range};
use super::{Files, Held, says};
use crate::reference::compare::Tolerance;
use crate::reference::inputs::Inputs;
use crate::reference::report::Answer;

type Answered = Result<Answer, String>;

/// As many digits as the cases print.
const PRINTED: Tolerance = Tolerance::absolute(0.001);
/// The saturation curve of the cases is Hyland & Wexler's.
const DEW: Tolerance = Tolerance::absolute(0.01);

/// `2017-01-13 01:00:00`, as the cases write it.
fn stamp(series: &Series, row: usize) -> String {
    let text = series
        .stamp(row)
        .map_or_else(String::new, |stamp| stamp.to_string())
        .replace('T', " ");
    if text.len() == 16 { text + ":00" } else { text }
}

fn ends(values: &[f64]) -> Value {
    dewrun_weather::Range::of(values).map_or(Value::Null, |range| vec![range.min, range.max].into())
}

fn of_station(held: &mut Held, expected: &Value, weather: &Weather) -> Result<(), String> {
    let series = &weather.series;
    let timing = &series.timing;
    held.same(expected, "rows_with_T_and_RH", count(series.usable()));
    held.same(expected, "first", stamp(series, 0));
    held.same(expected, "last", stamp(series, series.len() - 1));
    held.value(expected, "median_step_s", timing.step_s, PRINTED);
    held.same(expected, "steps_not_median", timing.irregular_steps);
    held.same(
        expected,
        "duplicate_or_backward_steps",
        timing.repeated + timing.backward,
    );
    held.value(expected, "max_step_s", timing.longest_step_s, PRINTED);
    held.value(
        expected,
        "T_C_min_max_mean",
        range(&series.temperature_c),
        PRINTED,
    );
    held.value(
        expected,
        "RH_min_max_mean_raw",
        range(&series.relative_percent),
        PRINTED,
    );
    held.same(expected, "rows_RH_gt_100", weather.clipped);
    held.same(
        expected,
        "rows_RH_eq_100",
        count(
            series
                .relative_percent
                .iter()
                .filter(|rh| 100.0 <= **rh)
                .count(),
        ),
    );
    held.value(
        expected,
        "first_row_T_RH",
        vec![
            at(&series.temperature_c, 0),
            at(&series.relative_percent, 0),
        ],
        PRINTED,
    );
    held.value(
        expected,
        "first_row_dew_point_C_over_water",
        at(&series.dew_point_c, 0),
        DEW,
    );
    held.value(
        expected,
        "first_row_frost_or_dew_C (RH over water, ice below 0)",
        frost_or_dew(series)?,
        DEW,
    );
    held.value(
        expected,
        "dew_point_C_over_water_min_max",
        ends(&series.dew_point_c),
        DEW,
    );
    Ok(())
}

/// The first row's frost point below freezing, else its dew point.
fn frost_or_dew(series: &Series) -> Result<f64, String> {
    let relative = Humidity::Relative {
        value: RelativeHumidity::percent(at(&series.relative_percent, 0)),
        over: Over::Water,
    };
    let pair = Pair::Temperature(Temperature::celsius(at(&series.temperature_c, 0)), relative);
    let air = MoistAir::new(pair, Pressure::pascals(at(&series.pressure_pa, 0)))
        .map_err(|error| error.to_string())?
        .value;
    air.frost_point()
        .or_else(|| air.dew_point())
        .map(Temperature::to_celsius)
        .ok_or_else(|| "no point".to_owned())
}

pub(super) fn one_station(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let mut held = Held::default();
    of_station(&mut held, expected, &weather)?;
    held.same(expected, "bytes", weather.bytes);
    if !expected["UTC_offset_h"].is_null() {
        held.value(
            expected,
            "UTC_offset_h",
            weather.series.timing.utc_offset_h,
            PRINTED,
        );
    }
    let key = "file_dew_minus_computed_over_water_K_min_max";
    if !expected[key].is_null() {
        let file = files
            .read(
                0,
                Understanding {
                    dew_point_leads: Some(true),
                    ..Understanding::default()
                },
            )?
            .series;
        let off: Vec<f64> = file
            .dew_point_c
            .iter()
            .zip(&weather.series.dew_point_c)
            .map(|(file, computed)| file - computed)
            .collect();
        held.value(expected, key, ends(&off), DEW);
    }
    held.done()
}

pub(super) fn two_stations(expected: &Inputs<'_>, files: &Files) -> Answered {
    let mut held = Held::default();
    for name in ["station01", "station05"] {
        let wanted = &expected.raw()[name];
        let given = Understanding {
            station: Some(name.to_owned()),
            ..Understanding::default()
        };
        let weather = files.read(0, given)?;
        let mut one = Held::default();
        of_station(&mut one, wanted, &weather)?;
        one.value(
            wanted,
            "station_pressure_Pa_min_max",
            ends(&weather.series.pressure_pa),
            PRINTED,
        );
        let blank = weather
            .series
            .temperature_c
            .iter()
            .filter(|t_c| t_c.is_nan())
            .count();
        one.same(wanted, "blank_cells_T", count(blank));
        // The column of sea-level pressure, taken for the station's, shows its own range.
        let column = ColumnChoice {
            column: 11,
            role: Role::Pressure,
            unit: None,
        };
        let given = Understanding {
            station: Some(name.to_owned()),
            columns: vec![column],
            ..Understanding::default()
        };
        one.value(
            wanted,
            "sea_level_pressure_Pa_min_max",
            ends(&files.read(0, given)?.series.pressure_pa),
            PRINTED,
        );
        held.values
            .insert(name.to_owned(), Value::Object(one.values));
        held.comparisons
            .extend(one.comparisons.into_iter().map(|mut comparison| {
                comparison.key = format!("{name} {}", comparison.key);
                comparison
            }));
    }
    held.done()
}

pub(super) fn one_variable(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let is_temperature = series.temperature_c.iter().any(|t_c| t_c.is_finite());
    let values = if is_temperature {
        &series.temperature_c
    } else {
        &series.relative_percent
    };
    let ends = dewrun_weather::Range::of(values).ok_or("nothing was read")?;
    let mut held = Held::default();
    held.same(
        expected,
        "variable",
        if is_temperature { "T" } else { "RH" },
    );
    held.same(expected, "rows", count(series.len()));
    held.same(expected, "first", stamp(series, 0));
    held.same(expected, "last", stamp(series, series.len() - 1));
    held.value(expected, "step_s", series.timing.step_s, PRINTED);
    held.value(expected, "min", ends.min, PRINTED);
    held.value(expected, "max", ends.max, PRINTED);
    held.same(expected, "bytes", weather.bytes);
    held.fact(
        "alone",
        series.usable() == 0 && says(&weather, "no row is usable alone"),
    );
    held.done()
}

pub(super) fn known_columns(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let stamps: Vec<String> = (0..series.len())
        .map(|row| {
            stamp(series, row)
                .replace(' ', "T")
                .trim_end_matches(":00")
                .to_owned()
        })
        .collect();
    let wanted: Vec<String> = expected["stamps_UTC"]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|text| Some(text.as_str()?.trim_end_matches(":00").to_owned()))
        .collect();
    let surface = Understanding {
        columns: vec![ColumnChoice {
            column: 13,
            role: Role::Temperature,
            unit: None,
        }],
        ..Understanding::default()
    };
    let mut held = Held::default();
    held.same(expected, "rows", count(series.len()));
    held.value(expected, "T_C", series.temperature_c.clone(), PRINTED);
    held.value(
        expected,
        "surface_T_C",
        files.read(0, surface)?.series.temperature_c,
        PRINTED,
    );
    held.value(expected, "RH_pct", series.relative_percent.clone(), PRINTED);
    held.fact(
        "stamps_UTC",
        stamps == wanted && series.timing.utc_offset_h == Some(0.0),
    );
    held.same(
        expected,
        "gap_min",
        series
            .timing
            .gaps
            .first()
            .map(|gap| (gap.to_s - gap.from_s) / 60),
    );
    held.value(expected, "dew_point_C", series.dew_point_c.clone(), DEW);
    held.same(expected, "bytes", weather.bytes);
    held.done()
}
