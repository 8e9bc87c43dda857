//! The value of a figure of water and airflow.

use dewrun_quantity::{Length, MassFlow, Time, Volume};

use super::{Figure, Spot};
use crate::error::Tube;
use crate::whole::{
    AirflowOutcome, HangerAdvice, IceOutcome, LegWater, LowPoint, Proposal, TrapOutcome, TubeWater,
    Whole, fault_words,
};

/// Spots nearer to each other than this are the same, m.
const SAME_M: f64 = 1e-3;

/// The value of a figure of water or airflow at a spot, in the unit of its [`kind`](Figure::kind); none where it does not apply.
///
/// Of several low points, traps or legs it is the one nearest to the spot; of a tube as a whole, the first.
#[must_use]
pub fn whole_value(whole: &Whole, figure: Figure, spot: Spot) -> Option<f64> {
    of_air(&whole.airflow, figure, spot).or_else(|| {
        let water = match spot.tube {
            Tube::Intake => &whole.intake,
            Tube::Exhaust => whole.exhaust.as_ref()?,
        };
        of_tube(water, figure)
            .or_else(|| at_proposal(water, figure, spot))
            .or_else(|| of_leg(leg(water, spot)?, figure))
            .or_else(|| of_low_point(nearest(&water.low_points, spot, |low| low.at)?, figure))
            .or_else(|| of_trap(nearest(&water.traps, spot, |trap| trap.at)?, figure))
            .or_else(|| of_proposal(nearest(&water.proposals, spot, place_of)?, figure))
            .or_else(|| of_ice(nearest(&water.ice, spot, |ice| ice.at)?, figure))
    })
}

fn of_air(air: &AirflowOutcome, figure: Figure, spot: Spot) -> Option<f64> {
    let now = &air.now;
    let limits = air.recommended.map(|(limits, ..)| limits);
    let transport = now.transport;
    match figure {
        Figure::FanSpeed => Some(air.fan_speed),
        Figure::SensorFlow => Some(now.sensor.to_litres_per_minute()),
        Figure::SampleShare => Some(100.0 * share(air, spot)),
        Figure::FlowReading => Some(100.0 * air.reading_now).filter(|reading| reading.is_finite()),
        Figure::TransportFirst => transport.map(|band| band.first.to_seconds()),
        Figure::TransportPlug => transport.map(|band| band.plug.to_seconds()),
        Figure::TransportNinety => transport.map(|band| band.ninety_percent.to_seconds()),
        Figure::LimitLow => limits.map(|limits| 100.0 * limits.low()),
        Figure::LimitHigh => limits.map(|limits| 100.0 * limits.high()),
        Figure::FaultPlace => fault_at(air, spot).map(|(_, at_m)| at_m),
        Figure::StatesOpen => u32::try_from(air.unanswered).ok().map(f64::from),
        _ => None,
    }
}

/// Sample share as it is; with the fault that is told at the spot, where one is.
fn share(air: &AirflowOutcome, spot: Spot) -> f64 {
    let here = fault_at(air, spot).filter(|(_, at_m)| {
        let is_it = |spot_m: f64| (spot_m - at_m).abs() < SAME_M;
        spot.at_m.is_some_and(is_it)
    });
    here.map_or(air.now.share, |(share, _)| share)
}

/// Sample share and place of the fault that is missed nearest to a spot; of a tube as a whole, the worst.
fn fault_at(air: &AirflowOutcome, spot: Spot) -> Option<(f64, f64)> {
    let missed = air.missed().into_iter().filter_map(|fault| {
        let (tube, at_m) = fault_words(fault.fault).1?;
        (tube == spot.tube).then_some((fault.airflow.share, at_m))
    });
    let Some(spot_m) = spot.at_m else {
        return missed.into_iter().next();
    };
    let away = |(_, at_m): &(f64, f64)| (at_m - spot_m).abs();
    missed.min_by(|one, next| away(one).total_cmp(&away(next)))
}

fn of_tube(water: &TubeWater, figure: Figure) -> Option<f64> {
    match figure {
        Figure::RunsOut => {
            let out = water.out_at_start.max(water.out_at_end);
            Some(out.to_grams_per_hour())
        }
        Figure::TimeToTrouble => water.troubles.first().map(|first| first.after.to_hours()),
        Figure::DrainIntervalProposed => water.drain_interval.map(Time::to_days),
        _ => None,
    }
}

fn of_leg(leg: &LegWater, figure: Figure) -> Option<f64> {
    let report = &leg.report;
    let (largest, sag) = match leg.hangers {
        HangerAdvice::Spacing { largest, now } => (Some(largest), now.map(|(_, sag)| sag)),
        HangerAdvice::Steep | HangerAdvice::AllAlong | HangerAdvice::Level => (None, None),
    };
    let [start, end] = report.heights;
    let percent = |tangent: f64| Some(100.0 * tangent).filter(|fall| fall.is_finite());
    match figure {
        Figure::LegFall => percent(report.fall.tangent()),
        Figure::LegDrop => Some((start - end).to_millimetres().abs()),
        Figure::LegHolds => Some(report.holds.to_grams()),
        Figure::HangerLargest => largest.map(Length::to_metres),
        Figure::HangerSag => sag.map(|sag| sag.depth.to_millimetres()),
        Figure::HangerSlope => percent(sag?.steepest.tangent()),
        Figure::AirSpeed => Some(leg.air_speed.to_metres_per_second()),
        Figure::FloodingSpeed => leg.flooding.map(|speed| speed.to_metres_per_second()),
        _ => None,
    }
}

fn of_low_point(low: &LowPoint, figure: Figure) -> Option<f64> {
    match figure {
        Figure::LowPoint => Some(low.at.to_metres()),
        Figure::LowPointWater => Some(low.rate.to_grams_per_hour()),
        Figure::SealVolume => Some(low.seal_volume.to_millilitres()),
        Figure::PoolCapacity => Some(low.capacity.to_millilitres()),
        Figure::SlugVolume => Some(low.slug_volume.to_millilitres()),
        Figure::TimeToSlugs => low.first_slugs.map(Time::to_hours),
        Figure::TimeToLimit => low.trips.map(Time::to_hours),
        Figure::TimeToSeal => low.sealed.map(Time::to_hours),
        Figure::PoolStanding => Some(low.amount.to_grams()),
        Figure::PoolDepth => Some(low.stand.depth.to_millimetres()),
        Figure::BubblingPressure => Some(low.bubbling.to_pascals()),
        Figure::FreezingTime => low.freezing_time.map(Time::to_hours),
        _ => None,
    }
}

/// Water that a missing trap would catch, where the spot is that trap's: what comes to an end of the tube has no low point.
fn at_proposal(water: &TubeWater, figure: Figure, spot: Spot) -> Option<f64> {
    let here = nearest(&water.proposals, spot, place_of)?;
    let is_here = (place_of(here).to_metres() - spot.at_m?).abs() < SAME_M;
    is_here.then(|| of_proposal(here, figure)).flatten()
}

fn of_trap(trap: &TrapOutcome, figure: Figure) -> Option<f64> {
    match figure {
        Figure::TrapWater => Some(trap.rate.to_grams_per_hour()),
        Figure::TrapFull => trap.full.map(Time::to_days),
        Figure::TrapPressure => Some(trap.running.to_pascals()),
        Figure::TrapDropNeeded => Some(trap.needs.outlet_drop.to_millimetres()),
        Figure::TrapSealNeeded => Some(trap.needs.seal.to_millimetres()),
        Figure::TrapDries => trap.dries_out.map(Time::to_days),
        Figure::DrainHead => Some(trap.opened.head.to_millimetres()),
        Figure::DrainRunsOut => Some(trap.opened.runs_out.to_grams()),
        _ => None,
    }
}

fn of_proposal(proposal: &Proposal, figure: Figure) -> Option<f64> {
    let trap = &proposal.trap;
    match figure {
        Figure::LowPoint => Some(trap.low_point.to_metres()),
        Figure::LowPointWater => Some(MassFlow::to_grams_per_hour(trap.rate)),
        Figure::TrapProposed => trap.at.map(Length::to_metres),
        Figure::TrapOver => Some(trap.over.to_millimetres()),
        Figure::TrapLeaves => Some(Volume::to_millilitres(trap.leaves)),
        // Water of one gram takes a millilitre.
        Figure::TrapSize => Some(proposal.capacity.to_grams()),
        Figure::TrapDropNeeded => Some(proposal.needs.outlet_drop.to_millimetres()),
        Figure::TrapSealNeeded => Some(proposal.needs.seal.to_millimetres()),
        _ => None,
    }
}

fn of_ice(ice: &IceOutcome, figure: Figure) -> Option<f64> {
    match figure {
        Figure::FrostMostAt => Some(ice.at.to_metres()),
        Figure::TimeToIce => ice.closed.map(Time::to_hours),
        Figure::FrostFreeShare => Some(100.0 * ice.free_share),
        Figure::ThawSlug => Some(ice.thaw.to_grams()),
        _ => None,
    }
}

fn place_of(proposal: &Proposal) -> Length {
    proposal.trap.at.unwrap_or(proposal.trap.low_point)
}

fn leg(water: &TubeWater, spot: Spot) -> Option<&LegWater> {
    if let Some(leg) = spot.leg {
        return water.legs.get(leg);
    }
    let here = Length::metres(spot.at_m?);
    let ends_behind = |leg: &&LegWater| here <= leg.report.to;
    water.legs.iter().find(ends_behind)
}

/// The one nearest to a spot; the first where the spot is a tube as a whole.
fn nearest<T>(all: &[T], spot: Spot, at: impl Fn(&T) -> Length) -> Option<&T> {
    let Some(here) = spot.at_m else {
        return all.first();
    };
    let away = |one: &&T| (at(one).to_metres() - here).abs();
    all.iter()
        .min_by(|one, next| away(one).total_cmp(&away(next)))
}
