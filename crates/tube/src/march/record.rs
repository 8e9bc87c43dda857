//! What a march writes down on its way: stations, sums, wet stretches, the coldest wall and mist near it.

use super::Stream;
use super::cell::{Cell, Node};
use super::near_wall::{NearWall, fog_film_1992_bound_kg_sm, highest_saturation_ratio};
use super::regime::Regime;
use super::sum::{SegmentSum, Station, Trace};
use crate::phase::heat_of_deposition;
use crate::wall_balance::Wall;

/// The trace of a march while it grows.
pub(super) struct Record {
    trace: Trace,
    wet_since: Option<f64>,
    /// Bound on the fog in the film at the last station, kg/(s m).
    fog_kg_sm: f64,
}

impl Record {
    pub(super) fn new(inlet: &Stream) -> Self {
        let trace = Trace {
            stations: Vec::with_capacity(64),
            segments: Vec::with_capacity(8),
            wet: Vec::new(),
            coldest_wall: None,
            most_mist: 0.0,
            near_wall: None,
            end: *inlet,
        };
        Self {
            trace,
            wet_since: None,
            fog_kg_sm: 0.0,
        }
    }

    pub(super) fn finish(mut self, end_m: f64, end: Stream) -> Trace {
        self.close_wet(end_m);
        self.trace.end = end;
        self.trace
    }

    pub(super) fn segment(&mut self, sum: SegmentSum) {
        self.trace.segments.push(sum);
    }

    /// Notes a segment in which the air creeps or stands, alike from its start to its end.
    pub(super) fn creeping(&mut self, start: Station, end_m: f64, bore_m: f64) {
        for station in [
            start,
            Station {
                x_m: end_m,
                ..start
            },
        ] {
            self.note_wall(bore_m, station.x_m, station.wall_c);
            self.trace.stations.push(station);
        }
        if 0.0 < start.deposit_kg_sm {
            self.wet_since.get_or_insert(start.x_m.max(bore_m));
        } else {
            self.close_wet(start.x_m);
        }
    }

    /// Adds a cell to the sums of its segment.
    pub(super) fn add(
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
        sum.frost_kg_s += deposit * heat_of_deposition(mean.wall_c).2;
        sum.sweat_kg_s += mean.sweat * dx_m;
        sum.rime_kg_s += mean.sweat * dx_m * heat_of_deposition(mean.surface_c).2;
        sum.loss_w += mean.loss * dx_m;
        sum.sweat_heat_w += mean.sweat_heat * dx_m;
        sum.condensate_heat_w += mean.condensate_heat * dx_m;
        if regime.wet {
            // Wet stretches are told from one bore behind the inlet on.
            self.wet_since.get_or_insert(start.x_m.max(wall.bore_m));
        } else {
            self.close_wet(start.x_m);
        }
    }

    fn close_wet(&mut self, end_m: f64) {
        let Some(from) = self.wet_since.take() else {
            return;
        };
        match self.trace.wet.last_mut() {
            _ if end_m <= from => {}
            Some((_, to)) if *to == from => *to = end_m,
            _ => self.trace.wet.push((from, end_m)),
        }
    }

    /// Notes a place: station, coldest wall, mist.
    pub(super) fn station(
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
        // Within one bore of the inlet the wall is told only of a leg that ends there.
        if wall.bore_m * (1.0 - 1e-9) <= node.x_m || sum.to_m * (1.0 - 1e-9) <= node.x_m {
            sum.lowest_wall_c = sum.lowest_wall_c.min(station.wall_c);
        }
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

    /// Notes mist in the film; of a cell the larger fog of its two ends counts, so that the sum is a bound.
    fn note_near_wall(&mut self, wall: &Wall<'_>, node: &Node, dx_m: f64) {
        let before = core::mem::take(&mut self.fog_kg_sm);
        if 0.0 < node.balance.fluxes.vapour {
            let wall_c = node.balance.fluxes.wall_c;
            let (air_c, w) = (node.air.t_c, node.air.w);
            let k = node.balance.vapour_kg_sm;
            self.fog_kg_sm = fog_film_1992_bound_kg_sm(wall.curve, k, wall_c, air_c, w);
            if 0.0 < self.fog_kg_sm || wall_c < 0.0 {
                let w_wall = super::air::saturation(wall.curve, wall_c).0;
                self.note_ratio(
                    node.x_m,
                    highest_saturation_ratio(wall.curve, wall_c, w_wall, air_c, w),
                );
            }
        }
        let most = before.max(self.fog_kg_sm);
        if let Some(near) = &mut self.trace.near_wall {
            near.bound_kg_s += dx_m * most;
        }
    }

    fn note_ratio(&mut self, x_m: f64, ratio: f64) {
        if ratio.is_nan() || ratio <= 1.0 {
            return;
        }
        let near = self.trace.near_wall.get_or_insert(NearWall {
            x_m,
            saturation_ratio: ratio,
            bound_kg_s: 0.0,
        });
        if near.saturation_ratio < ratio {
            (near.x_m, near.saturation_ratio) = (x_m, ratio);
        }
    }
}
