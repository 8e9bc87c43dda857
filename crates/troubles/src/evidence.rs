//! What speaks for and against a cause, in sentences with dates, and what a log cannot tell.

use dewrun_weather::Civil;

use crate::cause::Cause;
use crate::log::{DAY_S, Entry, EventKind, Log};
use crate::rank::{Ranked, Ranking};
use crate::readings_told::{readings_against, readings_for};

/// A trouble is of a cause from this chance on, and is not below that.
const IS_OF: f64 = 0.6;
const IS_NOT_OF: f64 = 0.25;
/// So many dates are written out.
const DATES: usize = 4;
/// A clean filter that trips again within so many days is no loaded filter.
const SOON_DAYS: i64 = 14;
/// Causes whose shares lie within this factor are not told apart.
const APART: f64 = 2.0;
/// A share that is worth a word.
const WORTH: f64 = 0.03;

/// Sentences for and against a cause.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Evidence {
    /// For it.
    pub for_it: Vec<String>,
    /// Against it.
    pub against: Vec<String>,
}

/// What speaks for and against a cause.
#[must_use]
pub fn evidence(log: &Log, ranking: &Ranking, ranked: &Ranked) -> Evidence {
    let mut told = Evidence::default();
    let troubles: Vec<&Entry> = ranking
        .entries
        .iter()
        .filter_map(|at| log.entries().get(*at))
        .collect();
    if !ranked.is_modelled {
        told.against.push(never(ranked.cause).to_owned());
        return told;
    }
    if ranked.cause == Cause::None {
        return told;
    }
    let chances = || troubles.iter().copied().zip(&ranked.explained);
    let of_it: Vec<&Entry> = chances()
        .filter(|(_, chance)| IS_OF <= **chance)
        .map(|(one, _)| one)
        .collect();
    if !of_it.is_empty() {
        told.for_it.push(format!(
            "{} of {} troubles come {}: {}.",
            of_it.len(),
            troubles.len(),
            when(ranked.cause),
            dates(&of_it)
        ));
    }
    let found: Vec<&Entry> = (log.entries().iter())
        .filter(|entry| entry.kind == EventKind::WaterFound)
        .collect();
    if ranked.cause == Cause::LowPointWater && !found.is_empty() {
        told.for_it
            .push(format!("Water was found: {}.", dates(&found)));
    }
    told.for_it.extend(readings_for(log, ranking, ranked));
    told.against.extend(readings_against(log, ranking, ranked));
    for kind in EventKind::TROUBLES {
        let not: Vec<&Entry> = (chances())
            .filter(|(one, chance)| one.kind == kind && **chance < IS_NOT_OF)
            .map(|(one, _)| one)
            .collect();
        if !not.is_empty() {
            let (be, what) = if not.len() == 1 {
                ("is", "entry")
            } else {
                ("are", "entries")
            };
            told.against.push(format!(
                "{} {what} “{}” {be} not explained: {}.",
                not.len(),
                kind.name(),
                dates(&not)
            ));
        }
    }
    told.against.extend(deeds_against(log, ranked.cause));
    told
}

/// What was done and did not help.
fn deeds_against(log: &Log, cause: Cause) -> Option<String> {
    let (deed, again) = match cause {
        Cause::FilterLoading => (EventKind::FilterChanged, EventKind::AirflowLow),
        Cause::FanWeak => (EventKind::DetectorReplaced, EventKind::AirflowLow),
        _ => return None,
    };
    let mut deeds = log.entries().iter().filter(|entry| entry.kind == deed);
    let (done, after) = deeds.find_map(|done| {
        let mut later = log.entries().iter().filter(|entry| entry.kind == again);
        let soon = done.at_s + DAY_S..done.at_s + SOON_DAYS * DAY_S;
        Some((done, later.find(|entry| soon.contains(&entry.at_s))?))
    })?;
    let days = (after.at_s - done.at_s).div_euclid(DAY_S);
    Some(format!(
        "{} again {days} days after “{}” of {}.",
        capital(again.name()),
        deed.name(),
        date(done)
    ))
}

/// What a log cannot tell, in sentences; empty where it tells enough.
#[must_use]
pub fn cannot_tell(ranking: &Ranking) -> Vec<String> {
    let mut told = Vec::new();
    if ranking.too_few {
        told.push(match ranking.troubles {
            0 => "There is no trouble in the log: the order rests on the answers and on what is modelled.".to_owned(),
            1 => "One trouble tells too little: the order rests on the answers and on what is modelled.".to_owned(),
            few => format!("{few} troubles tell too little: the order rests on the answers and on what is modelled."),
        });
    }
    let mut causes = ranking.causes.iter();
    if let Some(first) = causes.next() {
        let near = causes.filter(|one| first.share < APART * one.share);
        let near: Vec<&str> = near.map(|one| one.cause.name()).collect();
        if 0 < ranking.troubles && !near.is_empty() {
            told.push(format!(
                "The log does not tell “{}” from “{}”.",
                first.cause.name(),
                near.join("” and “")
            ));
        }
    }
    let follows_none = |one: &&Ranked| one.cause.follows_weather() && 0.0 < one.gain;
    if 0 < ranking.troubles && ranking.causes.iter().find(follows_none).is_none() {
        told.push("The times of the entries follow none of the modelled weather.".to_owned());
    }
    if ranking.is_climate && 0 < ranking.troubles {
        told.push("The weather is that of another year: it tells which months and hours are wet, and not which days were.".to_owned());
    }
    told
}

/// Where answers and log contradict each other, in a sentence.
#[must_use]
pub fn contradiction(ranking: &Ranking) -> Option<String> {
    if ranking.too_few {
        return None;
    }
    let most = |of: fn(&Ranked) -> f64| -> Option<&Ranked> {
        ranking
            .causes
            .iter()
            .max_by(|one, other| of(one).total_cmp(&of(other)))
    };
    let (answers, log) = (most(|one| one.by_answers)?, most(|one| one.by_log)?);
    let contradicts = answers.cause != log.cause
        && answers.by_log < WORTH
        && log.by_answers < 0.5 * answers.by_answers;
    contradicts.then(|| {
        format!(
            "The answers speak for “{}”, the log for “{}”: look at both.",
            answers.cause.name(),
            log.cause.name()
        )
    })
}

const fn when(cause: Cause) -> &'static str {
    match cause {
        Cause::LowPointWater => "as the modelled water gathers or stands",
        Cause::Mist => "while the air at the sensor is modelled misty or damp",
        Cause::Frost => "while frost is modelled to lie or to thaw",
        Cause::FilterLoading => "between the time that a filter takes to load and its change",
        Cause::FilterMissing => "in one spell that may begin and end with the filter",
        Cause::PartedTube => "in one spell without weather or clock",
        Cause::DryTrap => "after weeks in which no water is modelled to reach the trap",
        Cause::HolesFouled => "more and more often, whatever is done to the filter",
        Cause::DuctSwitching => "at the same hours of the day",
        Cause::FanWeak => "in one spell, whatever is done to the filter",
        Cause::LimitsBad => "while the clean line is modelled at an end of its readings",
        Cause::None => "at any time",
    }
}

const fn never(cause: Cause) -> &'static str {
    match cause {
        Cause::LowPointWater => "No water is modelled in the time of the log.",
        Cause::Mist => "No mist or damp at the sensor is modelled in the time of the log.",
        Cause::Frost => "No hour of frost is modelled in the time of the log.",
        Cause::DryTrap => "No trap is modelled to run dry in the time of the log.",
        Cause::LimitsBad => "The clean line’s reading hardly moves in the time of the log.",
        _ => "It would not show in the airflow.",
    }
}

fn dates(entries: &[&Entry]) -> String {
    let shown: Vec<String> = entries
        .iter()
        .take(DATES)
        .map(|entry| date(entry))
        .collect();
    let more = entries.len().saturating_sub(DATES);
    let shown = shown.join(", ");
    if 0 < more {
        format!("{shown} and {more} more")
    } else {
        shown
    }
}

/// A day as people write it: 16 Jun.
fn date(entry: &Entry) -> String {
    const MONTHS: [&str; 12] = [
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
    ];
    let Some(civil) = Civil::of(entry.at_s) else {
        return String::new();
    };
    let month = usize::from(civil.month.saturating_sub(1));
    format!("{} {}", civil.day, MONTHS.get(month).copied().unwrap_or(""))
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_ascii_uppercase().to_string() + letters.as_str()
    })
}
