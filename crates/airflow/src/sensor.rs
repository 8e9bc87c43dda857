//! What the detector's flow sensor makes of an airflow.

use crate::airflow::{Airflow, Direction};

/// What a flow sensor answers to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reads {
    /// Volume flow.
    Volume,
    /// Mass flow, as a heated element does.
    Mass,
    /// Velocity pressure, as the difference across a restriction is.
    VelocityPressure,
}

/// A flow sensor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FlowSensor {
    /// What it answers to.
    pub reads: Reads,
    /// Reversed air reads below nothing; a sensor without it takes reversed air for the same flow forward.
    pub sees_direction: bool,
}

impl FlowSensor {
    /// The reading as a part of that as fitted (1 is as fitted).
    ///
    /// # Range
    /// A line that was fitted with its air going forward; the reading is not a number where nothing flowed as fitted.
    ///
    /// # Source
    /// Definitions: mass flow is density times volume flow, velocity pressure `rho v^2 / 2`.
    #[must_use]
    pub fn reading(self, flow: &Airflow, fitted: &Airflow) -> f64 {
        let raw = |flow: &Airflow| {
            if flow.direction == Direction::Still {
                return 0.0;
            }
            let q_m3_s = flow.sensor.to_cubic_metres_per_second();
            let m_kg_s = flow.mass.to_kilograms_per_second();
            match self.reads {
                Reads::Volume => q_m3_s,
                Reads::Mass => m_kg_s,
                Reads::VelocityPressure => q_m3_s * m_kg_s.abs(),
            }
        };
        let part = raw(flow) / raw(fitted);
        if self.sees_direction {
            part
        } else {
            part.abs()
        }
    }
}
