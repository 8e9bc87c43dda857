//! TM2: one line of place, then 8760 lines of fixed columns, hour 1 to 24.
//!
//! # Source
//! Marion & Urban, User's Manual for TMY2s, NREL/TP-463-7668 (1995), tables 3-1 and 3-2.

use dewrun_quantity::DecimalMark;

use super::FormReader;
use crate::column::{Role, Unit};
use crate::error::WeatherError;
use crate::instant::stamp::Stamp;
use crate::note::{LinesMet, Topic, counted};
use crate::number::number;
use crate::place::Place;
use crate::raw::{Fillers, RawColumn, RawTable};
use crate::text::encoding::text_of;
use crate::understanding::{Form, Stamps};

/// Fields that are kept: first place, width, tenths or not, role, unit, name. The number that says "missing" is all nines.
const FIELDS: [(usize, usize, f64, Role, Unit, &str); 9] = [
    (
        17,
        4,
        1.0,
        Role::Global,
        Unit::WattPerSquareMetre,
        "global horizontal radiation",
    ),
    (
        23,
        4,
        1.0,
        Role::Direct,
        Unit::WattPerSquareMetre,
        "direct normal radiation",
    ),
    (
        29,
        4,
        1.0,
        Role::Diffuse,
        Unit::WattPerSquareMetre,
        "diffuse horizontal radiation",
    ),
    (59, 2, 1.0, Role::Sky, Unit::Tenth, "total sky cover"),
    (67, 4, 0.1, Role::Temperature, Unit::Celsius, "dry bulb"),
    (73, 4, 0.1, Role::DewPoint, Unit::Celsius, "dew point"),
    (
        79,
        3,
        1.0,
        Role::RelativeHumidity,
        Unit::Percent,
        "relative humidity",
    ),
    (
        84,
        4,
        1.0,
        Role::Pressure,
        Unit::Hectopascal,
        "atmospheric pressure",
    ),
    (95, 3, 0.1, Role::Wind, Unit::MetrePerSecond, "wind speed"),
];
/// A row reaches at least to the end of the wind.
const LEAST: usize = 98;
/// Years of the set lie in one century.
const CENTURY: u16 = 1900;

/// Reads a TM2 file line by line.
#[derive(Debug)]
pub(crate) struct Tm2Reader {
    raw: RawTable,
    strange: LinesMet,
    blank: LinesMet,
    has_place: bool,
}

fn part(line: &[u8], from: usize, width: usize) -> &[u8] {
    line.get(from..from + width).map_or(&[], <[u8]>::trim_ascii)
}

fn value(line: &[u8], from: usize, width: usize) -> Option<f64> {
    number(part(line, from, width), DecimalMark::Point)
}

/// Whether the first line of a file is that of a TM2: `12839 MIAMI  FL  -5 N 25 48 W  80 16  2`.
pub(crate) fn begins(line: &[u8]) -> bool {
    // Spaces before the station number may have been lost.
    let words: Vec<&[u8]> = line
        .split(u8::is_ascii_whitespace)
        .filter(|word| !word.is_empty())
        .collect();
    let Some(from_end) = words.len().checked_sub(7) else {
        return false;
    };
    let is = |at: usize, letters: &[u8]| matches!(words.get(from_end + at), Some([letter]) if letters.contains(letter));
    words
        .first()
        .is_some_and(|word| word.len() == 5 && word.iter().all(u8::is_ascii_digit))
        && is(0, b"NS")
        && is(3, b"EW")
}

impl Tm2Reader {
    pub(crate) fn new() -> Self {
        let column =
            |(from, _, _, role, unit, name): (usize, usize, f64, Role, Unit, &str)| RawColumn {
                role,
                unit: Some(unit),
                name: name.to_owned(),
                number: from + 1,
                values: Vec::new(),
            };
        let mut raw = RawTable {
            columns: FIELDS.map(column).to_vec(),
            stamps_mean: Some(Stamps::End),
            dew_point_leads: true,
            fillers: Fillers::Common,
            step_s: Some(3600),
            ..RawTable::default()
        };
        raw.understood.form = Some(Form::Tm2);
        Self {
            raw,
            strange: LinesMet::default(),
            blank: LinesMet::default(),
            has_place: false,
        }
    }

    fn place(&mut self, line: &[u8]) {
        let (text, _) = text_of(line);
        let words: Vec<&str> = text.split_whitespace().collect();
        let Some(from_end) = words.len().checked_sub(7) else {
            return;
        };
        let at = |back: usize| {
            words
                .get(from_end + back)
                .and_then(|word| number(word.as_bytes(), DecimalMark::Point))
        };
        let degrees = |first: usize, negative: &str| {
            let size = at(first + 1)? + at(first + 2)? / 60.0;
            Some(if words.get(from_end + first) == Some(&negative) {
                -size
            } else {
                size
            })
        };
        let zone_h = from_end
            .checked_sub(1)
            .and_then(|at| words.get(at))
            .and_then(|word| number(word.as_bytes(), DecimalMark::Point));
        let name = words
            .get(1..from_end.saturating_sub(1))
            .unwrap_or_default()
            .join(" ");
        self.raw.place = Place {
            name: Some(name).filter(|name| !name.is_empty()),
            latitude_deg: degrees(0, "S"),
            longitude_deg: degrees(3, "W"),
            elevation_m: at(6),
            zone_h,
        };
        self.raw.utc_offset_h = zone_h;
    }

    fn row(&mut self, line: &[u8], line_number: u64) -> Result<(), WeatherError> {
        let whole = |from: usize, width: usize| {
            let digits = part(line, from, width);
            let is_whole = !digits.is_empty() && digits.iter().all(u8::is_ascii_digit);
            is_whole.then(|| {
                digits
                    .iter()
                    .fold(0_u16, |sum, digit| sum * 10 + u16::from(digit & 0xf))
            })
        };
        let date = whole(1, 2)
            .zip(whole(3, 2))
            .zip(whole(5, 2))
            .zip(whole(7, 2).filter(|hour| *hour <= 24));
        let Some((((year, month), day), hour)) = date.filter(|_| LEAST <= line.len()) else {
            self.strange.add(line_number);
            return Ok(());
        };
        self.raw.begin_row(
            Stamp::fixed([CENTURY + year, month, day], i32::from(hour) * 3600),
            line_number,
        )?;
        for ((from, width, scale, ..), column) in FIELDS.iter().zip(&mut self.raw.columns) {
            let digits = part(line, *from, *width);
            let is_missing = digits.iter().all(|digit| *digit == b'9') && 2 < digits.len();
            let read = value(line, *from, *width).filter(|_| !is_missing);
            column.values.push(read.map_or(f64::NAN, |value| {
                if *scale < 1.0 { value / 10.0 } else { value }
            }));
        }
        Ok(())
    }
}

impl FormReader for Tm2Reader {
    fn line(&mut self, line: &[u8], number: u64) -> Result<(), WeatherError> {
        if line.trim_ascii().is_empty() {
            self.blank.add(number);
            return Ok(());
        }
        if !self.has_place {
            self.has_place = true;
            self.place(line);
            return Ok(());
        }
        self.row(line, number)
    }

    fn finish(mut self: Box<Self>) -> Result<RawTable, WeatherError> {
        let strange = self.strange.note(Topic::Rows, |count| {
            format!("{} that is no whole row: not used", counted(count, "line"))
        });
        let blank = self.blank.note(Topic::Rows, |count| {
            format!("{} with nothing in it: ignored", counted(count, "line"))
        });
        self.raw
            .notes
            .extend([strange, blank].into_iter().flatten());
        self.raw.tail = self.blank;
        Ok(self.raw)
    }
}
