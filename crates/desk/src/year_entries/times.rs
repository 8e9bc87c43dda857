//! Hours, days and months as a person writes them.

use dewrun_document::{MonthName, Period, Weekday};

/// As they are written, Monday first.
const DAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
/// As they are written, January first.
const MONTHS: [&str; 12] = [
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
];
/// What stands for every day and every month.
const ALL: &str = "all";

/// The fields of a period: name, label, what it says, and what would be right.
pub(super) fn shown(period: &Period) -> [(&'static str, &'static str, String, &'static str); 4] {
    let days = period.days.as_ref();
    let months = period.months.as_ref();
    [
        ("from_h", "From, h", hour(period.from_h, "0"), ""),
        ("until_h", "Until, h", hour(period.until_h, "24"), ""),
        (
            "days",
            "Days",
            days.map_or_else(
                || ALL.to_owned(),
                |some| runs(&DAYS, |at| holds(&Weekday::ALL, some, at)),
            ),
            "all, or such as Mon to Fri",
        ),
        (
            "months",
            "Months",
            months.map_or_else(
                || ALL.to_owned(),
                |some| runs(&MONTHS, |at| holds(&MonthName::ALL, some, at)),
            ),
            "all, or such as Nov to Mar",
        ),
    ]
}

/// Takes a text into a field of a period.
///
/// # Errors
/// What is wrong with it and what would be right, as a sentence.
pub(super) fn take(period: &mut Period, field: &str, text: &str) -> Result<(), String> {
    match field {
        "from_h" => period.from_h = hour_of(text)?,
        "until_h" => period.until_h = hour_of(text)?,
        "days" => period.days = some_of(&DAYS, &Weekday::ALL, text, "Mon to Fri")?,
        _ => period.months = some_of(&MONTHS, &MonthName::ALL, text, "Nov to Mar")?,
    }
    Ok(())
}

fn holds<T: PartialEq>(all: &[T], some: &[T], at: usize) -> bool {
    all.get(at).is_some_and(|one| some.contains(one))
}

fn hour(hour: Option<f64>, left_out: &str) -> String {
    hour.map_or_else(|| left_out.to_owned(), dewrun_quantity::format::entered)
}

/// A whole hour; whether the day has it is for the project to say.
fn hour_of(text: &str) -> Result<Option<f64>, String> {
    let hour = text.trim_end_matches("h").trim_end();
    let hour = hour.strip_suffix(":00").unwrap_or(hour);
    if hour.is_empty() {
        return Ok(None);
    }
    let number = dewrun_quantity::parse::number(hour);
    number.map(Some).map_err(|_| {
        format!("\u{201c}{text}\u{201d} is no hour. A whole one from 0 to 24 would be right.")
    })
}

/// Names that follow each other as one stretch, also over the end, others one by one.
fn runs(names: &[&str], holds: impl Fn(usize) -> bool) -> String {
    let count = names.len();
    let held = |at: usize| holds(at % count);
    let name = |at: usize| names.get(at % count).copied().unwrap_or_default();
    if (0..count).all(held) {
        return ALL.to_owned();
    }
    let mut told = Vec::new();
    // A stretch over the end begins before it.
    for first in (0..count).filter(|at| held(*at) && !held(at + count - 1)) {
        let length = (0..count).take_while(|by| held(first + by)).count();
        let last = name(first + length - 1);
        told.push(match length {
            1 => name(first).to_owned(),
            2 => format!("{}, {last}", name(first)),
            _ => format!("{} to {last}", name(first)),
        });
    }
    told.join(", ")
}

/// Which of all a text names; none for all of them.
fn some_of<T: Copy>(
    names: &[&str],
    all: &[T],
    text: &str,
    such_as: &str,
) -> Result<Option<Vec<T>>, String> {
    let text = text.trim();
    if text.is_empty() || text.eq_ignore_ascii_case(ALL) {
        return Ok(None);
    }
    let wrong = |part: &str| {
        format!(
            "\u{201c}{part}\u{201d} is none of {}. \u{201c}{such_as}\u{201d} or \u{201c}{ALL}\u{201d} would be right.",
            names.join(", ")
        )
    };
    let place = |part: &str| {
        let start = part.trim().get(..3);
        let is_it = |name: &&str| start.is_some_and(|start| start.eq_ignore_ascii_case(name));
        names
            .iter()
            .position(is_it)
            .ok_or_else(|| wrong(part.trim()))
    };
    let mut held = vec![false; names.len()];
    for part in text.split([',', ';']) {
        let ends = [" to ", "-", "\u{2013}"];
        let (first, last) = ends
            .iter()
            .find_map(|end| part.split_once(end))
            .unwrap_or((part, part));
        let (mut at, last) = (place(first)?, place(last)?);
        loop {
            if let Some(held) = held.get_mut(at) {
                *held = true;
            }
            if at == last {
                break;
            }
            at = (at + 1) % names.len();
        }
    }
    let found = all.iter().zip(held).filter(|(_, held)| *held);
    Ok(Some(found.map(|(one, _)| *one).collect()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_and_months_are_read_and_written_alike() {
        for (field, text, written) in [
            ("days", "mon-fri", "Mon to Fri"),
            ("days", "Saturday, Sunday", "Sat, Sun"),
            ("days", "Fri to Mon", "Fri to Mon"),
            ("days", "all", "all"),
            ("days", "Mon to Sun", "all"),
            ("months", "nov \u{2013} mar", "Nov to Mar"),
            ("months", "May; July to Sep", "May, Jul to Sep"),
            ("months", "", "all"),
            ("from_h", "20 h", "20"),
            ("from_h", "6:00", "6"),
            ("from_h", "", "0"),
        ] {
            let mut period = Period::default();
            assert_eq!(take(&mut period, field, text), Ok(()), "{text}");
            let shown = shown(&period);
            let found = shown.iter().find(|(name, ..)| *name == field);
            let words = found.map(|(_, _, words, _)| words.as_str());
            assert_eq!(words, Some(written), "{text}");
        }
    }

    #[test]
    fn what_is_no_time_is_named() {
        let mut period = Period::default();
        for (field, text, sentence) in [
            (
                "days",
                "Mon to Fry",
                "\u{201c}Fry\u{201d} is none of Mon, Tue",
            ),
            (
                "months",
                "winter",
                "\u{201c}winter\u{201d} is none of Jan, Feb",
            ),
            ("from_h", "noon", "\u{201c}noon\u{201d} is no hour"),
        ] {
            let told = take(&mut period, field, text).expect_err(text);
            assert!(told.starts_with(sentence), "{told}");
        }
        assert_eq!(period, Period::default(), "nothing is taken");
    }
}
