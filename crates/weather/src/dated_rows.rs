//! Any table of dated rows: what stands beside a date and a time, as words; for lists that people keep, and not for readings.

use crate::column::names::folded;
use crate::instant::order::{DateOrder, decide};
use crate::instant::parse::{parse, time_alone};
use crate::instant::stamp::{NO_OFFSET, Stamp};
use crate::text::cells::{Cells, Delimiter, Splitter};
use crate::text::encoding::{Decoder, text_of};

/// Columns that are looked at for a date.
const COLUMNS: usize = 12;
/// Rows that are kept: nobody's list is longer.
const MOST_ROWS: usize = 20_000;
/// Lines that tell how a table is cut.
const LOOKED_AT: usize = 400;

/// A row with its date.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DatedRow {
    /// Its line in the text, from 1.
    pub line: usize,
    /// Seconds since 1970 on the clock that wrote it.
    pub wall_s: i64,
    /// A time stands beside the date.
    pub has_time: bool,
    /// Minutes east of UTC, where they stand beside the time.
    pub offset_min: Option<i16>,
    /// What stands in the other cells, each with its column from 0; empty ones are left out.
    pub cells: Vec<(usize, String)>,
}

/// A table of dated rows, and how it was understood.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DatedRows {
    /// Rows in the order of the text.
    pub rows: Vec<DatedRow>,
    /// Lines without a date that can be read, and beyond those that are kept.
    pub left_out: Vec<usize>,
    /// What stands between cells.
    pub delimiter: Delimiter,
    /// The column of the date, from 0.
    pub date_column: usize,
    /// The column of the time, where it has one of its own.
    pub time_column: Option<usize>,
    /// In which order dates stand.
    pub order: DateOrder,
    /// Another order would have read them as well.
    pub order_is_open: bool,
    /// The names of the columns, where a line above the first row holds some; in small letters.
    pub names: Vec<String>,
}

/// How lines are cut.
#[derive(Debug, Clone, Copy)]
struct Cut {
    delimiter: Delimiter,
    date: usize,
    time: Option<usize>,
    rows: usize,
}

/// Reads a table of dated rows in any encoding, with any delimiter, column, order and form of dates; none where no line has a date, or none in the column that is said, counted from 0.
///
/// ```
/// use dewrun_weather::dated_rows;
/// let found = dated_rows(b"when;what\n16.06.2026 04:10;airflow low\n24.06.2026;airflow low", None, None).unwrap();
/// assert_eq!(found.rows[0].cells, [(1, "airflow low".to_owned())]);
/// assert!(found.rows[0].has_time && !found.rows[1].has_time);
/// assert_eq!(found.names, ["when", "what"]);
/// ```
#[must_use]
pub fn dated_rows(
    bytes: &[u8],
    order: Option<DateOrder>,
    date_column: Option<usize>,
) -> Option<DatedRows> {
    let mut decoder = Decoder::default();
    let mut text = decoder.push(bytes).into_owned();
    text.extend(decoder.finish());
    let lines = lines_of(&text);
    let cut = cut_of(&lines, date_column)?;
    let mut splitter = Splitter::default();
    let mut stamps = Vec::new();
    let mut kept = Vec::new();
    let mut left_out = Vec::new();
    let mut names = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        let cells = splitter.split(line, cut.delimiter);
        if cells.is_blank() {
            continue;
        }
        let stamp = stamp_of(&cells, cut).filter(|_| kept.len() < MOST_ROWS);
        match stamp {
            Some(stamp) => {
                stamps.push(stamp);
                kept.push((at + 1, words(&cells, cut)));
            }
            None if kept.is_empty() && 1 < cells.len() => {
                names = cells.iter().map(folded).collect();
            }
            None if kept.is_empty() => {}
            None => left_out.push(at + 1),
        }
    }
    let decision = match decide(&stamps, order) {
        Ok(decision) => (decision.order, decision.is_open),
        // Those that no order reads with the others are left out.
        Err(_) => best_order(&stamps)?,
    };
    let mut rows = Vec::new();
    for (stamp, (line, cells)) in stamps.iter().zip(kept) {
        match decision.0.seconds(stamp) {
            Some(wall_s) => rows.push(DatedRow {
                line,
                wall_s,
                has_time: stamp.has_time(),
                offset_min: (stamp.offset_min != NO_OFFSET).then_some(stamp.offset_min),
                cells,
            }),
            None => left_out.push(line),
        }
    }
    left_out.sort_unstable();
    (!rows.is_empty()).then_some(DatedRows {
        rows,
        left_out,
        delimiter: cut.delimiter,
        date_column: cut.date,
        time_column: cut.time,
        order: decision.0,
        order_is_open: decision.1,
        names,
    })
}

/// Lines that end in LF, CR LF or CR alone.
fn lines_of(text: &[u8]) -> Vec<&[u8]> {
    let mut lines = Vec::new();
    let mut rest = text;
    while let Some(end) = rest.iter().position(|sign| matches!(sign, b'\n' | b'\r')) {
        let (line, after) = rest.split_at(end);
        lines.push(line);
        rest = match after {
            [b'\r', b'\n', next @ ..] | [_, next @ ..] => next,
            [] => after,
        };
    }
    lines.push(rest);
    lines
}

/// The delimiter and the column that give most dated rows; of several the one with a time, then the likelier one.
fn cut_of(lines: &[&[u8]], date_column: Option<usize>) -> Option<Cut> {
    let mut best: Option<Cut> = None;
    let mut splitter = Splitter::default();
    for delimiter in Delimiter::ALL {
        let columns = date_column.map_or(0..COLUMNS, |said| said..said.saturating_add(1));
        for date in columns {
            let (mut rows, mut times, mut most_cells) = (0, 0, 0);
            for line in lines.iter().take(LOOKED_AT) {
                let cells = splitter.split(line, delimiter);
                most_cells = most_cells.max(cells.len());
                let Some(stamp) = parse(cells.get(date)).filter(Stamp::has_date) else {
                    continue;
                };
                // A row without a word beside its date is a number that looks like one.
                rows += usize::from(1 < cells.len());
                let beside = time_of(cells.get(date + 1));
                times += usize::from(!stamp.has_time() && beside.is_some());
            }
            if 0 < rows && best.is_none_or(|best| best.rows < rows) {
                let time = (0 < times).then_some(date + 1);
                best = Some(Cut {
                    delimiter,
                    date,
                    time,
                    rows,
                });
            }
            if most_cells <= date {
                break;
            }
        }
    }
    best
}

fn time_of(cell: &[u8]) -> Option<Stamp> {
    cell.contains(&b':').then(|| time_alone(cell)).flatten()
}

fn stamp_of(cells: &Cells<'_>, cut: Cut) -> Option<Stamp> {
    let date = parse(cells.get(cut.date)).filter(Stamp::has_date)?;
    let time = cut
        .time
        .filter(|_| !date.has_time())
        .and_then(|time| time_of(cells.get(time)));
    Some(time.map_or(date, |time| date.with_time_of(&time)))
}

/// What stands beside date and time; where spaces part cells, the rest of the line is one.
fn words(cells: &Cells<'_>, cut: Cut) -> Vec<(usize, String)> {
    let time = cut.time.filter(|time| time_of(cells.get(*time)).is_some());
    let others = (0..cells.len()).filter(|at| *at != cut.date && Some(*at) != time);
    let others = others.map(|at| (at, text_of(cells.get(at)).0.into_owned()));
    let others: Vec<(usize, String)> = others.filter(|(_, words)| !words.is_empty()).collect();
    if cut.delimiter != Delimiter::Spaces {
        return others;
    }
    let Some((first, _)) = others.first() else {
        return Vec::new();
    };
    let all: Vec<&str> = others.iter().map(|(_, words)| words.as_str()).collect();
    vec![(*first, all.join(" "))]
}

/// The order that reads most of the dates.
fn best_order(stamps: &[Stamp]) -> Option<(DateOrder, bool)> {
    let read = |order: DateOrder| {
        stamps
            .iter()
            .filter(|stamp| order.seconds(stamp).is_some())
            .count()
    };
    let orders = [
        DateOrder::YearMonthDay,
        DateOrder::MonthDayYear,
        DateOrder::DayMonthYear,
    ];
    let best = orders.into_iter().max_by_key(|order| read(*order))?;
    (0 < read(best)).then_some((best, true))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rows(text: &str) -> Vec<(usize, i64, bool, String)> {
        let found = dated_rows(text.as_bytes(), None, None);
        let rows = found.map(|found| found.rows).unwrap_or_default();
        let each = rows.into_iter().map(|row| {
            let words = row.cells.into_iter().map(|(_, words)| words);
            (
                row.line,
                row.wall_s,
                row.has_time,
                words.collect::<Vec<_>>().join("|"),
            )
        });
        each.collect()
    }

    /// 16 June 2026 is day 20 620 since 1970.
    const DAY: i64 = 20_620 * 86_400;

    #[test]
    fn lists_of_every_form_are_read() {
        let at = DAY + 4 * 3600 + 600;
        let low = "airflow low".to_owned();
        for text in [
            "2026-06-16T04:10,airflow low",
            "2026-06-16 04:10;airflow low",
            "Date\tTime\tWhat\n16/06/2026\t04:10\tairflow low",
            "no,when,what\n1,16.06.2026 04:10,airflow low",
            "16 Jun 2026 04:10|airflow low",
            "2026-06-16 04:10 airflow low",
        ] {
            let found = rows(text);
            let last = found.last().unwrap_or_else(|| panic!("nothing of {text}"));
            assert_eq!((last.1, last.2), (at, true), "{text}");
            assert!(last.3.ends_with(&low), "{text}: {last:?}");
        }
        assert_eq!(
            rows("16.06.2026;airflow low"),
            [(1, DAY, false, low)],
            "a day alone"
        );
    }

    #[test]
    fn lines_without_a_date_are_named() {
        let text = "what;when\nlow;2026-06-16\nnobody knows;\n\nhigh;2026-06-17";
        let found = dated_rows(text.as_bytes(), None, None).expect("two rows");
        assert_eq!(
            (found.rows.len(), found.left_out),
            (2, vec![3]),
            "the third line"
        );
        assert_eq!(found.names, ["what", "when"], "of its columns");
        assert_eq!(
            dated_rows(b"no date at all\n", None, None),
            None,
            "nothing to read"
        );
        assert_eq!(dated_rows(b"", None, None), None, "nothing at all");
    }

    #[test]
    fn a_column_that_is_said_holds_the_date() {
        let text = b"2026-06-20;2026-06-16 04:10;airflow low\n2026-06-21;2026-06-17 04:10;high";
        let first = |column| {
            let found = dated_rows(text, None, column).expect("two rows");
            found.rows.first().map(|row| row.wall_s)
        };
        assert_eq!(first(Some(1)), Some(DAY + 4 * 3600 + 600), "the second");
        assert_eq!(first(Some(0)), Some(DAY + 4 * 86_400), "the first");
        assert_eq!(
            dated_rows(text, None, Some(2)),
            None,
            "no date stands there"
        );
        assert_eq!(dated_rows(text, None, Some(usize::MAX)), None, "no column");
    }

    /// A list cut anywhere, or with any byte of it changed, is read or is not, and never breaks.
    #[test]
    fn damaged_lists_do_no_harm() {
        let text = "when;what;\u{e9}\n16.06.2026 04:10;\"airflow; low\";3\n24.06.26 23:59;high\n\r\n2026-13-40;x\n";
        for end in 0..text.len() {
            let _ = dated_rows(&text.as_bytes()[..end], None, None);
        }
        for at in 0..text.len() {
            for byte in [0, b'"', b'\n', b'9', b'-', 0xff] {
                let mut bytes = text.as_bytes().to_vec();
                bytes[at] = byte;
                let found = dated_rows(&bytes, None, None);
                let rows = found.map_or(0, |found| found.rows.len());
                assert!(rows <= 4, "no row comes from nowhere: {rows}");
            }
        }
    }
}
