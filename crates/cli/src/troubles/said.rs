//! What the command line says of troubles, in words.

use dewrun_document::{TroublesSaid, day_of};
use dewrun_quantity::parse::number;
use dewrun_troubles::{
    Answers, ChangeDay, Check, DaylightSaving, EventKind, ListSaid, TouchedAnswer, TrapAnswer,
    TroubleAnswer, WhenAnswer,
};
use dewrun_weather::DateOrder;

use crate::args::{Order, Troubles};

/// Seconds of a day.
const DAY_S: i64 = 86_400;
/// Days of the week, Monday first.
const WEEKDAYS: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/// What the command line says of troubles.
pub(crate) struct Said {
    order: Option<DateOrder>,
    words: Vec<(String, EventKind)>,
    period: Option<(i64, i64)>,
    seen: Vec<(Check, usize)>,
    answers: Vec<Answer>,
    clock_offset_s: Option<i64>,
    daylight: Option<DaylightSaving>,
}

/// One tapped answer.
#[derive(Clone, Copy)]
enum Answer {
    Trouble(TroubleAnswer),
    When(WhenAnswer),
    Trap(TrapAnswer),
    Touched(TouchedAnswer),
}

impl Said {
    pub(super) fn of(args: &Troubles) -> Result<Self, String> {
        let order = args.log_date_order.map(|order| match order {
            Order::Dmy => DateOrder::DayMonthYear,
            Order::Mdy => DateOrder::MonthDayYear,
            Order::Ymd => DateOrder::YearMonthDay,
        });
        let words: Result<_, _> = args.means.iter().map(|said| means(said)).collect();
        let day = |said: &Option<String>| said.as_deref().map(day).transpose();
        let period = day(&args.from)?.zip(day(&args.until)?);
        let clock_offset_h = args.clock_offset.as_deref().map(hours).transpose()?;
        let clock_offset_s = clock_offset_h.map(seconds);
        let daylight = args.daylight_saving.as_deref().map(daylight).transpose()?;
        let seen: Result<_, _> = args.seen.iter().map(|said| seen(said)).collect();
        let answers: Result<_, _> = args.answers.iter().map(|said| answer(said)).collect();
        Ok(Self {
            order,
            words: words?,
            period,
            seen: seen?,
            answers: answers?,
            clock_offset_s,
            daylight,
        })
    }

    /// The answers of a project's note, and those of the command line in place of them.
    pub(super) fn answers(&self, note: &str) -> Answers {
        let mut answers = Answers::of_note(note);
        for one in &self.answers {
            match *one {
                Answer::Trouble(answer) => answers.trouble = Some(answer),
                Answer::When(answer) => answers.when = Some(answer),
                Answer::Trap(answer) => answers.trap = Some(answer),
                Answer::Touched(answer) => answers.touched = Some(answer),
            }
        }
        answers
    }

    /// What the project says, and what the command line says in place of it; what was seen at checks comes after what the project holds of them.
    pub(super) fn over(&self, kept: TroublesSaid) -> TroublesSaid {
        let words = self.words.iter().cloned().chain(kept.list.words);
        TroublesSaid {
            list: ListSaid {
                order: self.order.or(kept.list.order),
                words: words.collect(),
                ..kept.list
            },
            clock_offset_s: self.clock_offset_s.or(kept.clock_offset_s),
            daylight: self.daylight.or(kept.daylight),
            period: self.period.or(kept.period),
            seen: kept
                .seen
                .into_iter()
                .chain(self.seen.iter().copied())
                .collect(),
        }
    }
}

/// Whole seconds of hours.
#[expect(clippy::cast_possible_truncation, reason = "at most a day")]
fn seconds(hours: f64) -> i64 {
    (3600.0 * hours).round() as i64
}

fn day(said: &str) -> Result<i64, String> {
    let day = day_of(said).ok_or_else(|| format!("{said}: a day must be such as 2026-06-01"))?;
    Ok(day * DAY_S)
}

fn hours(said: &str) -> Result<f64, String> {
    let hours = number(said).ok().filter(|hours| hours.abs() <= 14.0);
    hours.ok_or_else(|| format!("{said}: the clock must be from -14 to 14 hours ahead of UTC"))
}

fn pair<'a>(said: &'a str, form: &str) -> Result<(&'a str, &'a str), String> {
    said.rsplit_once('=')
        .ok_or_else(|| format!("{said}: say {form}"))
}

fn means(said: &str) -> Result<(String, EventKind), String> {
    let (words, kind) = pair(said, "words and kind, such as draught weak=airflow_low")?;
    let found = EventKind::ALL.into_iter().find(|one| one.id() == kind);
    let kinds = EventKind::ALL.map(EventKind::id).join(", ");
    let kind = found.ok_or_else(|| format!("{kind}: no such kind; there are {kinds}"))?;
    Ok((words.to_owned(), kind))
}

fn seen(said: &str) -> Result<(Check, usize), String> {
    let (check, outcome) = pair(said, "check and outcome, such as empty_and_measure=1")?;
    let found = Check::ALL.into_iter().find(|one| one.id() == check);
    let checks = Check::ALL.map(Check::id).join(", ");
    let found = found.ok_or_else(|| format!("{check}: no such check; there are {checks}"))?;
    let outcome: Option<usize> = outcome
        .parse()
        .ok()
        .and_then(|number: usize| number.checked_sub(1));
    let outcome = outcome.filter(|outcome| {
        found
            .chance(dewrun_troubles::Cause::None, *outcome)
            .is_some()
    });
    let outcome = outcome
        .ok_or_else(|| format!("{said}: outcomes count from 1, as `troubles` lists them"))?;
    Ok((found, outcome))
}

fn answer(said: &str) -> Result<Answer, String> {
    let (question, word) = pair(said, "question and answer, such as trouble=airflow-low")?;
    let answer = match (question, word) {
        ("trouble", "airflow-low") => Answer::Trouble(TroubleAnswer::AirflowLow),
        ("trouble", "airflow-high") => Answer::Trouble(TroubleAnswer::AirflowHigh),
        ("trouble", "alarm") => Answer::Trouble(TroubleAnswer::Alarm),
        ("when", "summer-day") => Answer::When(WhenAnswer::SummerDay),
        ("when", "summer-night") => Answer::When(WhenAnswer::SummerNight),
        ("when", "between") => Answer::When(WhenAnswer::Between),
        ("when", "winter") => Answer::When(WhenAnswer::Winter),
        ("when", "any") => Answer::When(WhenAnswer::AnyTime),
        ("trap", "none") => Answer::Trap(TrapAnswer::None),
        ("trap", "water") => Answer::Trap(TrapAnswer::Water),
        ("trap", "dry") => Answer::Trap(TrapAnswer::Dry),
        ("trap", "not-sure") => Answer::Trap(TrapAnswer::NotSure),
        ("touched", "this-year") => Answer::Touched(TouchedAnswer::ThisYear),
        ("touched", "longer-ago") => Answer::Touched(TouchedAnswer::LongerAgo),
        ("touched", "not-sure") => Answer::Touched(TouchedAnswer::NotSure),
        _ => {
            return Err(format!(
                "{said}: no such answer; see `dewrun help troubles`"
            ));
        }
    };
    Ok(answer)
}

fn daylight(said: &str) -> Result<DaylightSaving, String> {
    let wrong = || {
        format!(
            "{said}: say start and end as month, which, day of the week and hour, such as 3,last,sun,2:10,last,sun,3"
        )
    };
    let (starts, ends) = said.split_once(':').ok_or_else(wrong)?;
    let both = change_day(starts).zip(change_day(ends));
    let (starts, ends) = both.ok_or_else(wrong)?;
    Ok(DaylightSaving { starts, ends })
}

fn change_day(said: &str) -> Option<ChangeDay> {
    let parts: Vec<&str> = said.split(',').map(str::trim).collect();
    let [month, which, weekday, hour] = parts.as_slice() else {
        return None;
    };
    let within = |text: &str, most: u8| text.parse().ok().filter(|number: &u8| *number <= most);
    let weekday = WEEKDAYS.iter().position(|one| one == weekday)?;
    Some(ChangeDay {
        month: within(month, 12).filter(|month| 0 < *month)?,
        which: if *which == "last" {
            5
        } else {
            within(which, 4).filter(|which| 0 < *which)?
        },
        weekday: u8::try_from(weekday).ok()?,
        hour: within(hour, 23)?,
    })
}
