//! What was measured at the visits of a run, as readings that an ensemble can be held against.

use dewrun_ensemble::{Measured, Measurement, usual_error};
use dewrun_quantity::Length;
use dewrun_weather::Civil;

use crate::{Occasion, Origin, Project, Reading, Run, Visit, VisitedTube};

/// Water found nearer to a trap than this was in it, m.
const AT_TRAP_M: f64 = 0.5;
/// Seconds of a day.
const DAY_S: i64 = 86_400;

/// What was measured at the visits of a run; `climate` says that the weather is that of a typical year.
///
/// The airflow is that of the visits at which the run was fitted, where it is not an input already. What was drained counts since the visit before.
#[must_use]
pub fn measurements(project: &Project, run_index: usize, climate: bool) -> Vec<Measurement> {
    let Some(run) = project.runs.get(run_index) else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let mut add = |what, value| {
        found.push(Measurement {
            what,
            value,
            error: usual_error(what, value, climate),
        });
    };
    let mut before: Option<&Visit> = None;
    for visit in &run.visits {
        let mut read = |what, reading: &Option<Reading>| {
            if let Some(reading) = reading {
                add(what, reading.value);
            }
        };
        if visit.occasion == Occasion::AsFitted && !is_input(run, visit) {
            read(Measured::Airflow, &visit.airflow_l_min);
        }
        let at = visit.suction_at_m.map(Length::metres);
        read(Measured::Suction { at }, &visit.suction_pa);
        read(Measured::FirstSmoke, &visit.first_smoke_s);
        read(Measured::NinetyPercent, &visit.ninety_percent_s);
        let days = (before.and_then(|one| day_of(&one.on)), day_of(&visit.on));
        if let (Some(since), Some(until), Some(grams)) = (days.0, days.1, from_traps(run, visit)) {
            let since = Some(since);
            add(Measured::Drained { since, until }, grams);
        }
        before = Some(visit);
    }
    found
}

/// Whether the airflow of the run is what was read at this visit.
fn is_input(run: &Run, visit: &Visit) -> bool {
    matches!(&run.flow.volume_l_min.origin, Origin::Measured { on, .. } if *on == visit.on)
}

/// What was taken out of traps, g; none where no water is written down.
fn from_traps(run: &Run, visit: &Visit) -> Option<f64> {
    let traps = |tube| match tube {
        VisitedTube::Intake => &run.intake.traps[..],
        VisitedTube::Exhaust => run.exhaust.as_ref().map_or(&[][..], |route| &route.traps),
    };
    let mut taken = None;
    for water in &visit.water {
        let mut near = traps(water.tube).iter();
        if near.any(|trap| (trap.at_m.value - water.at_m).abs() <= AT_TRAP_M) {
            taken = Some(taken.unwrap_or(0.0) + water.water_g);
        }
    }
    taken
}

/// The day of a date such as 2026-08-30, counted from 1 January 1970; none where it is no date.
///
/// ```
/// use dewrun_document::day_of;
/// assert_eq!(day_of("2000-02-29"), Some(11_016));
/// assert_eq!(day_of("2001-02-29"), None);
/// ```
#[must_use]
pub fn day_of(date: &str) -> Option<i64> {
    let mut parts = date.splitn(3, '-').map(str::parse::<u16>);
    let (year, month, day) = (
        parts.next()?.ok()?,
        parts.next()?.ok()?,
        parts.next()?.ok()?,
    );
    // Within a day or two of it by the mean year; then by looking.
    let years = i64::from(year) - 1970;
    let about = years * 146_097 / 400 + (i64::from(month) - 1) * 153 / 5 + i64::from(day);
    let is_it = |number: &i64| {
        Civil::of(number * DAY_S).is_some_and(|civil| {
            (civil.year, civil.month, civil.day)
                == (
                    i32::from(year),
                    u8::try_from(month).unwrap_or(0),
                    u8::try_from(day).unwrap_or(0),
                )
        })
    };
    (about - 5..about + 5).find(is_it)
}
