//! What a person enters about troubles, taken into the project: what is entered by words, fields parted by U+001F, names and values in them by U+001E.
//!
//! `answer` question place; `seen` check outcome; `unseen` place; `log` name; `no-log`; `reading` and the fields of the form.

use dewrun_desk::{OpenProject, Question, count_of, project_text};
use dewrun_document::{
    ClockChange, DaylightChanges, FileDates, Kept, LogReading, LogReference, LogWords, MonthName,
    SeenAtCheck, TroublesKept, TroublesSaid, Weekday,
};
use dewrun_quantity::parse::number;
use dewrun_weather::sha256_of;

/// What parts fields, and names from values.
const FIELD: char = '\u{1f}';
const NAME: char = '\u{1e}';

/// The orders of dates by the word of the form.
pub(super) const ORDERS: [(&str, FileDates, &str); 3] = [
    ("dmy", FileDates::DayMonthYear, "day first"),
    ("mdy", FileDates::MonthDayYear, "month first"),
    ("ymd", FileDates::YearMonthDay, "year first"),
];

/// The project with it.
///
/// # Errors
/// What is wrong with it, as a sentence.
pub(super) fn entered(
    mut project: OpenProject,
    what: &str,
    log: Option<&[u8]>,
    offset_h: f64,
) -> Result<String, String> {
    let mut words = what.split(FIELD);
    let mut kept = kept(&project)?;
    match (words.next().unwrap_or_default(), words.next(), words.next()) {
        ("answer", Some(question), Some(place)) => {
            let question = at(question).and_then(|at| Question::TROUBLE.get(at));
            let both = question.zip(at(place));
            let (question, place) = both.ok_or("there is no such answer")?;
            question
                .note(&mut project, place)
                .ok_or("there is no such answer")?;
        }
        ("seen", Some(check), Some(outcome)) => kept.seen.push(SeenAtCheck {
            check: check.to_owned(),
            outcome: number(outcome).unwrap_or_default(),
        }),
        ("unseen", Some(place), None) => {
            let place = at(place).filter(|place| *place < kept.seen.len());
            kept.seen.remove(place.ok_or("nothing such was seen")?);
        }
        ("log", Some(name), None) => {
            let before = kept.log.and_then(|log| log.reading).unwrap_or_default();
            // Another list may have other columns; the clock on the wall is the same.
            let reading = LogReading {
                utc_offset_h: before.utc_offset_h,
                daylight_saving: before.daylight_saving,
                ..LogReading::default()
            };
            kept.log = Some(LogReference {
                file: name.to_owned(),
                reading: some(reading),
                ..LogReference::default()
            });
        }
        ("no-log", None, None) => kept.log = None,
        ("reading", ..) => {
            let fields: Vec<(&str, &str)> = what
                .split(FIELD)
                .filter_map(|field| field.split_once(NAME))
                .collect();
            let known = kept.log.as_mut().ok_or("there is no log yet")?;
            known.reading = some(reading(&fields)?);
        }
        _ => return Err("nothing such can be entered".to_owned()),
    }
    if let Some(known) = kept.log.take() {
        kept.log = Some(match log {
            Some(bytes) => held(known, bytes, offset_h)?,
            None => known,
        });
    }
    put(&mut project, &kept)?;
    project_text(&project)
}

/// The log by its hash, once it can be read.
fn held(known: LogReference, bytes: &[u8], offset_h: f64) -> Result<LogReference, String> {
    let tried = TroublesKept {
        log: Some(known),
        seen: Vec::new(),
    };
    let list = TroublesSaid::of_kept(&tried).read(bytes, offset_h)?;
    let rows = u32::try_from(list.entries.len()).map_or(f64::MAX, f64::from);
    Ok(LogReference {
        rows,
        sha256: sha256_of(bytes),
        ..tried.log.unwrap_or_default()
    })
}

/// What the open run keeps of troubles.
fn kept(project: &OpenProject) -> Result<TroublesKept, String> {
    let kept = project.open_run().and_then(|run| run.troubles.as_ref());
    let kept = kept.map(Kept::<TroublesKept>::get).transpose();
    Ok(kept.map_err(|error| error.to_string())?.unwrap_or_default())
}

fn put(project: &mut OpenProject, kept: &TroublesKept) -> Result<(), String> {
    let place = project.run;
    let run = project.runs.get_mut(place).ok_or("there is no such run")?;
    let is_any = *kept != TroublesKept::default();
    let kept = is_any.then(|| Kept::<TroublesKept>::of(kept)).transpose();
    run.troubles = kept.map_err(|error| error.to_string())?;
    Ok(())
}

/// Nothing where nothing is said.
fn some(reading: LogReading) -> Option<LogReading> {
    (reading != LogReading::default()).then_some(reading)
}

/// How a log is read, from the form.
fn reading(fields: &[(&str, &str)]) -> Result<LogReading, String> {
    let text = |name: &str| {
        let found = fields.iter().find(|(known, _)| *known == name);
        found.map_or("", |(_, text)| text.trim())
    };
    let column = |name: &str| number(text(name)).ok();
    let offset = text("offset");
    let utc_offset_h = if offset.is_empty() {
        None
    } else {
        let hours = number(offset).ok().filter(|hours| hours.abs() <= 14.0);
        Some(hours.ok_or_else(|| {
            format!("\u{201c}{offset}\u{201d}: the clock must be from \u{2212}14 to 14 hours ahead of UTC")
        })?)
    };
    let order = ORDERS.iter().find(|(word, ..)| *word == text("order"));
    let daylight_saving = match text("daylight") {
        "" => None,
        _ => Some(DaylightChanges {
            starts: change(&text, "starts")?,
            ends: change(&text, "ends")?,
        }),
    };
    let words = fields.iter().filter_map(|(name, kind)| {
        let words = name.strip_prefix("means ")?;
        (!kind.is_empty()).then(|| LogWords {
            words: words.to_owned(),
            kind: (*kind).to_owned(),
        })
    });
    Ok(LogReading {
        date_order: order.map(|(_, order, _)| *order),
        date_column: column("date"),
        kind_column: column("kind"),
        words: words.collect(),
        utc_offset_h,
        daylight_saving,
    })
}

fn change<'a>(text: &impl Fn(&str) -> &'a str, end: &str) -> Result<ClockChange, String> {
    let field = |name: &str| text(&format!("{end}-{name}"));
    let month = at(field("month")).and_then(|at| MonthName::ALL.get(at));
    let weekday = at(field("weekday")).and_then(|at| Weekday::ALL.get(at));
    let both = month.zip(weekday);
    let (month, weekday) = both.ok_or("say a month and a day of the week for both changes")?;
    let whole = |name: &str| {
        number(field(name)).map_err(|_| format!("say {} of both changes as a number", name))
    };
    Ok(ClockChange {
        month: *month,
        which: whole("which")?,
        weekday: *weekday,
        hour: whole("hour")?,
    })
}

/// A place from 0 in letters.
fn at(text: &str) -> Option<usize> {
    number(text).ok().and_then(count_of)
}
