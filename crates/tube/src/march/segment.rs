//! The walk through the segments of a tube: how long each cell is, and where it is cut.

use super::air::Content;
use super::cell::{Asked, Cell, Node};
use super::near_wall::{NearWall, fog_film_1992_bound_kg_sm, highest_saturation_ratio};
use super::regime::Regime;
use super::sum::{SegmentSum, Station, Trace};
use super::{Accuracy, Stream};
use crate::phase::{frozen_share_between, heat_of_deposition};
use crate::wall_balance::Wall;
use dewrun_numeric::fast_cbrt;

/// A change of the air in the first cell of a segment, K, that its correction usually allows.
const FIRST_CHANGE_K: f64 = 2.0;
/// Steps to find the place of a cut.
const CUT_STEPS: u32 = 8;
/// Shortest cell, in bores: where that is still stiff the flow is below a millilitre a minute.
const SHORTEST_BORES: f64 = 1e-4;
/// Bound on the cells of a segment; a march takes about ten.
const MAX_CELLS: u32 = 20_000;

/// A march on its way.
pub(super) struct Walk {
    accuracy: Accuracy,
    stream: Stream,
    x_m: f64,
    dx_m: f64,
    content: Content,
    air_c: f64,
    surface_c: Option<f64>,
    trace: Trace,
    wet_since: Option<f64>,
}

impl Walk {
    pub(super) fn new(inlet: &Stream, accuracy: Accuracy) -> Self {
        Self {
            accuracy,
            stream: *inlet,
            x_m: 0.0,
            dx_m: 0.0,
            content: inlet.content,
            air_c: inlet.near_c,
            surface_c: None,
            trace: Trace {
                stations: Vec::with_capacity(64),
                segments: Vec::with_capacity(8),
                wet: Vec::new(),
                coldest_wall: None,
                most_mist: 0.0,
                near_wall: None,
                end: *inlet,
            },
            wet_since: None,
        }
    }

    pub(super) fn finish(mut self) -> Trace {
        self.close_wet();
        self.trace.end = Stream {
            content: self.content,
            near_c: self.air_c,
            ..self.stream
        };
        self.trace
    }

    /// Through one segment, cell by cell.
    pub(super) fn through(&mut self, wall: &Wall<'_>, position: usize, length_m: f64) {
        let end_m = self.x_m + length_m;
        let mut sum = SegmentSum {
            from_m: self.x_m,
            to_m: end_m,
            tracing_w: wall.tracing_w_m * length_m,
            lowest_wall_c: f64::INFINITY,
            ..SegmentSum::default()
        };
        let (mut regime, mut node) = self.begin(wall);
        self.station(position, &node, &mut sum, wall, 0.0);
        self.dx_m = self.first_length(wall, &node, length_m);
        let (mut held, mut turned_m) = (false, None);
        for _ in 0..MAX_CELLS {
            let left_m = end_m - self.x_m;
            if left_m <= 1e-12 * end_m {
                break;
            }
            let (cell, dx_m, cut) = self.next_cell(wall, &node, regime, left_m, held);
            held = false;
            if let Cut::Now(changed) = cut {
                // The regime changes where the cell would begin; where it would change back at once, the cell is taken as it is.
                let back = self.renewed(wall, &node, changed);
                held = turned_m == Some(self.x_m) || !changed.holds(&back);
                turned_m = Some(self.x_m);
                if !held {
                    (regime, node) = (changed, back);
                }
                continue;
            }
            self.add(&node, &cell, dx_m, regime, &mut sum, wall);
            self.x_m = if left_m <= dx_m {
                end_m
            } else {
                self.x_m + dx_m
            };
            node = Node {
                x_m: self.x_m,
                ..cell.end
            };
            self.station(position, &node, &mut sum, wall, dx_m);
            if let Cut::AtEnd(changed) = cut {
                regime = changed;
                node = self.renewed(wall, &node, regime);
            }
        }
        self.content = node.content;
        self.air_c = node.air.t_c;
        self.surface_c = Some(node.balance.fluxes.surface_c);
        sum.end_c = node.air.t_c;
        sum.end_w = node.air.w;
        sum.end_mist = node.air.mist();
        self.trace.segments.push(sum);
    }

    /// Through one segment where no air flows: the air is as warm as the wall.
    pub(super) fn stand(&mut self, wall: &Wall<'_>, position: usize, length_m: f64) {
        let (wall_c, surface) = wall.without_air();
        let w = self
            .content
            .water
            .min(super::air::saturation(wall.curve, wall_c).0);
        let station = Station {
            x_m: self.x_m,
            segment: position,
            air_c: wall_c,
            w,
            mist: 0.0,
            wall_c,
            surface_c: surface.0,
            deposit_kg_sm: 0.0,
            frozen_share: heat_of_deposition(wall_c).2,
            sweat_kg_sm: surface.1.sweat_kg_sm,
        };
        let end_m = self.x_m + length_m;
        self.trace.stations.extend([
            station,
            Station {
                x_m: end_m,
                ..station
            },
        ]);
        let sweat_kg_s = surface.1.sweat_kg_sm * length_m;
        self.trace.segments.push(SegmentSum {
            from_m: self.x_m,
            to_m: end_m,
            sweat_kg_s,
            rime_kg_s: sweat_kg_s * surface.1.frozen_share,
            loss_w: surface.1.loss_w_m * length_m,
            sweat_heat_w: surface.1.sweat_heat_w_m * length_m,
            tracing_w: wall.tracing_w_m * length_m,
            lowest_wall_c: wall_c,
            end_c: wall_c,
            end_w: w,
            ..SegmentSum::default()
        });
        self.note_wall(wall.bore_m, self.x_m, wall_c);
        self.note_wall(wall.bore_m, end_m, wall_c);
        self.x_m = end_m;
        self.content = Content::of_vapour(wall_c, w);
        self.air_c = wall_c;
    }

    /// The node at the start of a segment, under the relations that hold there.
    ///
    /// At an inlet the film is singular; what holds an eighth of a bore behind it holds for the inlet.
    fn begin(&self, wall: &Wall<'_>) -> (Regime, Node) {
        let near = (
            self.air_c,
            self.surface_c.unwrap_or(0.5 * (self.air_c + wall.start_c)),
        );
        let x_m = self.x_m.max(0.125 * wall.bore_m);
        let misty = 0.0 < self.content.clear(wall.curve).excess;
        let mut regime = Regime {
            wet: false,
            misty,
            sweating: false,
        };
        let start = |regime: Regime, near: (f64, f64)| Node {
            x_m: self.x_m,
            ..wall.node(self.content, x_m, regime, near, Asked::Borders)
        };
        let mut node = start(regime, near);
        if 0.0 < node.balance.sweat_force {
            regime.sweating = true;
            node = start(regime, near_of(&node));
        }
        if 0.0 < node.balance.force {
            regime.wet = true;
            node = start(regime, near_of(&node));
        }
        (regime, node)
    }

    /// The same place under other relations.
    fn renewed(&self, wall: &Wall<'_>, node: &Node, regime: Regime) -> Node {
        let near = near_of(node);
        let x_m = node.x_m.max(0.125 * wall.bore_m);
        Node {
            x_m: node.x_m,
            ..wall.node(node.content, x_m, regime, near, Asked::Borders)
        }
    }

    fn first_length(&self, wall: &Wall<'_>, node: &Node, length_m: f64) -> f64 {
        if self.x_m <= 0.0 {
            return wall.bore_m.min(length_m);
        }
        let slope = (node.balance.fluxes.energy / wall.dry_air_kg_s * node.air.t_by[0]).abs();
        (FIRST_CHANGE_K / slope).min(length_m).min(2.0 * self.x_m)
    }

    /// The next cell: as long as its correction allows, cut where the regime changes.
    fn next_cell(
        &mut self,
        wall: &Wall<'_>,
        node: &Node,
        regime: Regime,
        left_m: f64,
        held: bool,
    ) -> (Cell, f64, Cut) {
        let shortest_m = SHORTEST_BORES * wall.bore_m;
        let mut dx_m = self.dx_m.min(left_m).min(self.accuracy.longest_m);
        if dx_m < left_m && left_m < 1.5 * dx_m {
            dx_m = 0.5 * left_m;
        }
        if node.x_m < wall.bore_m * (1.0 - 1e-9) {
            // One bore behind the inlet is where the coldest wall is looked for from.
            dx_m = dx_m.min(wall.bore_m - node.x_m);
        }
        let mut cell = wall.cell(node, dx_m, regime);
        let mut size = self.size(&cell, node);
        while 1.0 < size && shortest_m < dx_m {
            dx_m = (dx_m * step_factor(size).min(0.7)).max(shortest_m);
            cell = wall.cell(node, dx_m, regime);
            size = self.size(&cell, node);
        }
        if 1.0 < size {
            cell = wall.stiff_cell(node, dx_m, regime);
            self.dx_m = 4.0 * dx_m;
        } else {
            self.dx_m = dx_m * step_factor(size);
        }
        if held {
            return (cell, dx_m, Cut::None);
        }
        if regime.holds(&cell.end) {
            return (cell, dx_m, Cut::None);
        }
        self.cut(wall, node, cell, dx_m, regime)
    }

    /// Correction over what is allowed.
    fn size(&self, cell: &Cell, node: &Node) -> f64 {
        let allowed_k = self.accuracy.correction_k;
        // Vapour at saturation changes by about 6 % a kelvin.
        let allowed_w = 0.06 * allowed_k * (node.air.w + 1e-6);
        let (t, w) = cell.correction;
        let size = (t.abs() / allowed_k).max(w.abs() / allowed_w);
        if size.is_finite() { size } else { 1e9 }
    }

    /// Cuts a cell whose end has left its regime, at the place where it does.
    fn cut(
        &mut self,
        wall: &Wall<'_>,
        node: &Node,
        mut cell: Cell,
        dx_m: f64,
        regime: Regime,
    ) -> (Cell, f64, Cut) {
        let Some(border) = regime.first_crossed(node, &cell.end) else {
            return (cell, dx_m, Cut::None);
        };
        let changed = regime.across(border);
        let measure = |end: &Node| regime.beyond(border, end);
        // Searched in the cube root of the distance, in which the film and so the wall are nearly straight.
        let (mut low, mut at_low) = (fast_cbrt(node.x_m), measure(node));
        let (mut high, mut at_high) = (fast_cbrt(node.x_m + dx_m), measure(&cell.end));
        if 0.0 <= at_low {
            return (cell, 0.0, Cut::Now(changed));
        }
        let mut at_m = dx_m;
        for _ in 0..CUT_STEPS {
            let root = low + (high - low) * (at_low / (at_low - at_high)).clamp(0.02, 0.98);
            at_m = root * root * root - node.x_m;
            cell = wall.cell(node, at_m, regime);
            let here = measure(&cell.end);
            if here.abs() <= 1.0 {
                break;
            }
            if here < 0.0 {
                (low, at_low) = (root, here);
                at_high *= 0.5;
            } else {
                (high, at_high) = (root, here);
                at_low *= 0.5;
            }
        }
        self.dx_m = self.dx_m.min(dx_m).max(SHORTEST_BORES * wall.bore_m);
        (cell, at_m, Cut::AtEnd(changed))
    }

    /// Adds a cell to the sums of its segment.
    fn add(
        &mut self,
        start: &Node,
        cell: &Cell,
        dx_m: f64,
        regime: Regime,
        sum: &mut SegmentSum,
        wall: &Wall<'_>,
    ) {
        let mean = &cell.mean;
        let deposit = mean.vapour * dx_m;
        sum.condensate_kg_s += deposit;
        let (from, to) = (&start.balance.fluxes, &cell.end.balance.fluxes);
        sum.frost_kg_s += deposit * frozen_share_between(from.wall_c, to.wall_c);
        sum.sweat_kg_s += mean.sweat * dx_m;
        sum.rime_kg_s += mean.sweat * dx_m * frozen_share_between(from.surface_c, to.surface_c);
        sum.loss_w += mean.loss * dx_m;
        sum.sweat_heat_w += mean.sweat_heat * dx_m;
        sum.condensate_heat_w += mean.condensate_heat * dx_m;
        if regime.wet {
            let from = if self.x_m <= 0.0 {
                wall.bore_m.min(dx_m)
            } else {
                self.x_m
            };
            self.wet_since.get_or_insert(from);
        } else {
            self.close_wet();
        }
    }

    fn close_wet(&mut self) {
        if let Some(from) = self.wet_since.take() {
            self.trace.wet.push((from, self.x_m));
        }
    }

    /// Notes a place: station, coldest wall, mist.
    fn station(
        &mut self,
        position: usize,
        node: &Node,
        sum: &mut SegmentSum,
        wall: &Wall<'_>,
        dx_m: f64,
    ) {
        let station = Station::at(node.x_m, position, &node.air, &node.balance);
        self.note_near_wall(wall, node, dx_m);
        self.note_wall(wall.bore_m, node.x_m, station.wall_c);
        sum.lowest_wall_c = sum.lowest_wall_c.min(station.wall_c);
        self.trace.most_mist = self.trace.most_mist.max(station.mist);
        self.trace.stations.push(station);
    }

    fn note_wall(&mut self, bore_m: f64, x_m: f64, wall_c: f64) {
        let colder = self
            .trace
            .coldest_wall
            .is_none_or(|(_, coldest)| wall_c < coldest);
        if bore_m * (1.0 - 1e-9) <= x_m && colder {
            self.trace.coldest_wall = Some((x_m, wall_c));
        }
    }

    fn note_near_wall(&mut self, wall: &Wall<'_>, node: &Node, dx_m: f64) {
        let wall_c = node.balance.fluxes.wall_c;
        let (air_c, w) = (node.air.t_c, node.air.w);
        if node.balance.fluxes.vapour <= 0.0 || 0.0 < node.air.excess {
            return;
        }
        // Above this slope of saturation at the wall the line starts below it, and stays there.
        let slope = node.balance.force_slope * (1.0 + w);
        let steep = node.balance.force / (air_c - wall_c);
        if steep * (1.0 + w) <= 0.9 * slope && 0.0 <= wall_c {
            return;
        }
        let w_wall = super::air::saturation(wall.curve, wall_c).0;
        let ratio = highest_saturation_ratio(wall.curve, wall_c, w_wall, air_c, w);
        if ratio <= 1.0 {
            return;
        }
        let bound = dx_m
            * fog_film_1992_bound_kg_sm(wall.curve, node.balance.vapour_kg_sm, wall_c, air_c, w);
        let near = self.trace.near_wall.get_or_insert(NearWall {
            x_m: node.x_m,
            saturation_ratio: ratio,
            bound_kg_s: 0.0,
        });
        near.bound_kg_s += bound;
        if near.saturation_ratio < ratio {
            (near.x_m, near.saturation_ratio) = (node.x_m, ratio);
        }
    }
}

/// Where to begin the search at a place next to a node.
fn near_of(node: &Node) -> (f64, f64) {
    (node.air.t_c, node.balance.fluxes.surface_c)
}

/// What happens to the regime with a cell.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Cut {
    None,
    /// It changes at the cell's end.
    AtEnd(Regime),
    /// It changes before the cell.
    Now(Regime),
}

/// By how much a cell may be longer or shorter next: its correction grows with the cube of its length.
fn step_factor(size: f64) -> f64 {
    let room = 1.0 / (size + 1e-3);
    (0.9 * fast_cbrt(room)).clamp(0.2, 4.0)
}
