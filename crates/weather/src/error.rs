//! Why a file is not read.

use thiserror::Error;

/// Why a file is not read; nothing of it is kept.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum WeatherError {
    /// There is nothing in it.
    #[error("the file is empty")]
    Empty,
    /// It is no text: save it as CSV first.
    #[error("this is {what}, not a text file: {hint}")]
    NotText {
        /// What it looks like.
        what: &'static str,
        /// What would be right.
        hint: &'static str,
    },
    /// A line without end: it is no table.
    #[error("line {line} is longer than {most} bytes: this is no table of readings")]
    LineTooLong {
        /// Number of the line, from 1.
        line: u64,
        /// Longest line that is taken, bytes.
        most: usize,
    },
    /// More rows than are kept: cut the file into shorter periods, or average it first.
    #[error(
        "line {line} is past the {most} readings that are kept of one file: cut it into shorter periods, or average it first"
    )]
    TooManyRows {
        /// Number of the line, from 1.
        line: u64,
        /// Most rows that are kept.
        most: usize,
    },
    /// No line begins like a reading.
    #[error(
        "no line with a date, a time and a number was found in the first {lines} lines: a weather or logger file has one reading a line"
    )]
    NoReadings {
        /// How many lines were looked at.
        lines: u64,
    },
    /// The dates can't be read in one order.
    #[error(
        "line {line}: the date `{text}` does not fit the others: no one order of day, month and year reads them all"
    )]
    Dates {
        /// Number of the line, from 1.
        line: u64,
        /// What stands there.
        text: String,
    },
    /// Commas part cells and digits alike.
    #[error(
        "line {line} has {cells} cells under {names} names: commas part both cells and digits; save the file with semicolons between cells, or with decimal points"
    )]
    CommasInNumbers {
        /// Number of the line, from 1.
        line: u64,
        /// Its cells.
        cells: usize,
        /// Names above them.
        names: usize,
    },
    /// There is no column of air temperature or of humidity at all.
    #[error("no column of temperature or humidity was found among: {columns}")]
    NoAir {
        /// The names of the columns.
        columns: String,
    },
    /// A column was asked for that is not there.
    #[error("there is no column {column}, the file has {count}")]
    NoColumn {
        /// Its number, from 1.
        column: usize,
        /// How many there are.
        count: usize,
    },
    /// A station was asked for that is not there.
    #[error("there is no station `{name}`, the file has: {known}")]
    NoStation {
        /// The name asked for.
        name: String,
        /// The names in the file.
        known: String,
    },
    /// A number that the person gave can't be used.
    #[error("{0}")]
    Given(String),
}
