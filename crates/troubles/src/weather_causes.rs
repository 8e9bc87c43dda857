//! Causes that follow the weather: their hazard in each hour, as the ensemble has it.
//!
//! What nobody knows of a cause (how much water trips the airflow, how long a seal lasts) is taken at a few values that span what is plausible; all of them common practice, no source.

use dewrun_numeric::elementary::{exp, ln};

use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::modelled::{Hours, TAILS};
use crate::shape::Shape;
use crate::signs::Sign;

/// Water that trips the airflow, as parts of what closes the low point.
const TRIPS: [f64; 5] = [0.1, 0.2, 0.4, 0.7, 1.2];
/// Where there is no low point that is known, it closes with so much, g.
const SEALING_G: f64 = 300.0;
/// How sharply it trips, as a standard deviation of the logarithm.
const SHARPNESS: f64 = 0.5;
/// Whatever the level, so much of the hazard is that of water that comes.
const LEVEL_UNKNOWN: f64 = 0.15;
/// A seal lasts so many days without water; and so much water fills it again, g.
const SEAL_DAYS: [f64; 4] = [10.0, 18.0, 30.0, 45.0];
const REFILLS_G: [f64; 2] = [5.0, 20.0];
/// Frost that trips the airflow, as parts of the most of the year.
const FROST_TRIPS: [f64; 3] = [0.1, 0.3, 0.6];
/// What thaws may come down for so many hours.
const THAW_H: usize = 12;
/// Found amounts lie about those modelled with this deviation of the logarithm; any amount at all lies about 150 g with that.
const AMOUNT_NEAR: f64 = 0.7;
const AMOUNT_ANY: (f64, f64) = (150.0, 1.4);

/// A shape, and what amounts say for it beside times.
pub(crate) type Weighed = (Shape, f64);

/// Water in a low point: it trips as it reaches a level, and stands there until somebody empties it.
pub(crate) fn low_point(hours: &Hours, placed: &[Placed], sealing_g: Option<f64>) -> Vec<Weighed> {
    let levels = levels(hours, placed);
    let closes_g = sealing_g.unwrap_or(SEALING_G);
    let comes = Shape::new(
        1.0,
        &[
            (EventKind::AirflowLow, 0.65, &hours.water_g),
            (EventKind::WaterFound, 0.3, &levels),
            (EventKind::Alarm, 0.05, &hours.water_g),
        ],
    );
    let at_level = TRIPS.into_iter().filter_map(|part| {
        let trips_g = part * closes_g;
        let near = |level: f64| {
            let z = ln((level / trips_g).max(1e-9)) / SHARPNESS;
            exp(-0.5 * z * z) + LEVEL_UNKNOWN
        };
        let trips: Vec<f64> = (hours.water_g.iter().zip(&levels))
            .map(|(grams, level)| grams * near(*level))
            .collect();
        let stands: Vec<f64> = levels
            .iter()
            .map(|level| level / (level + trips_g))
            .collect();
        let parts: [(EventKind, f64, &[f64]); 4] = [
            (EventKind::AirflowLow, 0.55, &trips),
            (EventKind::AirflowLow, 0.1, &stands),
            (EventKind::WaterFound, 0.3, &stands),
            (EventKind::Alarm, 0.05, &trips),
        ];
        Some((Shape::new(0.6, &parts)?, amounts(placed, &levels)))
    });
    comes
        .map(|shape| (shape, 0.0))
        .into_iter()
        .chain(at_level)
        .collect()
}

/// Water that came since somebody last let it out, hour by hour, g.
pub(crate) fn levels(hours: &Hours, placed: &[Placed]) -> Vec<f64> {
    let mut let_out = vec![false; hours.len()];
    for one in placed {
        if matches!(one.kind, EventKind::Emptied | EventKind::WaterFound)
            && let Some(hour) = let_out.get_mut(one.hour)
        {
            *hour = true;
        }
    }
    let mut level = 0.0;
    (hours.water_g.iter().zip(let_out))
        .map(|(grams, is_let_out)| {
            let stood = level + grams;
            level = if is_let_out { 0.0 } else { stood };
            stood
        })
        .collect()
}

/// By how much amounts that were found speak for the modelled ones, against any amount.
fn amounts(placed: &[Placed], levels: &[f64]) -> f64 {
    let density = |grams: f64, (middle, deviation): (f64, f64)| {
        let z = ln(grams / middle) / deviation;
        -0.5 * z * z - ln(deviation)
    };
    let found = placed.iter().filter_map(|one| {
        let grams = one.grams.filter(|grams| 0.0 < *grams)?;
        let level = levels.get(one.hour).copied()?.max(1.0);
        let near = density(grams, (level, AMOUNT_NEAR));
        Some((near - density(grams, AMOUNT_ANY)).clamp(-1.0, 1.0))
    });
    found.sum()
}

/// Mist or damp at the sensor.
pub(crate) fn mist(hours: &Hours) -> Vec<Weighed> {
    let shapes = hours.mist.iter();
    let shapes = shapes.filter_map(|hazard| Shape::new(1.0, &[(EventKind::Alarm, 1.0, hazard)]));
    shapes.map(|shape| (shape, 0.0)).collect()
}

/// Frost narrows the bore; what thaws comes down at once, as water or as mist.
pub(crate) fn frost(hours: &Hours) -> Vec<Weighed> {
    let thaws: Vec<f64> = (0..hours.len())
        .map(|hour| {
            let lately = hours.thaw.get(hour.saturating_sub(THAW_H)..=hour);
            lately.unwrap_or_default().iter().sum()
        })
        .collect();
    let shapes = FROST_TRIPS.into_iter().filter_map(|part| {
        let lies: Vec<f64> = (hours.frost.iter())
            .map(|frost| {
                let over = (frost / part).min(1.0);
                over * over
            })
            .collect();
        Shape::new(
            1.0,
            &[
                (EventKind::AirflowLow, 0.65, &lies),
                (EventKind::AirflowLow, 0.1, &thaws),
                (EventKind::Alarm, 0.15, &thaws),
                (EventKind::WaterFound, 0.1, &thaws),
            ],
        )
    });
    shapes.map(|shape| (shape, 0.0)).collect()
}

/// A trap that dries while no water comes.
pub(crate) fn dry_trap(hours: &Hours, sign: Sign) -> Vec<Weighed> {
    let both = (sign.low + sign.high).max(1e-9);
    let parts = |hazard: &[f64], weight: f64| -> Option<Weighed> {
        let shape = Shape::new(
            weight,
            &[
                (EventKind::AirflowHigh, sign.high / both, hazard),
                (EventKind::AirflowLow, sign.low / both, hazard),
            ],
        );
        shape.map(|shape| (shape, 0.0))
    };
    let mut shapes: Vec<Weighed> = parts(&hours.leaks, 1.0).into_iter().collect();
    for days in SEAL_DAYS {
        for refills_g in REFILLS_G {
            let mut lately_g = 0.0;
            let mut dry_h = 0.0;
            let hazard: Vec<f64> = (hours.water_g.iter())
                .map(|grams| {
                    lately_g = 0.98 * lately_g + grams;
                    dry_h = if refills_g < lately_g {
                        0.0
                    } else {
                        dry_h + 1.0
                    };
                    if 24.0 * days < dry_h { 1.0 } else { 0.0 }
                })
                .collect();
            shapes.extend(parts(&hazard, 0.5));
        }
    }
    shapes
}

/// Limits that even a clean line leaves: hours in which the reading lies at an end of what it does in a year.
pub(crate) fn limits(hours: &Hours) -> Vec<Weighed> {
    let mut shapes = Vec::new();
    for at in 0..TAILS.len() {
        let (Some(low), Some(high)) = (hours.lowest.get(at), hours.highest.get(at)) else {
            continue;
        };
        for (low_share, high_share) in [(1.0, 0.0), (0.0, 1.0), (0.5, 0.5)] {
            let parts: [(EventKind, f64, &[f64]); 2] = [
                (EventKind::AirflowLow, low_share, low),
                (EventKind::AirflowHigh, high_share, high),
            ];
            shapes.extend(Shape::new(1.0, &parts).map(|shape| (shape, 0.0)));
        }
    }
    shapes
}
