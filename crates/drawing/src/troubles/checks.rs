//! What to look at next: the best check, what each of its outcomes would mean, and the others.

use dewrun_quantity::Style;
use dewrun_quantity::format::amount;
use dewrun_troubles::{Check, NextCheck};

use super::Found;
use super::causes::told_share;
use crate::html::element;

/// The best check and the others, each outcome with a button that has `data-check` and `data-outcome` where it can be entered.
#[must_use]
pub fn next_check(found: &Found<'_>, can_enter: bool) -> String {
    let style = found.style;
    let Some((first, others)) = found.checks.split_first() else {
        return String::new();
    };
    let settles = |one: &NextCheck| amount(one.settles, 1, style.mark);
    let all = found.checks.len();
    let lead = format!(
        "Of {all} checks this one settles most of the doubt that is left for its effort: {} of it. {}",
        settles(first),
        first.check.takes()
    );
    let others: String = others
        .iter()
        .map(|one| {
            format!(
                "<details class=\"dw-troubles__other\"><summary>{} <span class=\"dw-unit\">{}</span></summary>{}{}</details>",
                one.check.name(),
                settles(one),
                element("p", "", one.check.takes()),
                outcomes(one, can_enter, style)
            )
        })
        .collect();
    format!(
        "<p class=\"dw-troubles__check\" data-check-name=\"{}\">{}</p>{}{}<p class=\"dw-troubles__else\">Else, with what of the doubt each settles:</p>{others}",
        first.check.id(),
        first.check.name(),
        element("p", "", &lead),
        outcomes(first, can_enter, style)
    )
}

fn outcomes(one: &NextCheck, can_enter: bool, style: Style) -> String {
    let rows: String = one
        .outcomes
        .iter()
        .enumerate()
        .map(|(place, outcome)| {
            let (cause, share) = outcome.then;
            let button = if can_enter {
                format!("<td>{}</td>", seen(one.check, place, outcome.name))
            } else {
                String::new()
            };
            format!(
                "<tr><th scope=\"row\">{}</th><td class=\"dw-number\" data-head=\"expected\">{} of 100</td><td data-head=\"then\">{} <b>{}</b></td>{button}</tr>",
                outcome.name,
                told_share(100.0 * outcome.expected, style.mark),
                cause.name().to_ascii_lowercase(),
                told_share(100.0 * share, style.mark)
            )
        })
        .collect();
    format!(
        "<table class=\"dw-table dw-troubles__outcomes\"><caption class=\"dw-spoken\">{}</caption><thead><tr><th scope=\"col\">What you see</th><th scope=\"col\" class=\"dw-number\">expected</th><th scope=\"col\"{}>then</th></tr></thead><tbody>{rows}</tbody></table>",
        one.check.name(),
        if can_enter { " colspan=\"2\"" } else { "" }
    )
}

fn seen(check: Check, outcome: usize, name: &str) -> String {
    format!(
        "<button type=\"button\" class=\"dw-button\" data-check=\"{}\" data-outcome=\"{}\">Seen<span class=\"dw-spoken\">: {name}</span></button>",
        check.id(),
        outcome + 1
    )
}
