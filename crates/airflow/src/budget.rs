//! Where the pressure of fan and duct goes.

use dewrun_quantity::Pressure;

use crate::line::Side;
use crate::part::Cause;

/// What drives the flow at the sensor and what it costs.
///
/// The fan and the duct give as much as all costs together; the costs are negative where the flow is reversed.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Budget {
    /// Given by the fan.
    pub fan: Pressure,
    /// Given by the difference of the pressures that both ends meet.
    pub ends: Pressure,
    /// Spent in the holes, or in the open end that air enters by.
    pub inlet: Pressure,
    /// Spent in the intake tube.
    pub intake: TubeBudget,
    /// Spent in the filter.
    pub filter: Pressure,
    /// Spent in the chamber.
    pub chamber: Pressure,
    /// Spent in the exhaust tube.
    pub exhaust: TubeBudget,
    /// Spent at the open end that air leaves by.
    pub outlet: Pressure,
}

/// What a tube costs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct TubeBudget {
    /// Friction where it is dry, and the lift of its air.
    pub walls: Pressure,
    /// Bends, tees, valves.
    pub fittings: Pressure,
    /// Standing water: both ends of each pool, and friction over it.
    pub water: Pressure,
}

impl Budget {
    /// All that is spent.
    #[must_use]
    pub fn spent(&self) -> Pressure {
        self.inlet
            + self.intake.spent()
            + self.filter
            + self.chamber
            + self.exhaust.spent()
            + self.outlet
    }

    pub(crate) fn spend(&mut self, cause: Cause, pressure_pa: f64) {
        let pressure = Pressure::pascals(pressure_pa);
        match cause {
            Cause::Wall(side) => self.tube(side).walls += pressure,
            Cause::Fitting(side) => self.tube(side).fittings += pressure,
            Cause::Water(side) => self.tube(side).water += pressure,
            Cause::Filter => self.filter += pressure,
            Cause::Chamber => self.chamber += pressure,
            Cause::Trap => {}
        }
    }

    const fn tube(&mut self, side: Side) -> &mut TubeBudget {
        match side {
            Side::Intake => &mut self.intake,
            Side::Exhaust => &mut self.exhaust,
        }
    }
}

impl TubeBudget {
    /// All that the tube costs.
    #[must_use]
    pub fn spent(&self) -> Pressure {
        self.walls + self.fittings + self.water
    }
}
