//! Remedies of random routes in a stretch of the invented weather: each cure is the smallest of its kind, and what it claims is so.

use dewrun_ensemble::{Climate, Inputs};
use dewrun_remedies::{
    Alteration, DesignHour, Left, Search, Subject, Target, Tried, altered, pairs, searches,
};
use dewrun_run::air::{MoistAir, Pair};
use dewrun_run::{Factors, Run, evaluate};
use dewrun_season::told::{Schedule, Space};
use dewrun_season::{Change, Season, Source, Step};

use crate::installations::installation;
use crate::routes::{Draw, route};

/// What was found over some routes.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Counted {
    /// Routes that miss their target as drawn.
    pub routes: usize,
    /// Remedies that were tried.
    pub tried: usize,
    /// Those that cure.
    pub cures: usize,
    /// Cures that have a smaller size, each of which misses the target.
    pub smaller: usize,
}

impl Counted {
    /// Both together.
    #[must_use]
    pub const fn plus(self, other: Self) -> Self {
        Self {
            routes: self.routes + other.routes,
            tried: self.tried + other.tried,
            cures: self.cures + other.cures,
            smaller: self.smaller + other.smaller,
        }
    }
}

/// All remedies of a run, one after another.
#[must_use]
pub fn all_tried(subject: &Subject, climate: Climate<'_>) -> Vec<Tried> {
    let finished = |search: Search| search.finished(subject, Some(climate));
    let mut tried: Vec<Tried> = searches(subject).into_iter().filter_map(finished).collect();
    tried.extend(pairs(&tried).into_iter().filter_map(finished));
    tried
}

/// Tries all remedies of a random route and looks at each that is found anew.
///
/// # Errors
/// A sentence where one does not do what it claims, or a smaller size does.
pub fn counted(seed: u64, climate: Climate<'_>) -> Result<Counted, String> {
    let (inputs, target) = random(seed);
    let Ok(subject) = Subject::new(inputs, target, Some(climate)) else {
        return Ok(Counted::default());
    };
    if subject.is_met() {
        return Ok(Counted::default());
    }
    let tried = all_tried(&subject, climate);
    let mut found = Counted {
        routes: 1,
        tried: tried.len(),
        ..Counted::default()
    };
    for one in tried {
        found = found.plus(
            looked_at(&subject, &one, climate)
                .map_err(|sentence| format!("route {seed}, {:?}: {sentence}", one.kinds))?,
        );
    }
    Ok(found)
}

/// Looks at a remedy by answering the changed run from the start.
///
/// # Errors
/// A sentence where it does not do what it claims, or a smaller size does.
pub fn looked_at(
    subject: &Subject,
    tried: &Tried,
    climate: Climate<'_>,
) -> Result<Counted, String> {
    let fresh = |alterations: &[Alteration]| -> Option<Left> {
        let inputs = altered(&subject.inputs, alterations);
        let fresh = Subject::new(inputs, subject.target, Some(climate)).ok()?;
        Some(fresh.left)
    };
    let is_met = |left: &Left| subject.target.is_met(left, subject.rating);
    let left = fresh(&tried.alterations).ok_or("the changed run has no answer")?;
    if left != tried.left {
        return Err(format!("{left:?} is left, and not {:?}", tried.left));
    }
    if is_met(&left) != tried.is_cure {
        return Err(format!("a cure: {}, but {left:?} is left", tried.is_cure));
    }
    let mut found = Counted {
        cures: usize::from(tried.is_cure),
        ..Counted::default()
    };
    if let Some(smaller) = &tried.smaller {
        found.smaller = 1;
        if fresh(smaller).is_some_and(|left| is_met(&left)) {
            return Err(format!("{smaller:?} is smaller and does"));
        }
    }
    Ok(found)
}

/// A random route with a season of its own, and a random target.
fn random(seed: u64) -> (Inputs, Target) {
    let mut draw = Draw::new(seed ^ 0x0DD5);
    let mut run = route(seed);
    // Duct air that a year can bring, so that what is entered and the year are about the same run.
    let installation = installation(&run, seed);
    let season = season(&mut draw, &run);
    if evaluate(&run).is_err() {
        run.exhaust.clear();
    }
    let hours = [None, Some(0.0), Some(20.0), Some(100.0)];
    let target = Target {
        dry_in: *[
            None,
            Some(DesignHour::Entered),
            Some(DesignHour::Wettest1),
            Some(DesignHour::Wettest2),
        ]
        .get(draw.below(4))
        .unwrap_or(&None),
        wet_hours: *hours.get(draw.below(4)).unwrap_or(&None),
        formed_kg: draw.chance(0.2).then(|| draw.between(0.05, 0.5)),
        chamber_margin: draw.chance(0.2).then(|| draw.between(0.05, 0.2)),
        no_frost: draw.chance(0.2),
        blind_hours: draw.chance(0.5).then_some(0.0),
        trap_days: draw.chance(0.2).then(|| draw.between(3.0, 20.0)),
    };
    (
        Inputs {
            run,
            installation,
            season,
            factors: Factors::PUBLISHED,
        },
        target,
    )
}

fn season(draw: &mut Draw, run: &Run) -> Season {
    let p = run.pressure;
    let room = |air: Pair| {
        let air = MoistAir::new(air, p).ok().map(|air| air.value);
        air.map_or((20.0, 0.5), |air| {
            let humidity = air.relative_humidity(dewrun_run::air::Over::Water);
            (
                air.temperature().to_celsius(),
                humidity.to_fraction().min(1.0),
            )
        })
    };
    let spaces = run.spaces.iter().map(|space| {
        let (room_c, room_humidity) = room(Pair::Temperature(space.temperature, space.humidity));
        let space = if draw.chance(0.3) {
            Space::Outdoors {
                sky_share: 0.3,
                wind_share: 0.2,
            }
        } else {
            Space::Coupled {
                room_c,
                room_humidity,
                share: draw.between(0.0, 0.8),
                roof_absorbs: None,
            }
        };
        space.into()
    });
    let spaces = spaces.collect();
    let (duct_c, duct_humidity) = room(run.duct_air);
    let always = |otherwise| Schedule {
        otherwise,
        ..Schedule::default()
    };
    let outdoors = draw.chance(0.6);
    Season {
        source: if outdoors {
            Source::Outdoors
        } else {
            Source::Room {
                temperature_c: always(duct_c),
                humidity: always(duct_humidity),
            }
        },
        steps: outdoors
            .then(|| Step {
                change: Change::Heated(draw.between(10.0, 30.0)),
                when: Vec::new(),
            })
            .into_iter()
            .collect(),
        spaces,
        fan_off: Vec::new(),
    }
}
