//! The parts of a line in the order in which the normal flow meets them.

use crate::hole::signed_sqrt;
use crate::line::Side;
use crate::loss::Loss;

/// A place of the line that has a name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// In the duct, at the intake's end.
    DuctAtIntake,
    /// In the tube, behind the holes.
    Inlet,
    /// In the open end on the detector's side of a parted joint.
    PartedJoint,
    /// In the tube, at a leak; counted from 0 in the state's order.
    Leak(usize),
    /// Where the intake tube meets the detector.
    DetectorInlet,
    /// Behind the filter.
    FilterOutlet,
    /// Behind the chamber, where the sensor is.
    FanInlet,
    /// Where the detector meets the exhaust tube.
    FanOutlet,
    /// In the tube, at the exhaust's end.
    ExhaustEnd,
    /// In the duct, at the exhaust's end.
    DuctAtExhaust,
}

/// What a loss is due to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Cause {
    Wall(Side),
    Fitting(Side),
    Water(Side),
    Trap,
    Filter,
    Chamber,
}

/// A part that the flow goes through.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Piece {
    pub(crate) cause: Cause,
    /// Where it ends, from its tube's start; nothing within the detector.
    pub(crate) end_m: Option<(Side, f64)>,
    pub(crate) loss: Loss,
    /// Air in it, without what water takes from the bore.
    pub(crate) air_m3: f64,
    pub(crate) density_kg_m3: f64,
    /// Of the dry bore, where the velocity profile spreads the air's arrival.
    pub(crate) reynolds_s_kg: Option<f64>,
}

/// A hole into the space around.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Opening {
    /// In the order of the state.
    pub(crate) number: usize,
    /// kg/(s Pa^0.5).
    pub(crate) conductance: f64,
    pub(crate) space_pa: f64,
    /// Of the air in its tube.
    pub(crate) density_kg_m3: f64,
}

impl Opening {
    /// The hole as the start of a tube; none where it has no area.
    pub(crate) fn mouth(&self) -> Option<Mouth> {
        let coefficient = 1.0 / (self.conductance * self.conductance);
        coefficient.is_finite().then_some(Mouth {
            pressure_pa: self.space_pa,
            inward: coefficient,
            outward: coefficient,
            density_kg_m3: self.density_kg_m3,
        })
    }

    /// Mass flow into the tube at a pressure in it.
    pub(crate) fn inflow_kg_s(&self, tube_pa: f64) -> f64 {
        self.conductance * signed_sqrt(self.space_pa - tube_pa)
    }
}

/// An end of the tube, or holes, that open into a pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Mouth {
    pub(crate) pressure_pa: f64,
    /// Where air enters the tube, Pa/(kg/s)^2.
    pub(crate) inward: f64,
    /// Where air leaves it.
    pub(crate) outward: f64,
    pub(crate) density_kg_m3: f64,
}

impl Mouth {
    /// Total pressure in the tube behind it, for a flow into the tube.
    pub(crate) fn behind_pa(&self, inflow_kg_s: f64) -> f64 {
        let coefficient = if 0.0 < inflow_kg_s {
            self.inward
        } else {
            self.outward
        };
        self.pressure_pa - coefficient * inflow_kg_s * inflow_kg_s.abs()
    }
}

/// How a section of the line begins or ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum End {
    /// Water fills the bore, or all holes are closed.
    Closed,
    Open(Mouth),
}

/// A part of the line.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Part {
    Piece(Piece),
    Leak(Opening),
    Place(Place),
    Fan,
    /// Here the line ends on both sides, so far from its tube's start.
    Break(End, f64),
}

/// Parts between two ends, without a break.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Section {
    pub(crate) start: End,
    /// From its tube's start.
    pub(crate) start_m: f64,
    pub(crate) parts: Vec<Part>,
    pub(crate) end: End,
}
