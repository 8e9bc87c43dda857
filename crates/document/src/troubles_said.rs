//! What a project says of a run's troubles, and what is found of them: the same on the command line and on the page.

use dewrun_troubles::{
    Answers, ChangeDay, Check, DaylightSaving, Entry, EventKind, ListRead, ListSaid, Log, LowPoint,
    Modelled, NextCheck, Ranking, WallClock, next_checks, rank, rank_with_spans, read_list,
    take_outcome,
};

use crate::output::TroublesOutput;
use crate::season::reading::DATES;
use crate::{
    ClockChange, DocumentError, FileDates, LogReading, Project, TroublesKept, TroublesTelling,
    troubles_answer,
};

/// What is said of a log, of the clock that it was written by, and of checks.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TroublesSaid {
    /// How the log is read.
    pub list: ListSaid,
    /// Its clock ahead of UTC outside daylight saving, s; none: as that of the weather.
    pub clock_offset_s: Option<i64>,
    /// When its clock is put forward and back.
    pub daylight: Option<DaylightSaving>,
    /// The time that it speaks of, s since 1970; none: as its entries.
    pub period: Option<(i64, i64)>,
    /// What was seen at checks, each with its outcome from 0.
    pub seen: Vec<(Check, usize)>,
}

/// What is asked of a run's troubles.
#[derive(Debug, Clone, Copy)]
pub struct TroublesAsked<'a> {
    /// Id of the run.
    pub run: &'a str,
    /// Name of the weather file.
    pub weather_file: &'a str,
    /// Hours that the weather's clock is ahead of UTC.
    pub weather_offset_h: f64,
    /// Members that have an answer.
    pub members: usize,
    /// What they say of the run's hours.
    pub modelled: &'a Modelled,
    /// The tapped answers.
    pub answers: &'a Answers,
    /// The bytes of a log; none where answers alone are told.
    pub log: Option<&'a [u8]>,
}

/// What is found of a run's troubles.
#[derive(Debug, Clone, PartialEq)]
pub struct TroublesFound {
    /// The list that was read.
    pub list: Option<ListRead>,
    /// The log that it makes.
    pub log: Option<Log>,
    /// The causes.
    pub ranking: Ranking,
    /// Between which the share of each lies, in the order of the causes' list; empty where nothing is known of that.
    pub spans: Vec<(f64, f64)>,
    /// The checks, the best first.
    pub checks: Vec<NextCheck>,
    /// How the log was read, in sentences.
    pub read: Vec<String>,
    /// The low point that the least water closes.
    pub low_point: Option<LowPoint>,
}

impl TroublesSaid {
    /// What a project says of a run.
    ///
    /// # Errors
    /// [`DocumentError`] where what it keeps of troubles can't be read.
    pub fn of(project: &Project, run: usize) -> Result<Self, DocumentError> {
        let kept = project.runs.get(run).and_then(|run| run.troubles.as_ref());
        let kept = kept.map(crate::Kept::<TroublesKept>::get).transpose()?;
        Ok(kept.as_ref().map(Self::of_kept).unwrap_or_default())
    }

    /// What is kept of a run's troubles.
    #[must_use]
    pub fn of_kept(kept: &TroublesKept) -> Self {
        let reading = kept.log.as_ref().and_then(|log| log.reading.clone());
        let reading = reading.unwrap_or_default();
        let seen = kept.seen.iter().filter_map(|one| {
            let check = Check::ALL
                .into_iter()
                .find(|check| check.id() == one.check)?;
            Some((check, from_one(one.outcome)?))
        });
        Self {
            list: list_said(&reading),
            clock_offset_s: reading.utc_offset_h.map(seconds),
            daylight: (reading.daylight_saving.as_ref()).and_then(|changes| {
                Some(DaylightSaving {
                    starts: change_day(&changes.starts)?,
                    ends: change_day(&changes.ends)?,
                })
            }),
            period: None,
            seen: seen.collect(),
        }
    }

    /// Reads a list by it; `weather_offset_h` is how many hours the weather's clock is ahead of UTC.
    ///
    /// # Errors
    /// Why it can't be read, as a sentence.
    pub fn read(&self, bytes: &[u8], weather_offset_h: f64) -> Result<ListRead, String> {
        let weather_offset_s = seconds(weather_offset_h);
        let clock = WallClock {
            utc_offset_s: self.clock_offset_s.unwrap_or(weather_offset_s),
            daylight: self.daylight,
        };
        read_list(bytes, &self.list, &clock, weather_offset_s)
    }

    /// The log that a list makes; none of no entry and no time.
    #[must_use]
    pub fn log(&self, list: &ListRead) -> Option<Log> {
        let entries = list.entries.iter().map(|(entry, _)| *entry);
        Log::new(entries.collect(), self.period)
    }
}

/// What answers, a log and what was seen at checks say of a run.
///
/// # Errors
/// Why the log can't be read, as a sentence.
pub fn troubles_found(
    said: &TroublesSaid,
    asked: &TroublesAsked<'_>,
) -> Result<TroublesFound, String> {
    let list = (asked.log)
        .map(|bytes| said.read(bytes, asked.weather_offset_h))
        .transpose()?;
    let log = list.as_ref().and_then(|list| said.log(list));
    // Spans are those of the log: nothing is known of them once a check moves the shares.
    let (mut ranking, spans) = match log.as_ref().filter(|_| said.seen.is_empty()) {
        Some(log) => rank_with_spans(asked.answers, asked.modelled, log),
        None => {
            let ranking = rank(asked.answers, Some(asked.modelled), log.as_ref());
            (ranking, Vec::new())
        }
    };
    for (check, outcome) in &said.seen {
        take_outcome(&mut ranking, *check, *outcome);
    }
    let checks = next_checks(&ranking, asked.modelled.has_trap());
    Ok(TroublesFound {
        read: read_how(list.as_ref(), log.as_ref()),
        list,
        log,
        ranking,
        spans,
        checks,
        low_point: asked.modelled.low_point(),
    })
}

impl TroublesFound {
    /// Whether anybody has looked for a cause: by a log, or by an answer in the note of the project.
    #[must_use]
    pub fn is_looked_for(&self, note: &str) -> bool {
        self.log.is_some() || !Answers::of_note(note).is_empty()
    }

    /// All of it as an answer of what was asked.
    #[must_use]
    pub fn output(&self, asked: &TroublesAsked<'_>) -> TroublesOutput {
        troubles_answer(TroublesTelling {
            run: asked.run,
            weather_file: asked.weather_file,
            members: asked.members,
            read: &self.read,
            log: self.log.as_ref(),
            entries: &in_order(self.list.as_ref()),
            ranking: &self.ranking,
            spans: &self.spans,
            checks: &self.checks,
        })
    }
}

/// How a list was read, and what of it lies outside of its time.
fn read_how(list: Option<&ListRead>, log: Option<&Log>) -> Vec<String> {
    let mut told = list.map(|list| list.decisions.clone()).unwrap_or_default();
    if let Some(left_out) = log.map(Log::left_out).filter(|left_out| 0 < *left_out) {
        told.push(format!(
            "Entries outside of the log's time, which is four years at the most, left out: {left_out}."
        ));
    }
    told
}

fn in_order(list: Option<&ListRead>) -> Vec<(Entry, usize)> {
    let mut entries = list.map(|list| list.entries.clone()).unwrap_or_default();
    entries.sort_by_key(|(entry, line)| (entry.at_s, *line));
    entries
}

fn list_said(reading: &LogReading) -> ListSaid {
    let order = |said: FileDates| {
        let found = DATES.iter().find(|(one, _)| *one == said);
        found.map(|(_, order)| *order)
    };
    let words = reading.words.iter().filter_map(|one| {
        let kind = EventKind::ALL
            .into_iter()
            .find(|kind| kind.id() == one.kind)?;
        Some((one.words.clone(), kind))
    });
    ListSaid {
        order: reading.date_order.and_then(order),
        date_column: reading.date_column.and_then(from_one),
        kind_column: reading.kind_column.and_then(from_one),
        words: words.collect(),
    }
}

fn change_day(change: &ClockChange) -> Option<ChangeDay> {
    let place = |found: Option<usize>| found.and_then(|place| u8::try_from(place).ok());
    let month = crate::MonthName::ALL
        .iter()
        .position(|month| *month == change.month);
    let weekday = crate::Weekday::ALL
        .iter()
        .position(|day| *day == change.weekday);
    Some(ChangeDay {
        month: place(month)? + 1,
        which: place(from_one(change.which))? + 1,
        weekday: place(weekday)?,
        hour: place(from_one(change.hour + 1.0))?,
    })
}

/// A place from 0, of a number that counts from 1 and has been checked.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "small whole numbers, and the cast saturates"
)]
fn from_one(number: f64) -> Option<usize> {
    (1.0 <= number).then_some(number as usize - 1)
}

/// Whole seconds of hours.
#[expect(clippy::cast_possible_truncation, reason = "at most a day")]
fn seconds(hours: f64) -> i64 {
    (3600.0 * hours).round() as i64
}
