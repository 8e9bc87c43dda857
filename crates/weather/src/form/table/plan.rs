//! The plan by which a table is read, made of its first lines and of what a person says.

use dewrun_quantity::DecimalMark;

use super::clock::{Clock, Parts, time_beside};
use super::columns::{Reading, choose, named_readings, readings_by_values, station};
use super::heading::{self, Heading, Headings};
use super::sniff::{self, Found, HeadLine, Said};
use super::{known, preamble};
use crate::column::Role;
use crate::error::WeatherError;
use crate::instant::DateOrder;
use crate::note::{Note, Topic};
use crate::raw::RawTable;
use crate::text::cells::{Delimiter, Splitter};
use crate::text::encoding::Encoding;
use crate::understanding::{ColumnChoice, Form, Stamps, Understanding};

/// How every line of the table is read.
#[derive(Debug, Clone)]
pub(super) struct Plan {
    pub(super) delimiter: Delimiter,
    pub(super) mark: DecimalMark,
    /// Number of the first line with a reading.
    pub(super) first: u64,
    pub(super) clock: Clock,
    pub(super) station: Option<usize>,
    pub(super) readings: Vec<Reading>,
    /// Places of all cells that mean something.
    pub(super) taken: Vec<usize>,
}

/// Lines from the first reading on that are looked at cell by cell.
const SAMPLE: usize = 60;

/// Makes the plan, and a raw table with everything that is known before the rows.
pub(super) fn make(
    lines: &[HeadLine],
    given: &Understanding,
) -> Result<(Plan, RawTable), WeatherError> {
    let mut raw = RawTable::default();
    let (found, headings, clock) = lie(lines, given).ok_or(WeatherError::NoReadings {
        lines: u64::try_from(lines.len()).unwrap_or(u64::MAX),
    })?;
    let mark = given
        .decimal_mark
        .unwrap_or_else(|| sniff::decimal_mark(lines, &found));
    let first = lines.get(found.first).map_or(1, |(_, number)| *number);
    let mut columns = headings.columns.clone();
    columns.resize(columns.len().max(found.cells), Heading::default());
    refuse_split_numbers(lines, &found, &clock, first)?;
    let sample = sample(lines, &found);
    let station = station(&columns, given, &sample);
    let mut readings = named_readings(&columns, &clock, &mut raw);
    if readings.is_empty() && headings.line.is_none() {
        readings = readings_by_values(&sample, &clock, mark, &mut raw);
    }
    choose(&mut readings, given, columns.len())?;
    let mut taken = clock.places();
    taken.extend(station);
    taken.extend(readings.iter().map(|reading| reading.at));
    tell_time(&columns, &clock, &mut raw);
    tell_preamble(lines, &headings, &found, &mut raw);
    tell_form(&headings, &found, mark, first, lines, &mut raw);
    raw.column_names = columns.into_iter().map(|heading| heading.name).collect();
    raw.understood.columns = clock
        .places()
        .into_iter()
        .map(|at| ColumnChoice {
            column: at + 1,
            role: clock.role(at),
            unit: None,
        })
        .collect();
    let plan = Plan {
        delimiter: found.delimiter,
        mark,
        first,
        clock,
        station,
        readings,
        taken,
    };
    Ok((plan, raw))
}

/// Where the readings lie, under which headings, with the time in which cells.
fn lie(lines: &[HeadLine], given: &Understanding) -> Option<(Found, Headings, Clock)> {
    let in_parts = || in_parts(lines, given);
    let said = |role: Role| {
        given
            .columns
            .iter()
            .find(|choice| choice.role == role)
            .and_then(|choice| choice.column.checked_sub(1))
    };
    let of_table = Said {
        delimiter: given.delimiter,
        first: given.first_reading,
        date: said(Role::Date),
    };
    let Some(found) = sniff::find(lines, of_table) else {
        return in_parts();
    };
    // Headings of year, month and day say more than a number that looks like a date.
    if let Some(parts) = in_parts().filter(|_| found.is_counted) {
        return Some(parts);
    }
    let mut headings = heading::find(lines, found.first, found.cells, found.delimiter);
    if headings.line.is_none()
        && let Some(names) = known::names(lines, &found)
    {
        headings.columns = names.into_iter().map(named_heading).collect();
        headings.line = Some(found.first);
    }
    let sample = sample(lines, &found);
    let date = said(Role::Date).unwrap_or(found.date);
    let time = said(Role::Time).or_else(|| {
        (!found.is_counted)
            .then(|| time_beside(&sample, date, &headings.columns))
            .flatten()
    });
    let clock = Clock::Cells {
        date,
        time,
        is_counted: found.is_counted,
    };
    Some((found, headings, clock))
}

fn named_heading(name: String) -> Heading {
    let folded = crate::column::names::folded(name.as_bytes());
    let role = (!folded.is_empty()).then(|| crate::column::names::role(&folded));
    Heading {
        name,
        folded,
        beside: Vec::new(),
        role,
    }
}

/// A table whose headings name year, month and day apart.
fn in_parts(lines: &[HeadLine], given: &Understanding) -> Option<(Found, Headings, Clock)> {
    for delimiter in Delimiter::ALL {
        if given.delimiter.is_some_and(|given| given != delimiter) {
            continue;
        }
        let Some((at, cells)) = heading::first_with_names(lines, delimiter) else {
            continue;
        };
        let headings = heading::find(lines, at + 1, cells, delimiter);
        let place = |role: Role| {
            headings
                .columns
                .iter()
                .position(|heading| heading.role == Some(role))
        };
        let Some(parts) = Parts::of(place) else {
            continue;
        };
        let clock = Clock::Parts(parts);
        let mut splitter = Splitter::default();
        let first = lines
            .iter()
            .enumerate()
            .skip(at + 1)
            .find(|(_, (line, _))| {
                clock
                    .stamp(&splitter.split(line, delimiter), DecimalMark::Point)
                    .is_some()
            });
        let Some((first, _)) = first else { continue };
        let found = Found::of_parts(delimiter, cells, first);
        return Some((found, headings, clock));
    }
    None
}

/// A decimal comma between commas: every number makes two cells, and the names fall behind.
fn refuse_split_numbers(
    lines: &[HeadLine],
    found: &Found,
    clock: &Clock,
    line: u64,
) -> Result<(), WeatherError> {
    let above = lines.get(..found.first).unwrap_or_default();
    let names = heading::names_above(above, found.delimiter);
    let times = clock.places().len();
    let numbers = found.cells.saturating_sub(times);
    let is_split =
        found.delimiter == Delimiter::Comma && times < names && numbers == 2 * (names - times);
    if is_split {
        return Err(WeatherError::CommasInNumbers {
            line,
            cells: found.cells,
            names,
        });
    }
    Ok(())
}

fn sample(lines: &[HeadLine], found: &Found) -> Vec<Vec<Vec<u8>>> {
    let mut splitter = Splitter::default();
    let mut rows = Vec::new();
    for (line, _) in lines.iter().skip(found.first).take(SAMPLE) {
        let cells = splitter.split(line, found.delimiter);
        if cells.len().abs_diff(found.cells) <= 1
            && sniff::stamp(cells.get(found.date), found.is_counted, DecimalMark::Point).is_some()
        {
            rows.push(cells.iter().map(<[u8]>::to_vec).collect());
        }
    }
    rows
}

/// What the headings of the time say: an order of dates, an offset from UTC.
fn tell_time(columns: &[Heading], clock: &Clock, raw: &mut RawTable) {
    let headings = clock.places().into_iter().filter_map(|at| columns.get(at));
    for heading in headings {
        let texts = || core::iter::once(&heading.folded).chain(&heading.beside);
        raw.named_order = raw
            .named_order
            .or_else(|| texts().find_map(|text| DateOrder::named(text)));
        if texts().any(|text| text.contains("ending")) {
            raw.stamps_mean = Some(Stamps::End);
        }
        raw.utc_offset_h = raw
            .utc_offset_h
            .or_else(|| texts().find_map(|text| preamble::offset_of(text)));
    }
}

fn tell_preamble(lines: &[HeadLine], headings: &Headings, found: &Found, raw: &mut RawTable) {
    let above = lines
        .get(..headings.from.min(found.first))
        .unwrap_or_default();
    raw.understood.form = Some(Form::Table);
    if let Some(place) = known::tmy3_place(lines) {
        raw.utc_offset_h = place.zone_h;
        raw.place = place;
        raw.stamps_mean = Some(Stamps::End);
        raw.dew_point_leads = true;
        raw.understood.form = Some(Form::Tmy3);
        return;
    }
    let said = preamble::read(above, found.delimiter);
    raw.utc_offset_h = raw.utc_offset_h.or(said.offset_h).or(said.place.zone_h);
    raw.place = said.place;
    raw.comments = said.comments;
}

fn tell_form(
    headings: &Headings,
    found: &Found,
    mark: DecimalMark,
    first: u64,
    lines: &[HeadLine],
    raw: &mut RawTable,
) {
    let understood = &mut raw.understood;
    understood.delimiter = Some(found.delimiter);
    understood.decimal_mark = Some(mark);
    understood.first_reading = Some(first);
    if headings.is_latin {
        understood.encoding = Some(Encoding::Windows1252);
    }
    let mark = match mark {
        DecimalMark::Point => "point",
        DecimalMark::Comma => "comma",
    };
    let names = headings
        .line
        .and_then(|at| lines.get(at))
        .map(|(_, number)| *number)
        .filter(|number| *number < first);
    let names = names.map_or_else(
        || "no line names the columns".to_owned(),
        |number| format!("line {number} names the columns"),
    );
    raw.notes.push(Note::of_file(
        Topic::Form,
        format!(
            "{} between cells, decimal {mark}; {names}, readings begin on line {first}",
            found.delimiter.name()
        ),
    ));
    if headings.is_latin {
        raw.notes.push(Note::of_file(
            Topic::Form,
            "names are no UTF-8: read as Windows-1252",
        ));
    }
}
