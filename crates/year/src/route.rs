//! The way of the air, leg by leg, as the hours march along it.

use dewrun_quantity::MassPerArea;
use dewrun_run::{Run, RunError, segments_of};
use dewrun_tube::Segment;

/// A stretch of tube that is alike all along, in one space.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leg {
    /// Length, m.
    pub length_m: f64,
    /// Inside diameter, m.
    pub bore_m: f64,
    /// Outside diameter of the tube, m.
    pub tube_outside_m: f64,
    /// Conductivity of the tube, W/(m K).
    pub tube_w_mk: f64,
    /// Thickness of the insulation, m; zero for none.
    pub insulation_m: f64,
    /// Conductivity of the insulation, W/(m K).
    pub insulation_w_mk: f64,
    /// Emissivity of the outermost surface.
    pub emissivity: f64,
    /// Heat tracing at the tube's outer face, W/m.
    pub tracing_w_m: f64,
    /// Height along the tube of the riser that the leg is part of, m; none where it is flatter than 45 degrees.
    pub riser_m: Option<f64>,
    /// Position of its space in each hour's list.
    pub space: usize,
    /// Water that stays on the wall before any of it runs, kg per m2 of inner wall; above zero.
    pub retained_kg_m2: f64,
}

impl Leg {
    /// Diameter of the outermost surface, m.
    #[must_use]
    pub fn outer_m(&self) -> f64 {
        self.tube_outside_m + 2.0 * self.insulation_m
    }
}

/// The whole way: intake, detector, exhaust.
#[derive(Debug, Clone, PartialEq)]
pub struct Route {
    /// Legs of the intake tube in flow order.
    pub intake: Vec<Leg>,
    /// Heat that the detector gives to the air, W.
    pub detector_w: f64,
    /// Legs of the exhaust tube in flow order; none where the air is let go at the detector.
    pub exhaust: Vec<Leg>,
}

impl Route {
    /// The route of a run, all of whose legs keep the same film before any of it runs.
    ///
    /// # Errors
    /// What keeps the run from being evaluated.
    pub fn of_run(run: &Run, retained: MassPerArea) -> Result<Self, RunError> {
        let [intake, exhaust] = segments_of(run)?;
        let legs = |segments: Vec<Segment>, of: &[dewrun_run::Leg]| {
            let pairs = segments.iter().zip(of);
            pairs
                .map(|(segment, leg)| leg_of(segment, leg.space, retained))
                .collect()
        };
        Ok(Self {
            intake: legs(intake, &run.intake),
            detector_w: run.detector.heat.to_watts(),
            exhaust: legs(exhaust, &run.exhaust),
        })
    }

    /// All legs in flow order.
    pub fn legs(&self) -> impl Iterator<Item = &Leg> {
        self.intake.iter().chain(&self.exhaust)
    }
}

fn leg_of(segment: &Segment, space: usize, retained: MassPerArea) -> Leg {
    Leg {
        length_m: segment.length_m,
        bore_m: segment.bore_m,
        tube_outside_m: segment.tube_outside_m,
        tube_w_mk: segment.tube_w_mk,
        insulation_m: segment.insulation_m,
        insulation_w_mk: segment.insulation_w_mk,
        emissivity: segment.emissivity,
        tracing_w_m: segment.tracing_w_m,
        riser_m: segment.riser_m,
        space,
        retained_kg_m2: retained.to_kilograms_per_square_metre(),
    }
}

#[cfg(test)]
impl Leg {
    /// A bare plastic tube of 19 mm on its way along a fall, for tests.
    pub(crate) const fn plastic(length_m: f64) -> Self {
        Self {
            length_m,
            bore_m: 0.019,
            tube_outside_m: 0.022,
            tube_w_mk: 0.19,
            insulation_m: 0.0,
            insulation_w_mk: 0.036,
            emissivity: 0.9,
            tracing_w_m: 0.0,
            riser_m: None,
            space: 0,
            retained_kg_m2: 0.05,
        }
    }
}
