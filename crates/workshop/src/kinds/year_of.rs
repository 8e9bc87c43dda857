//! What the worker of the section Year is told of the open run.

use dewrun_desk::{project_text, style_as_numbers, style_of};
use dewrun_quantity::format::machine;

use crate::asked::Asked;

/// What parts its fields; no text of a project holds it bare.
const FIELD: &str = "\u{1f}";

/// The project, the number of the run and the style.
///
/// # Errors
/// The project can't be written, as a sentence.
pub(super) fn told(asked: &Asked<'_>) -> Result<String, String> {
    let open = &asked.open.answered.project;
    let (style, _) = style_of(asked.numbers);
    let [units, mark] = style_as_numbers(style).map(|number| machine(number, 0));
    let run = open.run.to_string();
    Ok([project_text(open)?, run, units, mark].join(FIELD))
}
