//! The answer in words with water and air, a blind detector first.

use std::cell::Ref;

use dewrun_desk::{note_html, notes_html, style_of};
use dewrun_document::DocumentError;
use dewrun_document::output::NoteOutput;
use dewrun_drawing::{Answer, answer, html, rests, whole_answer};

use crate::asked::Asked;
use crate::doubted::doubt_of;

/// Its sentence.
pub(super) fn sentence(asked: &Asked<'_>) -> Result<String, String> {
    Ok(html::sentence(&*told(asked)?))
}

/// Its sentence where nothing is to be opened.
pub(super) fn plain_sentence(asked: &Asked<'_>) -> Result<String, String> {
    Ok(html::plain_sentence(&*told(asked)?))
}

/// What stands beside it; what keeps water and air from being answered is a note there.
pub(super) fn beside(asked: &Asked<'_>) -> Result<String, String> {
    let open = &asked.open;
    let missing = open
        .whole()
        .err()
        .map(|error| notes_html(&[note_of(error)]));
    let parts = [
        html::asides(&*told(asked)?),
        notes_html(&open.answered.notes),
        missing.unwrap_or_default(),
    ];
    Ok(parts.concat())
}

/// The assumed values that it rests on.
pub(super) fn rests_on(asked: &Asked<'_>) -> String {
    let (style, _) = style_of(asked.numbers);
    let open = &asked.open;
    let answered = &open.answered;
    let ranked = open.ranked();
    html::rests_on(&rests(&answered.run, &answered.names.spaces, ranked, style))
}

/// What is known besides, with the notes on water and air; nothing where those are not answered.
pub(super) fn more(asked: &Asked<'_>) -> Result<String, String> {
    let open = &asked.open;
    if open.whole().is_err() {
        return Ok(String::new());
    }
    let notes: Vec<String> = open.whole_notes().iter().map(note_html).collect();
    Ok(html::more(&*told(asked)?, &notes))
}

fn note_of(error: &DocumentError) -> NoteOutput {
    let path = error.path().map_or("", |path| path.as_str());
    NoteOutput {
        path: path.to_owned(),
        sentence: error.to_string(),
    }
}

/// The answer, told once for all its parts, which are asked one after another.
fn told<'a>(asked: &'a Asked<'_>) -> Result<Ref<'a, Answer>, String> {
    asked.open.told.of(asked.numbers, || Ok(tell(asked)))
}

/// The answer; with how sure it is where the question says so.
fn tell(asked: &Asked<'_>) -> Answer {
    let (style, doubt) = style_of(asked.numbers);
    let answered = &asked.open.answered;
    let (run, outcome) = (&answered.run, &answered.outcome);
    let told = match asked.open.whole() {
        Ok(whole) => whole_answer(run, outcome, whole, style),
        Err(_) => answer(run, outcome, style),
    };
    match doubt_of(doubt) {
        Some(doubt) => told.with_doubt(outcome, &doubt, style),
        None => told,
    }
}
