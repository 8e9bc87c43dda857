//! Why a document cannot be read, written or turned into a run.

use dewrun_quantity::OutOfRange;
use dewrun_quantity::format::entered;
use dewrun_run::RunError;
use dewrun_run::air::AirError;
use thiserror::Error;

use crate::FieldPath;

/// Why a document cannot be read, written or turned into a run, with the place where.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum DocumentError {
    /// The file cannot be read: look whether it is there and may be read.
    #[error("{reason}")]
    Unreadable {
        /// What the system says.
        reason: String,
    },
    /// The text is longer than any project: open another file.
    #[error("the text is {bytes} bytes long, must be at most {max}")]
    TooLong {
        /// Its length.
        bytes: usize,
        /// The most that is read.
        max: usize,
    },
    /// The bytes are no text: save the file as UTF-8.
    #[error("not text in UTF-8, at byte {byte}; a project is saved as UTF-8")]
    NotText {
        /// How many bytes before it are text.
        byte: usize,
    },
    /// The text is not JSON: mend it at that line and column.
    #[error("not JSON: {message}")]
    Syntax {
        /// What is wrong there.
        message: String,
        /// Line, counted from 1.
        line: usize,
        /// Column in bytes, counted from 1.
        column: usize,
    },
    /// The JSON is not a project: open another file.
    #[error("not a Dewrun project: `format` is {found}, must be \"dewrun-project\"")]
    NotAProject {
        /// What stands in its field `format`.
        found: String,
    },
    /// The file has fields that this program does not know: update the program.
    #[error(
        "written by a newer Dewrun (version {version}, revision {revision}); this one reads up to version 1, revision {known}"
    )]
    Newer {
        /// Version of the file.
        version: u64,
        /// Revision of the file.
        revision: u64,
        /// The last revision that this program reads.
        known: u64,
    },
    /// The text holds no link that carries a project: copy the link whole.
    #[error("no link of Dewrun; one holds `#v1=` and what it carries")]
    NoLink,
    /// The link is of a version that this program does not know: update the program.
    #[error(
        "the link is of version {version}, this Dewrun reads version 1; open it with a newer one"
    )]
    NewerLink {
        /// Version of the link.
        version: String,
    },
    /// The link is longer than any: save the project as a file.
    #[error("the link has {letters} letters, must have at most {max}; a file carries more")]
    LinkTooLong {
        /// Its length.
        letters: usize,
        /// The most that is read.
        max: usize,
    },
    /// The link holds a sign that none has: copy it again.
    #[error("the link is damaged at letter {at} after `#v1=`; copy it again, whole")]
    LinkLetter {
        /// The place of the sign, counted from 1 behind the `=`.
        at: usize,
    },
    /// The link is cut short, or some of it was changed: copy it again.
    #[error("the link is damaged or cut short; copy it again, whole")]
    LinkDamaged,
    /// What the link carries is longer than any project.
    #[error("the link carries more than {max} bytes, which no project has")]
    LinkTooLarge {
        /// The most that is read.
        max: usize,
    },
    /// A field is unknown, missing or of the wrong kind: mend it.
    #[error("{message}")]
    Shape {
        /// The field, or what lacks one.
        path: FieldPath,
        /// What is wrong with it.
        message: String,
        /// Line, counted from 1.
        line: usize,
        /// Column in bytes, counted from 1.
        column: usize,
    },
    /// A value lies outside its limits: bring it within.
    #[error("{source}")]
    OutOfRange {
        /// The field.
        path: FieldPath,
        /// The value and its limits.
        source: OutOfRange,
    },
    /// A value lies outside its own span: widen the span or, where it is assumed, type the value.
    #[error("the value {} lies outside its span from {} to {}", entered(*.value), entered(*.low), entered(*.high))]
    OutsideSpan {
        /// The field.
        path: FieldPath,
        /// The value.
        value: f64,
        /// Lower end of the span.
        low: f64,
        /// Upper end of the span.
        high: f64,
    },
    /// A list is longer than any project needs: part the project.
    #[error("has {count} entries, must have at most {max}")]
    TooMany {
        /// The list.
        path: FieldPath,
        /// Its length.
        count: usize,
        /// The most that is read.
        max: usize,
    },
    /// A text is too short or too long: write another.
    #[error("is {count} characters long, must be from {min} to {max}")]
    TextLength {
        /// The field.
        path: FieldPath,
        /// Its length.
        count: usize,
        /// The least allowed.
        min: usize,
        /// The most allowed.
        max: usize,
    },
    /// Two things bear the same id: give one of them another.
    #[error("the id `{id}` is given twice, each must have its own")]
    DoubledId {
        /// The second place.
        path: FieldPath,
        /// The id.
        id: String,
    },
    /// A leg lies in a space that the project does not have: name one that it has.
    #[error("there is no space `{id}`, must be one of {known}")]
    NoSuchSpace {
        /// The field.
        path: FieldPath,
        /// The id it names.
        id: String,
        /// The ids there are.
        known: String,
    },
    /// A variant is of no run: name one that is no variant itself, or leave the name out.
    #[error("there is no run `{id}` that is no variant itself; left out, this is a run of its own")]
    NoSuchOriginal {
        /// The field.
        path: FieldPath,
        /// The id it names.
        id: String,
    },
    /// A day that the calendar does not have: write one as 2026-08-30.
    #[error("`{found}` is no day, must be written as 2026-08-30")]
    NoSuchDay {
        /// The field.
        path: FieldPath,
        /// What is there.
        found: String,
    },
    /// The low airflow limit does not lie below the high one: exchange them.
    #[error("the low limit of {} % must lie below the high one of {} %", entered(*.low), entered(*.high))]
    LimitsCrossed {
        /// The field of the low one.
        path: FieldPath,
        /// The low one, %.
        low: f64,
        /// The high one, %.
        high: f64,
    },
    /// Water or airflow of a run cannot be answered: mend what stands there.
    #[error("{sentence}")]
    Told {
        /// The field or part.
        path: FieldPath,
        /// What is wrong with it.
        sentence: String,
    },
    /// The project has no runs: draw at least one.
    #[error("has no entries, must have at least one run")]
    NoRuns {
        /// The list.
        path: FieldPath,
    },
    /// The project has no run of that id: name one that it has.
    #[error("there is no run `{id}`, must be one of {known}")]
    NoRunCalled {
        /// The id asked for.
        id: String,
        /// The ids there are.
        known: String,
    },
    /// The project has no run of that position.
    #[error("there is no run number {index}, the project has {count}")]
    NoSuchRun {
        /// Position asked for, counted from 0.
        index: usize,
        /// How many there are.
        count: usize,
    },
    /// The pressure does not follow from the altitude.
    #[error("{source}")]
    Pressure {
        /// The field.
        path: FieldPath,
        /// Why.
        source: AirError,
    },
    /// The run has no answer.
    #[error("{source}")]
    Run {
        /// The field, or the part that holds it.
        path: FieldPath,
        /// Why.
        source: RunError,
    },
    /// A number of the answer is not finite, which must never be written.
    #[error("a number of the answer is not finite")]
    NotFinite,
}

impl DocumentError {
    /// The field that the error is about; none where it is about the text as a whole.
    #[must_use]
    pub const fn path(&self) -> Option<&FieldPath> {
        match self {
            Self::Shape { path, .. }
            | Self::OutOfRange { path, .. }
            | Self::OutsideSpan { path, .. }
            | Self::TooMany { path, .. }
            | Self::TextLength { path, .. }
            | Self::DoubledId { path, .. }
            | Self::NoSuchSpace { path, .. }
            | Self::NoSuchOriginal { path, .. }
            | Self::NoSuchDay { path, .. }
            | Self::LimitsCrossed { path, .. }
            | Self::Told { path, .. }
            | Self::NoRuns { path }
            | Self::Pressure { path, .. }
            | Self::Run { path, .. } => Some(path),
            Self::Unreadable { .. }
            | Self::TooLong { .. }
            | Self::NotText { .. }
            | Self::Syntax { .. }
            | Self::NotAProject { .. }
            | Self::Newer { .. }
            | Self::NoLink
            | Self::NewerLink { .. }
            | Self::LinkTooLong { .. }
            | Self::LinkLetter { .. }
            | Self::LinkDamaged
            | Self::LinkTooLarge { .. }
            | Self::NoRunCalled { .. }
            | Self::NoSuchRun { .. }
            | Self::NotFinite => None,
        }
    }

    /// Line and column, both counted from 1, where the text itself is wrong.
    #[must_use]
    pub const fn line_column(&self) -> Option<(usize, usize)> {
        match self {
            Self::Syntax { line, column, .. } | Self::Shape { line, column, .. } => {
                Some((*line, *column))
            }
            _ => None,
        }
    }

    /// The whole sentence: where, what, and what would be right.
    #[must_use]
    pub fn sentence(&self) -> String {
        match self.path() {
            Some(path) => format!("{path}: {self}"),
            None => self.to_string(),
        }
    }
}
