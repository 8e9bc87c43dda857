//! A table with one reading a line: logger exports, PVGIS, satellite and reanalysis data, TMY3.
//!
//! The first few hundred lines are looked at as a whole: which delimiter makes most of them readings, which line names
//! the columns, where the time stands. Everything after is read by that one plan.

mod cell;
mod clock;
mod columns;
mod heading;
mod known;
mod plan;
mod preamble;
mod sniff;

use std::collections::BTreeSet;

use super::FormReader;
use crate::error::WeatherError;
use crate::instant::stamp::Stamp;
use crate::note::{LinesMet, Note, Topic, counted};
use crate::raw::{RawColumn, RawTable};
use crate::text::cells::{Cells, Splitter};
use crate::text::encoding::text_of;
use crate::understanding::Understanding;

use plan::Plan;
use sniff::HeadLine;

/// Names of this many stations are told apart.
const MOST_STATIONS: usize = 1000;

/// Reads a table by one plan.
#[derive(Debug)]
pub(crate) struct TableReader {
    splitter: Splitter,
    plan: Plan,
    raw: RawTable,
    wanted: Option<Vec<u8>>,
    stations: Stations,
    other_stations: LinesMet,
    strange: LinesMet,
    blank: LinesMet,
    unread: LinesMet,
}

impl TableReader {
    /// Makes a plan of the first lines.
    ///
    /// # Errors
    /// [`WeatherError::NoReadings`] where none of them is a reading; [`WeatherError::NoColumn`].
    pub(crate) fn of_head(lines: &[HeadLine], given: &Understanding) -> Result<Self, WeatherError> {
        let (plan, mut raw) = plan::make(lines, given)?;
        raw.columns = plan
            .readings
            .iter()
            .map(|reading| RawColumn {
                role: reading.role,
                unit: reading.unit,
                name: reading.name.clone(),
                number: reading.at + 1,
                values: Vec::new(),
            })
            .collect();
        Ok(Self {
            splitter: Splitter::default(),
            wanted: given.station.as_ref().map(|name| name.clone().into_bytes()),
            plan,
            raw,
            stations: Stations::default(),
            other_stations: LinesMet::default(),
            strange: LinesMet::default(),
            blank: LinesMet::default(),
            unread: LinesMet::default(),
        })
    }
}

impl FormReader for TableReader {
    fn line(&mut self, line: &[u8], number: u64) -> Result<(), WeatherError> {
        if number < self.plan.first {
            return Ok(());
        }
        let cells = self.splitter.split(line, self.plan.delimiter);
        if cells.is_blank() {
            self.blank.add(number);
            return Ok(());
        }
        let Some(stamp) = self.plan.clock.stamp(&cells, self.plan.mark) else {
            self.strange.add(number);
            return Ok(());
        };
        let mut rows = Rows {
            plan: &self.plan,
            raw: &mut self.raw,
            wanted: &mut self.wanted,
            stations: &mut self.stations,
            other_stations: &mut self.other_stations,
            unread: &mut self.unread,
        };
        rows.row(&cells, stamp, number)
    }

    fn finish(mut self: Box<Self>) -> Result<RawTable, WeatherError> {
        let names: Vec<String> = self
            .stations
            .names
            .iter()
            .map(|name| text_of(name).0.into_owned())
            .collect();
        if self.raw.stamps.is_empty() && !names.is_empty() && self.wanted.is_some() {
            let name = self
                .wanted
                .map_or_else(String::new, |name| text_of(&name).0.into_owned());
            return Err(WeatherError::NoStation {
                name,
                known: names.join(", "),
            });
        }
        if 1 < names.len() {
            let taken = self
                .wanted
                .as_ref()
                .map_or_else(String::new, |name| text_of(name).0.into_owned());
            let count = self.other_stations.count();
            self.raw.notes.push(Note::of_file(
                Topic::Rows,
                format!(
                    "the file holds {} stations: {}; `{taken}` is read, {} of others are not",
                    names.len(),
                    names.join(", "),
                    counted(count, "row")
                ),
            ));
            self.raw.understood.station = Some(taken);
        }
        self.raw.stations = names;
        let said = [
            self.raw.events.note(Topic::Rows, |count| {
                format!(
                    "{} with an event and no reading: not used",
                    counted(count, "row")
                )
            }),
            self.strange.note(Topic::Rows, |count| {
                format!(
                    "{} after the first reading without a time: no readings",
                    counted(count, "line")
                )
            }),
            self.unread.note(Topic::Missing, |count| {
                format!(
                    "{} with a text where a number should stand: taken as missing",
                    counted(count, "row")
                )
            }),
        ];
        self.raw.notes.extend(said.into_iter().flatten());
        self.raw.tail = self.blank;
        Ok(self.raw)
    }
}

/// Names of stations, in the order in which they are met.
#[derive(Debug, Default)]
struct Stations {
    names: Vec<Vec<u8>>,
    known: BTreeSet<Vec<u8>>,
}

impl Stations {
    fn meet(&mut self, name: &[u8]) {
        let is_last = self.names.last().is_some_and(|last| last == name);
        if is_last || MOST_STATIONS <= self.names.len() || self.known.contains(name) {
            return;
        }
        self.names.push(name.to_vec());
        self.known.insert(name.to_vec());
    }
}

/// What taking a row may change.
struct Rows<'a> {
    plan: &'a Plan,
    raw: &'a mut RawTable,
    wanted: &'a mut Option<Vec<u8>>,
    stations: &'a mut Stations,
    other_stations: &'a mut LinesMet,
    unread: &'a mut LinesMet,
}

impl Rows<'_> {
    fn row(&mut self, cells: &Cells<'_>, stamp: Stamp, number: u64) -> Result<(), WeatherError> {
        if !self.is_of_station(cells) {
            self.other_stations.add(number);
            return Ok(());
        }
        if self.is_event(cells) {
            self.raw.events.add(number);
            return Ok(());
        }
        self.raw.begin_row(stamp, number)?;
        let mut is_unread = false;
        for (reading, column) in self.plan.readings.iter().zip(&mut self.raw.columns) {
            let text = cells.get(reading.at);
            let value = cell::value(text, self.plan.mark);
            is_unread |= value.is_none() && !text.is_empty() && !sniff::is_placeholder(text);
            column.values.push(value.unwrap_or(f64::NAN));
        }
        if is_unread {
            self.unread.add(number);
        }
        Ok(())
    }

    /// Whether the row belongs to the station that is read: the one asked for, or that of the first row.
    fn is_of_station(&mut self, cells: &Cells<'_>) -> bool {
        let Some(at) = self.plan.station else {
            return true;
        };
        let name = cells.get(at);
        self.stations.meet(name);
        let wanted = self.wanted.get_or_insert_with(|| name.to_vec());
        wanted.as_slice() == name
    }

    /// No reading stands in the row, but a word elsewhere.
    fn is_event(&self, cells: &Cells<'_>) -> bool {
        let is_empty = self
            .plan
            .readings
            .iter()
            .all(|reading| cells.get(reading.at).is_empty());
        is_empty
            && (0..cells.len()).any(|at| {
                let text = cells.get(at);
                !self.plan.taken.contains(&at)
                    && !text.is_empty()
                    && !sniff::is_placeholder(text)
                    && sniff::any_number(text).is_none()
            })
    }
}
