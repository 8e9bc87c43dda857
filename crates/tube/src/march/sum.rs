//! What a march leaves: stations along the tube and sums for each segment.

use super::near_wall::NearWall;
use super::{Stream, air::Air};
use crate::phase::heat_of_deposition;
use crate::wall_balance::Balance;

/// A march, from the inlet to the end.
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    /// Places in flow order: the start and end of every segment and of every cell.
    pub stations: Vec<Station>,
    /// One for each segment.
    pub segments: Vec<SegmentSum>,
    /// Where water or frost forms, from and to, m.
    pub wet: Vec<(f64, f64)>,
    /// Coldest inner wall from one bore behind the inlet on: place, m, and temperature, °C.
    pub coldest_wall: Option<(f64, f64)>,
    /// Most suspended water anywhere, kg per kg of dry air.
    pub most_mist: f64,
    /// The place where mist near the wall is likeliest, where it may form at all.
    pub near_wall: Option<NearWall>,
    /// The air at the end.
    pub end: Stream,
}

impl Trace {
    /// All that deposits inside, kg/s.
    #[must_use]
    pub fn condensate_kg_s(&self) -> f64 {
        self.segments.iter().map(|s| s.condensate_kg_s).sum()
    }

    /// All that deposits outside, kg/s.
    #[must_use]
    pub fn sweat_kg_s(&self) -> f64 {
        self.segments.iter().map(|s| s.sweat_kg_s).sum()
    }
}

/// Everything at one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Distance from the inlet, m.
    pub x_m: f64,
    /// Position of its segment.
    pub segment: usize,
    /// Bulk air, °C.
    pub air_c: f64,
    /// Vapour, kg per kg of dry air.
    pub w: f64,
    /// Suspended water, kg per kg of dry air.
    pub mist: f64,
    /// Inner wall, °C.
    pub wall_c: f64,
    /// Outer surface, °C.
    pub surface_c: f64,
    /// What deposits inside, kg/(s m).
    pub deposit_kg_sm: f64,
    /// Share of it that freezes.
    pub frozen_share: f64,
    /// What deposits outside, kg/(s m).
    pub sweat_kg_sm: f64,
}

impl Station {
    pub(super) fn at(x_m: f64, segment: usize, air: &Air, balance: &Balance) -> Self {
        let fluxes = &balance.fluxes;
        Self {
            x_m,
            segment,
            air_c: air.t_c,
            w: air.w,
            mist: air.mist(),
            wall_c: fluxes.wall_c,
            surface_c: fluxes.surface_c,
            deposit_kg_sm: fluxes.vapour.max(0.0),
            frozen_share: heat_of_deposition(fluxes.wall_c).2,
            sweat_kg_sm: fluxes.sweat,
        }
    }
}

/// Sums over one segment.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SegmentSum {
    /// Where it begins, m from the inlet.
    pub from_m: f64,
    /// Where it ends.
    pub to_m: f64,
    /// What deposits inside, frost included, kg/s.
    pub condensate_kg_s: f64,
    /// The part of it that freezes.
    pub frost_kg_s: f64,
    /// What deposits outside, rime included, kg/s.
    pub sweat_kg_s: f64,
    /// The part of it that freezes.
    pub rime_kg_s: f64,
    /// Heat to the space by convection and radiation, W.
    pub loss_w: f64,
    /// Heat that sweat gives to the surface, W.
    pub sweat_heat_w: f64,
    /// Energy that stays with what has deposited inside, W.
    pub condensate_heat_w: f64,
    /// Heat of the tracing, W.
    pub tracing_w: f64,
    /// Lowest temperature of the inner wall, °C.
    pub lowest_wall_c: f64,
    /// The air at its end: temperature, °C.
    pub end_c: f64,
    /// The air at its end: vapour, kg per kg of dry air.
    pub end_w: f64,
    /// The air at its end: suspended water, kg per kg of dry air.
    pub end_mist: f64,
}
