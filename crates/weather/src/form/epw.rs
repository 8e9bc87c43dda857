//! EPW: eight lines of header, then a row for each step, hour 1 to 24.
//!
//! # Source
//! US Department of Energy, EnergyPlus documentation, Auxiliary Programs, "EnergyPlus Weather File (EPW) Data Dictionary".

use dewrun_quantity::DecimalMark;

use super::FormReader;
use crate::column::{Role, Unit};
use crate::error::WeatherError;
use crate::instant::stamp::Stamp;
use crate::note::{LinesMet, Note, Topic, counted};
use crate::number::number;
use crate::place::Place;
use crate::raw::{Fillers, RawColumn, RawTable};
use crate::text::cells::{Cells, Delimiter, Splitter};
use crate::text::encoding::{Encoding, text_of};
use crate::understanding::{Form, Stamps};

/// Fields that are kept: place in the row, role, unit.
const FIELDS: [(usize, Role, Unit, &str); 12] = [
    (6, Role::Temperature, Unit::Celsius, "dry bulb"),
    (7, Role::DewPoint, Unit::Celsius, "dew point"),
    (
        8,
        Role::RelativeHumidity,
        Unit::Percent,
        "relative humidity",
    ),
    (9, Role::Pressure, Unit::Pascal, "station pressure"),
    (
        12,
        Role::Infrared,
        Unit::WattPerSquareMetre,
        "horizontal infrared",
    ),
    (
        13,
        Role::Global,
        Unit::WattPerSquareMetre,
        "global horizontal radiation",
    ),
    (
        14,
        Role::Direct,
        Unit::WattPerSquareMetre,
        "direct normal radiation",
    ),
    (
        15,
        Role::Diffuse,
        Unit::WattPerSquareMetre,
        "diffuse horizontal radiation",
    ),
    (20, Role::WindDirection, Unit::Degree, "wind direction"),
    (21, Role::Wind, Unit::MetrePerSecond, "wind speed"),
    (22, Role::Sky, Unit::Tenth, "total sky cover"),
    (33, Role::Rain, Unit::Millimetre, "liquid precipitation"),
];
/// Names of the fields, for a row that is cut off.
const NAMES: [&str; 22] = [
    "year",
    "month",
    "day",
    "hour",
    "minute",
    "uncertainty flags",
    "dry bulb",
    "dew point",
    "relative humidity",
    "station pressure",
    "extraterrestrial radiation",
    "extraterrestrial direct radiation",
    "horizontal infrared",
    "global horizontal radiation",
    "direct normal radiation",
    "diffuse horizontal radiation",
    "global illuminance",
    "direct illuminance",
    "diffuse illuminance",
    "zenith luminance",
    "wind direction",
    "wind speed",
];
/// Fields of a whole row.
const COLUMNS: usize = 35;

/// Reads an EPW file line by line.
#[derive(Debug)]
pub(crate) struct EpwReader {
    splitter: Splitter,
    delimiter: Delimiter,
    mark: DecimalMark,
    raw: RawTable,
    comments: Vec<String>,
    per_hour: Option<u64>,
    is_latin: bool,
    first_columns: Option<usize>,
    minutes: u64,
    hours: u32,
    cut: LinesMet,
    cut_after: &'static str,
    long: LinesMet,
    strange: LinesMet,
    blank: LinesMet,
    daylight: bool,
}

/// What stands between the cells of an EPW, by its first line; none where it is no EPW.
///
/// A spreadsheet may have put semicolons or tabs there, and quotes around the words.
pub(crate) fn delimiter(line: &[u8]) -> Option<Delimiter> {
    let line = line.trim_ascii_start();
    let line = line.strip_prefix(b"\"").unwrap_or(line);
    let (word, rest) = line.split_at_checked(8)?;
    let rest = rest.strip_prefix(b"\"").unwrap_or(rest);
    if !word.eq_ignore_ascii_case(b"LOCATION") {
        return None;
    }
    match rest.first() {
        Some(b',') => Some(Delimiter::Comma),
        Some(b';') => Some(Delimiter::Semicolon),
        Some(b'\t') => Some(Delimiter::Tab),
        _ => None,
    }
}

impl EpwReader {
    pub(crate) fn new(delimiter: Delimiter, mark: Option<DecimalMark>) -> Self {
        // A comma that parts no cells parts digits, where a spreadsheet writes it so.
        let usual = match delimiter {
            Delimiter::Comma => DecimalMark::Point,
            _ => DecimalMark::Comma,
        };
        let mark = mark.unwrap_or(usual);
        let column = |(at, role, unit, name): (usize, Role, Unit, &str)| RawColumn {
            role,
            unit: Some(unit),
            name: name.to_owned(),
            number: at + 1,
            values: Vec::new(),
        };
        let mut raw = RawTable {
            columns: FIELDS.map(column).to_vec(),
            stamps_mean: Some(Stamps::End),
            dew_point_leads: true,
            fillers: Fillers::Epw,
            ..RawTable::default()
        };
        raw.understood.form = Some(Form::Epw);
        raw.understood.delimiter = Some(delimiter);
        raw.understood.decimal_mark = Some(mark);
        Self {
            splitter: Splitter::default(),
            delimiter,
            mark,
            raw,
            comments: Vec::new(),
            per_hour: None,
            is_latin: false,
            first_columns: None,
            minutes: 0,
            hours: 0,
            cut: LinesMet::default(),
            cut_after: "",
            long: LinesMet::default(),
            strange: LinesMet::default(),
            blank: LinesMet::default(),
            daylight: false,
        }
    }

    fn header(&mut self, line: &[u8]) {
        let (_, is_latin) = text_of(line);
        self.is_latin |= is_latin;
        let cells = self.splitter.split(line, self.delimiter);
        let text = |at: usize| text_of(cells.get(at)).0.into_owned();
        let mark = self.mark;
        let value = |at: usize| number_of(cells.get(at), mark);
        let name = text(0).to_ascii_uppercase();
        if name == "LOCATION" {
            self.raw.place = Place {
                name: Some(text(1)).filter(|name| !name.is_empty()),
                latitude_deg: value(6),
                longitude_deg: value(7),
                zone_h: value(8),
                elevation_m: value(9),
            };
        } else if name.starts_with("COMMENTS") {
            let rest: Vec<String> = (1..cells.len()).map(text).collect();
            self.comments.push(rest.join(","));
        } else if name.starts_with("DATA PERIODS") {
            let per_hour = value(2).filter(|value| (1.0..=60.0).contains(value));
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "from 1 to 60"
            )]
            let per_hour = per_hour.map(|value| value as u64);
            self.per_hour = per_hour;
        } else if name.starts_with("HOLIDAYS") {
            self.daylight = !matches!(cells.get(2), b"" | b"0");
        }
    }

    fn row(&mut self, line: &[u8], line_number: u64) -> Result<(), WeatherError> {
        let cells = self.splitter.split(line, self.delimiter);
        let count = cells.len();
        let least = *self.first_columns.get_or_insert(count);
        if count < least.min(NAMES.len()) {
            self.cut_after = NAMES
                .get(count.saturating_sub(1))
                .copied()
                .unwrap_or("its start");
            self.cut.add(line_number);
            return Ok(());
        }
        if COLUMNS < count {
            self.long.add(line_number);
        }
        let Some((stamp, hour, minute)) = stamp_of(&cells) else {
            self.strange.add(line_number);
            return Ok(());
        };
        self.minutes |= 1 << minute;
        self.hours |= 1 << hour;
        self.raw.begin_row(stamp, line_number)?;
        for ((at, ..), column) in FIELDS.iter().zip(&mut self.raw.columns) {
            column
                .values
                .push(number_of(cells.get(*at), self.mark).unwrap_or(f64::NAN));
        }
        Ok(())
    }

    /// Seconds from a stamp `hour + minute` to the end of its step, and the step.
    fn end_of_step(&mut self) -> (i64, i64) {
        let distinct = i64::from(self.minutes.count_ones()).max(1);
        let from_midnight = if self.hours & 1 == 1 && self.hours & (1 << 24) == 0 {
            self.raw.notes.push(Note::of_file(
                Topic::Time,
                "hours run from 0 to 23 instead of 1 to 24: each is taken as the start of its hour",
            ));
            3600
        } else {
            0
        };
        if distinct == 1 {
            let minute = i64::from(self.minutes.trailing_zeros()).min(60);
            return (from_midnight - 60 * minute, 3600);
        }
        let step = 3600 / distinct;
        let is_end = self.minutes & (1 << 60) != 0;
        (from_midnight - 3600 + if is_end { 0 } else { step }, step)
    }

    fn tell(&mut self, step_s: i64) {
        let stated = self.per_hour;
        let found = u64::try_from(3600 / step_s.max(1)).ok();
        if stated != found {
            let stated = stated.map_or_else(|| "nothing".to_owned(), |stated| stated.to_string());
            let found = counted(found.unwrap_or(0), "record");
            self.raw.notes.push(Note::of_file(Topic::Time, format!("the header states {stated} as records an hour, the rows have {found} an hour: the rows are followed")));
        }
        if self.is_latin {
            self.raw.understood.encoding = Some(Encoding::Windows1252);
            self.raw.notes.push(Note::of_file(
                Topic::Form,
                "names are no UTF-8: read as Windows-1252",
            ));
        }
        if self.daylight {
            self.raw.notes.push(Note::of_file(Topic::Time, "the header names a daylight saving period, which concerns schedules only: rows are in standard time all year, none was moved"));
        }
        let after = self.cut_after;
        let notes = [
            self.cut.note(Topic::Rows, |count| {
                format!(
                    "{} cut off, the row ends after {after}: a cut row is not used",
                    counted(count, "row")
                )
            }),
            self.long.note(Topic::Columns, |count| {
                format!(
                    "{} with more than {COLUMNS} columns: the extra ones are ignored",
                    counted(count, "row")
                )
            }),
            self.strange.note(Topic::Rows, |count| {
                format!("{} without a date: not used", counted(count, "line"))
            }),
            self.blank.note(Topic::Rows, |count| {
                format!(
                    "{} with nothing or commas alone: ignored",
                    counted(count, "line")
                )
            }),
        ];
        self.raw.notes.extend(notes.into_iter().flatten());
    }
}

/// The number of a cell; a point is understood where a comma is usual, since spreadsheets leave some as they were.
fn number_of(cell: &[u8], mark: DecimalMark) -> Option<f64> {
    match mark {
        DecimalMark::Point => number(cell, mark),
        DecimalMark::Comma => {
            let has_comma = cell.contains(&b',');
            number(cell, if has_comma { mark } else { DecimalMark::Point })
        }
    }
}

/// The date with hour and minute as written, which are 0 to 24 and 0 to 60.
fn stamp_of(cells: &Cells<'_>) -> Option<(Stamp, u32, u32)> {
    let whole = |at: usize, most: u16| {
        let value = number(cells.get(at), DecimalMark::Point)?;
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "within 0 to most"
        )]
        let whole = (0.0 <= value && value <= f64::from(most)).then_some(value as u16);
        whole
    };
    let date = [whole(0, 2999)?, whole(1, 12)?, whole(2, 31)?];
    let (hour, minute) = (whole(3, 24)?, whole(4, 60).unwrap_or(0));
    let seconds = i32::from(hour) * 3600 + i32::from(minute) * 60;
    Some((
        Stamp::fixed(date, seconds),
        u32::from(hour),
        u32::from(minute),
    ))
}

impl FormReader for EpwReader {
    fn line(&mut self, line: &[u8], number: u64) -> Result<(), WeatherError> {
        let line = line.trim_ascii();
        if line
            .iter()
            .all(|sign| matches!(sign, b',' | b';' | b'\t' | b' ' | b'"'))
        {
            self.blank.add(number);
            return Ok(());
        }
        let start = line.strip_prefix(b"\"").unwrap_or(line);
        if start.first().is_some_and(u8::is_ascii_digit) || self.first_columns.is_some() {
            return self.row(line, number);
        }
        self.header(line);
        Ok(())
    }

    fn finish(mut self: Box<Self>) -> Result<RawTable, WeatherError> {
        let (shift, step) = self.end_of_step();
        self.tell(step);
        self.raw.step_s = Some(step);
        self.raw.shift_s = shift;
        self.raw.tail = self.blank;
        self.raw.comments = self.comments;
        // The zone of the header is that of the rows, unless the sun says otherwise.
        self.raw.utc_offset_h = self.raw.place.zone_h;
        Ok(self.raw)
    }
}
