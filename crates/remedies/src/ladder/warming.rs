//! Warming at the detector: it takes the air off saturation before the sensor, and keeps the exhaust dry a little longer.

use dewrun_quantity::Power;

use super::Ladder;
use crate::alteration::Alteration;
use crate::kind::Kind;
use crate::subject::Subject;

/// Beside the detector's own heat, W.
const POWERS_W: [f64; 10] = [1.0, 2.0, 3.0, 5.0, 8.0, 10.0, 15.0, 20.0, 25.0, 30.0];

pub(super) fn warming(subject: &Subject) -> Option<Ladder> {
    let own = subject.inputs.run.detector.heat;
    let rung = |power: f64| vec![Alteration::Warm(own + Power::watts(power))];
    Ladder::rising(Kind::Warm, POWERS_W.map(rung).to_vec())
}
