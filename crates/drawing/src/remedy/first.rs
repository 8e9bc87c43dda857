//! The first remedies of the year as rows for the answer, as those of the conditions entered are.

use dewrun_quantity::Style;
use dewrun_quantity::format::fixed;
use dewrun_remedies::Left;
use dewrun_run::Run;

use super::{Shown, what};
use crate::html::{element, remedy_bar};

/// So many stand beside the answer.
const MOST: usize = 3;
/// Less than this of an hour is none.
const NO_HOURS: f64 = 0.5;

/// The first that meet the target, each with a button that has `data-cure`; in words where none does.
#[must_use]
pub fn first(
    (run, spaces): (&Run, &[String]),
    before: &Left,
    shown: &[Shown<'_>],
    style: Style,
) -> String {
    let wet = |left: &Left| left.year.as_ref().map_or(0.0, |year| year.wet_hours);
    let cures = || shown.iter().filter(|one| one.tried.is_cure).take(MOST);
    let most = cures()
        .map(|one| wet(&one.tried.left))
        .fold(wet(before), f64::max);
    let row = |(place, one): (usize, &Shown<'_>)| {
        let what = what(run, spaces, &one.tried.alterations, style);
        let bar = remedy_bar(wet(&one.tried.left), wet(before), most);
        let solid = if place == 0 { " dw-button--solid" } else { "" };
        format!(
            "<li class=\"dw-remedy\"><span class=\"dw-remedy__what\">{}</span>{bar}{}<button type=\"button\" class=\"dw-button{solid}\" data-cure=\"{}\">Apply<span class=\"dw-spoken\"> remedy {} of the year</span></button></li>",
            element("b", "", &what),
            element(
                "span",
                " class=\"dw-remedy__left\"",
                &left(before, &one.tried.left, style)
            ),
            one.number,
            place + 1,
        )
    };
    let rows: String = cures().enumerate().map(row).collect();
    if rows.is_empty() {
        return "<p class=\"dw-remedy__left\">No change of one kind, and no pair that was tried, meets the target through the year: see Remedies.</p>".to_owned();
    }
    format!("<ol class=\"dw-remedies\" aria-label=\"What to do through the year\">{rows}</ol>")
}

/// What is left of the year with it, and what was.
fn left(before: &Left, after: &Left, style: Style) -> String {
    let (Some(was), Some(is)) = (&before.year, &after.year) else {
        return String::new();
    };
    let hours = |value: f64| fixed(value + 0.0, 0, style.mark);
    let mut told = Vec::new();
    let mut pair = |words: &str, was: f64, is: f64| {
        if NO_HOURS <= was || NO_HOURS <= is {
            told.push(format!("{} {words}, not {}", hours(is), hours(was)));
        }
    };
    pair("wet hours", was.wet_hours, is.wet_hours);
    if let (Some(was), Some(is)) = (was.blind_hours, is.blind_hours) {
        pair("blind hours", was, is);
    }
    if let Some(days) = is.trap_days {
        told.push(format!("a trap fills in {} days", hours(days)));
    }
    told.join("; ")
}
