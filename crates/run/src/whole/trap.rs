//! A trap or drain: the pressure at its place, the drop and seal it needs, when it is full and when it dries out.

use dewrun_airflow::{Airflow, Side};
use dewrun_moist_air::{MoistAir, Pair};
use dewrun_quantity::{Density, Length, Pressure};
use dewrun_water::drain::{HandDrain, drain_stub, hand_drain};
use dewrun_water::drying::{StillColumn, seal_dries_out};
use dewrun_water::trap::{Requirement, TrapError, TrapKind, TrapState, USUAL_MARGIN, requirement};

use super::tube_water::Context;
use crate::error::Tube;
use crate::installation::{Drain, Trap};
use crate::outcome::TubeOutcome;

/// Still air over each water surface of a trap, where nobody says otherwise. Common practice, no source.
const STILL_AIR: Length = Length::millimetres(50.0);

/// Pressures in a tube at a place, against the room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct AtPlace {
    pub(super) running: Pressure,
    pub(super) starting: Pressure,
}

/// Static pressures at a place of a tube, running and as the fan starts.
///
/// As it starts hardly any air moves: the fan's whole suction lies on the intake, its whole pressure on the exhaust.
pub(super) fn pressures(
    context: &Context<'_>,
    tube: Tube,
    at: Length,
    air_pa: Pressure,
) -> AtPlace {
    let installation = context.installation;
    let suction = installation.detector.start_suction;
    let duct = installation.duct.total();
    let (side, starting) = match tube {
        Tube::Intake => (Side::Intake, duct.intake - suction),
        Tube::Exhaust => (Side::Exhaust, duct.exhaust + suction),
    };
    AtPlace {
        running: total(&context.fitted.airflow, side, at) - air_pa,
        starting,
    }
}

/// Total pressure at a place of a tube, on a straight line between the changes around it.
pub(super) fn total(flow: &Airflow, side: Side, at: Length) -> Pressure {
    let mut points = flow.course.iter().filter(|point| point.side == side);
    let Some(mut before) = points.next() else {
        return Pressure::ZERO;
    };
    for point in points {
        if at <= point.at {
            let length = (point.at - before.at).to_metres();
            let share = if 0.0 < length {
                ((at - before.at).to_metres() / length).max(0.0)
            } else {
                1.0
            };
            return before.pressure + (point.pressure - before.pressure) * share;
        }
        before = point;
    }
    before.pressure
}

/// The drop and the seal that a trap at a place needs.
pub(super) fn needs(kind: TrapKind, at: AtPlace, water: Density) -> Result<Requirement, TrapError> {
    let state = |pressure| TrapState {
        duct_static: pressure,
        loss: Pressure::ZERO,
    };
    let states = [state(at.running), state(at.starting)];
    requirement(kind, &states, USUAL_MARGIN, water)
}

/// What a valve gives that is opened while the fan runs, or what a stub lets out.
pub(super) fn opened(trap: &Trap, at: AtPlace, water: Density) -> Result<HandDrain, TrapError> {
    let pressures = [at.running, at.starting];
    match trap.drain {
        Drain::OpenStub => {
            let stub = drain_stub(&pressures, trap.bore, trap.outlet_drop, water)?;
            Ok(HandDrain {
                head: stub.column,
                gives_water: stub.drains,
                runs_out: stub.held,
            })
        }
        Drain::ByHand | Drain::ByItself => {
            hand_drain(&pressures, trap.bore, trap.outlet_drop, water)
        }
    }
}

/// When a seal that no water refills dries out, towards the air in the tube and that of the space.
pub(super) fn dries_out(
    context: &Context<'_>,
    outcome: &TubeOutcome,
    tube: Tube,
    trap: &Trap,
) -> Option<dewrun_quantity::Time> {
    let run = context.run;
    let legs = match tube {
        Tube::Intake => &run.intake,
        Tube::Exhaust => &run.exhaust,
    };
    let number = outcome.legs.iter().position(|leg| trap.at <= leg.to)?;
    let inside = outcome.legs.get(number)?.air_at_end;
    let space = run.spaces.get(legs.get(number)?.space)?;
    let air = |pair: Pair| MoistAir::new(pair, run.pressure).ok().map(|air| air.value);
    let column = |air| StillColumn {
        height: STILL_AIR,
        air,
    };
    let in_tube = air(Pair::Temperature(
        inside.temperature,
        dewrun_moist_air::Humidity::Ratio(inside.humidity_ratio),
    ))?;
    let in_space = air(Pair::Temperature(space.temperature, space.humidity))?;
    if inside.temperature.to_celsius() <= 0.0 || space.temperature.to_celsius() <= 0.0 {
        return None;
    }
    seal_dries_out([column(in_tube), column(in_space)], trap.seal)
}
