//! The walk down one slope after the other: what each wall and flat leg keeps, what dries, what runs on.

use dewrun_quantity::{Length, Mass, MassFlow};

use super::descent::{Crest, Descent, Forgotten, Received, Receiver, Store, Stretch};
use super::tube::{DrainTube, Formed, SAME_PLACE_M};
use super::way::{Segment, Way};
use super::{Destination, Inflow};
use crate::Incline;
use crate::held::{held_per_length, is_flat};

/// Both lists in rising order.
pub(super) fn with(mut all: Vec<f64>, more: impl Iterator<Item = f64>) -> Vec<f64> {
    all.extend(more);
    all.sort_by(f64::total_cmp);
    all
}

/// The walk down all slopes, and what it leaves behind.
pub(super) struct Walk<'a> {
    tube: &'a DrainTube,
    formed: &'a [Formed],
    traps: Vec<Forgotten>,
    stores: Vec<Store>,
    forgotten: Vec<(usize, Store)>,
    evaporates: Inflow,
    forms_kg_s: f64,
}

impl<'a> Walk<'a> {
    pub(super) fn new(tube: &'a DrainTube, formed: &'a [Formed], traps: Vec<Forgotten>) -> Self {
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

    pub(super) fn descent(self, stretches: Vec<Stretch>) -> Descent {
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
    pub(super) fn down(
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
                let inflow = self.meet(&forward, &[], &[]);
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
        // A forgotten trap at the very bottom fills before the water stands there or leaves.
        let before = forward.last().map(|segment| segment.to_m);
        let after = back.first().map(|segment| segment.from_m);
        if let Some((from_m, to_m)) = before.or(after).zip(after.or(before)) {
            all = self.past_traps(from_m, to_m, all);
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
        lies_flat(self.tube, segment)
    }

    /// What a metre of a segment keeps; where it is not flat, or is the bottom of a pool, its film.
    fn holds_kg_m(&self, segment: &Segment, flat: bool) -> f64 {
        let Some(leg) = self.tube.legs.get(segment.leg) else {
            return 0.0;
        };
        let incline = if flat {
            segment.incline
        } else {
            Incline::UPRIGHT
        };
        held_per_length(leg.bore, incline, &leg.keeping, self.tube.water).to_kilograms_per_metre()
    }
}

/// Whether a puddle stays on a segment.
pub(super) fn lies_flat(tube: &DrainTube, segment: &Segment) -> bool {
    tube.legs
        .get(segment.leg)
        .is_some_and(|leg| is_flat(leg.bore, segment.incline, &leg.keeping.puddle, tube.water))
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
