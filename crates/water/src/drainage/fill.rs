//! Low points fill, run over their lower crest, and run together where two stand level at one.

use dewrun_quantity::{Length, Mass, MassFlow, Time};

use super::descent::{Crest, Descent, Receiver, Stretch};
use super::way::{Segment, pieces};
use super::{Destination, Drainage, Inflow, Pool};
use crate::pool::PoolShape;

/// Fills all low points over time.
pub(super) fn fill(descent: Descent) -> Drainage {
    let mut sinks = Sinks::of(descent.trap_count);
    let (mut rows, mut basins) = lay(descent.stretches, descent.water_kg_m3, &mut sinks);
    for row in &mut rows {
        while row.next_event(&mut basins, &mut sinks) {}
    }
    Drainage {
        pools: basins.into_iter().map(Basin::pool).collect(),
        out_at_start: sinks.start,
        out_at_end: sinks.end,
        into_traps: sinks.traps,
        evaporates: descent.evaporates,
        forms: MassFlow::kilograms_per_second(descent.forms_kg_s),
        stores: descent.stores,
        forgotten: descent.forgotten,
    }
}

/// All pools of a tube, whatever comes in: where each runs over to when it is full, and those that two become which run over to each other.
pub(super) fn brimming(descent: Descent) -> Vec<Pool> {
    let mut sinks = Sinks::of(descent.trap_count);
    let (mut rows, mut basins) = lay(descent.stretches, descent.water_kg_m3, &mut sinks);
    for row in &mut rows {
        while row.spill(&mut basins) {}
    }
    basins.into_iter().map(Basin::pool).collect()
}

fn lay(stretches: Vec<Stretch>, water_kg_m3: f64, sinks: &mut Sinks) -> (Vec<Row>, Vec<Basin>) {
    let (mut rows, mut basins) = (Vec::new(), Vec::new());
    for stretch in stretches {
        rows.push(Row::of(stretch, water_kg_m3, &mut basins, sinks));
    }
    (rows, basins)
}

/// What takes water for good.
struct Sinks {
    start: Inflow,
    end: Inflow,
    traps: Vec<Inflow>,
}

impl Sinks {
    fn of(trap_count: usize) -> Self {
        Self {
            start: Inflow::default(),
            end: Inflow::default(),
            traps: vec![Inflow::default(); trap_count],
        }
    }

    fn take(&mut self, destination: Destination, inflow: &Inflow) {
        let sink = match destination {
            Destination::Start => &mut self.start,
            Destination::End => &mut self.end,
            Destination::Trap(trap) => match self.traps.get_mut(trap) {
                Some(sink) => sink,
                None => return,
            },
            Destination::Pool(_) => return,
        };
        *sink = sink.with(inflow);
    }
}

/// A pool while it fills.
struct Basin {
    segments: Vec<Segment>,
    low: Segment,
    shape: PoolShape,
    water_kg_m3: f64,
    /// Without what runs over from others.
    own: Inflow,
    /// What runs over from others, by their position.
    from: Vec<(usize, Inflow)>,
    capacity: Mass,
    begins: Time,
    full: Option<Time>,
    runs_over_to: Option<Destination>,
    joins: Vec<usize>,
    joined_by: Option<usize>,
    ends: Option<Time>,
}

impl Basin {
    fn of(
        segments: Vec<Segment>,
        crests: [Crest; 2],
        own: Inflow,
        water_kg_m3: f64,
    ) -> Option<Self> {
        let lowest = |one: &&Segment, other: &&Segment| {
            let by_height = one.lower_z_m().total_cmp(&other.lower_z_m());
            by_height.then(
                one.incline
                    .sine()
                    .abs()
                    .total_cmp(&other.incline.sine().abs()),
            )
        };
        let low = *segments.iter().min_by(lowest)?;
        let low_z_m = low.lower_z_m();
        let [before, after] = crests.map(|crest| crest.z_m - low_z_m);
        let all = pieces(&segments, low.low_from_m(), low_z_m);
        let shape = PoolShape::of(all, Length::metres(before.min(after))).ok()?;
        let capacity = Mass::kilograms(shape.capacity().to_cubic_metres() * water_kg_m3);
        Some(Self {
            segments,
            low,
            shape,
            water_kg_m3,
            own,
            from: Vec::new(),
            capacity,
            begins: Time::ZERO,
            full: None,
            runs_over_to: None,
            joins: Vec::new(),
            joined_by: None,
            ends: None,
        })
    }

    fn inflow(&self) -> Inflow {
        self.from
            .iter()
            .fold(self.own.clone(), |sum, (_, more)| sum.with(more))
    }

    /// Two that stand level at the crest between them, from that moment on.
    fn joined([one, other]: [(usize, &Self); 2], crests: [Crest; 2], begins: Time) -> Option<Self> {
        let ((first, one), (second, other)) = (one, other);
        let segments = one.segments.iter().chain(&other.segments).copied();
        let own = one.own.with(&other.own);
        let joined = Self::of(segments.collect(), crests, own, one.water_kg_m3)?;
        let from = one.from.iter().chain(&other.from);
        let from_outside = from.filter(|(source, _)| ![first, second].contains(source));
        Some(Self {
            from: from_outside.cloned().collect(),
            begins,
            joins: vec![first, second],
            ..joined
        })
    }

    fn pool(self) -> Pool {
        let inflow = self.inflow();
        let edge = |segment: Option<&Segment>, of: fn(&Segment) -> f64| {
            Length::metres(segment.map_or(0.0, of))
        };
        let bottom = |segment: &&Segment| {
            segment.incline.sine() == 0.0 && segment.lower_z_m() <= self.low.lower_z_m()
        };
        let until_m = self
            .segments
            .iter()
            .filter(bottom)
            .map(|segment| segment.to_m)
            .fold(self.low.low_from_m(), f64::max);
        Pool {
            at: Length::metres(self.low.low_from_m()),
            until: Length::metres(until_m),
            elevation: Length::metres(self.low.lower_z_m()),
            catchment: [
                edge(self.segments.first(), |segment| segment.from_m),
                edge(self.segments.last(), |segment| segment.to_m),
            ],
            joins: self.joins,
            begins: self.begins,
            shape: self.shape,
            inflow,
            capacity: self.capacity,
            full: self.full,
            runs_over_to: self.runs_over_to,
            joined_by: self.joined_by,
            ends: self.ends,
        }
    }
}

/// What lies side by side in one stretch: sinks at both ends, pools between them.
struct Row {
    places: Vec<Destination>,
    crests: Vec<Crest>,
}

/// Towards which end of the row.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Towards {
    Before,
    After,
}

impl Row {
    fn of(stretch: Stretch, water_kg_m3: f64, basins: &mut Vec<Basin>, sinks: &mut Sinks) -> Self {
        let mut places = Vec::with_capacity(stretch.received.len());
        for (place, received) in stretch.received.into_iter().enumerate() {
            match received.receiver {
                Receiver::Sink(sink) => {
                    sinks.take(sink, &received.inflow);
                    places.push(sink);
                }
                Receiver::LowPoint(segments) => {
                    let crests = around(&stretch.crests, place);
                    let basin = crests.and_then(|crests| {
                        Basin::of(segments, crests, received.inflow, water_kg_m3)
                    });
                    places.push(Destination::Pool(basins.len()));
                    basins.extend(basin);
                }
            }
        }
        Self {
            places,
            crests: stretch.crests,
        }
    }

    /// Lets the pool that is full first run over; false where none fills any more.
    fn next_event(&mut self, basins: &mut Vec<Basin>, sinks: &mut Sinks) -> bool {
        let mut next: Option<(Time, usize, usize)> = None;
        for (place, id) in self.pools() {
            let Some(basin) = basins.get(id).filter(|basin| basin.full.is_none()) else {
                continue;
            };
            if let Some(full) = basin.inflow().time_for(basin.capacity)
                && next.is_none_or(|(soonest, ..)| full < soonest)
            {
                next = Some((full, place, id));
            }
        }
        let Some((full, place, id)) = next else {
            return false;
        };
        self.run_over(full, place, id, basins, sinks);
        true
    }

    fn pools(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        self.places
            .iter()
            .enumerate()
            .filter_map(|(place, destination)| match destination {
                Destination::Pool(id) => Some((place, *id)),
                _ => None,
            })
    }

    /// Notes where each pool runs over to and joins two that run over to each other; false where there are none such.
    fn spill(&mut self, basins: &mut Vec<Basin>) -> bool {
        let mut towards_each_other = None;
        for (place, id) in self.pools() {
            let towards = self.lower_side(place);
            let Some((next_place, next)) = self.neighbour(place, towards) else {
                continue;
            };
            if let Some(basin) = basins.get_mut(id) {
                basin.runs_over_to = basin.runs_over_to.or(Some(next));
            }
            let back =
                matches!(next, Destination::Pool(_)) && self.lower_side(next_place) != towards;
            if back {
                towards_each_other = Some((place, next_place));
            }
        }
        let before = basins.len();
        if let Some((place, next_place)) = towards_each_other {
            self.join(place, next_place, Time::ZERO, basins);
        }
        before < basins.len()
    }

    fn run_over(
        &mut self,
        full: Time,
        place: usize,
        id: usize,
        basins: &mut Vec<Basin>,
        sinks: &mut Sinks,
    ) {
        let Some(spill) = basins.get_mut(id).map(|basin| {
            basin.full = Some(full);
            basin.inflow().beyond(basin.capacity)
        }) else {
            return;
        };
        let mut towards = self.lower_side(place);
        let mut at = place;
        loop {
            let beyond = self.neighbour(at, towards);
            let Some((next_place, next)) = beyond else {
                return;
            };
            if at == place
                && let Some(basin) = basins.get_mut(id)
            {
                basin.runs_over_to = Some(next);
            }
            let Destination::Pool(next_id) = next else {
                sinks.take(next, &spill);
                return;
            };
            let Some(other) = basins.get_mut(next_id) else {
                return;
            };
            if other.full.is_none() {
                other.from.push((id, spill));
                return;
            }
            let onward = self.lower_side(next_place);
            if onward != towards {
                self.join(at, next_place, full, basins);
                return;
            }
            (at, towards) = (next_place, onward);
        }
    }

    /// The side of the lower crest of a pool; with the flow where both are alike.
    fn lower_side(&self, place: usize) -> Towards {
        match around(&self.crests, place) {
            Some([before, after]) if before.z_m < after.z_m => Towards::Before,
            _ => Towards::After,
        }
    }

    fn neighbour(&self, place: usize, towards: Towards) -> Option<(usize, Destination)> {
        let next = match towards {
            Towards::Before => place.checked_sub(1)?,
            Towards::After => place + 1,
        };
        self.places.get(next).map(|found| (next, *found))
    }

    /// Two full pools that run over towards each other become one.
    fn join(&mut self, place: usize, other: usize, begins: Time, basins: &mut Vec<Basin>) {
        let (left, right) = (place.min(other), place.max(other));
        let outer = around(&self.crests, left)
            .zip(around(&self.crests, right))
            .map(|([before, _], [_, after])| [before, after]);
        let id_at = |place: usize| match self.places.get(place) {
            Some(Destination::Pool(id)) => Some(*id),
            _ => None,
        };
        let Some(((first, second), outer)) = id_at(left).zip(id_at(right)).zip(outer) else {
            return;
        };
        let joined = basins
            .get(first)
            .zip(basins.get(second))
            .and_then(|(one, two)| Basin::joined([(first, one), (second, two)], outer, begins));
        let Some(joined) = joined else {
            return;
        };
        let id = basins.len();
        basins.push(joined);
        for part in [first, second] {
            if let Some(basin) = basins.get_mut(part) {
                basin.joined_by = Some(id);
                basin.ends = Some(begins);
            }
        }
        self.places.splice(left..=right, [Destination::Pool(id)]);
        self.crests.remove(left);
    }
}

/// The crests before and after a place of a row.
fn around(crests: &[Crest], place: usize) -> Option<[Crest; 2]> {
    let before = crests.get(place.checked_sub(1)?)?;
    Some([*before, *crests.get(place)?])
}
