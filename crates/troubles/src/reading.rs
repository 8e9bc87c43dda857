//! From the text of a list to a log: which cell says what, and every decision told with its line.

use dewrun_weather::{DateOrder, DatedRow, DatedRows, dated_rows};

use crate::local_time::{OnWall, WallClock};
use crate::log::{Entry, EventKind};
use crate::words::{grams_of, kind_of, percent_of};

/// Lines that are named one by one.
const NAMED: usize = 5;

/// What is said of a list where looking at it is not enough.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ListSaid {
    /// In which order its dates stand.
    pub order: Option<DateOrder>,
    /// The column of the date, from 0.
    pub date_column: Option<usize>,
    /// The column that says what it was, from 0.
    pub kind_column: Option<usize>,
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
    /// In which order dates were read.
    pub order: DateOrder,
    /// The column of the date, from 0.
    pub date_column: usize,
    /// The column that says in most rows what it was, from 0; none where no word is known.
    pub kind_column: Option<usize>,
    /// What each column holds in the first row, as an example.
    pub columns: Vec<String>,
    /// Words in which nothing is spoken of that is known, each once, as often met as they come.
    pub unknown: Vec<String>,
}

/// So many words that are not known are named.
const UNKNOWN: usize = 8;

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
    let Some(table) = dated_rows(bytes, said.order, said.date_column) else {
        if let Some(column) = said.date_column {
            return Err(format!(
                "no cell of column {} holds a date: say another column",
                column + 1
            ));
        }
        return Err("no line of the list begins with a date: give a date, a time and a word a line, such as 2026-06-16 04:10;airflow low".to_owned());
    };
    let mut read = ListRead {
        entries: Vec::new(),
        notes: Vec::new(),
        decisions: Vec::new(),
        order: table.order,
        date_column: table.date_column,
        kind_column: None,
        columns: columns(&table),
        unknown: Vec::new(),
    };
    let mut spoke_in: Vec<usize> = Vec::new();
    let (mut unknown, mut missing, mut twice) = (Vec::new(), Vec::new(), Vec::new());
    for row in &table.rows {
        let found = kind_in(row, said);
        match found {
            Some((column, _)) => spoke_in.push(column),
            None => {
                unknown.push(row.line);
                read.takes_unknown(row, said);
            }
        }
        let kind = found.map_or(EventKind::Other, |(_, kind)| kind);
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
            percent: percent_in(row, &table.names, kind),
        };
        read.entries.push((entry, row.line));
        let words: Vec<&str> = row.cells.iter().map(|(_, words)| words.as_str()).collect();
        read.notes.push(words.join("; "));
    }
    read.kind_column = most_met(&spoke_in);
    read.decisions = how(&table, read.kind_column);
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

impl ListRead {
    /// Keeps the words of a row in which nothing known is spoken of.
    fn takes_unknown(&mut self, row: &DatedRow, said: &ListSaid) {
        // A number or another date says nothing by its words.
        let mut cells = cells_of_kind(row, said).map(|(_, words)| words);
        let words = cells.find(|words| !words.starts_with(|sign: char| sign.is_ascii_digit()));
        let is_new = |words: &&String| !self.unknown.contains(words);
        if let Some(words) = words
            .filter(is_new)
            .filter(|_| self.unknown.len() < UNKNOWN)
        {
            self.unknown.push(words.clone());
        }
    }
}

/// The cells that may say what it was.
fn cells_of_kind<'a>(
    row: &'a DatedRow,
    said: &'a ListSaid,
) -> impl Iterator<Item = (usize, &'a String)> {
    let all = row.cells.iter().map(|(column, words)| (*column, words));
    all.filter(|(column, _)| said.kind_column.is_none_or(|said| said == *column))
}

/// The kind in the first cell that speaks of one, with its column: what was said of words first.
fn kind_in(row: &DatedRow, said: &ListSaid) -> Option<(usize, EventKind)> {
    let by_said = cells_of_kind(row, said).find_map(|(column, words)| {
        let words = words.to_ascii_lowercase();
        let mut all = said.words.iter();
        let found = all.find(|(word, _)| words.contains(&word.to_ascii_lowercase()));
        found.map(|(_, kind)| (column, *kind))
    });
    let by_words = || {
        let mut cells = cells_of_kind(row, said);
        cells.find_map(|(column, words)| Some((column, kind_of(words)?)))
    };
    by_said.or_else(by_words)
}

/// The one that is met most often; of several the lowest.
fn most_met(columns: &[usize]) -> Option<usize> {
    let last = columns.iter().copied().max()?;
    let times = |column: usize| columns.iter().filter(|one| **one == column).count();
    (0..=last).rev().max_by_key(|column| times(*column))
}

/// What stands in each column of the first row, under its name where it has one.
fn columns(table: &DatedRows) -> Vec<String> {
    let Some(row) = table.rows.first() else {
        return Vec::new();
    };
    let last = row
        .cells
        .iter()
        .map(|(column, _)| *column)
        .max()
        .unwrap_or(0);
    (0..=last.max(table.date_column))
        .map(|column| {
            let name = table.names.get(column).filter(|name| !name.is_empty());
            let cell = row.cells.iter().find(|(one, _)| *one == column);
            let words = cell.map(|(_, words)| words.as_str());
            name.map(String::as_str)
                .or(words)
                .unwrap_or_default()
                .to_owned()
        })
        .collect()
}

fn grams_in(row: &DatedRow, names: &[String], kind: EventKind) -> Option<f64> {
    if !matches!(kind, EventKind::WaterFound | EventKind::Emptied) {
        return None;
    }
    let mut cells = row.cells.iter();
    cells.find_map(|(column, words)| grams_of(words, names.get(*column).map_or("", String::as_str)))
}

fn percent_in(row: &DatedRow, names: &[String], kind: EventKind) -> Option<f64> {
    if !matches!(kind, EventKind::AirflowLow | EventKind::AirflowHigh) {
        return None;
    }
    let mut cells = row.cells.iter();
    cells.find_map(|(column, words)| {
        percent_of(words, names.get(*column).map_or("", String::as_str))
    })
}

fn how(table: &DatedRows, kind_column: Option<usize>) -> Vec<String> {
    let time = table.time_column.map_or_else(String::new, |column| {
        format!(", times in column {}", column + 1)
    });
    let kind = kind_column.map_or_else(String::new, |column| {
        format!(", what it was in column {}", column + 1)
    });
    let mut told = vec![format!(
        "{} rows read, cells parted by {}, dates in column {}, {}{time}{kind}.",
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

#[cfg(test)]
mod tests {
    use super::*;

    const CLOCK: WallClock = WallClock {
        utc_offset_s: 0,
        daylight: None,
    };

    /// Readings stand in a note, in the words themselves or in a column of their own, and only beside airflow.
    #[test]
    fn readings_are_taken_from_airflow_troubles() {
        let list = b"when;what;airflow (%);amount (ml);note\n\
            2001-09-12 07:20;airflow low;74;;reset\n\
            2001-09-13 07:20;airflow low 71 %;;;\n\
            2001-09-14 07:20;airflow high;;;at 131,5 percent\n\
            2001-09-15 07:20;water found;64;95;let out\n\
            2001-09-16 07:20;airflow low;;;reset";
        let read = read_list(list, &ListSaid::default(), &CLOCK, 0).expect("dates");
        let entries = read.entries.iter().map(|(entry, _)| entry);
        let found: Vec<_> = entries.map(|one| (one.percent, one.grams)).collect();
        let expected = [
            (Some(74.0), None),
            (Some(71.0), None),
            (Some(131.5), None),
            (None, Some(95.0)),
            (None, None),
        ];
        assert_eq!(found, expected, "readings and amounts");
    }

    #[test]
    fn words_that_are_not_known_are_told_once_and_no_date_is_among_them() {
        let list = b"2001-09-12 07:20;2001-09-13;draught weak\n2001-10-03 06:35;2001-10-04;draught weak\n2001-10-11 06:15;2001-10-12;filter changed";
        let read = read_list(list, &ListSaid::default(), &CLOCK, 0).expect("dates");
        assert_eq!(read.unknown, ["draught weak"], "said once");
        assert_eq!(
            (read.date_column, read.kind_column),
            (0, Some(2)),
            "found by looking"
        );
        let said = ListSaid {
            date_column: Some(1),
            words: vec![("draught weak".to_owned(), EventKind::AirflowLow)],
            ..ListSaid::default()
        };
        let read = read_list(list, &said, &CLOCK, 0).expect("dates there too");
        assert!(read.unknown.is_empty(), "it is said what they mean");
        assert_eq!(read.date_column, 1, "the column that was said");
        assert!(
            read.entries.iter().all(|(entry, _)| entry.is_day_only()),
            "days alone"
        );
    }
}
