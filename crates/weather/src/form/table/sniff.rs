//! Finding the readings of a table: what stands between cells, where the date is, which decimal mark.

use dewrun_quantity::DecimalMark;

use crate::instant::parse::parse;
use crate::instant::stamp::{Stamp, counted};
use crate::number::number;
use crate::text::cells::{Cells, Delimiter, Splitter};

/// A line of the head with its number.
pub(super) type HeadLine = (Vec<u8>, u64);

/// How the readings of a table lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Found {
    pub(super) delimiter: Delimiter,
    /// Place of the date.
    pub(super) date: usize,
    /// The date is a count of days or seconds.
    pub(super) is_counted: bool,
    /// Usual number of cells.
    pub(super) cells: usize,
    /// Place of the first reading among the lines of the head.
    pub(super) first: usize,
    readings: usize,
}

impl Found {
    /// A table whose time stands in parts, which its headings name.
    pub(super) const fn of_parts(delimiter: Delimiter, cells: usize, first: usize) -> Self {
        Self {
            delimiter,
            date: usize::MAX,
            is_counted: false,
            cells,
            first,
            readings: 0,
        }
    }
}

/// A date further to the right is no stamp of the row.
const DATE_WITHIN: usize = 12;

/// What somebody has said of a table, or an earlier reading of it has found.
#[derive(Debug, Clone, Copy)]
pub(super) struct Said {
    pub(super) delimiter: Option<Delimiter>,
    /// Line of the first reading.
    pub(super) first: Option<u64>,
    /// Place of the date.
    pub(super) date: Option<usize>,
}

/// The delimiter under which most lines are readings; of several, the first in the order of [`Delimiter::ALL`].
pub(super) fn find(lines: &[HeadLine], said: Said) -> Option<Found> {
    let mut best: Option<Found> = None;
    for delimiter in Delimiter::ALL {
        if said.delimiter.is_some_and(|given| given != delimiter) {
            continue;
        }
        let Some(found) = under(lines, delimiter, said) else {
            continue;
        };
        if best.is_none_or(|best| best.readings < found.readings) {
            best = Some(found);
        }
    }
    best
}

/// What a line looks like.
struct Looks {
    at: usize,
    line: u64,
    cells: usize,
    date: Option<usize>,
    counted: Option<usize>,
    /// A number, or a sign for none, stands beside the date.
    has_value: bool,
}

fn under(lines: &[HeadLine], delimiter: Delimiter, said: Said) -> Option<Found> {
    let mut splitter = Splitter::default();
    let mut looks = Vec::new();
    for (at, (line, number)) in lines.iter().enumerate() {
        if said.first.is_some_and(|first| *number < first) {
            continue;
        }
        let cells = splitter.split(line, delimiter);
        if let Some(seen) = look((at, *number), &cells) {
            looks.push(seen);
        }
    }
    let dated = gathered(&looks, (delimiter, said), |seen| seen.date, false);
    let counted = gathered(&looks, (delimiter, said), |seen| seen.counted, true);
    match (dated, counted) {
        (Some(dated), Some(counted))
            if dated.readings < counted.readings && 2 < counted.readings =>
        {
            Some(counted)
        }
        (Some(dated), _) => Some(dated),
        // One number like a count of days may be chance.
        (None, counted) => counted.filter(|counted| 1 < counted.readings),
    }
}

/// The lines whose date stands at the same place, if there are any.
///
/// What was said counts before what most of them have: the lines above a first reading that was said may have had a say in it.
fn gathered(
    looks: &[Looks],
    (delimiter, said): (Delimiter, Said),
    place: fn(&Looks) -> Option<usize>,
    is_counted: bool,
) -> Option<Found> {
    let with_value = looks.iter().filter(|seen| seen.has_value);
    let mut places: Vec<usize> = with_value.filter_map(place).collect();
    let date =
        (said.date.filter(|date| places.contains(date))).or_else(|| most_frequent(&mut places))?;
    let of_date = || {
        looks
            .iter()
            .filter(|seen| seen.has_value && place(seen) == Some(date))
    };
    let mut counts: Vec<usize> = of_date().map(|seen| seen.cells).collect();
    let readings = counts.len();
    let cells = most_frequent(&mut counts)?;
    let mut first = of_date()
        .find(|seen| seen.cells.abs_diff(cells) <= 1 || said.first == Some(seen.line))
        .or_else(|| of_date().next())?
        .at;
    // Rows of the same form right above it begin the readings, though nothing was read in them yet.
    let same = |seen: &&Looks| place(seen) == Some(date) && seen.cells.abs_diff(cells) <= 1;
    for seen in looks.iter().rev().filter(same) {
        if seen.at + 1 == first {
            first = seen.at;
        }
    }
    Some(Found {
        delimiter,
        date,
        is_counted,
        cells,
        first,
        readings,
    })
}

fn most_frequent(values: &mut [usize]) -> Option<usize> {
    values.sort_unstable();
    values
        .chunk_by(|one, other| one == other)
        .rev()
        .max_by_key(|run| run.len())
        .and_then(|run| run.first().copied())
}

/// A line with a date and, beside it, a number or a sign for none.
fn look((at, line): (usize, u64), cells: &Cells<'_>) -> Option<Looks> {
    if cells.len() < 2 {
        return None;
    }
    let date = (0..cells.len().min(DATE_WITHIN))
        .find(|place| parse(cells.get(*place)).is_some_and(|stamp| stamp.has_date()));
    let counted_at = (0..cells.len().min(2)).find(|place| is_counted(cells.get(*place)));
    let place = date.or(counted_at)?;
    let has_value = (0..cells.len()).any(|other| other != place && is_value(cells.get(other)));
    Some(Looks {
        at,
        line,
        cells: cells.len(),
        date,
        counted: counted_at.filter(|_| date.is_none()),
        has_value,
    })
}

fn is_counted(cell: &[u8]) -> bool {
    any_number(cell).is_some_and(|value| counted(value).is_some())
}

/// The number in a cell whatever its mark.
pub(super) fn any_number(cell: &[u8]) -> Option<f64> {
    number(cell, DecimalMark::Point).or_else(|| number(cell, DecimalMark::Comma))
}

fn is_value(cell: &[u8]) -> bool {
    any_number(cell).is_some()
        || is_placeholder(cell)
        || super::cell::with_unit(cell, DecimalMark::Point).is_some()
}

/// Signs that programs write where there is no reading.
const PLACEHOLDERS: [&str; 21] = [
    "nan", "na", "n/a", "#n/a", "null", "none", "nil", "mm", "m", "missing", "invalid", "error",
    "err", "fault", "inf", "-inf", "no data", "nodata", "--.-", "?", "x",
];

/// Whether a cell says that there is no reading.
pub(super) fn is_placeholder(cell: &[u8]) -> bool {
    if cell.is_empty() || 12 < cell.len() {
        return false;
    }
    let cell = cell.strip_prefix(b"\"").unwrap_or(cell);
    let cell = cell.strip_suffix(b"\"").unwrap_or(cell);
    if cell
        .iter()
        .all(|sign| matches!(sign, b'-' | b'*' | b'.' | b'_' | b'/'))
    {
        return true;
    }
    PLACEHOLDERS
        .iter()
        .any(|word| cell.eq_ignore_ascii_case(word.as_bytes()))
}

/// The decimal mark that most numbers of the readings have.
pub(super) fn decimal_mark(lines: &[HeadLine], found: &Found) -> DecimalMark {
    let mut splitter = Splitter::default();
    let (mut points, mut commas) = (0_u32, 0_u32);
    for (line, _) in lines.iter().skip(found.first) {
        let cells = splitter.split(line, found.delimiter);
        for (at, cell) in cells.iter().enumerate() {
            if at == found.date && !found.is_counted {
                continue;
            }
            match last_mark(cell) {
                Some((b'.', _)) => points += 1,
                // Three digits behind a comma may be thousands.
                Some((b',', digits)) if digits != 3 => commas += 2,
                Some((b',', _)) => commas += 1,
                _ => {}
            }
        }
    }
    if points < commas {
        DecimalMark::Comma
    } else {
        DecimalMark::Point
    }
}

/// The last mark of a cell of digits and marks, and how many digits follow it.
fn last_mark(cell: &[u8]) -> Option<(u8, usize)> {
    let is_number = cell.iter().any(u8::is_ascii_digit)
        && cell
            .iter()
            .all(|sign| sign.is_ascii_digit() || matches!(sign, b'.' | b',' | b'-' | b'+' | b' '));
    let at = cell.iter().rposition(|sign| matches!(sign, b'.' | b','))?;
    let digits = cell.len() - at - 1;
    // Dates such as 13.03.2025 are no numbers.
    let marks = cell.iter().filter(|sign| matches!(sign, b'.')).count();
    (is_number && marks <= 1).then(|| (cell.get(at).copied().unwrap_or(0), digits))
}

/// The stamp of a date cell.
pub(super) fn stamp(cell: &[u8], is_counted: bool, mark: DecimalMark) -> Option<Stamp> {
    if is_counted {
        return number(cell, mark).and_then(counted);
    }
    parse(cell).filter(Stamp::has_date)
}
