//! Where water goes and stands in a run: slopes, low points, flat stretches, traps, and what lies below each.

use dewrun_quantity::{Length, Mass, Pressure, Volume};
use dewrun_run::{Drain, StandingTube, Tube, Whole, WholeError};
use dewrun_water::drainage::{Destination, FlatPlace, LowPlace, Meets, Slope, Ways};
use dewrun_water::trap::{TrapState, requirement};

use super::level::Levels;

/// Where water comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum To {
    /// A low point.
    Pool(usize),
    /// A trap that drains itself.
    Trap(usize),
    /// Back into the duct.
    Duct,
    /// Into the detector.
    Detector,
}

/// What water fills on its way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fills {
    /// A flat stretch.
    Flat(usize),
    /// A trap with a capacity.
    Trap(usize),
}

/// A stretch along one of the tubes, m from its start.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Along {
    pub(crate) tube: Tube,
    pub(crate) from_m: f64,
    pub(crate) to_m: f64,
}

/// A stretch whose water runs one way.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct SlopeAt {
    pub(crate) along: Along,
    pub(crate) fills: Vec<Fills>,
    pub(crate) to: To,
}

/// What a place passes to the space around it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Outside {
    pub(crate) space: usize,
    /// For each metre and kelvin, W/(m K).
    pub(crate) passes_w_mk: f64,
}

/// A low point.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct PoolAt {
    pub(crate) low: LowPlace,
    pub(crate) along: Along,
    pub(crate) levels: Levels,
    pub(crate) capacity_kg: f64,
    pub(crate) seal_kg: f64,
    pub(crate) bore_m: f64,
    /// Head for each kilogram beyond the sealing mass, Pa/kg.
    pub(crate) head_pa_kg: f64,
    pub(crate) to: Option<To>,
    pub(crate) joins: Option<[usize; 2]>,
    pub(crate) joined_by: Option<usize>,
    pub(crate) trap: Option<usize>,
    pub(crate) outside: Outside,
    pub(crate) water_kg_m3: f64,
}

impl PoolAt {
    /// From where to where its water reaches at the most, m along its tube.
    pub(crate) fn reach_m(&self) -> (f64, f64) {
        let most = self.levels.at(f64::MAX);
        (
            self.along.from_m - most.before_m,
            self.along.to_m + most.after_m,
        )
    }
}

/// A flat stretch that keeps a puddle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct FlatAt {
    pub(crate) along: Along,
    pub(crate) capacity_kg: f64,
    pub(crate) width_m: f64,
    pub(crate) outside: Outside,
}

/// How a trap lets go of its water.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Lets {
    /// At a visit.
    ByHand,
    /// Over its seal.
    OverSeal,
    /// At once: an open stub that is not under suction.
    AtOnce,
    /// Never: a stub in which suction holds the column.
    Never,
}

/// A trap or drain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct TrapAt {
    pub(crate) tube: Tube,
    pub(crate) number: usize,
    pub(crate) at_m: f64,
    pub(crate) lets: Lets,
    /// What it takes; infinite where it drains itself.
    pub(crate) capacity_kg: f64,
    /// Height of the standing seal, m, and water in it, kg for each metre.
    pub(crate) seal_m: f64,
    pub(crate) seal_kg_m: f64,
    /// A lower seal is blown through, m.
    pub(crate) blown_m: f64,
    pub(crate) bore_m: f64,
    pub(crate) space: usize,
}

/// All places of a run.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Places {
    pub(crate) slopes: Vec<SlopeAt>,
    pub(crate) pools: Vec<PoolAt>,
    pub(crate) flats: Vec<FlatAt>,
    pub(crate) traps: Vec<TrapAt>,
}

impl Places {
    /// Those of a run.
    ///
    /// # Errors
    /// [`WholeError`] where a tube is none.
    pub(crate) fn of(tubes: &[StandingTube]) -> Result<Self, WholeError> {
        let mut places = Self::default();
        for tube in tubes {
            let ways = Ways::of(&tube.drain).map_err(|source| WholeError::Drainage {
                tube: tube.tube,
                source,
            })?;
            places.add(tube, ways);
        }
        Ok(places)
    }

    /// How low each seal may fall: what the pressure that lies on it as fitted needs, without any margin.
    pub(crate) fn blow_through(&mut self, tubes: &[StandingTube], whole: &Whole) {
        for place in &mut self.traps {
            let water = match place.tube {
                Tube::Intake => Some(&whole.intake),
                Tube::Exhaust => whole.exhaust.as_ref(),
            };
            let standing = tubes.iter().find(|tube| tube.tube == place.tube);
            let found = water.zip(standing).and_then(|(water, standing)| {
                let running = water.traps.get(place.number)?.running;
                let kind = standing.traps.get(place.number)?.kind;
                let state = TrapState {
                    duct_static: running,
                    loss: Pressure::ZERO,
                };
                requirement(kind, &[state], Length::ZERO, standing.drain.water.density).ok()
            });
            place.blown_m = found.map_or(0.0, |needs| needs.seal.to_metres());
        }
    }

    fn add(&mut self, tube: &StandingTube, ways: Ways) {
        let first = First {
            tube: tube.tube,
            pool: self.pools.len(),
            flat: self.flats.len(),
            trap: self.traps.len(),
        };
        self.slopes
            .extend(ways.slopes.iter().map(|slope| first.slope(slope)));
        self.flats
            .extend(ways.flats.iter().map(|flat| first.flat(tube, flat)));
        self.pools
            .extend(ways.lows.into_iter().map(|low| first.pool(tube, low)));
        for number in 0..tube.traps.len() {
            self.traps.extend(trap(tube, number));
        }
    }
}

/// What lies on a tube, and what comes before it in the lists.
#[derive(Clone, Copy)]
struct First {
    tube: Tube,
    pool: usize,
    flat: usize,
    trap: usize,
}

impl First {
    fn along(self, from: Length, to: Length) -> Along {
        Along {
            tube: self.tube,
            from_m: from.to_metres(),
            to_m: to.to_metres(),
        }
    }

    const fn to(self, destination: Destination) -> To {
        match (destination, self.tube) {
            (Destination::Pool(pool), _) => To::Pool(self.pool + pool),
            (Destination::Trap(trap), _) => To::Trap(self.trap + trap),
            (Destination::Start, Tube::Intake) | (Destination::End, Tube::Exhaust) => To::Duct,
            (Destination::End, Tube::Intake) | (Destination::Start, Tube::Exhaust) => To::Detector,
        }
    }

    fn slope(self, slope: &Slope) -> SlopeAt {
        let fills = slope.meets.iter().map(|meets| match meets {
            Meets::Flat(flat) => Fills::Flat(self.flat + flat),
            Meets::Trap(trap) => Fills::Trap(self.trap + trap),
        });
        SlopeAt {
            along: self.along(slope.from, slope.to),
            fills: fills.collect(),
            to: self.to(slope.comes_to),
        }
    }

    fn flat(self, tube: &StandingTube, flat: &FlatPlace) -> FlatAt {
        FlatAt {
            along: self.along(flat.from, flat.to),
            capacity_kg: flat.capacity.to_kilograms(),
            width_m: flat.width.to_metres(),
            outside: outside(tube, flat.from),
        }
    }

    fn pool(self, tube: &StandingTube, low: LowPlace) -> PoolAt {
        let water = tube.drain.water.density;
        let water_kg_m3 = water.to_kilograms_per_cubic_metre();
        let seal = low.shape.seal_volume();
        let litre = Volume::litres(1.0);
        PoolAt {
            along: self.along(low.at, low.until),
            levels: Levels::of(&low.shape, water_kg_m3),
            capacity_kg: low.capacity.to_kilograms(),
            seal_kg: seal.to_cubic_metres() * water_kg_m3,
            bore_m: low.shape.bore().to_metres(),
            head_pa_kg: low.shape.bubbling(seal + litre, water).to_pascals()
                / (litre.to_cubic_metres() * water_kg_m3),
            to: low.runs_over_to.map(|to| self.to(to)),
            joins: low.joins.map(|joins| joins.map(|pool| self.pool + pool)),
            joined_by: low.joined_by.map(|pool| self.pool + pool),
            trap: low.trap.map(|trap| self.trap + trap),
            outside: outside(tube, low.at),
            water_kg_m3,
            low,
        }
    }
}

/// The leg at a place, and its space.
fn outside(tube: &StandingTube, at: Length) -> Outside {
    let number = leg_at(tube, at);
    let passes = tube.passes.get(number);
    Outside {
        space: tube.spaces.get(number).copied().unwrap_or(0),
        passes_w_mk: passes.map_or(0.0, |passes| passes.to_watts_per_metre_kelvin()),
    }
}

fn leg_at(tube: &StandingTube, at: Length) -> usize {
    let mut end = Length::ZERO;
    let legs = tube.drain.legs.iter();
    let found = legs
        .take(tube.drain.legs.len().saturating_sub(1))
        .position(|leg| {
            end += leg.length;
            at <= end
        });
    found.unwrap_or(tube.drain.legs.len().saturating_sub(1))
}

fn trap(tube: &StandingTube, number: usize) -> Option<TrapAt> {
    let built = tube.traps.get(number)?;
    let capacity = tube.capacity(number);
    let lets = match (built.drain, capacity) {
        (Drain::ByHand, _) => Lets::ByHand,
        (Drain::ByItself, _) => Lets::OverSeal,
        (Drain::OpenStub, None) => Lets::AtOnce,
        (Drain::OpenStub, Some(_)) => Lets::Never,
    };
    let bore_m = built.bore.to_metres();
    let area_m2 = 0.25 * core::f64::consts::PI * bore_m * bore_m;
    let water_kg_m3 = tube.drain.water.density.to_kilograms_per_cubic_metre();
    Some(TrapAt {
        tube: tube.tube,
        number,
        at_m: built.at.to_metres(),
        lets,
        capacity_kg: capacity.map_or(f64::INFINITY, Mass::to_kilograms),
        seal_m: built.seal.to_metres(),
        // Both surfaces of a seal fall together.
        seal_kg_m: 2.0 * area_m2 * water_kg_m3,
        blown_m: 0.0,
        bore_m,
        space: outside(tube, built.at).space,
    })
}
