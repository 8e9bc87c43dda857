//! Down the slopes: from each crest to the low point, trap or end below it, filling walls and flat legs on the way.

use dewrun_quantity::{Mass, Time};

use super::tube::{DrainTube, Formed, SAME_PLACE_M};
use super::walk::{Walk, with};
use super::way::{Segment, direct, segments};
use super::{Destination, Inflow, Traps};

/// A place that keeps water: a stretch of wall, a flat leg, a trap that nobody empties.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Store {
    pub(super) incoming: Inflow,
    pub(super) capacity: Mass,
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
    pub(super) from_m: f64,
    pub(super) to_m: f64,
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
pub(super) struct Forgotten {
    pub(super) trap: usize,
    pub(super) at_m: f64,
    pub(super) capacity: Mass,
}

/// What lies between two places that take water for good: its segments, each with its way.
pub(super) struct Between {
    pub(super) from_m: f64,
    pub(super) to_m: f64,
    pub(super) sinks: [Destination; 2],
    pub(super) segments: Vec<Segment>,
}

/// A tube cut at all places that take water for good, and the traps that fill and then let pass.
pub(super) fn between_sinks(tube: &DrainTube, traps: Traps) -> (Vec<Between>, Vec<Forgotten>) {
    let (mut sinks, mut forgotten) = (Vec::new(), Vec::new());
    let end_m = tube.end_m();
    for (trap, given) in tube.traps.iter().enumerate() {
        let at_m = given.at.to_metres().max(0.0).min(end_m);
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
    sinks.push((end_m, Destination::End));
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
    let mut rest = segments(tube, &cuts_m).into_iter().peekable();
    let mut all = Vec::new();
    for pair in sinks.windows(2) {
        let [(from_m, before), (to_m, after)] = pair else {
            continue;
        };
        let mut within = Vec::new();
        while let Some(segment) = rest.next_if(|next| next.to_m <= to_m + SAME_PLACE_M) {
            within.push(segment);
        }
        all.push(Between {
            from_m: *from_m,
            to_m: *to_m,
            sinks: [*before, *after],
            segments: direct(within),
        });
    }
    (all, forgotten)
}

impl Descent {
    pub(super) fn new(tube: &DrainTube, formed: &[Formed], traps: Traps) -> Self {
        let (all, forgotten) = between_sinks(tube, traps);
        let mut walk = Walk::new(tube, formed, forgotten);
        let mut stretches = Vec::new();
        for between in all {
            let (received, crests) = walk.down(between.segments, between.sinks);
            stretches.push(Stretch {
                received,
                crests,
                from_m: between.from_m,
                to_m: between.to_m,
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
