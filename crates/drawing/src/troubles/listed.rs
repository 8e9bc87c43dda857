//! The entries of a log as a table: when, what, how much, what was modelled then, and what each says.

use dewrun_quantity::Units;
use dewrun_quantity::format::{DOES_NOT_APPLY, fixed};
use dewrun_troubles::Entry;
use dewrun_weather::Civil;

use super::entries::times;
use super::{Found, Modelled};
use crate::html::element;
use crate::wording::volume;
use crate::year::stamp::short;

/// No more rows are listed.
const MOST: usize = 400;

/// Nothing without a log.
#[must_use]
pub fn listed(found: &Found<'_>, modelled: &Modelled<'_>) -> String {
    let Some(log) = found.log else {
        return String::new();
    };
    let level_g = modelled.hours.levels_g(log);
    let weights = found.ranking.weights();
    let entries = log.entries().iter().enumerate().take(MOST);
    let rows: String = entries
        .map(|(at, entry)| {
            let weight = weights.iter().find(|one| one.entry == at);
            let says = weight.map_or_else(
                || DOES_NOT_APPLY.to_owned(),
                |one| {
                    let sign = if 0.0 <= one.log { '\u{d7}' } else { '\u{f7}' };
                    format!("{sign}{}", times(one.times, modelled.style))
                },
            );
            row(modelled, &level_g, entry, &says)
        })
        .collect();
    let more = log.entries().len().saturating_sub(MOST);
    let more = if 0 < more {
        element("p", "", &format!("{more} more are not listed."))
    } else {
        String::new()
    };
    let against = against(found);
    let unit = match modelled.style.units {
        Units::Si => "\u{b0}C",
        Units::InchPound => "\u{b0}F",
    };
    format!(
        "<table class=\"dw-table\"><caption class=\"dw-spoken\">The log over what was modelled</caption><thead><tr><th scope=\"col\">When</th><th scope=\"col\">What</th><th scope=\"col\" class=\"dw-number\">Water found</th><th scope=\"col\" class=\"dw-number\">Water modelled</th><th scope=\"col\" class=\"dw-number\">Airflow, %</th><th scope=\"col\" class=\"dw-number\">Dew point, {unit}</th><th scope=\"col\" class=\"dw-number\">{against}</th></tr></thead><tbody>{rows}</tbody></table>{more}"
    )
}

fn against(found: &Found<'_>) -> String {
    let mut causes = found.ranking.causes.iter();
    match (causes.next(), causes.next()) {
        (Some(first), Some(second)) => format!(
            "Says for {} against {}",
            first.cause.name().to_ascii_lowercase(),
            second.cause.name().to_ascii_lowercase()
        ),
        _ => String::new(),
    }
}

fn row(modelled: &Modelled<'_>, level_g: &[f64], entry: &Entry, says: &str) -> String {
    let hour = modelled.hours.place(entry.at_s);
    let at = |values: &[f64]| hour.and_then(|hour| values.get(hour).copied());
    let none = || DOES_NOT_APPLY.to_owned();
    let mark = modelled.style.mark;
    let dew_point = at(modelled.dew_point_c).filter(|one| one.is_finite());
    let dew_point = dew_point.map(|celsius| match modelled.style.units {
        Units::Si => celsius,
        Units::InchPound => 1.8 * celsius + 32.0,
    });
    let cells = [
        entry.grams.map(|grams| volume(grams, modelled.style)),
        at(level_g).map(|grams| volume(grams, modelled.style)),
        at(&modelled.hours.reading).map(|part| fixed(100.0 * part, 0, mark)),
        dew_point.map(|value| fixed(value, 1, mark)),
        Some(says.to_owned()),
    ];
    let cells: String = cells
        .into_iter()
        .map(|cell| element("td", " class=\"dw-number\"", &cell.unwrap_or_else(none)))
        .collect();
    let when = element("th", " scope=\"row\"", &when(entry));
    format!(
        "<tr>{when}{}{cells}</tr>",
        element("td", "", entry.kind.name())
    )
}

/// "16 Jun 2026, 04:10", or the day alone.
fn when(entry: &Entry) -> String {
    let Some(civil) = Civil::of(entry.at_s) else {
        return String::new();
    };
    let day = format!("{} {} {}", civil.day, short(civil.month, 3), civil.year);
    if entry.is_day_only() {
        day
    } else {
        format!("{day}, {:02}:{:02}", civil.hour, civil.minute)
    }
}
