//! Down the slopes: from each crest to the low point, trap or end below it, filling walls and flat legs on the way.

use dewrun_quantity::{Length, Mass, MassFlow, Time};

use super::tube::{DrainTube, Formed, SAME_PLACE_M};
use super::way::{Segment, Way, direct, segments};
use super::{Destination, Inflow, Traps};
use crate::held::{held_per_length, is_flat};

/// A place that keeps water: a stretch of wall, a flat leg, a trap that nobody empties.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Store {
    incoming: Inflow,
    capacity: Mass,
}

impl Store {
    pub(super) fn holds(&self, after: Time) -> Mass {
        self.incoming.amount(after).min(self.capacity)
    }
}

/// What takes the water of a slope.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Receiver {
    /// An end or a trap.
    Sink(Destination),
    /// A low point: the segments between the crests on either side.
    LowPoint(Vec<Segment>),
}

/// A receiver and what comes down to it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Received {
    pub(super) receiver: Receiver,
    pub(super) inflow: Inflow,
}

/// One stretch of tube between two places that take water for good.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Stretch {
    /// From the sink at its beginning to that at its end.
    pub(super) received: Vec<Received>,
    /// The crest between each and the next.
    pub(super) crests: Vec<Crest>,
    from_m: f64,
    to_m: f64,
}

/// The highest place between two receivers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Crest {
    pub(super) at_m: f64,
    pub(super) z_m: f64,
}

/// What comes down to every low point, trap and end before anything runs over.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Descent {
    pub(super) stretches: Vec<Stretch>,
    pub(super) stores: Vec<Store>,
    pub(super) forgotten: Vec<(usize, Store)>,
    pub(super) evaporates: Inflow,
    pub(super) forms_kg_s: f64,
    pub(super) trap_count: usize,
    pub(super) water_kg_m3: f64,
}

/// A trap that fills and then lets pass: its position in the list, place and capacity.
struct Forgotten {
    trap: usize,
    at_m: f64,
    capacity: Mass,
}

impl Descent {
    pub(super) fn new(tube: &DrainTube, formed: &[Formed], traps: Traps) -> Self {
        let (mut sinks, mut forgotten) = (Vec::new(), Vec::new());
        for (trap, given) in tube.traps.iter().enumerate() {
            let at_m = given.at.to_metres();
            match given.capacity {
                Some(capacity) if traps == Traps::Forgotten => forgotten.push(Forgotten {
                    trap,
                    at_m,
                    capacity,
                }),
                _ => sinks.push((at_m, Destination::Trap(trap))),
            }
        }
        sinks.push((0.0, Destination::Start));
        sinks.push((tube.end_m(), Destination::End));
        // A trap at an end takes the water before the end does.
        sinks.sort_by(|one, next| {
            let rank = |sink: Destination| match sink {
                Destination::Start => 0,
                Destination::End => 2,
                _ => 1,
            };
            (one.0.total_cmp(&next.0)).then(rank(one.1).cmp(&rank(next.1)))
        });
        let cuts_m: Vec<f64> = sinks.iter().map(|sink| sink.0).collect();
        let cuts_m = with(cuts_m, forgotten.iter().map(|trap| trap.at_m));
        let mut walk = Walk::new(tube, formed, forgotten);
        let mut rest = segments(tube, &cuts_m).into_iter().peekable();
        let mut stretches = Vec::new();
        for pair in sinks.windows(2) {
            let [(from_m, before), (to_m, after)] = pair else {
                continue;
            };
            let mut within = Vec::new();
            while let Some(segment) = rest.next_if(|next| next.to_m <= to_m + SAME_PLACE_M) {
                within.push(segment);
            }
            let (received, crests) = walk.down(direct(within), [*before, *after]);
            stretches.push(Stretch {
                received,
                crests,
                from_m: *from_m,
                to_m: *to_m,
            });
        }
        walk.descent(stretches)
    }

    /// Where water comes to that is at a place of the tube; pools by their position among all low points.
    pub(super) fn destination(&self, at_m: f64) -> Option<Destination> {
        let mut low_points_before = 0;
        for stretch in &self.stretches {
            let inside = stretch.from_m <= at_m && at_m <= stretch.to_m;
            let crests_before = stretch.crests.iter().filter(|crest| crest.at_m < at_m);
            let place = if inside {
                crests_before.count()
            } else {
                stretch.received.len()
            };
            let before = stretch.received.iter().take(place);
            low_points_before += before.filter(|received| received.is_low_point()).count();
            if let Some(received) = stretch.received.get(place) {
                return Some(match received.receiver {
                    Receiver::Sink(sink) => sink,
                    Receiver::LowPoint(_) => Destination::Pool(low_points_before),
                });
            }
        }
        None
    }
}

impl Received {
    const fn is_low_point(&self) -> bool {
        matches!(self.receiver, Receiver::LowPoint(_))
    }
}

fn with(mut all: Vec<f64>, more: impl Iterator<Item = f64>) -> Vec<f64> {
    all.extend(more);
    all.sort_by(f64::total_cmp);
    all
}

/// The walk down all slopes, and what it leaves behind.
struct Walk<'a> {
    tube: &'a DrainTube,
    formed: &'a [Formed],
    traps: Vec<Forgotten>,
    stores: Vec<Store>,
    forgotten: Vec<(usize, Store)>,
    evaporates: Inflow,
    forms_kg_s: f64,
}

impl<'a> Walk<'a> {
    fn new(tube: &'a DrainTube, formed: &'a [Formed], traps: Vec<Forgotten>) -> Self {
        Self {
            tube,
            formed,
            traps,
            stores: Vec::new(),
            forgotten: Vec::new(),
            evaporates: Inflow::default(),
            forms_kg_s: 0.0,
        }
    }

    fn descent(self, stretches: Vec<Stretch>) -> Descent {
        Descent {
            stretches,
            stores: self.stores,
            forgotten: self.forgotten,
            evaporates: self.evaporates,
            forms_kg_s: self.forms_kg_s,
            trap_count: self.tube.traps.len(),
            water_kg_m3: self.tube.water.density.to_kilograms_per_cubic_metre(),
        }
    }

    /// Receivers of a stretch from its beginning to its end, and the crests between them.
    fn down(
        &mut self,
        segments: Vec<Segment>,
        sinks: [Destination; 2],
    ) -> (Vec<Received>, Vec<Crest>) {
        let [before, after] = sinks;
        let (mut received, mut crests) = (Vec::new(), Vec::new());
        let mut rest = segments.into_iter().peekable();
        let mut take = |way| {
            let mut group = Vec::new();
            while let Some(segment) = rest.next_if(|next| next.way == way) {
                group.push(segment);
            }
            group
        };
        let mut slope = take(Way::Back);
        let mut receiver = Receiver::Sink(before);
        let mut forward = Vec::new();
        let mut bottom = Vec::new();
        loop {
            let inflow = self.meet(&forward, &bottom, &slope);
            if let Receiver::LowPoint(all) = &mut receiver {
                all.extend(forward.iter().chain(&bottom).chain(&slope));
            }
            let end = |segment: &Segment| Crest {
                at_m: segment.to_m,
                z_m: segment.to_z_m,
            };
            let start = |segment: &Segment| Crest {
                at_m: segment.from_m,
                z_m: segment.from_z_m,
            };
            let top = slope.last().map(end);
            received.push(Received { receiver, inflow });
            forward = take(Way::Forward);
            // A stretch without length has none, and no water.
            crests.extend(top.or(forward.first().map(start)));
            bottom = take(Way::Rests);
            slope = take(Way::Back);
            if bottom.is_empty() && slope.is_empty() {
                let inflow = self.slope(forward.iter());
                received.push(Received {
                    receiver: Receiver::Sink(after),
                    inflow,
                });
                return (received, crests);
            }
            receiver = Receiver::LowPoint(Vec::new());
        }
    }

    /// What comes to a receiver down the slopes on both sides, and what forms over its level bottom.
    fn meet(&mut self, forward: &[Segment], bottom: &[Segment], back: &[Segment]) -> Inflow {
        let before = self.slope(forward.iter());
        let after = self.slope(back.iter().rev());
        let mut all = before.with(&after);
        for segment in bottom {
            all = self.along(segment, all, false);
        }
        // A forgotten trap at the very bottom fills before the water stands there.
        let (first, last) = (forward.last(), back.first());
        if let Some((from, to)) = first.zip(last) {
            all = self.past_traps(from.to_m, to.from_m, all);
        }
        all
    }

    /// What runs out at the foot of a slope whose segments are given from the top.
    fn slope<'s>(&mut self, from_the_top: impl Iterator<Item = &'s Segment>) -> Inflow {
        let mut carry = Inflow::default();
        let mut above: Option<&Segment> = None;
        for segment in from_the_top {
            if let Some(above) = above {
                let joint_m = if segment.way == Way::Back {
                    above.from_m
                } else {
                    above.to_m
                };
                carry = self.past_traps(joint_m, joint_m, carry);
            }
            let flat = self.is_flat(segment);
            carry = self.along(segment, carry, flat);
            above = Some(segment);
        }
        carry
    }

    /// What is left behind a segment of what comes from above and forms on it.
    ///
    /// A flat segment keeps its puddle of both; on a steeper one only what forms there wets the wall.
    fn along(&mut self, segment: &Segment, mut carry: Inflow, flat: bool) -> Inflow {
        let holds_kg_m = self.holds_kg_m(segment, flat);
        for cell in cells(segment, self.formed) {
            let forms_kg_s = cell.rate_kg_s.max(0.0);
            let own = Inflow::steady(MassFlow::kilograms_per_second(forms_kg_s));
            self.forms_kg_s += forms_kg_s;
            let dries = MassFlow::kilograms_per_second((-cell.rate_kg_s).max(0.0));
            if MassFlow::ZERO < dries {
                let (left, taken) = carry.less(dries);
                self.evaporates = self.evaporates.with(&taken);
                carry = left;
            }
            // A wall that dries keeps nothing for good.
            let holds_kg_m = if MassFlow::ZERO < dries {
                0.0
            } else {
                holds_kg_m
            };
            let capacity = Mass::kilograms(holds_kg_m * cell.length_m);
            if flat {
                carry = self.keep(carry.with(&own), capacity);
            } else {
                carry = carry.with(&self.keep(own, capacity));
            }
        }
        carry
    }

    fn keep(&mut self, incoming: Inflow, capacity: Mass) -> Inflow {
        let passes = incoming.beyond(capacity);
        if incoming != Inflow::default() {
            self.stores.push(Store { incoming, capacity });
        }
        passes
    }

    fn past_traps(&mut self, from_m: f64, to_m: f64, mut carry: Inflow) -> Inflow {
        for trap in &self.traps {
            let here = from_m - SAME_PLACE_M <= trap.at_m && trap.at_m <= to_m + SAME_PLACE_M;
            if here {
                let store = Store {
                    incoming: carry.clone(),
                    capacity: trap.capacity,
                };
                carry = carry.beyond(trap.capacity);
                self.forgotten.push((trap.trap, store));
            }
        }
        carry
    }

    fn is_flat(&self, segment: &Segment) -> bool {
        self.tube.legs.get(segment.leg).is_some_and(|leg| {
            is_flat(
                leg.bore,
                segment.incline,
                &leg.keeping.puddle,
                self.tube.water,
            )
        })
    }

    /// What a metre of a segment keeps; where it is not flat, or is the bottom of a pool, its film.
    fn holds_kg_m(&self, segment: &Segment, flat: bool) -> f64 {
        let Some(leg) = self.tube.legs.get(segment.leg) else {
            return 0.0;
        };
        let incline = if flat {
            segment.incline
        } else {
            crate::Incline::UPRIGHT
        };
        held_per_length(leg.bore, incline, &leg.keeping, self.tube.water).to_kilograms_per_metre()
    }
}

/// A part of a segment on which water forms evenly.
struct Cell {
    length_m: f64,
    rate_kg_s: f64,
}

/// The parts of a segment between the edges of all stretches, from its top down.
fn cells(segment: &Segment, formed: &[Formed]) -> Vec<Cell> {
    let inside = |at: Length| {
        let at_m = at.to_metres();
        (segment.from_m < at_m && at_m < segment.to_m).then_some(at_m)
    };
    let edges = formed
        .iter()
        .flat_map(|stretch| [inside(stretch.from), inside(stretch.to)]);
    let edges_m = with(vec![segment.from_m, segment.to_m], edges.flatten());
    let mut cells: Vec<Cell> = edges_m
        .windows(2)
        .filter_map(|pair| match pair {
            [from_m, to_m] if from_m < to_m => Some(cell(*from_m, *to_m, formed)),
            _ => None,
        })
        .collect();
    if segment.way == Way::Back {
        cells.reverse();
    }
    cells
}

fn cell(from_m: f64, to_m: f64, formed: &[Formed]) -> Cell {
    let length_m = to_m - from_m;
    let middle_m = 0.5 * (from_m + to_m);
    let rate_kg_s = formed
        .iter()
        .filter(|stretch| stretch.from.to_metres() < middle_m && middle_m < stretch.to.to_metres())
        .map(|stretch| {
            stretch.rate.to_kilograms_per_second() * length_m
                / (stretch.to - stretch.from).to_metres()
        })
        .sum();
    Cell {
        length_m,
        rate_kg_s,
    }
}
