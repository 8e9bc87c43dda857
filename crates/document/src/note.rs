//! What stands beside an answer, in words and at its field.

use dewrun_quantity::format::entered;
use dewrun_quantity::measure::BORE;
use dewrun_quantity::{Length, Style};
use dewrun_run::range::AIR_TEMPERATURE;
use dewrun_run::{Place, RunNote};

use crate::output::NoteOutput;
use crate::path_of;

/// A note of the engine as a sentence, at the part that it is about.
#[must_use]
pub fn note(run_index: usize, note: &RunNote) -> NoteOutput {
    let (place, sentence) = match note {
        RunNote::Air { place, note } => (*place, note.to_string()),
        RunNote::InsulationBelowCriticalRadius {
            place,
            critical_radius_m,
            outside_radius_m,
        } => {
            let millimetres = |radius_m| BORE.show(Length::metres(radius_m), Style::default());
            let (drawn, critical) = (
                millimetres(*outside_radius_m),
                millimetres(*critical_radius_m),
            );
            let sentence = format!(
                "more insulation lets more heat through until its outside radius passes {critical}; it is {drawn} as drawn"
            );
            (*place, sentence)
        }
        RunNote::HotterThanRange { place, hottest_c } => {
            let hottest = entered((hottest_c * 10.0).round() / 10.0);
            let limit = entered(AIR_TEMPERATURE.max);
            let sentence = format!(
                "it gets {hottest} °C hot in the tube, the relations hold up to {limit} °C: beyond that the answer is an extrapolation"
            );
            (*place, sentence)
        }
        RunNote::ColderThanRange { place, coldest_c } => {
            let coldest = entered((coldest_c * 10.0).round() / 10.0);
            let limit = entered(AIR_TEMPERATURE.min);
            let sentence = format!(
                "it gets {coldest} °C cold in the tube, the relations hold down to {limit} °C: beyond that the answer is an extrapolation"
            );
            (*place, sentence)
        }
        RunNote::NoFlow => {
            let sentence = "hardly any air flows: the detector samples nothing of the duct";
            (Place::Flow, sentence.to_owned())
        }
        RunNote::VerySmallFlow { place, richardson } => {
            let times = entered((richardson * 10.0).round() / 10.0);
            let sentence = format!(
                "at so small a flow the air turns over by its own warmth (buoyancy {times} times the force of the flow), which the relations leave out"
            );
            (*place, sentence)
        }
        RunNote::VeryFastFlow {
            place,
            velocity_m_s,
        } => {
            let speed = entered(velocity_m_s.round());
            let sentence = format!(
                "at {speed} m/s the air warms where it is slowed down, which the relations leave out: check bore and flow"
            );
            (*place, sentence)
        }
        _ => (Place::Run, "the answer stands with a reserve".to_owned()),
    };
    NoteOutput {
        path: path_of(run_index, place).as_str().to_owned(),
        sentence,
    }
}
