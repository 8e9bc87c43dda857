//! Rows laid out in time: one order of dates, one clock, rising, without repeats.

use crate::error::WeatherError;
use crate::instant::DateOrder;
use crate::instant::civil::{DAY_S, date_of, day_of};
use crate::instant::order::decide;
use crate::instant::stamp::NO_OFFSET;
use crate::note::{LinesMet, Note, Topic, counted};
use crate::raw::RawTable;
use crate::series::Timing;
use crate::understanding::{Stamps, Understanding};

use super::spread::middle;

/// Rows in time.
#[derive(Debug)]
pub(super) struct Laid {
    /// Places of the rows that are kept, in the order of time.
    pub(super) kept: Vec<usize>,
    pub(super) start_s: Vec<i64>,
    pub(super) timing: Timing,
    pub(super) order: DateOrder,
}

/// A single row stands for an hour.
const LONE_STEP_S: i64 = 3600;
/// A clock has one offset from UTC, or two where it is set to summer time; more are ends of steps such as `00:00-01:00`.
const MOST_OFFSETS: usize = 2;
/// Years that typical years are told in: one without and one with a leap day.
const WORKING_YEARS: [u16; 2] = [2001, 2000];
/// A real series is not silent for so long between months, s.
const SILENCE_S: i64 = 27 * DAY_S;

pub(super) fn lay(
    raw: &RawTable,
    given: &Understanding,
    notes: &mut Vec<Note>,
) -> Result<Laid, WeatherError> {
    let order = order(raw, given, notes)?;
    let mut seconds = seconds(raw, order)?;
    let offset_h = one_clock(raw, given, &mut seconds, notes);
    let step_s = raw.step_s.unwrap_or_else(|| usual_step(&seconds));
    let stamps = given.stamps.or(raw.stamps_mean).unwrap_or(Stamps::Moment);
    if stamps == Stamps::End {
        for start in &mut seconds {
            *start -= step_s;
        }
    }
    let working = typical(&seconds);
    let is_typical_year = working.is_some();
    if let Some(working) = working {
        notes.push(Note::of_file(Topic::Time, "the months come from different years: a typical year, told in one year without regard to the years written"));
        seconds = working;
    }
    summer_time(raw, &mut seconds, step_s, is_typical_year, notes);
    let mut timing = Timing {
        step_s,
        stamps,
        utc_offset_h: offset_h,
        is_typical_year,
        irregular_steps: 0,
        repeated: 0,
        backward: 0,
        longest_step_s: step_s,
        gaps: Vec::new(),
    };
    let (kept, start_s) = rising(raw, &seconds, &mut timing, notes);
    for pair in start_s.windows(2) {
        if let [before, after] = pair {
            timing.irregular_steps += u64::from(after - before != step_s);
            timing.longest_step_s = timing.longest_step_s.max(after - before);
        }
    }
    Ok(Laid {
        kept,
        start_s,
        timing,
        order,
    })
}

fn order(
    raw: &RawTable,
    given: &Understanding,
    notes: &mut Vec<Note>,
) -> Result<DateOrder, WeatherError> {
    if let Some(order) = given.date_order {
        return Ok(order);
    }
    let decision = decide(&raw.stamps, raw.named_order).map_err(|at| misfit(raw, at))?;
    if decision.is_open {
        let name = decision.order.name();
        notes.push(Note::of_file(Topic::Time, format!("the dates can be read in more than one order; they are read as {name}, say so if that is wrong")));
    } else if raw.understood.form == Some(crate::understanding::Form::Table) {
        notes.push(Note::of_file(
            Topic::Time,
            format!("dates are {} for the whole column", decision.order.name()),
        ));
    }
    Ok(decision.order)
}

fn misfit(raw: &RawTable, at: usize) -> WeatherError {
    let line = raw.lines.get(at).copied().unwrap_or(0);
    let text = raw.stamps.get(at).map_or_else(String::new, |stamp| {
        let [first, second, third] = stamp.date;
        format!("{first}-{second}-{third}")
    });
    WeatherError::Dates {
        line: u64::from(line),
        text,
    }
}

fn seconds(raw: &RawTable, order: DateOrder) -> Result<Vec<i64>, WeatherError> {
    let one = |(at, stamp)| {
        order
            .seconds(stamp)
            .map(|seconds| seconds + raw.shift_s)
            .ok_or_else(|| misfit(raw, at))
    };
    raw.stamps.iter().enumerate().map(one).collect()
}

/// Brings stamps with different offsets from UTC onto the first one's clock; hours ahead of UTC, where known.
fn one_clock(
    raw: &RawTable,
    given: &Understanding,
    seconds: &mut [i64],
    notes: &mut Vec<Note>,
) -> Option<f64> {
    let mut offsets: Vec<i16> = Vec::new();
    for stamp in raw
        .stamps
        .iter()
        .filter(|stamp| stamp.offset_min != NO_OFFSET)
    {
        if offsets.len() <= MOST_OFFSETS && !offsets.contains(&stamp.offset_min) {
            offsets.push(stamp.offset_min);
        }
    }
    if MOST_OFFSETS < offsets.len() {
        notes.push(Note::of_file(
            Topic::Time,
            "two times stand in each stamp: the first is the start of the step",
        ));
        return given.utc_offset_h.or(raw.utc_offset_h);
    }
    let first = raw
        .stamps
        .iter()
        .map(|stamp| stamp.offset_min)
        .find(|offset| *offset != NO_OFFSET);
    let Some(first) = first else {
        return given.utc_offset_h.or(raw.utc_offset_h);
    };
    let mut moved = LinesMet::default();
    for ((seconds, stamp), line) in seconds.iter_mut().zip(&raw.stamps).zip(&raw.lines) {
        if stamp.offset_min != NO_OFFSET && stamp.offset_min != first {
            *seconds += 60 * i64::from(first - stamp.offset_min);
            moved.add(u64::from(*line));
        }
    }
    notes.extend(moved.note(Topic::Time, |count| {
        format!(
            "{} with another offset from UTC than the first: brought onto the first one's clock",
            counted(count, "row")
        )
    }));
    Some(
        given
            .utc_offset_h
            .unwrap_or_else(|| f64::from(first) / 60.0),
    )
}

/// The middle one of the steps forward.
fn usual_step(seconds: &[i64]) -> i64 {
    let steps = seconds.windows(2).filter_map(|pair| match pair {
        [before, after] if before < after => Some(after - before),
        _ => None,
    });
    middle(steps.collect()).unwrap_or(LONE_STEP_S)
}

/// The same instants in one working year, where only that makes a series of them: the months of a typical year come from different years.
fn typical(seconds: &[i64]) -> Option<Vec<i64>> {
    let (back, longest) = steps(seconds);
    if back == 0 && longest < SILENCE_S {
        return None;
    }
    let has_leap_day = seconds
        .iter()
        .any(|start| matches!(date_of(start.div_euclid(DAY_S)), Some([_, 2, 29])));
    let year = WORKING_YEARS[usize::from(has_leap_day)];
    let in_year = |start: &i64| {
        let [_, month, day] = date_of(start.div_euclid(DAY_S))?;
        Some(day_of(year, month, day)? * DAY_S + start.rem_euclid(DAY_S))
    };
    let working: Vec<i64> = seconds.iter().map(in_year).collect::<Option<_>>()?;
    let (working_back, working_longest) = steps(&working);
    // A clock that was set anew leaves silence in one year too.
    let is_series = working_longest < SILENCE_S;
    let is_better = working_back < back || (working_back == back && working_longest < longest);
    (is_series && is_better).then_some(working)
}

/// How many steps go back, and the longest that goes forward.
fn steps(seconds: &[i64]) -> (usize, i64) {
    let (mut back, mut longest) = (0, 0);
    for pair in seconds.windows(2) {
        if let [before, after] = pair {
            back += usize::from(after < before);
            longest = longest.max(after - before);
        }
    }
    (back, longest)
}

/// An hour that is written twice in autumn: what lies before it, back to the hour left out in spring or to the start, was in summer time.
fn summer_time(
    raw: &RawTable,
    seconds: &mut [i64],
    step_s: i64,
    is_typical: bool,
    notes: &mut Vec<Note>,
) {
    const HOUR_S: i64 = 3600;
    if is_typical || HOUR_S < step_s || step_s <= 0 {
        return;
    }
    let step = |at: usize| -> Option<i64> { Some(seconds.get(at + 1)? - seconds.get(at)?) };
    let mut backs = (0..seconds.len()).filter(|at| step(*at).is_some_and(|step| step < 0));
    let (Some(at), None) = (backs.next(), backs.next()) else {
        return;
    };
    if step(at) != Some(step_s - HOUR_S) {
        return;
    }
    let spring = (0..at).rfind(|at| step(*at) == Some(HOUR_S + step_s));
    let begins = spring.map_or(0, |before| before + 1);
    for start in seconds.iter_mut().take(at + 1).skip(begins) {
        *start -= HOUR_S;
    }
    notes.push(Note {
        topic: Topic::Time,
        sentence: "the clock goes back by an hour: the rows before it are taken as summer time and moved to standard time".to_owned(),
        lines: raw.lines.get(at + 1).map(|line| u64::from(*line)).into_iter().collect(),
        count: 1,
    });
}

/// Rows in the order of time, the first of each repeated time alone.
fn rising(
    raw: &RawTable,
    seconds: &[i64],
    timing: &mut Timing,
    notes: &mut Vec<Note>,
) -> (Vec<usize>, Vec<i64>) {
    let (mut repeated, mut backward) = (LinesMet::default(), LinesMet::default());
    let line = |at: usize| raw.lines.get(at).map_or(0, |line| u64::from(*line));
    let mut kept: Vec<usize> = (0..seconds.len()).collect();
    for (at, pair) in (1..).zip(seconds.windows(2)) {
        if let [before, after] = pair
            && after < before
        {
            backward.add(line(at));
        }
    }
    let of = |at: &usize| seconds.get(*at).copied().unwrap_or(0);
    if 0 < backward.count() {
        kept.sort_by_key(of);
    }
    let mut before = None;
    kept.retain(|at| {
        let now = Some(of(at));
        if now == before {
            repeated.add(line(*at));
            return false;
        }
        before = now;
        true
    });
    timing.repeated = repeated.count();
    timing.backward = backward.count();
    notes.extend(backward.note(Topic::Time, |count| {
        format!(
            "{} earlier than the one before: rows are put in the order of time",
            counted(count, "row")
        )
    }));
    notes.extend(repeated.note(Topic::Time, |count| {
        format!(
            "{} at a time that stands already: the first of each is kept",
            counted(count, "row")
        )
    }));
    let start_s = kept.iter().map(of).collect();
    (kept, start_s)
}
