//! Columns of readings in SI, with fillers and impossible numbers taken out.

use std::collections::BTreeMap;

use crate::column::unit::{of_values, usual};
use crate::column::{Role, Unit};
use crate::note::{LinesMet, Note, Topic, counted};
use crate::raw::{Fillers, RawColumn, RawTable};
use crate::understanding::ColumnChoice;
use dewrun_quantity::format::entered;

use super::spread::median;

/// One column for each role, in SI, NaN where nothing usable stands.
#[derive(Debug)]
pub(super) struct Readings {
    pub(super) columns: BTreeMap<Role, Vec<f64>>,
    pub(super) lines: Vec<u32>,
    /// The columns that are used, with the units found.
    pub(super) used: Vec<ColumnChoice>,
}

/// Least and most that a reading may be, in the unit that is kept; relative humidity over saturation is judged later.
const fn bounds(role: Role) -> (f64, f64) {
    match role {
        Role::Temperature | Role::WetBulb => (-90.0, 70.0),
        Role::DewPoint => (-100.0, 70.0),
        Role::RelativeHumidity => (0.0, 1000.0),
        Role::HumidityRatio => (0.0, 0.3),
        Role::VapourPressure => (0.0, 40_000.0),
        Role::Pressure | Role::SeaLevelPressure => (31_000.0, 120_000.0),
        Role::Wind => (0.0, 120.0),
        Role::Global | Role::Direct | Role::Diffuse | Role::Infrared => (-50.0, 2500.0),
        Role::Rain => (0.0, 2000.0),
        Role::Sky => (0.0, 100.0),
        _ => (f64::NEG_INFINITY, f64::INFINITY),
    }
}

impl Readings {
    pub(super) fn of(raw: &mut RawTable, kept: &[usize], notes: &mut Vec<Note>) -> Self {
        let is_whole =
            kept.len() == raw.lines.len() && kept.iter().enumerate().all(|(at, from)| at == *from);
        let lines = if is_whole {
            core::mem::take(&mut raw.lines)
        } else {
            kept.iter()
                .filter_map(|at| raw.lines.get(*at).copied())
                .collect()
        };
        let mut readings = Self {
            columns: BTreeMap::new(),
            lines,
            used: Vec::new(),
        };
        for mut column in core::mem::take(&mut raw.columns) {
            if !is_whole {
                let values = &column.values;
                column.values = kept
                    .iter()
                    .map(|at| values.get(*at).copied().unwrap_or(f64::NAN))
                    .collect();
            }
            readings.add(column, raw.fillers, notes);
        }
        readings
    }

    /// The first column of a role that has a reading stands for it.
    fn add(&mut self, mut column: RawColumn, fillers: Fillers, notes: &mut Vec<Note>) {
        let role = column.role;
        let mut filled = LinesMet::default();
        for (value, line) in column.values.iter_mut().zip(&self.lines) {
            if fillers.is_one(role, *value) {
                *value = f64::NAN;
                filled.add(u64::from(*line));
            }
        }
        let Some(middle) = median(column.values.iter().copied()) else {
            return;
        };
        if self.columns.contains_key(&role) {
            let (number, name) = (column.number, &column.name);
            let is_air = role.is_humidity() || matches!(role, Role::Temperature | Role::Pressure);
            notes.extend(is_air.then(|| Note::of_file(Topic::Columns, format!("column {number} `{name}` holds {} too: not used, say so if it is the better one", role.name()))));
            return;
        }
        let unit = unit_of(&column, middle, notes);
        let (factor, offset) = unit.scale();
        if (factor, offset) != (1.0, 0.0) {
            for value in &mut column.values {
                *value = *value * factor + offset;
            }
        }
        let strange = self.take_out_strange(&mut column);
        if role.is_humidity() || matches!(role, Role::Temperature | Role::Pressure) {
            notes.extend(filled.note(Topic::Missing, |count| {
                format!(
                    "{} of {} marked as missing",
                    counted(count, "reading"),
                    role.name()
                )
            }));
        }
        let (least, most) = bounds(role);
        notes.extend(strange.note(Topic::Missing, |count| {
            format!(
                "{} of {} beyond {} to {} {}: taken as missing",
                counted(count, "reading"),
                role.name(),
                entered(least),
                entered(most),
                usual(role).sign()
            )
        }));
        self.used.push(ColumnChoice {
            column: column.number,
            role,
            unit: Some(unit),
        });
        self.columns.insert(role, column.values);
    }

    fn take_out_strange(&self, column: &mut RawColumn) -> LinesMet {
        let (least, most) = bounds(column.role);
        let mut strange = LinesMet::default();
        for (value, line) in column.values.iter_mut().zip(&self.lines) {
            if *value < least || most < *value {
                *value = f64::NAN;
                strange.add(u64::from(*line));
            }
        }
        strange
    }

    pub(super) fn get(&self, role: Role) -> Option<&[f64]> {
        self.columns.get(&role).map(Vec::as_slice)
    }

    pub(super) fn take(&mut self, role: Role) -> Option<Vec<f64>> {
        self.columns.remove(&role)
    }
}

/// No air is that warm in the middle, °C.
const WARM_C: f64 = 45.0;

/// The unit of a column: as its heading says, unless its numbers make that impossible.
fn unit_of(column: &RawColumn, middle: f64, notes: &mut Vec<Note>) -> Unit {
    let role = column.role;
    let mut note = |sentence: String| notes.push(Note::of_file(Topic::Units, sentence));
    let named = || format!("column {} `{}`", column.number, column.name);
    if role == Role::RelativeHumidity && column.unit != Some(Unit::Fraction) {
        let most = column.values.iter().copied().fold(f64::MIN, f64::max);
        if most <= 1.05 && 0.0 < middle {
            note(format!(
                "{} runs up to {}: shares of one, read as 100 times as many percent",
                named(),
                entered(most)
            ));
            return Unit::Fraction;
        }
    }
    let found = of_values(role, column.unit, middle)
        .unwrap_or_else(|| column.unit.unwrap_or_else(|| usual(role)));
    if column.unit == Some(Unit::Celsius) && WARM_C < middle && role == Role::Temperature {
        note(format!(
            "{} is in °C by its heading, but a middle of {} looks like °F: say so if it is",
            named(),
            entered(middle)
        ));
    }
    match column.unit {
        Some(unit) if unit != found => note(format!(
            "{} looks like {} (a middle of {} can't be {}, which allows 31000 to 120000 Pa of air): read as {}",
            named(),
            found.sign(),
            entered(middle),
            unit.sign(),
            found.sign()
        )),
        None if found != usual(role) => note(format!(
            "{} names no unit; a middle of {} shows {}",
            named(),
            entered(middle),
            found.sign()
        )),
        _ => {}
    }
    found
}
