//! Water in the tubes, as the answer file has it.

use dewrun_run::told::{Course, Destination, Freezes, FromDuct, Lock, Trouble, TroubleAt};
use dewrun_run::{
    HangerAdvice, IceOutcome, LegWater, LowPoint, Proposal, TrapOutcome, TubeWater, Whole,
};

use super::number::{
    days, finite_percent, grams_per_hour, hours, litres, mass, metres, millilitres, millimetres,
    pascals, speed,
};
use crate::Names;
use crate::output::{
    Figure, IceOutput, LegWaterOutput, LowPointOutput, PoolLevelOutput, ProposedTrapOutput,
    TrapOutput, TroubleOutput, TubeWaterOutput, WaterOutput,
};

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
        dragged: leg.dragged,
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
        levels: low
            .levels
            .iter()
            .map(|level| PoolLevelOutput {
                depth_mm: millimetres(level.depth),
                flow_l_min: litres(level.flow),
                reading_percent: finite_percent(level.reading),
            })
            .collect(),
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
