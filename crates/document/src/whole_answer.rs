//! From the engine's answer on water and air to the answer file's types, by hand.

use dewrun_quantity::{Length, Mass, MassFlow, Pressure, Speed, Time, Volume, VolumeFlow};
use dewrun_run::told::{
    AirPlace, Course, Destination, Direction, Freezes, FromDuct, Lock, Trip, Trouble, TroubleAt,
    Verdict,
};
use dewrun_run::{
    AirflowOutcome, Blind, Change, FaultOutcome, HangerAdvice, IceOutcome, LegWater, LowPoint,
    Proposal, StateOutcome, TrapOutcome, Tube, TubeWater, Whole, fault_words,
};

use crate::output::{
    AirflowOutput, AssumedOutput, BlindOutput, FaultOutput, Figure, IceOutput, InUseOutput,
    LegWaterOutput, LowPointOutput, PressureOutput, ProposedTrapOutput, RecommendedOutput,
    StateOutput, TransportOutput, TrapOutput, TroubleOutput, TubeWaterOutput, WaterOutput,
};
use crate::{Assumed, Names};

/// Water in both tubes.
pub(crate) fn water(whole: &Whole, names: &Names) -> WaterOutput {
    WaterOutput {
        intake: tube(&whole.intake, &names.intake),
        exhaust: whole
            .exhaust
            .as_ref()
            .map(|exhaust| tube(exhaust, &names.exhaust)),
    }
}

fn tube(water: &TubeWater, ids: &[String]) -> TubeWaterOutput {
    let id = |at: usize| ids.get(at).cloned().unwrap_or_default();
    let legs = water.legs.iter().enumerate();
    TubeWaterOutput {
        legs: legs.map(|(at, one)| leg(one, id(at))).collect(),
        low_points: water.low_points.iter().map(low_point).collect(),
        traps: water.traps.iter().map(trap).collect(),
        proposed_traps: water.proposals.iter().map(proposal).collect(),
        out_at_start_g_h: grams_per_hour(water.out_at_start),
        out_at_end_g_h: grams_per_hour(water.out_at_end),
        troubles: troubles(water),
        drain_interval_d: water.drain_interval.map(days),
        ice: water.ice.iter().map(|one| ice(one, id(one.leg))).collect(),
        from_duct: match water.from_duct {
            FromDuct::LyingWater => "lying_water",
            FromDuct::Drops => "drops",
            FromDuct::Nothing => "nothing",
        }
        .to_owned(),
    }
}

fn leg(leg: &LegWater, id: String) -> LegWaterOutput {
    let report = &leg.report;
    let tangent = report.fall.tangent();
    let (word, largest, sag) = match leg.hangers {
        HangerAdvice::Steep => ("steep", None, None),
        HangerAdvice::AllAlong => ("all_along", None, None),
        HangerAdvice::Level => ("level", None, None),
        HangerAdvice::Spacing { largest, now } => ("spacing", Some(largest), now),
    };
    let [start, end] = report.heights;
    LegWaterOutput {
        id,
        course: match report.course {
            Course::WithAir => "with_air",
            Course::AgainstAir => "against_air",
            Course::Level => "level",
        }
        .to_owned(),
        fall_percent: tangent.is_finite().then_some(Figure(100.0 * tangent)),
        drop_mm: Figure((start - end).to_millimetres().abs()),
        stands: report.flat,
        holds_g: mass(report.holds),
        lock: match leg.lock {
            Lock::Runs => "runs",
            Lock::Level => "level",
            Lock::Upright => "upright",
        }
        .to_owned(),
        hangers: word.to_owned(),
        largest_spacing_m: largest.map(metres),
        sag_mm: sag.map(|(_, sag)| millimetres(sag.depth)),
        steepest_percent: sag.map(|(_, sag)| Figure(100.0 * sag.steepest.tangent())),
        air_speed_m_s: speed(leg.air_speed),
        flooding_speed_m_s: leg.flooding.map(speed),
    }
}

fn low_point(low: &LowPoint) -> LowPointOutput {
    LowPointOutput {
        at_m: metres(low.at),
        until_m: metres(low.until),
        water_g_h: grams_per_hour(low.rate),
        seal_ml: millilitres(low.seal_volume),
        capacity_ml: millilitres(low.capacity),
        slug_ml: millilitres(low.slug_volume),
        first_slugs_h: low.first_slugs.map(hours),
        low_limit_h: low.trips.map(hours),
        sealed_h: low.sealed.map(hours),
        standing_g: mass(low.amount),
        depth_mm: millimetres(low.stand.depth),
        bubbling_pa: pascals(low.bubbling),
        runs_over_to: low.runs_over_to.map(destination),
        freezes: match low.freezes {
            Freezes::No => "no",
            Freezes::Perhaps => "perhaps",
            Freezes::Surely => "surely",
        }
        .to_owned(),
        freezing_h: low.freezing_time.map(hours),
    }
}

/// Where water goes, in a word; low points and traps are counted from 1.
fn destination(to: Destination) -> String {
    match to {
        Destination::Start => "start".to_owned(),
        Destination::End => "end".to_owned(),
        Destination::Trap(at) => format!("trap {}", at + 1),
        Destination::Pool(at) => format!("low point {}", at + 1),
    }
}

fn trap(trap: &TrapOutcome) -> TrapOutput {
    TrapOutput {
        at_m: metres(trap.at),
        water_g_h: grams_per_hour(trap.rate),
        full_d: trap.full.map(days),
        overflow: trap.overflow.map(destination),
        running_pa: pascals(trap.running),
        starting_pa: pascals(trap.starting),
        needs_drop_mm: millimetres(trap.needs.outlet_drop),
        needs_seal_mm: millimetres(trap.needs.seal),
        drop_is_enough: trap.drop_is_enough,
        seal_is_enough: trap.seal_is_enough,
        dries_out_d: trap.dries_out.map(days),
        head_mm: millimetres(trap.opened.head),
        gives_water: trap.opened.gives_water,
        runs_out_g: mass(trap.opened.runs_out),
    }
}

fn proposal(proposal: &Proposal) -> ProposedTrapOutput {
    let trap = &proposal.trap;
    ProposedTrapOutput {
        at_m: trap.at.map(metres),
        low_point_m: metres(trap.low_point),
        keeps_dry: match trap.instead_of {
            Destination::Pool(_) | Destination::Trap(_) => "low_point",
            Destination::Start => "start",
            Destination::End => "end",
        }
        .to_owned(),
        water_g_h: grams_per_hour(trap.rate),
        over_mm: millimetres(trap.over),
        leaves_ml: millilitres(trap.leaves),
        // A gram of water is a millilitre, within what amounts of water are known to.
        size_ml: Figure(proposal.capacity.to_grams()),
        needs_drop_mm: millimetres(proposal.needs.outlet_drop),
        needs_seal_mm: millimetres(proposal.needs.seal),
    }
}

fn troubles(water: &TubeWater) -> Vec<TroubleOutput> {
    let place = |at| match at {
        TroubleAt::Pool(number) => water.drainage.pools.get(number).map(|pool| pool.at),
        TroubleAt::Trap(number) => water.traps.get(number).map(|trap| trap.at),
    };
    let all = water.troubles.iter();
    all.map(|one| TroubleOutput {
        trouble: match one.trouble {
            Trouble::FirstSlugs => "first_slugs",
            Trouble::LowLimit => "low_limit",
            Trouble::Sealed => "sealed",
            Trouble::TrapFull => "trap_full",
        }
        .to_owned(),
        at_m: metres(place(one.at).unwrap_or_default()),
        after_h: hours(one.after),
    })
    .collect()
}

fn ice(ice: &IceOutcome, leg: String) -> IceOutput {
    IceOutput {
        leg,
        frost_g_h: grams_per_hour(ice.rate),
        at_m: metres(ice.at),
        closed_h: ice.closed.map(hours),
        free_percent: Figure(100.0 * ice.free_share),
        thaw_g: mass(ice.thaw),
    }
}

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
        reading_percent: percent(outcome.reading_now),
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
        reading_percent: percent(state.reading),
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
        reading_percent: percent(fault.reading),
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

const fn metres(length: Length) -> Figure {
    Figure(length.to_metres())
}

const fn millimetres(length: Length) -> Figure {
    Figure(length.to_millimetres())
}

const fn millilitres(volume: Volume) -> Figure {
    Figure(volume.to_millilitres())
}

const fn mass(mass: Mass) -> Figure {
    Figure(mass.to_grams())
}

const fn grams_per_hour(flow: MassFlow) -> Figure {
    Figure(flow.to_grams_per_hour())
}

const fn litres(flow: VolumeFlow) -> Figure {
    Figure(flow.to_litres_per_minute())
}

const fn pascals(pressure: Pressure) -> Figure {
    Figure(pressure.to_pascals())
}

const fn speed(speed: Speed) -> Figure {
    Figure(speed.to_metres_per_second())
}

const fn hours(time: Time) -> Figure {
    Figure(time.to_hours())
}

const fn days(time: Time) -> Figure {
    Figure(time.to_days())
}

const fn seconds(time: Time) -> Figure {
    Figure(time.to_seconds())
}

const fn percent(share: f64) -> Figure {
    Figure(100.0 * share)
}
