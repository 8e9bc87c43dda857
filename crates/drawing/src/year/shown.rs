//! From what was marched to what is drawn.

use core::ops::Range;

use dewrun_run::{Run, Tube, WET_SENSOR_MIST};
use dewrun_season::told::{StoreKind, chamber_humidity, is_wet, trouble_name};
use dewrun_season::{WaterYear, YearOutcome};

use super::{Flow, Standing, Step, TRAP, Year};

/// Seconds of a week.
const WEEK_S: i64 = 604_800;
/// A low point in which never more than this stands is not shown, L.
const LEAST_L: f64 = 1e-4;
/// So many traps and low points are shown.
const MOST_LANES: usize = 3;

/// A marched year as it is shown.
#[must_use]
pub fn year_shown(run: &Run, outcome: &YearOutcome) -> Year {
    let rating = run.detector.humidity_rating;
    let rating = rating.map(|rating| rating.to_fraction());
    let step = |(at, start_s): (usize, &i64)| {
        let hours = &outcome.hourly.hours;
        let (hour, sum) = (hours.hour(at)?, outcome.sums.get(at)?);
        let chamber = chamber_humidity(hours, at, sum);
        let dew_point_c = outcome.hourly.duct_dew_point_c(at);
        Some(Step {
            start_s: *start_s,
            seconds: sum.seconds,
            air_c: hour.air_c,
            dew_point_c: dew_point_c.unwrap_or(f64::NAN),
            formed_g: 1000.0 * sum.condensed_kg,
            is_wet: is_wet(sum),
            mist: sum.chamber.mist,
            is_misty: WET_SENSOR_MIST < sum.chamber.mist,
            ice_g: 1000.0 * sum.frost_kg,
            chamber,
            is_over: rating.is_some_and(|most| most < chamber),
            margin_k: dew_point_c.map_or(f64::NAN, |point_c| sum.coldest_wall_c - point_c),
            ..with_water(outcome, at)
        })
    };
    let starts = outcome.hourly.start_s.iter().enumerate();
    Year {
        steps: starts.filter_map(step).collect(),
        is_typical: outcome.hourly.is_typical_year,
        rating_percent: rating.map(|rating| 100.0 * rating),
        follows_water: outcome.water.is_ok(),
        by_bound_h: outcome.by_bound_hours,
        first_critical: first_critical(outcome),
        standing: standing(outcome),
        flow: outcome.water.as_ref().ok().map(|water| Flow {
            percent: water
                .hours
                .iter()
                .map(|hour| 100.0 * hour.reading)
                .collect(),
            limits: water.limits.map(|limits| limits.map(|limit| 100.0 * limit)),
        }),
        ..Year::default()
    }
}

/// What the water that stands makes of a step; nothing where it was not followed.
fn with_water(outcome: &YearOutcome, at: usize) -> Step {
    let hours = outcome.water.as_ref().map(|water| &water.hours);
    let states = hours.ok().and_then(|hours| hours.get(at));
    states.map_or_else(Step::default, |hour| Step {
        blind: hour.states.blind,
        closed: hour.states.sealed.max(hour.states.iced),
        beyond: hour.states.low + hour.states.high,
        ..Step::default()
    })
}

/// The first week that makes trouble, and which.
fn first_critical(outcome: &YearOutcome) -> Option<(Range<usize>, &'static str)> {
    let week = outcome.water.as_ref().ok()?.sum.first_critical?;
    let starts = &outcome.hourly.start_s;
    let from_s = starts.first()? + WEEK_S * i64::from(week.week);
    let from = starts.partition_point(|start| *start < from_s);
    let until = starts.partition_point(|start| *start < from_s + WEEK_S);
    Some((from..until, trouble_name(week.trouble)))
}

/// The traps, and the low points in which most stands.
fn standing(outcome: &YearOutcome) -> Vec<Standing> {
    let Ok(water) = &outcome.water else {
        return Vec::new();
    };
    let count = water.stores.len().max(1);
    let mut found: Vec<(f64, Standing)> = Vec::new();
    for (number, store) in water.stores.iter().enumerate() {
        // A kilogram of water is a litre.
        let levels = water.levels_kg.iter().skip(number).step_by(count);
        let level_l: Vec<f64> = levels.copied().collect();
        let most = level_l.iter().copied().fold(0.0, f64::max);
        let (what, full) = match store.kind {
            StoreKind::Trap(_) => (TRAP, (store.capacity_kg, "full,")),
            StoreKind::Pool { seals_at_kg, .. } => ("low point", (seals_at_kg, "closed from")),
        };
        let is_trap = matches!(store.kind, StoreKind::Trap(_));
        if !is_trap && most < LEAST_L {
            continue;
        }
        let told = Standing {
            what,
            at_m: store.at.to_metres(),
            is_exhaust: store.tube == Tube::Exhaust,
            full: (full.0.is_finite() && 0.0 < full.0).then_some(full),
            emptied: if is_trap {
                emptied(water, &level_l)
            } else {
                Vec::new()
            },
            level_l,
        };
        // Traps first, then low points by what stands in them.
        found.push((if is_trap { f64::INFINITY } else { most }, told));
    }
    found.sort_by(|one, next| next.0.total_cmp(&one.0));
    found.truncate(MOST_LANES);
    found.into_iter().map(|(_, standing)| standing).collect()
}

/// The steps after which less stands because a visit let it out.
fn emptied(water: &WaterYear, level_l: &[f64]) -> Vec<usize> {
    let is_emptied = |at: &usize| {
        let level = |at: usize| level_l.get(at).copied().unwrap_or(0.0);
        let let_out = water
            .hours
            .get(*at)
            .map_or(0.0, |hour| hour.went.let_out_kg);
        0.0 < let_out && level(*at) < level(at.saturating_sub(1))
    };
    (1..level_l.len()).filter(is_emptied).collect()
}
