//! What is kept of a project between visits, as text: the project, and the way back to what it was.
//!
//! The first line says what the text is, when the project was changed last and in which window; the second is the project.
//! Each step of the history follows as the pieces in which its states differ from those next to them, so that hundreds take little room.

mod delta;
mod line;

use dewrun_document::DocumentError;

use crate::history::{DEPTH, History, Step};
use crate::{Kept, Store};
use line::{Lines, Texts, begin, state, text_of};

/// What the text begins with.
const NAME: &str = "dewrun-desk";
/// The version that is written and read.
const VERSION: u64 = 1;
/// No longer text is kept or read, bytes.
const LARGEST: usize = 5 * 1024 * 1024;
/// A longer one is too much for what a page keeps at once, bytes.
pub const QUICK: usize = 1024 * 1024;

/// What was kept of a project.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// The project.
    pub kept: Kept,
    /// What could be undone and redone in it.
    pub history: History,
}

/// Why something is not kept or can't be read.
#[derive(Debug, Clone, PartialEq)]
pub struct Unkept(pub String);

impl From<DocumentError> for Unkept {
    fn from(error: DocumentError) -> Self {
        Self(error.sentence())
    }
}

/// The text of a project to keep; with its history where it is the open one and that is wanted.
///
/// # Errors
/// Where a limit of the project is left or it is too large: it could not be read again.
pub fn record_text(
    store: &Store,
    kept: &Kept,
    window: &str,
    with_history: bool,
) -> Result<String, Unkept> {
    let json = text_of(&kept.project)?;
    let mut text = format!("{NAME} {VERSION} {} {window}\n", kept.changed);
    text.push_str(&begin(kept));
    text.push_str(&json);
    text.push('\n');
    if with_history && store.now().key == kept.key {
        let history = store.history();
        for (sign, steps) in [('-', &history.past), ('+', &history.future)] {
            let mut texts = Texts::of(kept.key, &json);
            for step in steps.iter().rev() {
                let Some(lines) = step_text(step, sign, &mut texts) else {
                    break;
                };
                if QUICK < lines.len() || LARGEST < text.len() + lines.len() {
                    break;
                }
                text.push_str(&lines);
            }
        }
    }
    if LARGEST < text.len() {
        return Err(Unkept(too_large()));
    }
    Ok(text)
}

fn too_large() -> String {
    format!("It is larger than {} MB.", LARGEST / 1024 / 1024)
}

/// A step, or none where one of its projects can't be written.
fn step_text(step: &Step, sign: char, texts: &mut Texts) -> Option<String> {
    let mut lines = format!("{sign} {} {}\n", step.now, step.was.len());
    for (key, was) in &step.was {
        match was {
            Some(kept) => lines.push_str(&state(kept, texts)?),
            None => lines.push_str(&key.to_string()),
        }
        lines.push('\n');
    }
    Some(lines)
}

/// The version that the first line of a text names; none where it is no text of this kind.
fn version(line: &str) -> Option<u64> {
    let rest = line.strip_prefix(NAME)?.strip_prefix(' ')?;
    rest.split(' ').next()?.parse().ok()
}

/// Reads what was kept of a project; of a history that is damaged, what can be read of it.
///
/// # Errors
/// Where the text is too large, damaged or written by a newer program: it is to be set aside.
pub fn read_record(text: &str) -> Result<Record, Unkept> {
    if LARGEST < text.len() {
        return Err(Unkept(too_large()));
    }
    let damaged = || Unkept("It is damaged.".to_owned());
    let mut lines = Lines::of(text);
    let version = lines.next().and_then(version).ok_or_else(damaged)?;
    if VERSION < version {
        return Err(Unkept("It was written by a newer Dewrun.".to_owned()));
    }
    let (kept, json) = lines.project()?.ok_or_else(damaged)?;
    let read = |lines: &mut Lines<'_>, sign| {
        let mut texts = Texts::of(kept.key, json);
        let mut steps = Vec::new();
        while let Some(step) = lines.step(sign, &mut texts) {
            steps.push(step);
        }
        steps.truncate(DEPTH);
        steps.reverse();
        steps
    };
    let past = read(&mut lines, '-');
    let future = read(&mut lines, '+');
    Ok(Record {
        history: History::of(past, future),
        kept,
    })
}
