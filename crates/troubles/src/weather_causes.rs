//! Causes that follow the weather: their hazard in each hour, as the ensemble has it.
//!
//! What nobody knows of a cause (how much water trips the airflow, how long a seal lasts) is taken at a few values that span what is plausible; all of them common practice, no source.

use dewrun_numeric::elementary::{exp, ln};

use crate::follows::{InTurns, TURNS, left};
use crate::groups::{Alike, Group};
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::modelled::{Hours, LowPoint};
use crate::poisson::count;
use crate::shape::{Hazard, Shape};
use crate::signs::Sign;

/// Water that trips the airflow, as parts of what closes the low point.
const TRIPS: [f64; 4] = [0.13, 0.28, 0.6, 1.2];
/// Where there is no low point that is known, it closes with so much, g.
const SEALING_G: f64 = 300.0;
/// How sharply it trips, as a standard deviation of the logarithm.
const SHARPNESS: f64 = 0.5;
/// Whatever the level, so much of the hazard is that of water that comes.
const LEVEL_UNKNOWN: f64 = 0.15;
/// A seal lasts so many days without water; and so much water fills it again, g.
const SEAL_DAYS: [f64; 5] = [8.0, 14.0, 22.0, 32.0, 46.0];
const REFILLS_G: [f64; 3] = [5.0, 14.0, 35.0];
/// Frost that trips the airflow, as parts of the most of the year.
const FROST_TRIPS: [f64; 3] = [0.1, 0.3, 0.6];
/// Of those who mean to come and look so many have not come an hour later: two days, on the mean.
const PATIENCE: f64 = 0.98;
/// Readings at either end of the log's time that limits set badly may reach: so many of its hours.
const TAILS: [f64; 4] = [0.01, 0.025, 0.05, 0.1];
/// How sharply such an end is known, as a part of the way to the middle; and at the least, as a part of the reading.
const END: (f64, f64) = (0.15, 0.002);
/// What thaws may come down for so many hours.
const THAW_H: usize = 12;
/// How much of a frosty line's trouble comes while frost lies, as it forms, and with what thaws: low airflow, an alarm, water. A line that thaws now and then, and one that stays frozen for weeks.
const FROST_MIXES: [[f64; 5]; 2] = [[0.5, 0.15, 0.1, 0.13, 0.12], [0.88, 0.05, 0.03, 0.02, 0.02]];
/// Found amounts lie about those modelled with this deviation of the logarithm; any amount at all lies about 150 g with that.
const AMOUNT_NEAR: f64 = 0.7;
const AMOUNT_ANY: (f64, f64) = (150.0, 1.4);

/// Shapes that are alike but for their kinds, with what else there is to say of them.
pub(crate) struct Weighed {
    pub(crate) shapes: Vec<Shape>,
    /// What amounts say for it beside times.
    pub(crate) amounts: InTurns,
    /// What narrows the bore in each hour, as a part of that which trips; empty where nothing does, or nothing is known of it.
    pub(crate) narrowed: Vec<f64>,
}

impl Weighed {
    fn by_times(shape: Shape) -> Self {
        Self {
            shapes: vec![shape],
            amounts: [0.0; 1 + TURNS],
            narrowed: Vec::new(),
        }
    }
}

/// Water in a low point: it trips as it reaches a level, and stands there until somebody empties it, mostly within days of the trouble.
pub(crate) fn low_point(hours: &Hours, placed: &[Placed], known: Option<LowPoint>) -> Vec<Weighed> {
    let visits = visits(hours, placed);
    let closes_g = known.map_or(SEALING_G, |known| known.closes_g);
    let of = |weight: f64, trips: &Hazard, stands: &Hazard| -> Option<Shape> {
        Shape::new(
            weight,
            &[
                (EventKind::AirflowLow, 0.48, trips),
                (EventKind::AirflowLow, 0.1, stands),
                (EventKind::WaterFound, 0.13, &visits),
                (EventKind::WaterFound, 0.06, stands),
                (EventKind::Emptied, 0.13, &visits),
                (EventKind::Emptied, 0.06, stands),
                (EventKind::Alarm, 0.04, trips),
            ],
        )
    };
    let mut shapes = Vec::new();
    for group in &hours.groups {
        let weight = group.weight(Alike::Water);
        let runs_g = numbers(&group.runs_g);
        let levels = levels(&runs_g, placed);
        let amounts = amounts(placed, &levels);
        let comes = Hazard::new(runs_g.iter().copied());
        let level = Hazard::new(levels.iter().copied());
        shapes.extend(of(weight, &comes, &level).map(Weighed::by_times));
        for part in TRIPS {
            let trips_g = part * closes_g;
            let near = |level: f64| {
                let z = ln((level / trips_g).max(1e-9)) / SHARPNESS;
                exp(-0.5 * z * z) + LEVEL_UNKNOWN
            };
            // Where no water comes it does not matter how much stands.
            let trips = (runs_g.iter().zip(&levels)).map(|(grams, level)| match grams {
                0.0 => 0.0,
                _ => grams * near(*level),
            });
            let stands = levels.iter().map(|level| level / (level + trips_g));
            let shape = of(0.7 * weight, &Hazard::new(trips), &Hazard::new(stands));
            shapes.extend(shape.map(|shape| Weighed {
                amounts,
                ..Weighed::by_times(shape)
            }));
        }
    }
    shapes
}

/// The hazard of a column of a group.
fn single(column: &[f32]) -> Hazard {
    Hazard::new(column.iter().map(|value| f64::from(*value)))
}

fn numbers(column: &[f32]) -> Vec<f64> {
    column.iter().map(|value| f64::from(*value)).collect()
}

/// How likely somebody comes and looks in each hour: some days after low airflow, hour by hour.
fn visits(hours: &Hours, placed: &[Placed]) -> Hazard {
    let mut came = vec![0.0; hours.len()];
    for one in placed
        .iter()
        .filter(|one| one.kind == EventKind::AirflowLow)
    {
        if let Some(came) = came.get_mut(one.hour) {
            *came += 1.0;
        }
    }
    let mut waits = 0.0;
    Hazard::new(came.iter().map(|came| {
        waits = waits * PATIENCE + came;
        waits
    }))
}

/// Water that came since somebody last let it out, hour by hour, g.
pub(crate) fn levels(runs_g: &[f64], placed: &[Placed]) -> Vec<f64> {
    let mut let_out = vec![false; runs_g.len()];
    for one in placed {
        if matches!(one.kind, EventKind::Emptied | EventKind::WaterFound)
            && let Some(hour) = let_out.get_mut(one.hour)
        {
            *hour = true;
        }
    }
    let mut level = 0.0;
    (runs_g.iter().zip(let_out))
        .map(|(grams, is_let_out)| {
            let stood = level + grams;
            level = if is_let_out { 0.0 } else { stood };
            stood
        })
        .collect()
}

/// By how much amounts that were found speak for the modelled ones, against any amount.
fn amounts(placed: &[Placed], levels: &[f64]) -> InTurns {
    let density = |grams: f64, (middle, deviation): (f64, f64)| {
        let z = ln(grams / middle) / deviation;
        -0.5 * z * z - ln(deviation)
    };
    let says = |one: &Placed| -> Option<f64> {
        let grams = one.grams.filter(|grams| 0.0 < *grams)?;
        let level = levels.get(one.hour).copied()?.max(1.0);
        let near = density(grams, (level, AMOUNT_NEAR));
        Some((near - density(grams, AMOUNT_ANY)).clamp(-1.0, 1.0))
    };
    let mut found = [[0.0]; 1 + TURNS];
    for one in placed {
        if let Some([sum]) = found.get_mut(one.turn) {
            *sum += says(one).unwrap_or(0.0);
        }
    }
    left(found).map(|[sum]| sum)
}

/// Mist or damp at the sensor.
pub(crate) fn mist(hours: &Hours) -> Vec<Weighed> {
    let mut shapes = Vec::new();
    for group in &hours.groups {
        for damp in &group.damp {
            let shape = Shape::new(
                group.weight(Alike::Damp),
                &[(EventKind::Alarm, 1.0, &single(damp))],
            );
            shapes.extend(shape.map(Weighed::by_times));
        }
    }
    shapes
}

/// Frost narrows the bore; what thaws comes down at once, as water or as mist.
pub(crate) fn frost(hours: &Hours) -> Vec<Weighed> {
    let mut shapes = Vec::new();
    for group in &hours.groups {
        shapes.extend(frost_of(group));
    }
    shapes
}

fn frost_of(group: &Group) -> Vec<Weighed> {
    let thaw = numbers(&group.thaw);
    let thaws = Hazard::new((0..thaw.len()).map(|hour| {
        let lately = thaw.get(hour.saturating_sub(THAW_H)..=hour);
        lately.unwrap_or_default().iter().sum()
    }));
    // Of what the log's time has, not the year.
    let most = group.frost.iter().copied().fold(1e-3, f32::max);
    let shapes = FROST_TRIPS.into_iter().map(|part| {
        let narrowed: Vec<f64> = (group.frost.iter())
            .map(|frost| f64::from(frost / most) / part)
            .collect();
        let lies = narrowed.iter().map(|over| {
            let over = over.min(1.0);
            over * over * over
        });
        let mut before = 0.0;
        let comes = Hazard::new(lies.clone().map(|now: f64| {
            let more = (now - before).max(0.0);
            before = now;
            more
        }));
        let lies = Hazard::new(lies);
        let of = |[lying, coming, low, alarm, water]: [f64; 5]| {
            let parts: [(EventKind, f64, &Hazard); 5] = [
                (EventKind::AirflowLow, lying, &lies),
                (EventKind::AirflowLow, coming, &comes),
                (EventKind::AirflowLow, low, &thaws),
                (EventKind::Alarm, alarm, &thaws),
                (EventKind::WaterFound, water, &thaws),
            ];
            Shape::new(group.weight(Alike::Frost), &parts)
        };
        Weighed {
            shapes: FROST_MIXES.into_iter().filter_map(of).collect(),
            amounts: [0.0; 1 + TURNS],
            narrowed,
        }
    });
    shapes.collect()
}

/// A trap that dries while no water comes.
pub(crate) fn dry_trap(hours: &Hours, sign: Sign) -> Vec<Weighed> {
    let mut shapes: Vec<Weighed> = Vec::new();
    for group in &hours.groups {
        let weight = group.weight(Alike::Water);
        shapes.extend(signed(&single(&group.leaks), weight, sign));
        for days in SEAL_DAYS {
            for refills_g in REFILLS_G {
                let mut lately_g = 0.0;
                // Nobody knows what was before the log.
                let mut dry_h = 12.0 * days;
                let hazard = group.runs_g.iter().map(|grams| {
                    lately_g = 0.98 * lately_g + f64::from(*grams);
                    dry_h = if refills_g < lately_g {
                        0.0
                    } else {
                        dry_h + 1.0
                    };
                    if 24.0 * days < dry_h { 1.0 } else { 0.0 }
                });
                shapes.extend(signed(&Hazard::new(hazard), 0.5 * weight, sign));
            }
        }
    }
    shapes
}

/// A hazard that shows as low or as high airflow, and only as one of them at a site.
fn signed(hazard: &Hazard, weight: f64, sign: Sign) -> Vec<Weighed> {
    let both = (sign.low + sign.high).max(1e-9);
    let ways = [
        (EventKind::AirflowHigh, sign.high / both),
        (EventKind::AirflowLow, sign.low / both),
    ];
    let shapes = ways.into_iter().filter(|(_, share)| 0.0 < *share);
    let shapes = shapes.filter_map(|(kind, share)| {
        let shape = Shape::new(weight * share, &[(kind, 1.0, hazard)])?;
        Some(Weighed::by_times(shape))
    });
    shapes.collect()
}

/// Limits that even a clean line leaves: hours in which the reading lies at an end of what it does in the log's time.
pub(crate) fn limits(hours: &Hours) -> Vec<Weighed> {
    let mut shapes = Vec::new();
    for group in &hours.groups {
        let reading = numbers(&group.reading);
        let mut sorted = reading.clone();
        sorted.sort_unstable_by(f64::total_cmp);
        let Some(middle) = at_share(&sorted, 0.5) else {
            continue;
        };
        for tail in TAILS {
            let (Some(low), Some(high)) = (at_share(&sorted, tail), at_share(&sorted, 1.0 - tail))
            else {
                continue;
            };
            let width = |end: f64| (END.0 * (end - middle).abs()).max(END.1);
            let beyond = |end: f64, by: f64| 1.0 / (1.0 + exp((by / width(end)).min(50.0)));
            let lows = Hazard::new(reading.iter().map(|one| beyond(low, one - low)));
            let highs = Hazard::new(reading.iter().map(|one| beyond(high, high - one)));
            for (low_share, high_share) in [(1.0, 0.0), (0.0, 1.0), (0.5, 0.5)] {
                let parts: [(EventKind, f64, &Hazard); 2] = [
                    (EventKind::AirflowLow, low_share, &lows),
                    (EventKind::AirflowHigh, high_share, &highs),
                ];
                let shape = Shape::new(group.weight(Alike::Reading), &parts);
                shapes.extend(shape.map(Weighed::by_times));
            }
        }
    }
    shapes
}

/// The value that so many of sorted ones lie below.
pub(crate) fn at_share(sorted: &[f64], share: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let wanted = share * count(last);
    let at = (0..last).find(|at| wanted <= count(*at)).unwrap_or(last);
    sorted.get(at).copied()
}
