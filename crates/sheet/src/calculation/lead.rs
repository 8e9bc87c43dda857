//! The answer in words, at the head of the sheet.

use dewrun_drawing::{Emphasis, Part, escaped};

use super::Worked;
use super::flow::Piece;
use super::table::WIDTH_MM;
use crate::markup::element;
use crate::text_lines::{lines, words_of};

/// Type and lines of the sentence and of what is said beside it, px and mm.
const SENTENCE: (f64, f64) = (9.5 / 0.75, 4.24);
const BESIDE: (f64, f64) = (8.0 / 0.75, 3.67);
/// Between and around both, mm.
const AROUND: f64 = 4.0;

/// The sentence, what is said beside it, and what it rests on.
pub(super) fn piece(worked: &Worked<'_>) -> Piece {
    let sentence = told(&worked.answer.sentence);
    let asides = worked.answer.asides.iter().chain(&worked.answer.more);
    let mut beside: Vec<String> = asides.map(|aside| told(aside)).collect();
    let mut rests = told(&worked.rests.sentence);
    if !worked.rests.more.is_empty() {
        rests.push_str(", ");
        rests.push_str(&told(&worked.rests.more));
    }
    beside.push(format!("{rests}."));
    let beside = beside.join(" ");
    let mm =
        |words: &str, (px, line): (f64, f64)| line * lines(&words_of(words), px, WIDTH_MM - 2.0);
    let height = mm(&sentence, SENTENCE) + mm(&beside, BESIDE) + AROUND;
    let html = format!(
        "{}{}",
        element("p", "dw-calc__sentence", &sentence),
        element("p", "dw-calc__beside", &beside)
    );
    Piece::Block(html, height)
}

fn told(parts: &[Part]) -> String {
    parts
        .iter()
        .map(|part| match part.emphasis {
            Emphasis::None => escaped(&part.text),
            Emphasis::Assumed => element("span", "dw-calc__assumed", &escaped(&part.text)),
            _ => element("b", "", &escaped(&part.text)),
        })
        .collect()
}
