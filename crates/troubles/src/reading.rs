//! From the text of a list to a log: which cell says what, and every decision told with its line.

use dewrun_weather::{DateOrder, DatedRow, DatedRows, dated_rows};

use crate::local_time::{OnWall, WallClock};
use crate::log::{Entry, EventKind};
use crate::words::{grams_of, kind_of};

/// Lines that are named one by one.
const NAMED: usize = 5;

/// What is said of a list where looking at it is not enough.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ListSaid {
    /// In which order its dates stand.
    pub order: Option<DateOrder>,
    /// Words that mean a kind; what stands first counts first.
    pub words: Vec<(String, EventKind)>,
}

/// A list that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct ListRead {
    /// Entries, each with its line.
    pub entries: Vec<(Entry, usize)>,
    /// What stood beside each entry's date.
    pub notes: Vec<String>,
    /// What was decided, in sentences.
    pub decisions: Vec<String>,
}

/// Reads a list of troubles; the clock is the one on the wall where it was written, and `weather_offset_s` that of the weather, ahead of UTC.
///
/// # Errors
/// A sentence where no line has a date.
pub fn read_list(
    bytes: &[u8],
    said: &ListSaid,
    clock: &WallClock,
    weather_offset_s: i64,
) -> Result<ListRead, String> {
    let Some(table) = dated_rows(bytes, said.order) else {
        return Err("no line of the list begins with a date: give a date, a time and a word a line, such as 2026-06-16 04:10;airflow low".to_owned());
    };
    let mut read = ListRead {
        entries: Vec::new(),
        notes: Vec::new(),
        decisions: how(&table),
    };
    let (mut unknown, mut missing, mut twice) = (Vec::new(), Vec::new(), Vec::new());
    for row in &table.rows {
        let kind = kind_in(row, said).unwrap_or_else(|| {
            unknown.push(row.line);
            EventKind::Other
        });
        let (utc_s, on_wall) = match row.offset_min {
            Some(minutes) => (row.wall_s - 60 * i64::from(minutes), OnWall::Once),
            None if row.has_time => clock.utc(row.wall_s),
            None => (row.wall_s - weather_offset_s, OnWall::Once),
        };
        match on_wall {
            OnWall::Missing => missing.push(row.line),
            OnWall::Twice => twice.push(row.line),
            OnWall::Once => {}
        }
        let entry = Entry {
            at_s: utc_s + weather_offset_s,
            wall_hour: row.has_time.then(|| clock.hour_at(utc_s)),
            kind,
            grams: grams_in(row, &table.names, kind),
        };
        read.entries.push((entry, row.line));
        let words: Vec<&str> = row.cells.iter().map(|(_, words)| words.as_str()).collect();
        read.notes.push(words.join("; "));
    }
    read.decisions.extend(
        [
            lines(
                &unknown,
                "Nothing that is known is spoken of, taken as “other”",
            ),
            lines(
                &missing,
                "An hour that never was, as the clock was put forward",
            ),
            lines(
                &twice,
                "An hour that came twice, the first of which is taken",
            ),
            lines(&table.left_out, "No date, left out"),
        ]
        .into_iter()
        .flatten(),
    );
    Ok(read)
}

/// The kind in the first cell that speaks of one: what was said of words first.
fn kind_in(row: &DatedRow, said: &ListSaid) -> Option<EventKind> {
    let by_said = row.cells.iter().find_map(|(_, words)| {
        let words = words.to_ascii_lowercase();
        let mut all = said.words.iter();
        let found = all.find(|(word, _)| words.contains(&word.to_ascii_lowercase()));
        found.map(|(_, kind)| *kind)
    });
    by_said.or_else(|| row.cells.iter().find_map(|(_, words)| kind_of(words)))
}

fn grams_in(row: &DatedRow, names: &[String], kind: EventKind) -> Option<f64> {
    if !matches!(kind, EventKind::WaterFound | EventKind::Emptied) {
        return None;
    }
    let mut cells = row.cells.iter();
    cells.find_map(|(column, words)| grams_of(words, names.get(*column).map_or("", String::as_str)))
}

fn how(table: &DatedRows) -> Vec<String> {
    let mut told = vec![format!(
        "{} rows read, cells parted by {}, dates in column {}, {}.",
        table.rows.len(),
        table.delimiter.name(),
        table.date_column + 1,
        table.order.name()
    )];
    if table.order_is_open {
        told.push("Another order of dates would have read them as well.".to_owned());
    }
    let days = table.rows.iter().filter(|row| !row.has_time).count();
    match days {
        0 => {}
        1 => told.push("One of them says the day only.".to_owned()),
        _ => told.push(format!("{days} of them say the day only.")),
    }
    told
}

fn lines(lines: &[usize], what: &str) -> Option<String> {
    if lines.is_empty() {
        return None;
    }
    let named: Vec<String> = lines.iter().take(NAMED).map(ToString::to_string).collect();
    let more = lines.len().saturating_sub(NAMED);
    let more = if 0 < more {
        format!(" and {more} more")
    } else {
        String::new()
    };
    Some(format!("{what}: line {}{more}.", named.join(", ")))
}
