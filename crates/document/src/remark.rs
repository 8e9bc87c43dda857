//! What has to be said beside water and air, in words and at its field.

use dewrun_quantity::Style;
use dewrun_quantity::measure::{AIR_FLOW, BORE, TUBE_LENGTH, WATER};
use dewrun_run::told::AirflowNote;
use dewrun_run::{Place, Remark, Tube};

use crate::output::NoteOutput;
use crate::{FieldPath, path_of};

/// A remark of the engine as a sentence, at the part that it is about.
#[must_use]
pub(crate) fn remark(run_index: usize, remark: &Remark) -> NoteOutput {
    let style = Style::default();
    let run = || FieldPath::root().field("runs").index(run_index);
    let (path, sentence) = match *remark {
        Remark::NoGenericFan { wanted } => (
            run().field("air_path.fan"),
            format!(
                "no speed of the generic fan gives {}: type the points of its own curve",
                AIR_FLOW.show(wanted, style)
            ),
        ),
        Remark::FlowDiffers { computed, wanted } => (
            run().field("flow.volume_l_min"),
            format!(
                "fan, tubes and pressures as given make {}, {} is entered: measure the flow, or mend fan and pressures",
                AIR_FLOW.show(computed, style),
                AIR_FLOW.show(wanted, style)
            ),
        ),
        Remark::EntryFromBelow { tube } => (
            run().field(word(tube)).field("entry.side"),
            "water that lies in the duct runs in from below; the balance of the vapour cannot rule it out".to_owned(),
        ),
        Remark::WaterIntoDetector { tube, rate } => (
            run().field(word(tube)),
            format!("{} of water run into the detector", WATER.show(rate, style)),
        ),
        Remark::BoreLocks {
            place,
            bore,
            upright,
        } => {
            let where_it_stays = if upright { "even upright" } else { "where it lies level" };
            let sentence = format!(
                "water fills a bore of {} and stays there, {where_it_stays}",
                BORE.show(bore, style)
            );
            (path_of(run_index, place).field("tube.bore_mm"), sentence)
        }
        Remark::StubHoldsWater { tube, trap, column } => (
            run().field(word(tube)).field("traps").index(trap),
            format!(
                "an open stub does not drain: the suction holds {} of water in it",
                BORE.show(column, style)
            ),
        ),
        Remark::AirHoldsWater { place } => (
            path_of(run_index, place),
            "the air runs up so fast that water does not run down against it".to_owned(),
        ),
        Remark::AirDragsFilm { place } => (
            path_of(run_index, place),
            "the air holds a thin film back here; what gathers beyond it runs down against the air"
                .to_owned(),
        ),
        Remark::Sags { place, largest } => (
            path_of(run_index, place).field("hanger_spacing_m"),
            format!(
                "it sags so far between its hangers that it does not drain: hang it every {} or closer",
                TUBE_LENGTH.show(largest, style)
            ),
        ),
        Remark::SlugsUnproven { tube } => (
            run().field(word(tube)),
            "when the first slugs come is unproven in bores under 20 mm".to_owned(),
        ),
        _ => (path_of(run_index, Place::Run), String::new()),
    };
    NoteOutput {
        path: path.as_str().to_owned(),
        sentence,
    }
}

/// A note on the airflow as a sentence; none where it has nothing to add.
#[must_use]
pub(crate) fn airflow_note(run_index: usize, note: &AirflowNote) -> NoteOutput {
    let run = FieldPath::root().field("runs").index(run_index);
    let (path, sentence) = match note {
        AirflowNote::FanHump { .. } => (
            "air_path.fan",
            "the fan's pressure rises with the flow over a stretch of its curve: with other resistances it may hunt",
        ),
        AirflowNote::BeyondFanPoints { .. } => (
            "air_path.fan",
            "the flow lies beyond the points of the fan's curve, where a straight line stands for it",
        ),
        AirflowNote::Transitional { .. } => (
            "flow",
            "the flow is neither laminar nor turbulent: friction, and with it the flow, is uncertain by up to 14 %",
        ),
        AirflowNote::VeryRough { .. } => (
            "intake",
            "the bore is rougher than friction was ever measured in: the flow is a guess",
        ),
        AirflowNote::PoolPastEnd { .. } | AirflowNote::PoolsMeet { .. } | _ => (
            "intake",
            "standing water reaches past an end or into other water",
        ),
    };
    NoteOutput {
        path: run.field(path).as_str().to_owned(),
        sentence: sentence.to_owned(),
    }
}

const fn word(tube: Tube) -> &'static str {
    match tube {
        Tube::Intake => "intake",
        Tube::Exhaust => "exhaust",
    }
}
