//! What is taken for granted of a year, in sentences: what nobody said, and the rows that stand in for it.

use dewrun_document::{YearAssumed, YearSaid, taken_for_granted};
use dewrun_drawing::escaped;
use dewrun_quantity::format::entered;
use dewrun_run::library;
use dewrun_season::YearOutcome;

/// All of it.
pub(crate) fn granted(said: &YearSaid, outcome: &YearOutcome) -> Vec<String> {
    let mut all = taken_for_granted(said, Some(outcome));
    all.extend(said.assumed.iter().map(assumed));
    all
}

fn assumed(one: &YearAssumed) -> String {
    let assumption = library::find(library::assumptions(), one.row).map(|row| row.name);
    let space = library::find(library::spaces(), one.row)
        .map(|row| format!("{} follows outdoors by a share of", row.name));
    let name = assumption.map(|name| format!("{name}:")).or(space);
    format!(
        "{} {}, assumed {} to {}.",
        name.unwrap_or_else(|| one.path.as_str().to_owned()),
        entered(one.value),
        entered(one.low),
        entered(one.high)
    )
}

/// The list as HTML, folded away under its count.
pub(crate) fn told(granted: &[String]) -> String {
    let items: String = granted
        .iter()
        .map(|one| format!("<li>{}</li>", escaped(one)))
        .collect();
    format!(
        "<details class=\"dw-year__notes\"><summary>Taken for granted: {}</summary><ul>{items}</ul></details>",
        granted.len()
    )
}
