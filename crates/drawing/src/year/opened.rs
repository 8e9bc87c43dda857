//! A figure of the year opened: its value, how it follows from what, where that holds, who found it, and what it follows from.

use dewrun_quantity::format;

use super::Year;
use super::calendar::{in_hours, rate};
use super::sentence::litres;
use super::totals::Totals;
use crate::html::element;
use crate::svg::escaped;
use crate::wording::capital;

/// What a figure is and follows from, in words.
#[derive(Debug, Clone, Copy)]
pub struct Inputs<'a> {
    /// The name by which it is asked for.
    pub id: &'a str,
    /// What people call it.
    pub name: &'a str,
    /// How it follows from what.
    pub relation: &'a str,
    /// Where that holds.
    pub holds: &'a str,
    /// Who found it.
    pub source: &'a str,
    /// The figures that it follows from, as HTML that opens each.
    pub inputs: &'a [String],
}

/// The figure in its panel; the button that closes it carries `data-do="close"`.
#[must_use]
pub fn opened(year: &Year, figure: Inputs<'_>) -> String {
    let value = value(year, figure.id);
    let part = |name: &str, text: &str| {
        element("p", " class=\"dw-opened__part\"", name) + &element("p", "", text)
    };
    let head = [
        format!(
            "<p class=\"dw-opened__value\" tabindex=\"-1\"><b>{}</b></p>",
            escaped(&value)
        ),
        element("p", "", &capital(figure.name)),
        part("Relation", &capital(figure.relation)),
        part("Holds for", figure.holds),
        part("Source", figure.source),
    ];
    let inputs: String = figure
        .inputs
        .iter()
        .map(|input| format!("<li>{input}</li>"))
        .collect();
    let inputs = if inputs.is_empty() {
        "<p>Counted in the hours themselves.</p>".to_owned()
    } else {
        format!(
            "<ul>{inputs}</ul><p class=\"dw-opened__note\">Each opens in the same way; its values are those of the hour that the route shows.</p>"
        )
    };
    format!(
        "<div class=\"dw-opened__head\">{}</div><div class=\"dw-opened__body\"><p class=\"dw-opened__part\">Follows from</p>{inputs}<p class=\"dw-opened__acts\"><button type=\"button\" class=\"dw-button\" data-do=\"close\">Close</button></p></div>",
        head.concat()
    )
}

/// What the figure is in this year; a dash where the page shows none.
fn value(year: &Year, id: &str) -> String {
    let totals = Totals::of(year.steps.iter());
    match id {
        "year-hours" => in_hours(totals.hours, year),
        "year-wet-hours" => in_hours(totals.wet_h, year),
        "year-water" => format!("{}\u{a0}L", litres(year, totals.formed_g)),
        "year-mist" => in_hours(totals.mist_h, year),
        "year-frost" => in_hours(totals.frost_h, year),
        "year-chamber" => in_hours(totals.over_h, year),
        "year-design" => {
            let wettest = year.wettest().and_then(|at| year.steps.get(at));
            wettest.map_or_else(none, |step| rate(year, step))
        }
        "year-standing" => {
            let levels = year.standing.iter().flat_map(|one| &one.level_l);
            let most = levels.copied().fold(0.0, f64::max);
            format!("{}\u{a0}L", format::amount(most, 2, year.style.mark))
        }
        "year-troubles" => in_hours(totals.blind_h, year),
        _ => none(),
    }
}

fn none() -> String {
    format::DOES_NOT_APPLY.to_owned()
}

/// Words that open a figure of the year; the page listens for `data-year-figure`.
pub(super) fn opens(id: &str, words: &str) -> String {
    format!(
        "<button type=\"button\" class=\"dw-opens\" data-year-figure=\"{id}\" aria-expanded=\"false\">{}</button>",
        escaped(words)
    )
}
