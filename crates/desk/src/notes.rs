//! Notes on an answer as they stand beside it.

use dewrun_document::output::NoteOutput;
use dewrun_drawing::escaped;

/// Notes as HTML, an element each.
#[must_use]
pub fn notes_html(notes: &[NoteOutput]) -> String {
    let note = |note: &NoteOutput| format!("<span>{}</span> ", note_html(note));
    notes.iter().map(note).collect()
}

/// A note as HTML.
#[must_use]
pub fn note_html(note: &NoteOutput) -> String {
    let (path, sentence) = (escaped(&note.path), escaped(&note.sentence));
    format!("Note on {path}: {sentence}.")
}
