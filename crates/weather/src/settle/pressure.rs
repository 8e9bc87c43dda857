//! A pressure for every row: the file's, or that of the standard atmosphere, said so.

use dewrun_moist_air::standard_pressure;
use dewrun_quantity::Length;
use dewrun_quantity::format::entered;

use super::readings::Readings;
use crate::column::Role;
use crate::note::{LinesMet, Note, Topic, counted};
use crate::weather::PressureSource;

/// Pressure of the standard atmosphere at sea level, Pa (ISO 2533:1975).
const SEA_LEVEL_PA: f64 = 101_325.0;

pub(super) fn pressures(
    readings: &mut Readings,
    elevation_m: Option<f64>,
    given_pa: Option<f64>,
    notes: &mut Vec<Note>,
) -> (Vec<f64>, PressureSource) {
    let rows = readings.lines.len();
    if let Some(pressure_pa) = given_pa {
        return (vec![pressure_pa; rows], PressureSource::Given);
    }
    let standard_pa = elevation_m
        .and_then(|metres| standard_pressure(Length::metres(metres)).ok())
        .map(|pressure| pressure.to_pascals());
    let mut note = |sentence: String| notes.push(Note::of_file(Topic::Pressure, sentence));
    if let Some(column) = readings.take(Role::Pressure) {
        if readings.take(Role::SeaLevelPressure).is_some() {
            note("the file has the pressure at the station and that at sea level: the station's is used".to_owned());
        }
        return filled(column, readings, standard_pa, elevation_m, notes);
    }
    if let Some(mut column) = readings.take(Role::SeaLevelPressure) {
        let share = standard_pa.map_or(1.0, |standard_pa| standard_pa / SEA_LEVEL_PA);
        for value in &mut column {
            *value *= share;
            if value.is_nan() {
                *value = standard_pa.unwrap_or(SEA_LEVEL_PA);
            }
        }
        note(match elevation_m.filter(|_| standard_pa.is_some()) {
            Some(metres) => format!("pressures are those at sea level: brought to {} m by the standard atmosphere", entered(metres)),
            None => "pressures are those at sea level and no elevation is known: used as they are, give the elevation".to_owned(),
        });
        return (column, PressureSource::SeaLevel);
    }
    match standard_pa.zip(elevation_m) {
        Some((pressure_pa, metres)) => {
            note(format!(
                "no pressure in the file: {} Pa of the standard atmosphere at {} m for all rows",
                entered(pressure_pa.round()),
                entered(metres)
            ));
            (vec![pressure_pa; rows], PressureSource::Standard)
        }
        None => {
            note("no pressure and no elevation in the file: 101325 Pa of the standard atmosphere at sea level, give the elevation".to_owned());
            (vec![SEA_LEVEL_PA; rows], PressureSource::StandardAtSeaLevel)
        }
    }
}

/// The file's pressures, with those that are missing from the standard atmosphere.
fn filled(
    mut column: Vec<f64>,
    readings: &Readings,
    standard_pa: Option<f64>,
    elevation_m: Option<f64>,
    notes: &mut Vec<Note>,
) -> (Vec<f64>, PressureSource) {
    let mut missing = LinesMet::default();
    let middle = super::spread::median(column.iter().copied());
    let instead = standard_pa.or(middle).unwrap_or(SEA_LEVEL_PA);
    for (value, line) in column.iter_mut().zip(&readings.lines) {
        if value.is_nan() {
            *value = instead;
            missing.add(u64::from(*line));
        }
    }
    let from = match elevation_m.filter(|_| standard_pa.is_some()) {
        Some(metres) => format!("the standard atmosphere at {} m", entered(metres)),
        None => "the middle of the others".to_owned(),
    };
    notes.extend(missing.note(Topic::Pressure, |count| {
        format!(
            "{} without a pressure: {} Pa, {from}",
            counted(count, "row"),
            entered(instead.round())
        )
    }));
    match missing.count() {
        0 => (column, PressureSource::File),
        filled => (column, PressureSource::FileAndStandard { filled }),
    }
}
