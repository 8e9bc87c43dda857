//! Water that has left the walls: pools, puddles, traps, what a visit takes away, and the air that follows it.

mod cold;
mod flow;
mod held;
mod hour;
mod level;
mod places;
mod pools;
mod seal;
mod slug;
mod trend;
mod way;

pub use hour::{StateShares, WaterHour, WaterWent};

use dewrun_quantity::{Length, Time};
use dewrun_run::{Installation, Outcome, Run, Tube, Whole, WholeError, standing_of};

use crate::hours::Hours;
pub(crate) use flow::Marched;
use flow::{Flow, Passing, STILL, TRICKLE, WARMS_ALL};
pub(crate) use held::{Came, Held};
pub(crate) use places::{Along, Places};
use slug::Slugs;
use trend::Trend;
use way::InTheWay;

/// When somebody comes by and empties the traps.
#[derive(Debug, Clone, PartialEq)]
pub enum Visits {
    /// Never.
    Never,
    /// Each time so much has gone by, from the start of the hours on.
    Every(Time),
    /// At the end of these hours, by their position, rising.
    At(Vec<usize>),
}

/// What a store of water is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StoreKind {
    /// A low point; two that have run together are one more.
    Pool {
        /// Where its level bottom ends.
        until: Length,
        /// Water that closes the bore, kg.
        seals_at_kg: f64,
    },
    /// A trap or drain, by its position in the installation.
    Trap(usize),
}

/// A place whose level is told of every hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StorePlace {
    /// Which tube.
    pub tube: Tube,
    /// Where along it.
    pub at: Length,
    /// What it is.
    pub kind: StoreKind,
    /// What it holds, kg; infinite in a trap that drains itself.
    pub capacity_kg: f64,
}

/// All water of a run that is not on its walls, as the hours go by.
///
/// Where hardly any air passes, what is marched is air that stands in the tube.
#[derive(Debug, Clone)]
pub struct Water {
    places: Places,
    held: Held,
    /// As it was before the last step.
    held_before: Held,
    /// None where the flow is given with the hours.
    flow: Option<Flow>,
    visits: Visits,
    since_visit_s: f64,
    iced: bool,
    /// Every step begins with the water as the last has left it.
    one_by_one: bool,
    /// Goes up as what stands changes.
    version: u64,
    /// How it stands in the way of the air, of a version.
    way: Option<(u64, InTheWay)>,
    /// The hour whose step is next.
    hour: usize,
    trend: Trend,
    slugs: Slugs,
}

/// Water that can dry, as a lane found it when its step began.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Surface {
    pub(crate) m2: f64,
    pub(crate) kg: f64,
    pub(crate) from_m: f64,
    pub(crate) to_m: f64,
}

/// What a lane knows of the water when its step begins.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Found {
    version: u64,
    /// Whether it is how things stood, and not what they were thought to become.
    exact: bool,
    /// What was thought to stand in each pool, then each flat stretch, kg.
    levels_kg: Vec<f64>,
    pub(crate) surfaces: Vec<Surface>,
    /// Whether the air stands: water does not dry then.
    pub(crate) still: bool,
    way: InTheWay,
    passing: Option<Passing>,
}

/// What a lane has made of it.
#[derive(Debug, Clone, Default)]
pub(crate) struct Made {
    pub(crate) runs: Vec<f64>,
    pub(crate) took: Vec<f64>,
    pub(crate) wall_c: Vec<f64>,
    /// Whether water would dry there.
    pub(crate) dries: Vec<bool>,
    /// The tube's air at each trap, °C and kg/kg.
    pub(crate) at_traps: Vec<(f64, f64)>,
    /// Most of any bore that frost fills.
    pub(crate) frosted: f64,
}

/// The air of a step, and the states that hold as it begins.
#[derive(Debug, Clone, Copy)]
struct AirOfStep {
    deepest: f64,
    reading: f64,
    share: f64,
    dry_air_kg_s: f64,
    states: StateShares,
}

impl AirOfStep {
    const fn put(&self, told: &mut WaterHour) {
        let of_water = told.states;
        (told.deepest, told.reading, told.share) = (self.deepest, self.reading, self.share);
        told.dry_air_kg_s = self.dry_air_kg_s;
        told.states = StateShares {
            frozen: of_water.frozen,
            trap_full: of_water.trap_full,
            trap_leaks: of_water.trap_leaks,
            ..self.states
        };
    }
}

/// Share by which the flow or a surface may have moved since a lane began, before its step is done anew.
const MOVED: f64 = 0.005;
const SURFACE_MOVED: f64 = 0.02;
/// A surface that tells nothing, m2: half a gram an hour at the most.
const SMALL_M2: f64 = 1e-4;

impl Water {
    /// The water of a run: dry at the start, seals filled; the flow follows the hour's air and the water.
    ///
    /// # Errors
    /// [`WholeError`] says which part of the installation keeps it from being answered.
    pub fn of_run(
        run: &Run,
        installation: &Installation,
        steady: &Outcome,
        whole: &Whole,
        visits: Visits,
    ) -> Result<Self, WholeError> {
        let standing = standing_of(run, installation, steady, &whole.airflow)?;
        let mut places = Places::of(&standing.tubes)?;
        places.blow_through(&standing.tubes, whole);
        let flow = Flow::of(standing, run);
        Ok(Self::new(places, Some(flow), visits))
    }

    pub(crate) fn new(places: Places, flow: Option<Flow>, visits: Visits) -> Self {
        Self {
            held: Held::new(&places),
            held_before: Held::new(&places),
            slugs: Slugs::of(&places),
            places,
            flow,
            visits,
            since_visit_s: 0.0,
            iced: false,
            one_by_one: false,
            version: 1,
            way: None,
            hour: 0,
            trend: Trend::default(),
        }
    }

    /// The same, but the flow of each hour is the one given with it.
    #[must_use]
    pub fn with_given_flow(self) -> Self {
        Self { flow: None, ..self }
    }

    /// The same, but every step begins with the water exactly as the last has left it: slower, and the same within a percent.
    #[must_use]
    pub fn one_by_one(self) -> Self {
        Self {
            one_by_one: true,
            ..self
        }
    }

    /// Pools, then traps, in the order in which their levels are told.
    #[must_use]
    pub fn stores(&self) -> Vec<StorePlace> {
        let pools = self.places.pools.iter().map(|pool| StorePlace {
            tube: pool.along.tube,
            at: pool.low.at,
            kind: StoreKind::Pool {
                until: pool.low.until,
                seals_at_kg: pool.seal_kg,
            },
            capacity_kg: pool.capacity_kg,
        });
        let traps = self.places.traps.iter().map(|trap| StorePlace {
            tube: trap.tube,
            at: Length::metres(trap.at_m),
            kind: StoreKind::Trap(trap.number),
            capacity_kg: trap.capacity_kg,
        });
        pools.chain(traps).collect()
    }

    /// Low and high limit of the airflow as parts of the reading as fitted, in use or, where none is known, advised; none where the flow is given.
    #[must_use]
    pub fn limits(&self) -> Option<[f64; 2]> {
        self.flow.as_ref()?.limits()
    }

    /// What is held at the start, kg: the seals.
    #[must_use]
    pub fn at_start_kg(&self) -> f64 {
        let seals = self.places.traps.iter();
        seals.map(|trap| trap.seal_m * trap.seal_kg_m).sum()
    }

    pub(crate) const fn places(&self) -> &Places {
        &self.places
    }

    /// Least, usual and greatest dry air that is marched, kg/s; none where the flow is given.
    pub(crate) fn flows_kg_s(&mut self) -> Option<[f64; 3]> {
        let flow = self.flow.as_mut()?;
        let most = flow.most_kg_s(&self.places);
        let fitted = flow.fitted_kg_s();
        Some([0.9 * TRICKLE * fitted, fitted, most])
    }

    /// Takes down how the water stands as a step begins; gives the air that flows.
    pub(crate) fn look(
        &mut self,
        hours: &Hours,
        hour: usize,
        found: &mut Found,
    ) -> Option<Marched> {
        let ahead = hour.saturating_sub(self.hour);
        let exact = ahead == 0;
        if !exact || !found.exact || found.version != self.version {
            let length_s = hours.hour(hour).map_or(0.0, |hour| hour.seconds);
            let ahead_s = self.trend.ahead_s(ahead, length_s);
            (found.version, found.exact) = (self.version, exact);
            self.trend
                .levels_kg(&self.held, ahead_s, &mut found.levels_kg);
            found.surfaces.clear();
            for (stand, &kg) in found.levels_kg.iter().enumerate() {
                found.surfaces.push(self.surface(stand, kg));
            }
            found.way = self.way(&found.levels_kg);
        }
        let flow = self.flow.as_mut()?;
        let weather = flow.weather(hours, hour);
        let passing = flow.passing(&self.places, weather, &found.way);
        found.passing = Some(passing);
        let w = hours.hour(hour).map_or(0.0, |hour| hour.w);
        let least = TRICKLE * flow.fitted_kg_s();
        let fresh = (passing.mass_kg_s / least).clamp(0.0, 1.0);
        found.still = fresh < 1.0;
        let marched_w = if found.still {
            let stands_w = flow.stands_w(hours, hour);
            stands_w + fresh * (w - stands_w)
        } else {
            w
        };
        Some(Marched {
            dry_air_kg_s: passing.mass_kg_s.max(least) / (1.0 + w),
            still: passing.mass_kg_s < STILL * flow.fitted_kg_s(),
            warms: (passing.mass_kg_s / (WARMS_ALL * flow.fitted_kg_s())).clamp(0.0, 1.0),
            w: marched_w,
        })
    }

    fn way(&self, levels_kg: &[f64]) -> InTheWay {
        let open = self.flow.as_ref().map_or(&[][..], Flow::open);
        InTheWay::of(&self.places, (levels_kg, &self.held), self.iced, open)
    }

    /// How water stands now; to be put back for those who ask next.
    fn take_way(&mut self) -> InTheWay {
        let known = self.way.take().filter(|(of, _)| *of == self.version);
        known.map_or_else(
            || {
                let levels_kg: Vec<f64> = self.held.pools.iter().map(|store| store.all()).collect();
                self.way(&levels_kg)
            },
            |(_, way)| way,
        )
    }

    fn surface(&self, stand: usize, kg: f64) -> Surface {
        let pools = self.places.pools.len();
        if let Some(place) = self.places.pools.get(stand) {
            let level = place.levels.at(kg);
            return Surface {
                m2: level.surface_m2,
                kg,
                from_m: place.along.from_m - level.before_m,
                to_m: place.along.to_m + level.after_m,
            };
        }
        let flat = stand
            .checked_sub(pools)
            .and_then(|flat| self.places.flats.get(flat));
        flat.map_or(
            Surface {
                m2: 0.0,
                kg: 0.0,
                from_m: 0.0,
                to_m: 0.0,
            },
            |place| {
                let Along { from_m, to_m, .. } = place.along;
                let covered = (kg / place.capacity_kg).min(1.0);
                Surface {
                    m2: place.width_m * (to_m - from_m) * covered,
                    kg,
                    from_m,
                    to_m,
                }
            },
        )
    }

    /// Whether the water has moved too far since a step began for what it has made.
    pub(crate) fn has_moved(
        &mut self,
        hours: &Hours,
        hour: usize,
        found: &Found,
        made: &Made,
    ) -> bool {
        if found.exact && found.version == self.version {
            return false;
        }
        if self.one_by_one {
            return true;
        }
        for (stand, before) in found.surfaces.iter().enumerate() {
            let took = made.took.get(stand).copied().unwrap_or(0.0);
            let dries = made.dries.get(stand).copied().unwrap_or(false);
            let now = self.surface(stand, self.held.stand(stand).all());
            let off = (now.m2 - before.m2).abs();
            let dries = dries && !found.still;
            let far = SURFACE_MOVED * now.m2.max(before.m2) + SMALL_M2 < off;
            if now.kg < took || (dries && far) {
                return true;
            }
        }
        let way = self.take_way();
        let moved = self.has_turned(hours, hour, found, &way);
        self.way = Some((self.version, way));
        moved
    }

    /// Whether another air passes than a step has found, now that water stands in its way like that.
    fn has_turned(&mut self, hours: &Hours, hour: usize, found: &Found, way: &InTheWay) -> bool {
        let Some((flow, before)) = self.flow.as_mut().zip(found.passing) else {
            return false;
        };
        if *way == found.way {
            return false;
        }
        let weather = flow.weather(hours, hour);
        let now = flow.passing(&self.places, weather, way);
        let off = (now.mass_kg_s - before.mass_kg_s).abs();
        MOVED * flow.fitted_kg_s() < off || way.is_iced() != found.way.is_iced()
    }

    /// Lets a step go by, which is the last of its hour or not.
    pub(crate) fn step(
        &mut self,
        hours: &Hours,
        (hour, seconds, is_last): (usize, f64, bool),
        (found, made): (&Found, &Made),
    ) -> WaterHour {
        self.since_visit_s += seconds;
        let outside_c: Vec<f64> = (0..hours.spaces())
            .map(|space| {
                hours
                    .around(hour, space)
                    .map_or(20.0, |around| around.air_c)
            })
            .collect();
        let seal_falls_m = seal::falls_m(&self.places, hours, hour, seconds, &made.at_traps);
        let came = Came {
            seconds,
            runs: &made.runs,
            took: &made.took,
            wall_c: &made.wall_c,
            outside_c: &outside_c,
            seal_falls_m: &seal_falls_m,
            visited: is_last && self.is_visited(hour),
        };
        let air = self.air_of(hours, hour, found);
        let was_iced = self.iced;
        self.held_before.take(&self.held);
        let mut told = self.held.step(&self.places, &came);
        air.put(&mut told);
        self.iced = 1.0 <= made.frosted;
        if was_iced != self.iced || self.held_before != self.held {
            self.version += 1;
        }
        self.trend.note(&self.held_before, &self.held, seconds);
        self.hour = if is_last { hour + 1 } else { hour };
        told
    }

    fn is_visited(&mut self, hour: usize) -> bool {
        let visited = match &self.visits {
            Visits::Never => false,
            Visits::Every(interval) => interval.to_seconds() <= self.since_visit_s + 1e-6,
            Visits::At(hours) => hours.binary_search(&hour).is_ok(),
        };
        if visited {
            self.since_visit_s = 0.0;
        }
        visited
    }

    /// The air of a step, and the states of it and of the water as it begins.
    fn air_of(&mut self, hours: &Hours, hour: usize, found: &Found) -> AirOfStep {
        let way = self.take_way();
        let share = |holds: bool| if holds { 1.0 } else { 0.0 };
        let mut air = AirOfStep {
            deepest: way.deepest(),
            reading: 1.0,
            share: 1.0,
            dry_air_kg_s: 0.0,
            states: StateShares {
                sealed: share(way.is_sealed()),
                iced: share(way.is_iced()),
                ..StateShares::default()
            },
        };
        let is_sealed = way.is_sealed();
        let is_closed = is_sealed || way.is_iced();
        self.way = Some((self.version, way));
        let Some(now) = hours.hour(hour) else {
            return air;
        };
        let states = &mut air.states;
        let mut mass_kg_s = now.dry_air_kg_s * (1.0 + now.w);
        let mut blind = is_closed;
        if let Some((flow, passing)) = self.flow.as_ref().zip(found.passing) {
            mass_kg_s = passing.mass_kg_s;
            (air.reading, air.share) = (passing.reading, passing.share);
            blind |= passing.is_blind();
            states.reversed = share(mass_kg_s < 0.0);
            states.bubbles = share(is_sealed && 0.0 < mass_kg_s);
            if let Some([low, high]) = flow.limits() {
                states.low = share(passing.reading < low);
                states.high = share(high < passing.reading);
            }
        }
        states.blind = share(blind);
        let thrown = self
            .slugs
            .are_thrown(&self.places, &self.held.pools, now, mass_kg_s);
        states.slugs = share(thrown);
        air.dry_air_kg_s = mass_kg_s / (1.0 + now.w);
        air
    }

    /// What stands in each store, kg, in the order of [`Water::stores`].
    pub(crate) fn levels(&self) -> impl Iterator<Item = f64> + '_ {
        let pools = self.held.pools.iter().map(|store| store.all());
        pools.chain(self.held.traps.iter().map(|trap| trap.store.all()))
    }
}
