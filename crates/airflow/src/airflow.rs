//! What an airflow is told as.

use dewrun_quantity::{Length, MassFlow, Pressure, VolumeFlow};

use crate::budget::Budget;
use crate::line::Side;
use crate::part::Place;
use crate::transport_time::TransportTime;

/// Which way the air goes at the sensor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    /// From the intake to the exhaust.
    Forward,
    /// From the exhaust to the intake: the detector does not sample its duct.
    Reversed,
    /// Less than 0.001 L/min.
    Still,
}

/// The air through a line in a state.
#[derive(Debug, Clone, PartialEq)]
pub struct Airflow {
    /// Which way it goes at the sensor.
    pub direction: Direction,
    /// Volume flow at the sensor, in the detector's air; negative where it is reversed.
    pub sensor: VolumeFlow,
    /// Mass flow at the sensor.
    pub mass: MassFlow,
    /// Share by mass of the air at the sensor that came from the duct through the holes.
    pub share: f64,
    /// From the holes to the sensor; none where no duct air arrives.
    pub transport: Option<TransportTime>,
    /// Through all holes, in the intake's air; none where the intake is parted.
    pub holes: Option<VolumeFlow>,
    /// Into the tube at each leak of the state, in the air of its tube.
    pub leaks: Vec<VolumeFlow>,
    /// At a parted joint, in the part on the duct's side, in the direction of the normal flow.
    pub stub: Option<VolumeFlow>,
    /// In the intake tube, next to the detector.
    pub reynolds_intake: f64,
    /// In the exhaust tube, next to the detector.
    pub reynolds_exhaust: f64,
    /// Total pressures along the part of the line that holds the detector, against the detector's room.
    pub pressures: Vec<PressureAt>,
    /// The same at every change within the tubes, to draw.
    pub course: Vec<CoursePoint>,
    /// What drives the flow and what it costs.
    pub budget: Budget,
    /// What is left of the balance of pressures: a measure of the solution.
    pub imbalance: Pressure,
}

/// Total pressure at a place that has a name.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressureAt {
    /// Where.
    pub place: Place,
    /// Against the detector's room.
    pub pressure: Pressure,
}

/// Total pressure at a place in a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoursePoint {
    /// Which tube.
    pub side: Side,
    /// From its start.
    pub at: Length,
    /// Against the detector's room.
    pub pressure: Pressure,
}

impl Airflow {
    /// Total pressure at a place; none where the line has no such place or nothing says how large it is.
    #[must_use]
    pub fn pressure(&self, place: Place) -> Option<Pressure> {
        let at = self.pressures.iter().find(|at| at.place == place)?;
        Some(at.pressure)
    }
}
