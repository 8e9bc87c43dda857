//! Notes on an answer as they stand beside it.

use dewrun_document::output::NoteOutput;
use dewrun_drawing::escaped;

/// Notes as HTML, an element each.
#[must_use]
pub fn notes_html(notes: &[NoteOutput]) -> String {
    let note = |note: &NoteOutput| {
        let (path, sentence) = (escaped(&note.path), escaped(&note.sentence));
        format!("<span>Note on {path}: {sentence}.</span> ")
    };
    notes.iter().map(note).collect()
}
