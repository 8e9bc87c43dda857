//! The elevation of a tube cut where water changes its way: segments, and which way water runs on each.

use dewrun_quantity::Length;

use super::tube::{DrainTube, SAME_PLACE_M};
use crate::Incline;
use crate::pool::{Piece, Side};

/// Which way water runs on a segment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    /// With the numbering of positions.
    Forward,
    /// Against it.
    Back,
    /// Nowhere: the level bottom of a low point.
    Rests,
}

/// A straight stretch on which water runs one way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Segment {
    pub(super) leg: usize,
    pub(super) from_m: f64,
    pub(super) to_m: f64,
    pub(super) from_z_m: f64,
    pub(super) to_z_m: f64,
    pub(super) bore: Length,
    pub(super) incline: Incline,
    pub(super) way: Way,
}

impl Segment {
    pub(super) const fn length_m(&self) -> f64 {
        self.to_m - self.from_m
    }

    pub(super) const fn lower_z_m(&self) -> f64 {
        self.from_z_m.min(self.to_z_m)
    }

    /// Position of its lower end; the beginning of a level one.
    pub(super) fn low_from_m(&self) -> f64 {
        if self.to_z_m < self.from_z_m {
            self.to_m
        } else {
            self.from_m
        }
    }

    /// The same segment in two at a position within it.
    fn cut(self, at_m: f64) -> [Self; 2] {
        let share = (at_m - self.from_m) / self.length_m();
        let at_z_m = self.from_z_m + share * (self.to_z_m - self.from_z_m);
        let first = Self {
            to_m: at_m,
            to_z_m: at_z_m,
            ..self
        };
        let second = Self {
            from_m: at_m,
            from_z_m: at_z_m,
            ..self
        };
        [first, second]
    }
}

/// The segments of a tube, cut at the places given; ways are still those of the bare slope.
pub(super) fn segments(tube: &DrainTube, cuts_m: &[f64]) -> Vec<Segment> {
    let mut all = Vec::with_capacity(tube.legs.len() + cuts_m.len());
    let (mut x_m, mut z_m) = (0.0, 0.0);
    for (leg, given) in tube.legs.iter().enumerate() {
        let (length_m, rise_m) = (given.length.to_metres(), given.rise.to_metres());
        let incline = Incline::of(given.length, -given.rise).unwrap_or(Incline::LEVEL);
        let mut rest = Segment {
            leg,
            from_m: x_m,
            to_m: x_m + length_m,
            from_z_m: z_m,
            to_z_m: z_m + rise_m,
            bore: given.bore,
            incline,
            way: if incline.sine() == 0.0 {
                Way::Rests
            } else if 0.0 < incline.sine() {
                Way::Forward
            } else {
                Way::Back
            },
        };
        for &cut_m in cuts_m {
            if rest.from_m + SAME_PLACE_M < cut_m && cut_m < rest.to_m - SAME_PLACE_M {
                let [before, after] = rest.cut(cut_m);
                all.push(before);
                rest = after;
            }
        }
        all.push(rest);
        x_m += length_m;
        z_m += rise_m;
    }
    all
}

/// Gives level segments the way of their surroundings: on a step that of the step, on a crest to the nearer edge, at a low point none.
///
/// Beyond either end of the stretch the water is gone, as down a drop.
pub(super) fn direct(stretch: Vec<Segment>) -> Vec<Segment> {
    let mut directed: Vec<Segment> = Vec::with_capacity(stretch.len() + 1);
    let mut level: Vec<Segment> = Vec::new();
    let mut before = Way::Back;
    for segment in stretch {
        if segment.way == Way::Rests {
            level.push(segment);
            continue;
        }
        settle(&mut level, before, segment.way, &mut directed);
        before = segment.way;
        directed.push(segment);
    }
    settle(&mut level, before, Way::Forward, &mut directed);
    directed
}

/// Moves the level segments met so far over, with their way between the ways before and after them.
fn settle(level: &mut Vec<Segment>, before: Way, after: Way, directed: &mut Vec<Segment>) {
    let ends = level.first().zip(level.last());
    let Some(middle_m) = ends.map(|(first, last)| 0.5 * (first.from_m + last.to_m)) else {
        return;
    };
    for segment in level.drain(..) {
        match (before, after) {
            (Way::Forward, Way::Back) => directed.push(segment),
            (Way::Back, Way::Forward) => {
                let (back, forward) = (Way::Back, Way::Forward);
                if segment.to_m <= middle_m + SAME_PLACE_M {
                    directed.push(Segment {
                        way: back,
                        ..segment
                    });
                } else if middle_m - SAME_PLACE_M <= segment.from_m {
                    directed.push(Segment {
                        way: forward,
                        ..segment
                    });
                } else {
                    let [first, second] = segment.cut(middle_m);
                    directed.push(Segment { way: back, ..first });
                    directed.push(Segment {
                        way: forward,
                        ..second
                    });
                }
            }
            (way, _) => directed.push(Segment { way, ..segment }),
        }
    }
}

/// Inclines nearer than this are one: a leg that is split is still one piece.
const SAME_INCLINE: f64 = 1e-9;

/// The pieces of a pool over these segments, seen from the lowest place, which lies at `low_m`.
pub(super) fn pieces(segments: &[Segment], low_m: f64, low_z_m: f64) -> Vec<Piece> {
    let mut pieces: Vec<(Segment, Piece)> = Vec::with_capacity(segments.len());
    for segment in segments {
        let middle_m = 0.5 * (segment.from_m + segment.to_m);
        let piece = Piece {
            side: if middle_m < low_m {
                Side::Before
            } else {
                Side::After
            },
            foot: Length::metres(segment.lower_z_m() - low_z_m),
            incline: segment.incline.size(),
            length: Length::metres(segment.length_m()),
            bore: segment.bore,
        };
        if let Some((last, joined)) = pieces.last_mut()
            && continues(last, segment)
            && joined.side == piece.side
        {
            joined.length += piece.length;
            joined.foot = joined.foot.min(piece.foot);
            *last = *segment;
        } else {
            pieces.push((*segment, piece));
        }
    }
    pieces.into_iter().map(|(_, piece)| piece).collect()
}

fn continues(last: &Segment, next: &Segment) -> bool {
    last.bore == next.bore
        && (last.incline.sine() - next.incline.sine()).abs() < SAME_INCLINE
        && (last.incline.cosine() - next.incline.cosine()).abs() < SAME_INCLINE
}
