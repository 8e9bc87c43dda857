//! The air through a run, and blindness, as the answer file has them.

use dewrun_quantity::Pressure;
use dewrun_run::told::{AirPlace, Direction, Trip, Verdict};
use dewrun_run::{AirflowOutcome, Blind, Change, FaultOutcome, StateOutcome, Tube, fault_words};

use super::number::{finite_percent, hours, litres, metres, pascals, percent, seconds};
use crate::Assumed;
use crate::output::{
    AirflowOutput, AssumedOutput, BlindOutput, FaultOutput, Figure, InUseOutput, PressureOutput,
    RecommendedOutput, StateOutput, TransportOutput,
};

/// Why the detector may not be sampling its duct.
pub(crate) fn blind(blind: &Blind) -> BlindOutput {
    let plain = |why: &str| BlindOutput {
        why: why.to_owned(),
        tube: None,
        at_m: None,
        after_h: None,
        share_percent: None,
    };
    let closed = |why, tube, at, after| BlindOutput {
        tube: Some(tube_word(tube).to_owned()),
        at_m: Some(metres(at)),
        after_h: Some(hours(after)),
        ..plain(why)
    };
    match *blind {
        Blind::Reversed => plain("reversed"),
        Blind::Still => plain("still"),
        Blind::Diluted { share } => BlindOutput {
            share_percent: Some(Figure(100.0 * share)),
            ..plain("diluted")
        },
        Blind::Iced { tube, at, after } => closed("iced", tube, at, after),
        Blind::Sealed { tube, at, after } => closed("sealed", tube, at, after),
    }
}

/// The air through a run.
pub(crate) fn airflow(outcome: &AirflowOutcome) -> AirflowOutput {
    let now = &outcome.now;
    AirflowOutput {
        direction: match now.direction {
            Direction::Forward => "forward",
            Direction::Reversed => "reversed",
            Direction::Still => "still",
        }
        .to_owned(),
        flow_l_min: litres(now.sensor),
        share_percent: percent(now.share),
        reading_percent: finite_percent(outcome.reading_now),
        fan_speed: Figure(outcome.fan_speed),
        transport: now.transport.map(|band| TransportOutput {
            first_s: seconds(band.first),
            plug_s: seconds(band.plug),
            ninety_percent_s: seconds(band.ninety_percent),
        }),
        pressures: now
            .pressures
            .iter()
            .map(|at| pressure(&place(at.place), at.pressure))
            .collect(),
        budget: budget(outcome),
        states: outcome.states.iter().map(state).collect(),
        faults: outcome.faults.iter().map(fault).collect(),
        unanswered: Figure(u32::try_from(outcome.unanswered).map_or(f64::MAX, f64::from)),
        recommended: outcome
            .recommended
            .map(|(limits, low, high)| RecommendedOutput {
                low_percent: percent(limits.low()),
                high_percent: percent(limits.high()),
                low_set_by: state_words(outcome, low),
                high_set_by: state_words(outcome, high),
            }),
        in_use: outcome.given.as_ref().map(|given| InUseOutput {
            low_percent: percent(given.limits.low()),
            high_percent: percent(given.limits.high()),
            false_alarms: given
                .false_alarms
                .iter()
                .map(|(at, _)| state_words(outcome, *at))
                .collect(),
        }),
        cheapest_change: outcome.change.map(|change| {
            match change {
                Change::FilterInterval => "filter_interval",
                Change::NewAsFitted => "new_as_fitted",
                Change::Season => "season",
                Change::FanSpeed => "fan_speed",
                Change::ShorterTube => "shorter_tube",
            }
            .to_owned()
        }),
    }
}

fn place(place: AirPlace) -> String {
    match place {
        AirPlace::DuctAtIntake => "duct_at_intake".to_owned(),
        AirPlace::Inlet => "behind_holes".to_owned(),
        AirPlace::PartedJoint => "parted_joint".to_owned(),
        AirPlace::Leak(number) => format!("leak_{}", number + 1),
        AirPlace::DetectorInlet => "detector_inlet".to_owned(),
        AirPlace::FilterOutlet => "filter_outlet".to_owned(),
        AirPlace::FanInlet => "fan_inlet".to_owned(),
        AirPlace::FanOutlet => "fan_outlet".to_owned(),
        AirPlace::ExhaustEnd => "exhaust_end".to_owned(),
        AirPlace::DuctAtExhaust => "duct_at_exhaust".to_owned(),
    }
}

fn budget(outcome: &AirflowOutcome) -> Vec<PressureOutput> {
    let budget = &outcome.now.budget;
    [
        ("fan", budget.fan),
        ("duct", budget.ends),
        ("holes", budget.inlet),
        ("intake", budget.intake.spent()),
        ("filter", budget.filter),
        ("chamber", budget.chamber),
        ("exhaust", budget.exhaust.spent()),
        ("outlet", budget.outlet),
    ]
    .map(|(part, spent)| pressure(part, spent))
    .into()
}

fn pressure(part: &str, pressure: Pressure) -> PressureOutput {
    PressureOutput {
        part: part.to_owned(),
        pressure_pa: pascals(pressure),
    }
}

fn state_words(outcome: &AirflowOutcome, at: usize) -> String {
    let found = outcome.states.get(at);
    found.map_or_else(String::new, |state| state.state.words())
}

fn state(state: &StateOutcome) -> StateOutput {
    StateOutput {
        state: state.state.words(),
        flow_l_min: litres(state.airflow.sensor),
        reading_percent: finite_percent(state.reading),
        share_percent: percent(state.airflow.share),
    }
}

fn fault(fault: &FaultOutcome) -> FaultOutput {
    let (words, at) = fault_words(fault.fault);
    let verdict = |verdict: Verdict| {
        match verdict {
            Verdict::Caught(Trip::Low) => "low",
            Verdict::Caught(Trip::High) => "high",
            Verdict::Missed { .. } => "not_seen",
        }
        .to_owned()
    };
    FaultOutput {
        fault: words.replace(' ', "_"),
        tube: at.map(|(tube, _)| tube_word(tube).to_owned()),
        at_m: at.map(|(_, metres)| Figure(metres)),
        flow_l_min: litres(fault.airflow.sensor),
        reading_percent: finite_percent(fault.reading),
        share_percent: percent(fault.airflow.share),
        recommended: fault.recommended.map(verdict),
        in_use: fault.given.map(verdict),
    }
}

/// What stands in for what the project leaves out.
pub(crate) fn assumed(assumed: &Assumed) -> AssumedOutput {
    AssumedOutput {
        figure: assumed.figure.id().to_owned(),
        path: assumed.path.as_str().to_owned(),
        row: assumed.row.to_owned(),
        value: Figure(assumed.value),
        low: Figure(assumed.low),
        high: Figure(assumed.high),
    }
}

const fn tube_word(tube: Tube) -> &'static str {
    match tube {
        Tube::Intake => "intake",
        Tube::Exhaust => "exhaust",
    }
}
