//! Legs with another fall, so that the low point between them is none any more: the flattest fall that does.

use dewrun_quantity::Length;
use dewrun_run::{Leg, LowPoint, Run, Tube, TubeWater};

use super::change::Change;
use super::left::Left;
use super::{Kind, Subject, left_after};

/// Falls as 1 in so many, between which the flattest one that helps is looked for.
const FALLS: (u32, u32) = (10, 200);
/// Of each tube the low points that make trouble first, so many.
const LOW_POINTS: usize = 1;

/// Which legs get another fall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Legs {
    from: usize,
    until: usize,
    /// They fall with the air; else against it.
    with_air: bool,
}

/// For the worst low point of each tube: the leg before it or all before it turned back to the tube's start, the leg after it or all after it turned on to its end.
pub(super) fn tries(subject: &Subject<'_>) -> Vec<(Kind, Vec<Change>)> {
    let (run, whole) = (subject.run, subject.whole);
    let tubes = [
        (Tube::Intake, &run.intake, Some(&whole.intake)),
        (Tube::Exhaust, &run.exhaust, whole.exhaust.as_ref()),
    ];
    let mut tries = Vec::new();
    for (tube, legs, water) in tubes {
        let Some(water) = water else { continue };
        for low in worst(water).into_iter().take(LOW_POINTS) {
            let all = candidates(legs, low);
            let found = all.filter_map(|which| flattest(subject, tube, legs, which));
            tries.extend(found.map(|changes| (Kind::Regrade, changes)));
        }
    }
    tries
}

/// A way to turn the legs at a low point, so that it is none any more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Regrade {
    tube: Tube,
    legs: Legs,
}

impl Regrade {
    /// The changes at a fall of one in so many; none where no leg needs any.
    #[must_use]
    pub fn changes(&self, run: &Run, one_in: f64) -> Option<Vec<Change>> {
        let legs = match self.tube {
            Tube::Intake => &run.intake,
            Tube::Exhaust => &run.exhaust,
        };
        graded(self.tube, legs, self.legs, one_in)
    }
}

/// The ways to turn the legs at the worst low point of each tube.
///
/// # Range
/// As [`dewrun_run::water_and_air`].
///
/// # Source
/// No relation: legs are counted.
#[must_use]
pub fn regrades(subject: &Subject<'_>) -> Vec<Regrade> {
    let (run, whole) = (subject.run, subject.whole);
    let tubes = [
        (Tube::Intake, &run.intake, Some(&whole.intake)),
        (Tube::Exhaust, &run.exhaust, whole.exhaust.as_ref()),
    ];
    let mut ways = Vec::new();
    for (tube, legs, water) in tubes {
        let lows = water.map(worst).unwrap_or_default();
        for low in lows.into_iter().take(LOW_POINTS) {
            ways.extend(candidates(legs, low).map(|legs| Regrade { tube, legs }));
        }
    }
    ways
}

/// Low points that are sealed or throw slugs, the soonest first.
fn worst(water: &TubeWater) -> Vec<&LowPoint> {
    let hours = |low: &LowPoint| {
        let first = low.sealed.or(low.first_slugs);
        first.map_or(f64::INFINITY, |time| time.to_hours())
    };
    let mut all: Vec<&LowPoint> = water
        .low_points
        .iter()
        .filter(|low| hours(low).is_finite())
        .collect();
    all.sort_by(|one, next| hours(one).total_cmp(&hours(next)));
    all
}

fn candidates(legs: &[Leg], low: &LowPoint) -> impl Iterator<Item = Legs> {
    let mut end_m = 0.0;
    let at_m = low.at.to_metres();
    let mut before = 0;
    for leg in legs {
        end_m += leg.length.to_metres();
        if end_m <= at_m + 1e-6 {
            before += 1;
        }
    }
    let last = legs.len();
    let back = |from| Legs {
        from,
        until: before,
        with_air: false,
    };
    let on = |until| Legs {
        from: before,
        until,
        with_air: true,
    };
    let mut all = Vec::new();
    if 0 < before {
        all.push(back(before - 1));
        all.push(back(0));
    }
    if before < last {
        all.push(on(before + 1));
        all.push(on(last));
    }
    all.dedup();
    all.into_iter()
}

/// The changes at the flattest fall that leaves the low point empty; none where not even the steepest does.
fn flattest(subject: &Subject<'_>, tube: Tube, legs: &[Leg], which: Legs) -> Option<Vec<Change>> {
    let before = Left::of(subject.outcome, subject.whole);
    let cures = |one_in: u32| {
        let changes = graded(tube, legs, which, f64::from(one_in))?;
        let after = left_after(subject, &changes)?;
        let is_empty = after.standing.to_grams() < 0.5 * before.standing.to_grams();
        (is_empty && after.is_better_than(&before)).then_some(changes)
    };
    let (steepest, flattest) = FALLS;
    let mut found = cures(steepest)?;
    // What a leg drains at a fall it drains at every steeper one.
    let (mut good, mut bad) = (steepest, flattest + 1);
    while good + 1 < bad {
        let middle = good.midpoint(bad);
        match cures(middle) {
            Some(changes) => {
                found = changes;
                good = middle;
            }
            None => bad = middle,
        }
    }
    Some(found)
}

/// The legs that fall too little or the other way, with a fall of 1 in so many; the nearest steep leg takes up what the tube's end would move.
fn graded(tube: Tube, legs: &[Leg], which: Legs, one_in: f64) -> Option<Vec<Change>> {
    let mut changes = Vec::new();
    let mut lifted_m = 0.0;
    for (number, leg) in legs.iter().enumerate() {
        if number < which.from || which.until <= number || leg.is_steep() {
            continue;
        }
        let (length_m, rise_m) = (leg.length.to_metres(), leg.rise.to_metres());
        let along_air = if which.with_air { rise_m } else { -rise_m };
        // A fall of 1:n is n of horizontal length.
        let fall_m = length_m / (one_in * one_in + 1.0).sqrt();
        if along_air <= -fall_m {
            continue;
        }
        let rise = if which.with_air { -fall_m } else { fall_m };
        let rise = (rise * 1000.0).round() / 1000.0;
        lifted_m += rise - rise_m;
        changes.push(Change::Leg {
            tube,
            leg: number,
            rise: Length::metres(rise),
            length: leg.length,
        });
    }
    if changes.is_empty() {
        return None;
    }
    changes.extend(steep_after(tube, legs, which.from, lifted_m));
    Some(changes)
}

/// The next steep leg after a place, longer or shorter by so much, so that what comes after it stays where it is; none where there is none or it would have to turn round.
fn steep_after(tube: Tube, legs: &[Leg], from: usize, lifted_m: f64) -> Option<Change> {
    let mut all = legs.iter().enumerate();
    let (number, leg) = all.find(|(number, leg)| from <= *number && leg.is_steep())?;
    let (length_m, rise_m) = (leg.length.to_metres(), leg.rise.to_metres());
    let rise = rise_m - lifted_m;
    let across_m = ((length_m - rise_m) * (length_m + rise_m)).max(0.0).sqrt();
    let length = (across_m * across_m + rise * rise).sqrt();
    (0.0 < rise * rise_m).then_some(Change::Leg {
        tube,
        leg: number,
        rise: Length::metres(rise),
        length: Length::metres(length),
    })
}

#[cfg(test)]
mod tests {
    use dewrun_run::{evaluate, water_and_air};
    use dewrun_tests::{installations, routes};

    use super::*;

    #[test]
    fn a_flatter_fall_does_not_do() {
        let mut tried = 0;
        for seed in 0..120 {
            let run = routes::route(seed);
            let installation = installations::installation(&run, seed);
            let Ok(outcome) = evaluate(&run) else {
                continue;
            };
            let Ok(whole) = water_and_air(&run, &installation, &outcome.value) else {
                continue;
            };
            let subject = Subject {
                run: &run,
                installation: &installation,
                outcome: &outcome.value,
                whole: &whole,
            };
            let before = Left::of(&outcome.value, &whole);
            let lows = worst(&whole.intake);
            let Some(low) = lows.first() else { continue };
            for which in candidates(&run.intake, low) {
                let Some(found) = flattest(&subject, Tube::Intake, &run.intake, which) else {
                    continue;
                };
                let is_found = |one_in: &u32| {
                    let changes = graded(Tube::Intake, &run.intake, which, f64::from(*one_in));
                    changes.as_ref() == Some(&found)
                };
                // Falls are made to the millimetre, so that several may be the same.
                let one_in = (FALLS.0..=FALLS.1).rfind(is_found);
                let one_in = one_in.expect("it is a fall of the list");
                tried += 1;
                if one_in == FALLS.1 {
                    continue;
                }
                let flatter = graded(Tube::Intake, &run.intake, which, f64::from(one_in + 1));
                let left = flatter.and_then(|changes| left_after(&subject, &changes));
                let helps = left.is_some_and(|left| {
                    left.is_better_than(&before)
                        && left.standing.to_grams() < 0.5 * before.standing.to_grams()
                });
                assert!(
                    !helps,
                    "run {seed}: 1:{one_in} helps, and so does a flatter one"
                );
            }
        }
        assert!(3 < tried, "{tried} falls were tried");
    }
}
