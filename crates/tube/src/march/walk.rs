//! The walk through the segments of a tube.

use super::air::{Content, saturation};
use super::cell::{Asked, Node};
use super::record::Record;
use super::regime::{Border, Regime};
use super::stepper::{Cut, INLET_BORES, Stepper, Taken};
use super::sum::{SegmentSum, Station, Trace};
use super::{Accuracy, Stream};
use crate::phase::heat_of_deposition;
use crate::wall_balance::Wall;
use dewrun_moist_air::latent::vapour_enthalpy_j_kg;

/// A march on its way.
pub(super) struct Walk {
    stream: Stream,
    stepper: Stepper,
    record: Record,
    x_m: f64,
    content: Content,
    air_c: f64,
    surface_c: Option<f64>,
}

impl Walk {
    pub(super) fn new(inlet: &Stream, accuracy: Accuracy) -> Self {
        Self {
            stream: *inlet,
            stepper: Stepper::new(accuracy),
            record: Record::new(inlet),
            x_m: 0.0,
            content: inlet.content,
            air_c: inlet.near_c,
            surface_c: None,
        }
    }

    pub(super) fn finish(self) -> Trace {
        let end = Stream {
            content: self.content,
            near_c: self.air_c,
            ..self.stream
        };
        self.record.finish(self.x_m, end)
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
        self.record.station(position, &node, &mut sum, wall, 0.0);
        self.stepper.begin(wall, &node, length_m);
        // A border that turned at this place does not turn back at it: the cell is taken with that border unseen.
        let mut turned: Option<(f64, Border)> = None;
        let mut unseen = None;
        let most_cells = self.stepper.most_cells();
        for cells in 0..=most_cells {
            let left_m = end_m - self.x_m;
            if left_m <= 1e-12 * end_m {
                break;
            }
            let taken = if cells < most_cells {
                self.stepper.next_cell(wall, &node, regime, left_m, unseen)
            } else {
                let cell = wall.stiff_cell(&node, left_m, regime);
                Taken {
                    cell,
                    dx_m: left_m,
                    cut: Cut::None,
                }
            };
            if let Cut::Now(border) = taken.cut {
                if turned == Some((self.x_m, border)) {
                    unseen = Some(border);
                } else {
                    turned = Some((self.x_m, border));
                    regime = regime.across(border);
                    node = self.renewed(wall, &node, regime);
                }
                continue;
            }
            unseen = None;
            self.record
                .add(&node, &taken.cell, taken.dx_m, regime, &mut sum, wall);
            self.x_m = if left_m <= taken.dx_m {
                end_m
            } else {
                self.x_m + taken.dx_m
            };
            node = Node {
                x_m: self.x_m,
                ..taken.cell.end
            };
            self.record
                .station(position, &node, &mut sum, wall, taken.dx_m);
            if let Cut::AtEnd(border) = taken.cut {
                regime = regime.across(border);
                node = self.renewed(wall, &node, regime);
            }
        }
        self.x_m = end_m;
        // The last node may have been moved by its slopes; what a leg hands on is told exactly.
        let air = if regime.misty {
            node.content.misty(wall.curve, node.air.t_c)
        } else {
            node.content.clear(wall.curve)
        };
        self.content = node.content;
        self.air_c = air.t_c;
        self.surface_c = Some(node.balance.fluxes.surface_c);
        sum.end_c = air.t_c;
        sum.end_w = air.w;
        sum.end_mist = if regime.misty { air.excess } else { 0.0 };
        self.record.segment(sum);
    }

    /// Through one segment where the air creeps or stands: it takes the wall's state at once.
    pub(super) fn creep(&mut self, wall: &Wall<'_>, position: usize, length_m: f64) {
        let (wall_c, (surface_c, outside)) = wall.without_air();
        let (deposition, _, frozen_share) = heat_of_deposition(wall_c);
        let w = self.content.water.min(saturation(wall.curve, wall_c).0);
        let dry_air = self.stream.dry_air_kg_s;
        let condensate_kg_s = dry_air * (self.content.water - w);
        let left = Content::of_vapour(wall_c, w);
        let condensate_heat_w = condensate_kg_s * (vapour_enthalpy_j_kg(wall_c) - deposition);
        let given_w = dry_air * (self.content.enthalpy - left.enthalpy) - condensate_heat_w;
        let station = Station {
            x_m: self.x_m,
            segment: position,
            air_c: wall_c,
            w,
            mist: 0.0,
            wall_c,
            surface_c,
            deposit_kg_sm: condensate_kg_s / length_m,
            frozen_share,
            sweat_kg_sm: outside.sweat_kg_sm,
        };
        let end_m = self.x_m + length_m;
        self.record.creeping(station, end_m, wall.bore_m);
        let sweat_kg_s = outside.sweat_kg_sm * length_m;
        self.record.segment(SegmentSum {
            from_m: self.x_m,
            to_m: end_m,
            condensate_kg_s,
            frost_kg_s: condensate_kg_s * frozen_share,
            sweat_kg_s,
            rime_kg_s: sweat_kg_s * outside.frozen_share,
            loss_w: outside.loss_w_m * length_m + given_w,
            sweat_heat_w: outside.sweat_heat_w_m * length_m,
            condensate_heat_w,
            tracing_w: wall.tracing_w_m * length_m,
            lowest_wall_c: wall_c,
            end_c: wall_c,
            end_w: w,
            end_mist: 0.0,
        });
        self.x_m = end_m;
        self.content = left;
        self.air_c = wall_c;
    }

    /// The node at the start of a segment, under the relations that hold there.
    ///
    /// At an inlet the film is singular; what holds a thirty-second of a bore behind it holds for the inlet.
    fn begin(&self, wall: &Wall<'_>) -> (Regime, Node) {
        let near = (
            self.air_c,
            self.surface_c.unwrap_or(0.5 * (self.air_c + wall.start_c)),
        );
        let x_m = self.x_m.max(INLET_BORES * wall.bore_m);
        let misty = 0.0 < self.content.clear(wall.curve).excess;
        let mut regime = Regime {
            misty,
            ..Regime::DRY
        };
        let start = |regime: Regime, near: (f64, f64)| Node {
            x_m: self.x_m,
            ..wall.node(self.content, x_m, regime, near, Asked::Borders)
        };
        let mut node = start(regime, near);
        if 0.0 < node.balance.sweat_force {
            regime.sweating = true;
            regime.rimed = node.balance.fluxes.surface_c < 0.0;
            node = start(regime, near_of(&node));
        }
        if 0.0 < node.balance.force {
            regime.wet = true;
            regime.frosted = node.balance.fluxes.wall_c < 0.0;
            node = start(regime, near_of(&node));
        }
        (regime, node)
    }

    /// The same place under other relations.
    fn renewed(&self, wall: &Wall<'_>, node: &Node, regime: Regime) -> Node {
        let near = near_of(node);
        let x_m = node.x_m.max(INLET_BORES * wall.bore_m);
        Node {
            x_m: node.x_m,
            ..wall.node(node.content, x_m, regime, near, Asked::Borders)
        }
    }
}

/// Where to begin the search at a place next to a node.
fn near_of(node: &Node) -> (f64, f64) {
    (node.air.t_c, node.balance.fluxes.surface_c)
}
