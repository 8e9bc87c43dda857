//! Dew point and relative humidity of every row, from whatever the file gives.

use dewrun_moist_air::fast::{
    SaturationCurve, dew_or_frost_point_of_c, dew_point_c, dew_point_of_c,
};
use dewrun_moist_air::{Humidity, MoistAir, Over, Pair, mixture};
use dewrun_quantity::{Pressure, Temperature};

use super::readings::Readings;
use crate::column::Role;
use crate::note::{LinesMet, Note, Topic, counted};
use crate::series::vapour_at_point;

/// Relative humidity that is clipped to saturation, %; more is a fault of the sensor.
const CLIPPED_TO: f64 = 105.0;
/// Above this a sensor is wet, %.
const WET_SENSOR: f64 = 102.0;
/// A dew point this far over the temperature is rounding, K; farther, one of the two is wrong.
const ROUNDING_K: f64 = 0.5;
/// So many readings at exactly 100 % are worth a word, as a share of all.
const PINNED: f64 = 0.1;

/// How humidities are meant and which leads.
#[derive(Debug, Clone, Copy)]
pub(super) struct Customs {
    pub(super) dew_point_over: Over,
    pub(super) relative_over: Over,
    pub(super) dew_point_leads: bool,
}

/// Humidity of every row.
#[derive(Debug)]
pub(super) struct AirColumns {
    pub(super) dew_point_c: Vec<f64>,
    pub(super) relative_percent: Vec<f64>,
    pub(super) clipped: u64,
}

#[derive(Debug, Default)]
struct Met {
    clipped: LinesMet,
    wet: LinesMet,
    fault: LinesMet,
    zero: LinesMet,
    pinned: u64,
    rounded: LinesMet,
    inconsistent: LinesMet,
}

/// One row's readings; NaN where there is none.
struct Row {
    t_c: f64,
    point_c: f64,
    percent: f64,
    p_pa: f64,
    line: u64,
}

pub(super) fn humidities(
    readings: &mut Readings,
    pressure_pa: &[f64],
    customs: Customs,
    notes: &mut Vec<Note>,
) -> AirColumns {
    let rows = readings.lines.len();
    let others = other_columns(readings);
    let points = readings.take(Role::DewPoint).unwrap_or_default();
    let percents = readings.take(Role::RelativeHumidity).unwrap_or_default();
    let at = |column: &[f64], row: usize| column.get(row).copied().unwrap_or(f64::NAN);
    let temperatures = readings.get(Role::Temperature).unwrap_or_default();
    let mut met = Met::default();
    let mut air = AirColumns {
        dew_point_c: Vec::with_capacity(rows),
        relative_percent: Vec::with_capacity(rows),
        clipped: 0,
    };
    for (row, line) in readings.lines.iter().enumerate() {
        let row_of = Row {
            t_c: at(temperatures, row),
            point_c: at(&points, row),
            percent: at(&percents, row),
            p_pa: at(pressure_pa, row),
            line: u64::from(*line),
        };
        let percent = met.usable(row_of.percent, row_of.line);
        let (mut point_c, mut percent) = met.settled(&row_of, percent, customs);
        if point_c.is_nan() && percent.is_nan() {
            let other = others
                .iter()
                .map(|(role, values)| (*role, at(values, row)))
                .find(|(_, value)| value.is_finite());
            if let Some(other) = other {
                (point_c, percent) = met.by_other(&row_of, other, customs);
            }
        }
        air.dew_point_c.push(point_c);
        air.relative_percent.push(percent);
    }
    air.clipped = met.clipped.count();
    let read = percents.iter().filter(|value| value.is_finite()).count();
    met.tell(u64::try_from(read).unwrap_or(0), notes);
    air
}

/// Columns of humidity that are asked where neither dew point nor relative humidity stands.
fn other_columns(readings: &mut Readings) -> Vec<(Role, Vec<f64>)> {
    [Role::WetBulb, Role::HumidityRatio, Role::VapourPressure]
        .into_iter()
        .filter_map(|role| Some((role, readings.take(role)?)))
        .collect()
}

/// The dew point of an amount of vapour, in the custom that is kept.
fn point_of(x: f64, p_pa: f64, over: Over) -> f64 {
    let point = match over {
        Over::Water => dew_point_of_c(x, p_pa),
        Over::Ice => dew_or_frost_point_of_c(x, p_pa),
    };
    point.unwrap_or(f64::NAN)
}

fn saturated(t_c: f64, p_pa: f64, over: Over) -> f64 {
    let curve = SaturationCurve::at(p_pa);
    match over {
        Over::Water => curve.mole_fraction_over_water(t_c).0,
        Over::Ice => curve.mole_fraction(t_c).0,
    }
}

impl Met {
    /// A relative humidity that can be used, %; NaN for one that can't.
    fn usable(&mut self, percent: f64, line: u64) -> f64 {
        if percent.is_nan() || (0.0 < percent && percent < 100.0) {
            return percent;
        }
        if percent <= 0.0 {
            self.zero.add(line);
            return f64::NAN;
        }
        if CLIPPED_TO < percent {
            self.fault.add(line);
            return f64::NAN;
        }
        if percent <= 100.0 {
            self.pinned += 1;
            return 100.0;
        }
        self.clipped.add(line);
        if WET_SENSOR < percent {
            self.wet.add(line);
        }
        100.0
    }

    /// Dew point and relative humidity of a row; both NaN where nothing stands or the readings contradict each other.
    fn settled(&mut self, row: &Row, percent: f64, customs: Customs) -> (f64, f64) {
        let leads = customs.dew_point_leads || percent.is_nan();
        if row.point_c.is_finite() && leads {
            let Some(point_c) = self.consistent(row) else {
                return (f64::NAN, f64::NAN);
            };
            let percent = if percent.is_nan() {
                relative_of(row, point_c, customs)
            } else {
                percent
            };
            return (point_c, percent);
        }
        (point_of_relative(row, percent, customs), percent)
    }

    /// The dew point, at most the temperature; none where it is far above it.
    fn consistent(&mut self, row: &Row) -> Option<f64> {
        if row.point_c <= row.t_c || row.t_c.is_nan() {
            return Some(row.point_c);
        }
        if row.t_c + ROUNDING_K < row.point_c {
            self.inconsistent.add(row.line);
            return None;
        }
        self.rounded.add(row.line);
        Some(row.t_c)
    }

    fn by_other(&mut self, row: &Row, (role, value): (Role, f64), customs: Customs) -> (f64, f64) {
        let p_pa = row.p_pa;
        let x = match role {
            Role::HumidityRatio => mixture::mole_fraction(value),
            Role::VapourPressure => value / p_pa,
            _ => {
                let pair = Pair::Temperature(
                    Temperature::celsius(row.t_c),
                    Humidity::WetBulb(Temperature::celsius(value)),
                );
                let state = MoistAir::new(pair, Pressure::pascals(p_pa));
                state.map_or(f64::NAN, |state| state.value.mole_fraction())
            }
        };
        if x.is_nan() || x <= 0.0 {
            return (f64::NAN, f64::NAN);
        }
        let point_c = point_of(x, p_pa, customs.dew_point_over);
        let row = Row {
            point_c,
            percent: f64::NAN,
            ..*row
        };
        match self.consistent(&row) {
            Some(point_c) => (point_c, relative_of(&row, point_c, customs)),
            None => (f64::NAN, f64::NAN),
        }
    }

    fn tell(&self, read: u64, notes: &mut Vec<Note>) {
        #[allow(
            clippy::cast_precision_loss,
            reason = "a share, to be compared with a tenth"
        )]
        let is_pinned = PINNED * (read as f64) < self.pinned as f64;
        if is_pinned && 1 < self.pinned {
            notes.push(Note::of_file(Topic::Humidity, format!("{} at exactly 100 %: fog, or a wet sensor, whose readings are not trustworthy until it dries", counted(self.pinned, "relative humidity reading"))));
        }
        let about = |met: &LinesMet, what: &'static str| {
            met.note(Topic::Humidity, |count| {
                format!("{} {what}", counted(count, "row"))
            })
        };
        let said = [
            about(
                &self.clipped,
                "with a relative humidity over 100 %, up to 105 %: taken as 100 %",
            ),
            about(
                &self.wet,
                "over 102 %: sensor saturated; readings are not trustworthy until it dries",
            ),
            about(
                &self.fault,
                "with a relative humidity over 105 %: the sensor is at fault, not used",
            ),
            about(
                &self.zero,
                "with a relative humidity of 0 % or less: no reading of air, not used",
            ),
            about(
                &self.rounded,
                "with a dew point over the temperature by up to 0.5 K: taken as saturated",
            ),
            about(
                &self.inconsistent,
                "with a dew point more than 0.5 K over the temperature: inconsistent, not used",
            ),
        ];
        notes.extend(said.into_iter().flatten());
    }
}

fn relative_of(row: &Row, point_c: f64, customs: Customs) -> f64 {
    if !row.t_c.is_finite() {
        return f64::NAN;
    }
    let x = vapour_at_point(point_c, customs.dew_point_over, row.p_pa);
    (100.0 * x / saturated(row.t_c, row.p_pa, customs.relative_over)).min(100.0)
}

fn point_of_relative(row: &Row, percent: f64, customs: Customs) -> f64 {
    if percent.is_nan() || row.t_c.is_nan() {
        return f64::NAN;
    }
    if 100.0 <= percent && customs.dew_point_over == customs.relative_over {
        return row.t_c;
    }
    let rh = percent / 100.0;
    let point_c = if (customs.dew_point_over, customs.relative_over) == (Over::Water, Over::Water) {
        dew_point_c(row.t_c, rh, row.p_pa).unwrap_or(f64::NAN)
    } else {
        point_of(
            rh * saturated(row.t_c, row.p_pa, customs.relative_over),
            row.p_pa,
            customs.dew_point_over,
        )
    };
    point_c.min(row.t_c)
}
