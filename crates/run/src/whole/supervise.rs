//! Flow in every expected state and fault, and what airflow limits make of them.

use dewrun_airflow::{
    AirflowLimits, Expected, Line, Observed, State, Usual, airflow, in_the_way, judge,
    tightest_limits,
};
use dewrun_quantity::Pressure;

use super::error::WholeError;
use super::fitted::Fitted;
use super::outcome::{AirflowOutcome, Change, FaultOutcome, GivenLimits, StateKind, StateOutcome};
use crate::input::Run;
use crate::installation::Installation;

/// The air through the line, its states and faults, and the limits.
pub(super) fn supervise(
    run: &Run,
    installation: &Installation,
    fitted: &Fitted<'_>,
) -> Result<AirflowOutcome, WholeError> {
    let usual = Usual {
        dust_after_year: installation.dust_after_year,
        ..Usual::PRACTICE
    };
    let mut unanswered = 0;
    let states = states(installation, fitted, &usual, &mut unanswered);
    let faults = faults(run, installation, fitted, &usual, &mut unanswered);
    let reading_now = installation
        .sensor
        .reading(&fitted.now.value, &fitted.airflow);
    let mut outcome = AirflowOutcome {
        fan_speed: fitted.fan_speed,
        fitted: fitted.airflow.clone(),
        now: fitted.now.value.clone(),
        reading_now,
        notes: fitted.now.notes.clone(),
        states,
        faults,
        unanswered,
        recommended: None,
        given: None,
        change: None,
    };
    judge_limits(installation, &mut outcome)?;
    Ok(outcome)
}

fn states(
    installation: &Installation,
    fitted: &Fitted<'_>,
    usual: &Usual,
    unanswered: &mut usize,
) -> Vec<StateOutcome> {
    let [colder, warmer] = installation.season.map(|by| by.to_kelvins());
    let seasons = [
        (StateKind::Cold, fitted.warmer(-colder)),
        (StateKind::Warm, fitted.warmer(warmer)),
    ];
    let mut found = Vec::new();
    let mut answer = |line: &Line, kind: StateKind, state: &State| match airflow(line, state) {
        Ok(answer) => found.push(StateOutcome {
            state: kind,
            reading: installation.sensor.reading(&answer.value, &fitted.airflow),
            airflow: answer.value,
        }),
        Err(_) => *unanswered += 1,
    };
    for (expected, state) in usual.states() {
        answer(&fitted.line, StateKind::Usual(expected), &state);
    }
    for (kind, line) in &seasons {
        answer(line, *kind, &State::default());
    }
    found
}

fn faults(
    run: &Run,
    installation: &Installation,
    fitted: &Fitted<'_>,
    usual: &Usual,
    unanswered: &mut usize,
) -> Vec<FaultOutcome> {
    let around = |side, stretch: usize| {
        let legs = match side {
            dewrun_airflow::Side::Intake => &run.intake,
            dewrun_airflow::Side::Exhaust => &run.exhaust,
        };
        let space = legs.get(stretch).map(|leg| leg.space);
        let found = space.and_then(|space| installation.spaces.get(space));
        found.copied().unwrap_or(Pressure::ZERO)
    };
    let mut found = Vec::new();
    for (fault, state) in usual.faults(&fitted.line, around) {
        match airflow(&fitted.line, &state) {
            Ok(answer) => found.push(FaultOutcome {
                fault,
                reading: installation.sensor.reading(&answer.value, &fitted.airflow),
                airflow: answer.value,
                recommended: None,
                given: None,
            }),
            Err(_) => *unanswered += 1,
        }
    }
    found
}

/// The tightest limits, what they and those in use catch, and what would help.
fn judge_limits(
    installation: &Installation,
    outcome: &mut AirflowOutcome,
) -> Result<(), WholeError> {
    let readings: Vec<f64> = outcome.states.iter().map(|state| state.reading).collect();
    // Where nothing flowed as fitted, no reading is a part of it.
    let Ok(tightest) = tightest_limits(&readings, installation.limit_margin) else {
        return Ok(());
    };
    outcome.recommended = Some((tightest.limits, tightest.low_set_by, tightest.high_set_by));
    let observed = |reading, share| Observed { reading, share };
    let states: Vec<Observed> = outcome
        .states
        .iter()
        .map(|state| observed(state.reading, state.airflow.share))
        .collect();
    let faults: Vec<Observed> = outcome
        .faults
        .iter()
        .map(|fault| observed(fault.reading, fault.airflow.share))
        .collect();
    let judged = judge(tightest.limits, &states, &faults);
    for (fault, verdict) in outcome.faults.iter_mut().zip(&judged.verdicts) {
        fault.recommended = Some(*verdict);
    }
    if let Some([low, high]) = installation.limits {
        let limits = AirflowLimits::new(low, high)?;
        let judged = judge(limits, &states, &faults);
        for (fault, verdict) in outcome.faults.iter_mut().zip(&judged.verdicts) {
            fault.given = Some(*verdict);
        }
        outcome.given = Some(GivenLimits {
            limits,
            false_alarms: judged.false_alarms,
        });
    }
    let worst = judged.missed().first().copied();
    outcome.change = worst.and_then(|(fault, _)| {
        let reading = faults.get(fault)?.reading;
        let way = in_the_way(reading, &readings, installation.limit_margin);
        Some(cheapest(outcome, &way.states))
    });
    Ok(())
}

/// The cheapest change for the states that stand in the way of a fault.
fn cheapest(outcome: &AirflowOutcome, in_the_way: &[usize]) -> Change {
    let kinds = || {
        let all = in_the_way
            .iter()
            .filter_map(|place| outcome.states.get(*place));
        all.map(|state| state.state)
    };
    let only = |is_it: &dyn Fn(StateKind) -> bool| kinds().next().is_some() && kinds().all(is_it);
    let filter = |kind| matches!(kind, StateKind::Usual(Expected::FilterAfter(_)));
    let duct = |kind| matches!(kind, StateKind::Usual(Expected::DuctFanOff));
    let season = |kind| matches!(kind, StateKind::Cold | StateKind::Warm);
    let speed = |kind| matches!(kind, StateKind::Usual(Expected::FanSpeed(_)));
    if only(&filter) {
        Change::FilterInterval
    } else if only(&|kind| filter(kind) || duct(kind)) {
        Change::NewAsFitted
    } else if only(&|kind| filter(kind) || duct(kind) || season(kind)) {
        Change::Season
    } else if only(&|kind| filter(kind) || duct(kind) || season(kind) || speed(kind)) {
        Change::FanSpeed
    } else {
        Change::ShorterTube
    }
}
