//! The way of water down a tube, whatever comes when: slopes, what each lets it meet, low points and where they run over to.

use core::f64::consts::PI;

use dewrun_quantity::{Length, Mass};

use super::descent::{Between, Descent, Forgotten, between_sinks};
use super::fill::brimming;
use super::tube::{DrainTube, DrainageError, SAME_PLACE_M};
use super::walk::lies_flat;
use super::way::{Segment, Way};
use super::{Destination, Pool, Traps};
use crate::Incline;
use crate::held::{held_per_length, puddle_section};
use crate::pool::PoolShape;

/// The ways of a tube.
#[derive(Debug, Clone, PartialEq)]
pub struct Ways {
    /// Every stretch of tube, in the order of the tube.
    pub slopes: Vec<Slope>,
    /// Stretches that keep water besides the film on their wall.
    pub flats: Vec<FlatPlace>,
    /// Low points in the order of the tube, then those that two of them become.
    pub lows: Vec<LowPlace>,
}

/// A stretch whose water runs one way.
#[derive(Debug, Clone, PartialEq)]
pub struct Slope {
    /// Its beginning along the tube.
    pub from: Length,
    /// Its end.
    pub to: Length,
    /// What its water fills on the way, in this order.
    pub meets: Vec<Meets>,
    /// Where it comes to then.
    pub comes_to: Destination,
}

/// What water fills on its way before any of it goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Meets {
    /// A flat stretch, by its position in [`Ways::flats`].
    Flat(usize),
    /// A trap with a capacity, by its position in the list of the tube.
    Trap(usize),
}

/// A stretch that keeps a puddle on its floor, or water in its corrugations.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FlatPlace {
    /// Its beginning along the tube.
    pub from: Length,
    /// Its end.
    pub to: Length,
    /// What it keeps besides the film on its wall.
    pub capacity: Mass,
    /// Width of the puddle.
    pub width: Length,
}

/// A low point at which water stands.
#[derive(Debug, Clone, PartialEq)]
pub struct LowPlace {
    /// The lowest place; the beginning of its level bottom where it has one.
    pub at: Length,
    /// The end of its level bottom.
    pub until: Length,
    /// How water stands in it.
    pub shape: PoolShape,
    /// What stands in it when it runs over.
    pub capacity: Mass,
    /// Where it runs over to.
    pub runs_over_to: Option<Destination>,
    /// The two that it is made of, once both are full.
    pub joins: Option<[usize; 2]>,
    /// The one that it is then part of.
    pub joined_by: Option<usize>,
    /// The trap at its bottom, which water fills first.
    pub trap: Option<usize>,
}

impl LowPlace {
    fn of(pool: Pool, traps: &[Forgotten]) -> Self {
        let (from_m, to_m) = (pool.at.to_metres(), pool.until.to_metres());
        let trap = traps.iter().find(|trap| lies(trap, from_m, to_m));
        let joins = match pool.joins.as_slice() {
            [one, other] => Some([*one, *other]),
            _ => None,
        };
        Self {
            at: pool.at,
            until: pool.until,
            shape: pool.shape,
            capacity: pool.capacity,
            runs_over_to: pool.runs_over_to,
            joins,
            joined_by: pool.joined_by,
            trap: trap.map(|trap| trap.trap),
        }
    }
}

impl Ways {
    /// The ways of a tube: traps with a capacity fill and then let pass, the others take all that comes.
    ///
    /// # Errors
    /// [`DrainageError`] where a leg or a trap is none.
    ///
    /// ```
    /// use dewrun_quantity::{Length, Temperature};
    /// use dewrun_water::{Water, drainage::{Destination, DrainLeg, DrainTube, Ways}, held::Keeping};
    /// let leg = |rise_mm| DrainLeg {
    ///     length: Length::metres(4.0),
    ///     rise: Length::millimetres(rise_mm),
    ///     bore: Length::millimetres(19.0),
    ///     keeping: Keeping::USUAL,
    ///     reachable: true,
    /// };
    /// let water = Water::at(Temperature::celsius(15.0));
    /// let tube = DrainTube { legs: vec![leg(-80.0), leg(80.0)], traps: vec![], water };
    /// let ways = Ways::of(&tube).unwrap();
    /// assert_eq!(ways.slopes[0].comes_to, Destination::Pool(0));
    /// assert_eq!(ways.lows[0].at, Length::metres(4.0));
    /// assert_eq!(ways.lows[0].runs_over_to, Some(Destination::End));
    /// ```
    pub fn of(tube: &DrainTube) -> Result<Self, DrainageError> {
        tube.check()?;
        let descent = Descent::new(tube, &[], Traps::Forgotten);
        let (all, traps) = between_sinks(tube, Traps::Forgotten);
        let (mut slopes, mut flats) = (Vec::new(), Vec::new());
        for between in &all {
            let of_flat = between.segments.iter().map(|segment| {
                let flat = flat(tube, segment)?;
                flats.push(flat);
                Some(flats.len() - 1)
            });
            let of_flat: Vec<Option<usize>> = of_flat.collect();
            for (place, segment) in between.segments.iter().enumerate() {
                let middle_m = 0.5 * (segment.from_m + segment.to_m);
                let Some(comes_to) = descent.destination(middle_m) else {
                    continue;
                };
                slopes.push(Slope {
                    from: Length::metres(segment.from_m),
                    to: Length::metres(segment.to_m),
                    meets: meets(between, place, &of_flat, &traps),
                    comes_to,
                });
            }
        }
        let pools = brimming(descent).into_iter();
        Ok(Self {
            slopes,
            flats,
            lows: pools.map(|pool| LowPlace::of(pool, &traps)).collect(),
        })
    }
}

/// What the water of a segment meets on its way down.
fn meets(
    between: &Between,
    place: usize,
    flats: &[Option<usize>],
    traps: &[Forgotten],
) -> Vec<Meets> {
    let segments = &between.segments;
    let Some(start) = segments.get(place) else {
        return Vec::new();
    };
    let mut met = Vec::new();
    let mut at = place;
    let mut bottom = (start.from_m, start.to_m);
    if start.way != Way::Rests {
        loop {
            met.extend(flats.get(at).copied().flatten().map(Meets::Flat));
            let Some(here) = segments.get(at) else { break };
            let foot_m = if here.way == Way::Back {
                here.from_m
            } else {
                here.to_m
            };
            bottom = (foot_m, foot_m);
            let below = neighbour(at, here.way).filter(|next| {
                let next = segments.get(*next);
                next.is_some_and(|next| next.way == start.way)
            });
            let Some(below) = below else { break };
            met.extend(at_place(traps, bottom));
            at = below;
        }
    }
    // The level bottom, from edge to edge.
    let mut reach = |mut next: usize, way: Way| {
        while let Some(beside) = neighbour(next, way) {
            let Some(segment) = segments.get(beside).filter(|found| found.way == Way::Rests) else {
                break;
            };
            bottom = (bottom.0.min(segment.from_m), bottom.1.max(segment.to_m));
            next = beside;
        }
    };
    if start.way != Way::Back {
        reach(at, Way::Forward);
    }
    if start.way != Way::Forward {
        reach(at, Way::Back);
    }
    met.extend(at_place(traps, bottom));
    met
}

fn neighbour(at: usize, way: Way) -> Option<usize> {
    match way {
        Way::Back => at.checked_sub(1),
        Way::Forward | Way::Rests => at.checked_add(1),
    }
}

fn at_place(traps: &[Forgotten], (from_m, to_m): (f64, f64)) -> impl Iterator<Item = Meets> {
    let here = traps.iter().filter(move |trap| lies(trap, from_m, to_m));
    here.map(|trap| Meets::Trap(trap.trap))
}

fn lies(trap: &Forgotten, from_m: f64, to_m: f64) -> bool {
    from_m - SAME_PLACE_M <= trap.at_m && trap.at_m <= to_m + SAME_PLACE_M
}

/// What a segment keeps besides the film on its wall; none where that is nothing, as at the level bottom of a low point.
fn flat(tube: &DrainTube, segment: &Segment) -> Option<FlatPlace> {
    let leg = tube.legs.get(segment.leg)?;
    if segment.way == Way::Rests {
        return None;
    }
    let incline = if lies_flat(tube, segment) {
        segment.incline
    } else {
        Incline::UPRIGHT
    };
    let keeping = &leg.keeping;
    let all_kg_m = held_per_length(leg.bore, incline, keeping, tube.water).to_kilograms_per_metre();
    let film_kg_m = PI * leg.bore.to_metres() * keeping.film.to_kilograms_per_square_metre();
    let capacity = Mass::kilograms((all_kg_m - film_kg_m) * segment.length_m());
    (1e-9 < capacity.to_kilograms()).then(|| FlatPlace {
        from: Length::metres(segment.from_m),
        to: Length::metres(segment.to_m),
        capacity,
        width: puddle_section(leg.bore, &keeping.puddle, tube.water).width,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Water;
    use crate::drainage::{DrainLeg, Drainage, Formed, TrapAt};
    use crate::held::Keeping;
    use dewrun_quantity::{MassFlow, Temperature, Time};

    fn tube(rises_mm: &[f64], traps: &[(f64, Option<f64>)]) -> DrainTube {
        let leg = |rise_mm: &f64| DrainLeg {
            length: Length::metres(4.0),
            rise: Length::millimetres(*rise_mm),
            bore: Length::millimetres(19.0),
            keeping: Keeping::USUAL,
            reachable: true,
        };
        let trap = |(at_m, grams): &(f64, Option<f64>)| TrapAt {
            at: Length::metres(*at_m),
            capacity: grams.map(Mass::grams),
        };
        DrainTube {
            legs: rises_mm.iter().map(leg).collect(),
            traps: traps.iter().map(trap).collect(),
            water: Water::at(Temperature::celsius(15.0)),
        }
    }

    /// Down 80 mm, up 80 mm, up 80 mm, with a trap that takes 100 g where the first two legs meet.
    #[test]
    fn a_trap_at_a_low_point_comes_before_the_pool() {
        let tube = tube(&[-80.0, 80.0, 80.0], &[(4.0, Some(100.0))]);
        let ways = Ways::of(&tube).expect("a plain tube");
        for slope in &ways.slopes {
            assert_eq!(slope.meets.last(), Some(&Meets::Trap(0)), "{slope:?}");
            assert_eq!(slope.comes_to, Destination::Pool(0), "{slope:?}");
        }
        assert_eq!(ways.lows[0].trap, Some(0), "{:?}", ways.lows);
        assert_eq!(
            ways.lows[0].runs_over_to,
            Some(Destination::Start),
            "the lower crest"
        );
    }

    /// A trap half way down a leg: the upper half comes to it first, the lower half does not.
    #[test]
    fn a_trap_on_a_slope_takes_what_comes_from_above() {
        let tube = tube(&[-80.0, 80.0], &[(2.0, Some(100.0))]);
        let ways = Ways::of(&tube).expect("a plain tube");
        let meets: Vec<&[Meets]> = ways
            .slopes
            .iter()
            .map(|slope| slope.meets.as_slice())
            .collect();
        assert_eq!(
            meets,
            [&[Meets::Trap(0)][..], &[], &[]],
            "{:?}",
            ways.slopes
        );
    }

    /// A leg of 1:200 keeps a puddle, which the water of the steep leg above fills before it leaves by the end.
    #[test]
    fn a_flat_leg_keeps_its_puddle_of_all_that_comes() {
        let tube = tube(&[-400.0, -20.0], &[]);
        let ways = Ways::of(&tube).expect("a plain tube");
        assert_eq!(ways.slopes[0].meets, [Meets::Flat(0)], "{ways:?}");
        assert_eq!(ways.slopes[0].comes_to, Destination::End, "{ways:?}");
        // A puddle of 19 mm bore, 23 g/m, less the film of 3 g/m: 4 m of it.
        let grams = ways.flats[0].capacity.to_grams();
        assert!((60.0..100.0).contains(&grams), "{grams} g");
    }

    /// Two low points with a low crest between them run over to each other and become one.
    #[test]
    fn two_that_run_over_to_each_other_join() {
        let tube = tube(&[-160.0, 40.0, -40.0, 160.0], &[]);
        let ways = Ways::of(&tube).expect("a plain tube");
        let [one, other, both] = &ways.lows[..] else {
            panic!("{:?}", ways.lows)
        };
        assert_eq!(one.runs_over_to, Some(Destination::Pool(1)), "{one:?}");
        assert_eq!(other.runs_over_to, Some(Destination::Pool(0)), "{other:?}");
        assert_eq!(
            (one.joined_by, both.joins),
            (Some(2), Some([0, 1])),
            "{both:?}"
        );
    }

    /// The steady drainage of the same tube runs over to the same places.
    #[test]
    fn the_ways_are_those_of_the_steady_answer() {
        let tube = tube(&[-80.0, 40.0, -20.0, 120.0, -60.0, 90.0], &[]);
        let ways = Ways::of(&tube).expect("a plain tube");
        let forms = Formed {
            from: Length::ZERO,
            to: Length::metres(24.0),
            rate: MassFlow::grams_per_hour(50.0),
        };
        let drainage = Drainage::of(&tube, &[forms], Traps::Forgotten).expect("a plain tube");
        assert_eq!(ways.lows.len(), drainage.pools.len(), "{ways:?}");
        for (low, pool) in ways.lows.iter().zip(&drainage.pools) {
            assert!(pool.amount(Time::days(365.0)) <= low.capacity, "{pool:?}");
            assert_eq!((low.at, &low.shape), (pool.at, &pool.shape), "{pool:?}");
            let joined = |found| match found {
                Some(Destination::Pool(low)) => {
                    ways.lows[low].joined_by.map(Destination::Pool).or(found)
                }
                _ => found,
            };
            let over = [low.runs_over_to, joined(low.runs_over_to)];
            assert!(over.contains(&pool.runs_over_to), "{pool:?}");
        }
    }
}
