//! Which columns of a table are read, as what: by their headings, by their units, by their numbers, or as a person says.

use dewrun_quantity::DecimalMark;

use super::clock::Clock;
use super::heading::Heading;
use crate::column::unit::of_heading;
use crate::column::{Role, Unit};
use crate::error::WeatherError;
use crate::note::{Note, Topic};
use crate::raw::RawTable;
use crate::understanding::Understanding;

/// So many columns of one role are read.
const MOST_OF_A_ROLE: u32 = 4;

/// A column that is read.
#[derive(Debug, Clone)]
pub(super) struct Reading {
    pub(super) at: usize,
    pub(super) role: Role,
    pub(super) unit: Option<Unit>,
    pub(super) name: String,
}

/// The column that names the station of each row: the one said, or one so headed whose names come again.
pub(super) fn station(
    columns: &[Heading],
    given: &Understanding,
    sample: &[Vec<Vec<u8>>],
) -> Option<usize> {
    let said = given
        .columns
        .iter()
        .find(|choice| choice.role == Role::Station)
        .and_then(|choice| choice.column.checked_sub(1));
    let comes_again = |at: &usize| {
        let mut names: Vec<&[u8]> = sample
            .iter()
            .filter_map(|row| row.get(*at).map(Vec::as_slice))
            .collect();
        let rows = names.len();
        names.sort_unstable();
        names.dedup();
        // A number of its own in each row counts rows.
        rows < 3 || names.len() < rows
    };
    let headed =
        |(at, heading): (usize, &Heading)| (heading.role == Some(Role::Station)).then_some(at);
    said.or_else(|| {
        columns
            .iter()
            .enumerate()
            .filter_map(headed)
            .find(comes_again)
    })
}

/// The columns whose headings name a reading.
pub(super) fn named_readings(
    columns: &[Heading],
    clock: &Clock,
    raw: &mut RawTable,
) -> Vec<Reading> {
    let times = clock.places();
    let mut readings = Vec::new();
    for (at, heading) in columns.iter().enumerate() {
        let Some(role) = heading
            .role
            .filter(|role| role.is_reading() && !times.contains(&at))
        else {
            continue;
        };
        let unit = of_heading(role, &heading.folded).or_else(|| {
            heading
                .beside
                .iter()
                .find_map(|beside| of_heading(role, beside))
        });
        readings.push(Reading {
            at,
            role,
            unit,
            name: heading.name.clone(),
        });
    }
    if !readings
        .iter()
        .any(|reading| reading.role == Role::Temperature)
    {
        readings.extend(by_unit(columns, &times, &readings));
    }
    if !readings.iter().any(|reading| reading.role.is_humidity()) {
        readings.extend(by_percent(columns, &times, &readings));
    }
    readings.sort_by_key(|reading| reading.role);
    keep_few(&mut readings);
    for reading in &readings {
        if reading.role == Role::Temperature
            || reading.role.is_humidity()
            || reading.role == Role::Pressure
        {
            let unit = reading
                .unit
                .map_or_else(String::new, |unit| format!(" in {}", unit.sign()));
            raw.notes.push(Note::of_file(
                Topic::Columns,
                format!(
                    "column {} `{}` is {}{unit}",
                    reading.at + 1,
                    reading.name,
                    reading.role.name()
                ),
            ));
        }
    }
    readings
}

/// Of each role the first columns alone: the first may be empty, more are never looked at.
fn keep_few(readings: &mut Vec<Reading>) {
    let mut before = (None, 0);
    readings.retain(|reading| {
        before = match before {
            (Some(role), count) if role == reading.role => (Some(role), count + 1),
            _ => (Some(reading.role), 1),
        };
        before.1 <= MOST_OF_A_ROLE
    });
}

/// The first column that no word names but a unit of temperature does.
fn by_unit(columns: &[Heading], times: &[usize], readings: &[Reading]) -> Option<Reading> {
    let is_free =
        |at: usize| !times.contains(&at) && readings.iter().all(|reading| reading.at != at);
    let unit_of = |heading: &Heading| {
        let is_marked = ['°', '(', '[']
            .iter()
            .any(|mark| heading.folded.contains(*mark))
            || heading.folded.contains("deg");
        let named = of_heading(Role::Temperature, &heading.folded).filter(|_| is_marked);
        named.or_else(|| {
            heading
                .beside
                .iter()
                .find_map(|beside| of_heading(Role::Temperature, beside))
        })
    };
    let is_known_otherwise = |heading: &Heading| crate::column::names::is_excluded(&heading.folded);
    columns.iter().enumerate().find_map(|(at, heading)| {
        let unit = unit_of(heading).filter(|_| is_free(at) && !is_known_otherwise(heading))?;
        Some(Reading {
            at,
            role: Role::Temperature,
            unit: Some(unit),
            name: heading.name.clone(),
        })
    })
}

/// The one column of percents that no word names.
fn by_percent(columns: &[Heading], times: &[usize], readings: &[Reading]) -> Option<Reading> {
    let is_free =
        |at: usize| !times.contains(&at) && readings.iter().all(|reading| reading.at != at);
    let has_sign = |heading: &Heading| {
        heading.folded.contains('%') || heading.beside.iter().any(|beside| beside == "%")
    };
    let mut found = columns.iter().enumerate().filter(|(at, heading)| {
        is_free(*at) && has_sign(heading) && !crate::column::names::is_excluded(&heading.folded)
    });
    match (found.next(), found.next()) {
        (Some((at, heading)), None) => Some(Reading {
            at,
            role: Role::RelativeHumidity,
            unit: Some(Unit::Percent),
            name: heading.name.clone(),
        }),
        _ => None,
    }
}

/// Without headings: of the columns of numbers, the one that stays between 0 and 100 and is mostly above 30 is relative humidity, the first other one temperature.
pub(super) fn readings_by_values(
    sample: &[Vec<Vec<u8>>],
    clock: &Clock,
    mark: DecimalMark,
    raw: &mut RawTable,
) -> Vec<Reading> {
    let times = clock.places();
    let width = sample.iter().map(Vec::len).max().unwrap_or(0);
    let mut numbers: Vec<(usize, Vec<f64>)> = Vec::new();
    for at in (0..width).filter(|at| !times.contains(at)) {
        let values: Vec<f64> = sample
            .iter()
            .filter_map(|row| super::cell::value(row.get(at)?, mark))
            .collect();
        let begins = values
            .first()
            .is_some_and(|first| (0.0..=1.0).contains(first));
        let is_count = (3 < values.len() || (begins && 1 < values.len()))
            && values.windows(2).all(
                |pair| matches!(pair, [before, after] if (after - before - 1.0).abs() < 1.0e-9),
            );
        if sample.len() <= 2 * values.len() && !is_count {
            numbers.push((at, values));
        }
    }
    let mean = |values: &[f64]| {
        #[allow(
            clippy::cast_precision_loss,
            reason = "at most as many as are looked at"
        )]
        let count = values.len() as f64;
        values.iter().sum::<f64>() / count
    };
    let is_relative = |values: &[f64]| {
        values.iter().all(|value| (0.0..=105.0).contains(value)) && 30.0 < mean(values)
    };
    let relative = numbers
        .iter()
        .find(|(_, values)| is_relative(values))
        .map(|(at, _)| *at)
        .filter(|_| 1 < numbers.len());
    let temperature = numbers
        .iter()
        .map(|(at, _)| *at)
        .find(|at| Some(*at) != relative);
    let of = |at: Option<usize>, role: Role| {
        at.map(|at| Reading {
            at,
            role,
            unit: None,
            name: String::new(),
        })
    };
    let readings: Vec<Reading> = [
        of(temperature, Role::Temperature),
        of(relative, Role::RelativeHumidity),
    ]
    .into_iter()
    .flatten()
    .collect();
    for reading in &readings {
        raw.notes.push(Note::of_file(Topic::Columns, format!("no line names the columns: column {} is taken for {} by its numbers, say so if that is wrong", reading.at + 1, reading.role.name())));
    }
    readings
}

/// What a person says of columns goes before what was found.
pub(super) fn choose(
    readings: &mut Vec<Reading>,
    given: &Understanding,
    columns: usize,
) -> Result<(), WeatherError> {
    for choice in &given.columns {
        let Some(at) = choice.column.checked_sub(1).filter(|at| *at < columns) else {
            return Err(WeatherError::NoColumn {
                column: choice.column,
                count: columns,
            });
        };
        let name = readings
            .iter()
            .find(|reading| reading.at == at)
            .map_or_else(String::new, |reading| reading.name.clone());
        let unit = choice.unit.or_else(|| {
            readings
                .iter()
                .find(|reading| reading.at == at && reading.role == choice.role)
                .and_then(|reading| reading.unit)
        });
        readings.retain(|reading| {
            reading.at != at && !(choice.role.is_reading() && reading.role == choice.role)
        });
        if choice.role.is_reading() {
            readings.push(Reading {
                at,
                role: choice.role,
                unit,
                name,
            });
        }
    }
    Ok(())
}
