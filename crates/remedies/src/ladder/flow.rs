//! More air, or less: more of it stays warmer but carries more water in.

use dewrun_quantity::VolumeFlow;

use super::Ladder;
use crate::alteration::Alteration;
use crate::kind::Kind;
use crate::subject::Subject;

/// Flows are set in such steps, L/min.
const STEP: f64 = 5.0;
/// From here to there, L/min: the generic detector of the library.
const BETWEEN: (f64, f64) = (10.0, 60.0);

pub(super) fn flows(subject: &Subject) -> Vec<Ladder> {
    let now = subject.inputs.run.flow.volume.to_litres_per_minute();
    let rungs = |step: f64| {
        let mut rungs = Vec::new();
        let mut steps = (now / STEP).round();
        loop {
            steps += step;
            let flow = steps * STEP;
            if flow < BETWEEN.0 || BETWEEN.1 < flow {
                return rungs;
            }
            let differs = if 0.0 < step { now < flow } else { flow < now };
            if differs {
                let volume = VolumeFlow::litres_per_minute(flow);
                rungs.push(vec![Alteration::Flow(volume)]);
            }
        }
    };
    let more = Ladder::in_order(Kind::MoreFlow, rungs(1.0));
    let less = Ladder::in_order(Kind::LessFlow, rungs(-1.0));
    more.into_iter().chain(less).collect()
}
