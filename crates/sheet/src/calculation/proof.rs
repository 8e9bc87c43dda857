//! How the answer is proved, what has to be said beside it, how to measure what decides it, and the cautions.

use dewrun_document::whole_notes;
use dewrun_drawing::{escaped, html::CAUTIONS};
use dewrun_run::Grade;

use super::Worked;
use super::flow::Piece;
use super::table::{HEADING, WIDTH_MM};
use crate::markup::{element, heading};
use crate::text_lines::{lines, words_of};

/// Type and line of paragraphs, px and mm; between two of them, mm.
const PX: f64 = 8.0 / 0.75;
const LINE: f64 = 3.67;
const BETWEEN: f64 = 0.7;
/// Type and line of the cautions, and what their frame takes.
const CAUTION_PX: f64 = 7.5 / 0.75;
const CAUTION_LINE: f64 = 3.18;
const FRAME: f64 = 6.0;

const BY_BOUND: &str = "By bound: the duct's dew point lies below the coldest surface that the surroundings allow; no relation of the tube is needed.";
const BY_MODEL: &str = "By model: the relations above say so. Where fewer than nine of ten plausible cases agree with the answer, it is by model, with doubt.";
const SPREAD: &str = "Spread of the relations that the doubt carries: film outside thin tubes ±20 % (Morgan 1975 lies 20 % above Churchill & Chu 1975 at Ra under 1000), film inside ±25 % (mixed convection at low speed), diffusivity ±3 %. What stays on a wall is known to a factor of two, friction between Re 2100 and 4000 to 14 % of the flow. No printed experiment was found for humid air at 5 to 60 °C in tubes of 4 to 25 mm: measurements are welcome.";
const LEFT_OUT: &str = "Not answered here: whether a duct needs a detector, how smoke moves in the duct, the optics of the sensor, the programming of the fire alarm.";

/// Grade of proof, notes, how to measure, cautions.
pub(super) fn pieces(worked: &Worked<'_>) -> Vec<Piece> {
    let told = &worked.told;
    let grade = match told.outcome.grade {
        Grade::ByBound => BY_BOUND,
        Grade::ByModel => BY_MODEL,
    };
    let proof = [grade, SPREAD, LEFT_OUT].map(escaped).to_vec();
    let steady = worked.notes.iter().cloned();
    let notes: Vec<String> = steady
        .chain(whole_notes(told.run_index, told.whole))
        .map(|one| format!("<b>{}</b>: {}.", escaped(&one.path), escaped(&one.sentence)))
        .collect();
    let how: Vec<String> = worked.rests.how.iter().map(|how| escaped(how)).collect();
    let mut pieces = vec![paragraphs("Grade of proof and method", "", &proof)];
    if !how.is_empty() {
        pieces.push(paragraphs(
            "How to measure what the answer rests on",
            "",
            &how,
        ));
    }
    if !notes.is_empty() {
        pieces.push(paragraphs(
            "Notes",
            "the part of the project, and what has to be said of it",
            &notes,
        ));
    }
    if !told.project.note.is_empty() {
        pieces.push(paragraphs(
            "Remark of the project",
            "",
            &[escaped(&told.project.note)],
        ));
    }
    pieces.push(cautions());
    pieces
}

/// Paragraphs under a heading, kept together.
pub(super) fn paragraphs(name: &str, beside: &str, told: &[String]) -> Piece {
    let heights = told
        .iter()
        .map(|words| LINE * lines(&words_of(words), PX, WIDTH_MM - 2.0) + BETWEEN);
    let height = HEADING + heights.sum::<f64>();
    let words: String = told
        .iter()
        .map(|words| element("p", "dw-calc__note", words))
        .collect();
    Piece::Block(format!("{}{words}", heading(name, beside)), height)
}

fn cautions() -> Piece {
    let height = CAUTION_LINE * lines(&words_of(CAUTIONS), CAUTION_PX, WIDTH_MM - 6.0) + FRAME;
    Piece::Block(
        element("div", "dw-card__cautions dw-calc__cautions", CAUTIONS),
        height,
    )
}
