//! The rows of the states and faults: what each is called, what the sensor reads, what it then breathes.

use dewrun_advice::OverDuct;
use dewrun_quantity::Style;
use dewrun_run::told::Fault;
use dewrun_run::{FaultOutcome, Tube, fault_words};

use super::Shown;
use super::judged::{seen, trips, unseen, unseen_elsewhere};
use crate::wording;

/// A state or a fault.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    pub(super) name: String,
    /// As a part of the reading as fitted.
    pub(super) reading: f64,
    /// What of the air at the sensor is from the duct.
    pub(super) share: f64,
    pub(super) is_fault: bool,
    /// From where to where the reading goes over the plausible duct pressures.
    pub(super) span: Option<[f64; 2]>,
    /// What the limits make of it; nothing where all is well.
    pub(super) remark: String,
    /// The remark tells more than figures and verdict do.
    pub(super) is_told: bool,
    /// It tells of something that goes wrong.
    pub(super) is_wrong: bool,
}

/// The expected states.
pub(super) fn states(shown: &Shown<'_>) -> Vec<Row> {
    let row = |state: &dewrun_run::StateOutcome| {
        let trips = shown
            .limits
            .is_some_and(|limits| trips(limits, state.reading));
        let remark = if trips {
            "trips though nothing is wrong"
        } else {
            ""
        };
        Row {
            name: wording::capital(&state.state.words()),
            reading: state.reading,
            share: state.airflow.share,
            is_fault: false,
            span: None,
            remark: remark.to_owned(),
            is_told: trips,
            is_wrong: trips,
        }
    };
    shown.whole.airflow.states.iter().map(row).collect()
}

/// So many of the faults as there is room for, those that read most like nothing was wrong; and how many are left.
pub(super) fn faults(shown: &Shown<'_>, most: usize) -> (Vec<Row>, usize) {
    let all = &shown.whole.airflow.faults;
    let mut ranked: Vec<usize> = (0..all.len()).collect();
    let off = |at: &usize| {
        all.get(*at)
            .map_or(f64::INFINITY, |fault| (fault.reading - 1.0).abs())
    };
    ranked.sort_by(|one, next| off(one).total_cmp(&off(next)));
    ranked.truncate(most);
    ranked.sort_unstable();
    let rows = ranked.iter().filter_map(|at| all.get(*at));
    let rows: Vec<Row> = rows.map(|fault| fault_row(shown, fault)).collect();
    let left = all.len() - rows.len();
    (rows, left)
}

/// All of them.
pub(super) fn all_faults(shown: &Shown<'_>) -> Vec<Row> {
    let all = shown.whole.airflow.faults.iter();
    all.map(|fault| fault_row(shown, fault)).collect()
}

fn fault_row(shown: &Shown<'_>, fault: &FaultOutcome) -> Row {
    let over = || {
        shown
            .over_duct
            .iter()
            .filter(|one| one.fault == fault.fault)
    };
    let (remark, is_told, is_wrong) = remark(shown, fault, over());
    Row {
        name: fault_name(fault.fault, shown.style),
        reading: fault.reading,
        share: fault.airflow.share,
        is_fault: true,
        span: span(over().map(|one| one.reading)),
        remark,
        is_told,
        is_wrong,
    }
}

fn remark<'a>(
    shown: &Shown<'_>,
    fault: &FaultOutcome,
    over: impl Iterator<Item = &'a OverDuct>,
) -> (String, bool, bool) {
    let (share, style) = (fault.airflow.share, shown.style);
    match shown.limits {
        None => (String::new(), false, false),
        Some(limits) if !trips(limits, fault.reading) => (unseen(share, style), true, true),
        Some(limits) => match unseen_elsewhere(over, limits, style) {
            Some(words) => (words, true, false),
            None => (seen(share, style), false, false),
        },
    }
}

fn span(readings: impl Iterator<Item = f64>) -> Option<[f64; 2]> {
    let ends = readings.fold(
        (f64::INFINITY, f64::NEG_INFINITY),
        |(low, high), reading| (low.min(reading), high.max(reading)),
    );
    (ends.0 < ends.1).then_some([ends.0, ends.1])
}

/// What a fault is called, with its place.
pub(super) fn fault_name(fault: Fault, style: Style) -> String {
    let (words, at) = fault_words(fault);
    let Some((tube, metres)) = at else {
        return wording::capital(words);
    };
    let place = wording::metres(metres, style);
    match (fault, tube) {
        (Fault::TrapDry(_), _) => format!("Trap at {place} dry and open"),
        (_, Tube::Intake) => format!("Intake {words} at {place}"),
        (_, Tube::Exhaust) => format!("Exhaust {words} at {place}"),
    }
}
