//! Remedies as a table for the page: what there is as drawn, what meets the target, and what does not alone.

use dewrun_quantity::Style;
use dewrun_quantity::format::{DOES_NOT_APPLY, fixed};
use dewrun_quantity::measure::WATER;
use dewrun_remedies::{Kind, Left, Tried};
use dewrun_run::Run;

use super::{failed, side_effects, what};
use crate::html::element;

/// The heads of the columns, and how each is named where rows stand under each other.
const HEADS: [&str; 8] = [
    "as entered",
    "wet hours",
    "blind hours",
    "frost hours",
    "a trap fills in days",
    "power failed",
    "side effects",
    "kind of work",
];

/// A remedy that is shown.
#[derive(Debug, Clone, Copy)]
pub struct Shown<'a> {
    /// The number by which it is applied.
    pub number: usize,
    /// The remedy.
    pub tried: &'a Tried,
    /// How the places are reached at which it is done.
    pub access: &'a str,
}

/// Rows with buttons that have `data-cure`, in the order given; those that do not do alone in a table of their own.
#[must_use]
pub fn table(
    (run, spaces): (&Run, &[String]),
    before: &Left,
    shown: &[Shown<'_>],
    style: Style,
) -> String {
    let row = |(place, one): (usize, &Shown<'_>)| {
        let tried = one.tried;
        let number = place + 1;
        let name = element("b", "", &what(run, spaces, &tried.alterations, style));
        let solid = if place == 0 { " dw-button--solid" } else { "" };
        let button = if tried.is_cure {
            format!(
                "<button type=\"button\" class=\"dw-button{solid}\" data-cure=\"{}\">Apply<span class=\"dw-spoken\"> cure {number}</span></button>",
                one.number
            )
        } else {
            String::new()
        };
        let works: Vec<&str> = tried.kinds.iter().copied().map(Kind::work_words).collect();
        let failed = tried.powered.as_ref().map(|powered| failed(powered, style));
        let told = [
            failed.unwrap_or_else(|| DOES_NOT_APPLY.to_owned()),
            side_effects(before, tried, style).join("; "),
            format!("{}; {}", works.join("; "), one.access),
        ];
        line(&name, &tried.left, &told, &button, style)
    };
    let cures = shown.iter().filter(|one| one.tried.is_cure).enumerate();
    let others = shown.iter().filter(|one| !one.tried.is_cure).enumerate();
    let none = [(); 3].map(|()| DOES_NOT_APPLY.to_owned());
    let drawn = line("as drawn", before, &none, "", style);
    let cures: String = cures.map(row).collect();
    let others: String = others.map(row).collect();
    let mut told = whole("What meets the target", &(drawn + &cures));
    if !others.is_empty() {
        let count = shown.iter().filter(|one| !one.tried.is_cure).count();
        let table = whole("What does not reach the target alone", &others);
        told.push_str(&format!(
            "<details class=\"dw-cures__alone\"><summary><b>Does not reach the target alone</b>, at any size: {count}</summary>{table}</details>"
        ));
    }
    told
}

fn whole(caption: &str, rows: &str) -> String {
    let heads: String = HEADS
        .iter()
        .map(|head| element("th", " scope=\"col\"", head))
        .collect();
    format!(
        "<table class=\"dw-table dw-cures__table\"><caption class=\"dw-spoken\">{caption}</caption><thead><tr><th scope=\"col\">what, and its smallest size</th>{heads}<td></td></tr></thead><tbody>{rows}</tbody></table>"
    )
}

fn line(name: &str, left: &Left, told: &[String; 3], button: &str, style: Style) -> String {
    let cells = figures(left, style);
    let cells = cells.iter().zip(HEADS);
    let numbers: String = cells
        .map(|(cell, head)| {
            element(
                "td",
                &format!(" class=\"dw-number\" data-head=\"{head}\""),
                cell,
            )
        })
        .collect();
    let words = told.iter().zip(HEADS.iter().skip(5));
    let words: String = words
        .map(|(cell, head)| element("td", &format!(" data-head=\"{head}\""), cell))
        .collect();
    format!("<tr><th scope=\"row\">{name}</th>{numbers}{words}<td>{button}</td></tr>")
}

/// What is left in numbers.
fn figures(left: &Left, style: Style) -> [String; 5] {
    let year = left.year.as_ref();
    let count = |value: Option<f64>| {
        value.map_or_else(
            || DOES_NOT_APPLY.to_owned(),
            |value| fixed(value + 0.0, 0, style.mark),
        )
    };
    [
        WATER.show(left.entered.forms, style).to_string(),
        count(year.map(|year| year.wet_hours)),
        count(year.and_then(|year| year.blind_hours)),
        count(year.map(|year| year.frost_hours)),
        count(year.and_then(|year| year.trap_days)),
    ]
}
