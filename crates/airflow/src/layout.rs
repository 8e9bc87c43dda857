//! A tube in a state, laid out part by part.

use dewrun_quantity::{Density, Length};

use crate::error::AirflowNote;
use crate::hole::{conductance, effective_area};
use crate::line::{OpenEnd, Side, Stretch, Tube};
use crate::loss::{Loss, Section as Bore, WallFriction, of_coefficient};
use crate::part::{Cause, End, Mouth, Opening, Part, Piece};
use crate::pool::{self, Laid};
use crate::state::State;

/// Standard gravity [m/s2]: the conventional value, ISO 80000-3:2006, 3-9.2.
const GRAVITY: f64 = 9.806_65;

/// What happens at a place of a tube. Things at one place follow each other in this order,
/// so that a trap's volume lies before its leak and a fitting at a parted joint stays on the detector's side.
#[derive(Debug, Clone)]
enum Event {
    /// The intake's joint comes before whatever lies at it.
    Parted(End),
    Pool(Laid),
    Fitting(f64),
    Trap(f64),
    Leak(Opening),
    /// The exhaust's joint comes after.
    PartedBehind(End),
    StretchEnds,
}

impl Event {
    const fn rank(&self) -> u8 {
        match self {
            Self::Parted(_) => 0,
            Self::Pool(_) => 1,
            Self::Fitting(_) => 2,
            Self::Trap(_) => 3,
            Self::Leak(_) => 4,
            Self::PartedBehind(_) => 5,
            Self::StretchEnds => 6,
        }
    }
}

/// The parts of a tube from its start to its end.
pub(crate) fn lay(
    tube: &Tube,
    side: Side,
    state: &State,
    room: Density,
    notes: &mut Vec<AirflowNote>,
) -> Vec<Part> {
    let mut events = events(tube, side, state);
    events.sort_by(|(a_m, a), (b_m, b)| a_m.total_cmp(b_m).then(a.rank().cmp(&b.rank())));
    let pools = open_pools(&events, side, notes);
    let wet = wet_intervals(&pools, side, notes);
    let mut parts = Vec::with_capacity(2 * events.len() + 1);
    let mut stretches = tube.stretches.iter();
    let Some(mut stretch) = stretches.next() else {
        return parts;
    };
    let room_kg_m3 = room.to_kilograms_per_cubic_metre();
    let mut from_m = 0.0;
    for (at_m, event) in events {
        if from_m < at_m {
            let dry_m = at_m - from_m - overlap(&wet, from_m, at_m);
            let water_m3: f64 = pools.iter().map(|pool| pool.water_m3(from_m, at_m)).sum();
            let mut piece = bare(stretch, side, from_m..at_m, dry_m, room_kg_m3);
            piece.air_m3 = (piece.air_m3 - water_m3).max(0.0);
            parts.push(Part::Piece(piece));
            from_m = at_m;
        }
        match event {
            Event::Parted(end) | Event::PartedBehind(end) => parts.push(Part::Break(end, at_m)),
            Event::Pool(pool) if pool.closed => parts.push(Part::Break(End::Closed, at_m)),
            Event::Pool(pool) => parts.push(Part::Piece(filled(stretch, side, at_m, pool))),
            Event::Fitting(k) => parts.push(Part::Piece(fitted(stretch, side, at_m, k))),
            Event::Trap(volume_m3) => {
                parts.push(Part::Piece(Piece {
                    cause: Cause::Trap,
                    end_m: Some((side, at_m)),
                    loss: Loss::default(),
                    air_m3: volume_m3,
                    density_kg_m3: density(stretch),
                    reynolds_s_kg: None,
                }));
            }
            Event::Leak(opening) => parts.push(Part::Leak(opening)),
            Event::StretchEnds => stretch = stretches.next().unwrap_or(stretch),
        }
    }
    parts
}

/// Reynolds number per mass flow of the bore next to the detector [s/kg].
pub(crate) fn reynolds_at_detector_s_kg(tube: &Tube, side: Side) -> f64 {
    let stretch = match side {
        Side::Intake => tube.stretches.last(),
        Side::Exhaust => tube.stretches.first(),
    };
    stretch.map_or(0.0, |stretch| wall(stretch, 0.0).reynolds_s_kg)
}

/// An end of a stretch that opens into a pressure.
pub(crate) fn mouth(stretch: &Stretch, end: OpenEnd, pressure_pa: f64) -> Mouth {
    let (density_kg_m3, bore) = (density(stretch), bore(stretch));
    Mouth {
        pressure_pa,
        inward: of_coefficient(end.inward, density_kg_m3, bore.area_m2),
        outward: of_coefficient(end.outward, density_kg_m3, bore.area_m2),
        density_kg_m3,
    }
}

fn events(tube: &Tube, side: Side, state: &State) -> Vec<(f64, Event)> {
    let length_m = tube.length().to_metres();
    let place = |at: Length| at.to_metres().min(length_m);
    let mut events = Vec::with_capacity(tube.stretches.len() + tube.fittings.len() + 4);
    let mut end_m = 0.0;
    for stretch in &tube.stretches {
        end_m += stretch.length.to_metres();
        events.push((end_m.min(length_m), Event::StretchEnds));
    }
    for fitting in &tube.fittings {
        events.push((place(fitting.at), Event::Fitting(fitting.loss_coefficient)));
    }
    for trap in &tube.traps {
        events.push((place(trap.at), Event::Trap(trap.volume.to_cubic_metres())));
    }
    for (number, leak) in state.leaks.iter().enumerate() {
        if leak.side == side {
            let density_kg_m3 = stretch_at(tube, place(leak.at)).map_or(0.0, density);
            let area = effective_area(&[leak.hole], &[]).to_square_metres();
            let opening = Opening {
                number,
                conductance: conductance(area, density_kg_m3),
                space_pa: leak.space.to_pascals(),
                density_kg_m3,
            };
            events.push((place(leak.at), Event::Leak(opening)));
        }
    }
    let pools = state.pools.iter().filter(|pool| pool.side == side);
    events.extend(pools.filter_map(|pool| laid(tube, &pool.shape)));
    events.extend(state.parted.iter().filter_map(|parted| {
        let at_m = place(parted.at);
        let stretch = (parted.side == side)
            .then(|| stretch_at(tube, at_m))
            .flatten()?;
        let end = End::Open(mouth(stretch, OpenEnd::SHARP, parted.space.to_pascals()));
        let event = match side {
            Side::Intake => Event::Parted(end),
            Side::Exhaust => Event::PartedBehind(end),
        };
        Some((at_m, event))
    }));
    events
}

/// A pool as an event; nothing where there is no water.
fn laid(tube: &Tube, shape: &crate::PoolShape) -> Option<(f64, Event)> {
    let low_m = match shape {
        crate::PoolShape::Uniform { from, length, .. } => (*from + *length * 0.5).to_metres(),
        crate::PoolShape::Wedge { at, .. } => at.to_metres(),
    };
    let stretch = stretch_at(tube, low_m)?;
    let laid = pool::lay(
        shape,
        &pool::Bore {
            bore_m: stretch.bore.to_metres(),
            roughness_m: stretch.roughness.to_metres(),
            transition: stretch.transition,
            density_kg_m3: density(stretch),
            viscosity_pa_s: stretch.air.viscosity.to_pascal_seconds(),
            tube_length_m: tube.length().to_metres(),
        },
    );
    laid.holds_water().then_some((laid.at_m, Event::Pool(laid)))
}

/// The stretch that a place lies in; the earlier one at a border.
fn stretch_at(tube: &Tube, at_m: f64) -> Option<&Stretch> {
    let mut end_m = 0.0;
    let holding = tube.stretches.iter().find(|stretch| {
        end_m += stretch.length.to_metres();
        at_m <= end_m
    });
    holding.or_else(|| tube.stretches.last())
}

/// Pools that leave a passage, in the order in which they begin.
fn open_pools(events: &[(f64, Event)], side: Side, notes: &mut Vec<AirflowNote>) -> Vec<Laid> {
    let mut pools: Vec<Laid> = Vec::new();
    for (_, event) in events {
        if let Event::Pool(pool) = event {
            if pool.cut {
                let at = Length::metres(pool.at_m);
                notes.push(AirflowNote::PoolPastEnd { side, at });
            }
            if !pool.closed {
                pools.push(pool.clone());
            }
        }
    }
    pools.sort_by(|a, b| a.from_m.total_cmp(&b.from_m));
    pools
}

/// Where water stands, each part of the tube once.
fn wet_intervals(pools: &[Laid], side: Side, notes: &mut Vec<AirflowNote>) -> Vec<(f64, f64)> {
    let mut wet: Vec<(f64, f64)> = Vec::with_capacity(pools.len());
    for pool in pools {
        match wet.last_mut() {
            Some((_, end_m)) if pool.from_m < *end_m => {
                let at = Length::metres(pool.from_m);
                notes.push(AirflowNote::PoolsMeet { side, at });
                *end_m = end_m.max(pool.to_m);
            }
            _ => wet.push((pool.from_m, pool.to_m)),
        }
    }
    wet
}

fn overlap(wet: &[(f64, f64)], from_m: f64, to_m: f64) -> f64 {
    wet.iter()
        .map(|&(start_m, end_m)| (end_m.min(to_m) - start_m.max(from_m)).max(0.0))
        .sum()
}

fn density(stretch: &Stretch) -> f64 {
    stretch.air.density.to_kilograms_per_cubic_metre()
}

fn bore(stretch: &Stretch) -> Bore {
    Bore::round(stretch.bore.to_metres())
}

fn wall(stretch: &Stretch, length_m: f64) -> WallFriction {
    WallFriction::of(
        length_m,
        bore(stretch),
        stretch.roughness.to_metres(),
        density(stretch),
        stretch.air.viscosity.to_pascal_seconds(),
    )
    .taken(stretch.transition)
}

/// A length of bare tube; its friction counts where no water lies, its weight and its volume throughout.
fn bare(
    stretch: &Stretch,
    side: Side,
    span_m: core::ops::Range<f64>,
    dry_m: f64,
    room_kg_m3: f64,
) -> Piece {
    let length_m = span_m.end - span_m.start;
    let wall = wall(stretch, dry_m);
    let rise_m = stretch.rise.to_metres() * length_m / stretch.length.to_metres();
    Piece {
        cause: Cause::Wall(side),
        end_m: Some((side, span_m.end)),
        loss: Loss {
            lift_pa: (density(stretch) - room_kg_m3) * GRAVITY * rise_m,
            frictions: vec![wall],
            ..Loss::default()
        },
        air_m3: bore(stretch).area_m2 * length_m,
        density_kg_m3: density(stretch),
        reynolds_s_kg: Some(wall.reynolds_s_kg),
    }
}

/// A pool's losses; the volume it takes from the bore is off the pieces it lies in.
fn filled(stretch: &Stretch, side: Side, at_m: f64, pool: Laid) -> Piece {
    Piece {
        cause: Cause::Water(side),
        end_m: Some((side, at_m)),
        loss: pool.loss,
        air_m3: 0.0,
        density_kg_m3: density(stretch),
        reynolds_s_kg: None,
    }
}

fn fitted(stretch: &Stretch, side: Side, at_m: f64, loss_coefficient: f64) -> Piece {
    let quadratic = of_coefficient(loss_coefficient, density(stretch), bore(stretch).area_m2);
    Piece {
        cause: Cause::Fitting(side),
        end_m: Some((side, at_m)),
        loss: Loss {
            quadratic,
            ..Loss::default()
        },
        air_m3: 0.0,
        density_kg_m3: density(stretch),
        reynolds_s_kg: None,
    }
}
