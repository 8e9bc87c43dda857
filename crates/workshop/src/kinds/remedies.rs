//! Remedies of geometry, and the project with one of them made.

use dewrun_desk::{make_changes, project_text, style_of};
use dewrun_drawing::html;

use crate::asked::Asked;

/// The rows with before and after.
///
/// # Errors
/// What keeps water and air from being answered.
pub(super) fn rows(asked: &Asked<'_>) -> Result<String, String> {
    let (style, _) = style_of(asked.numbers);
    let open = &asked.open;
    open.whole().map_err(ToString::to_string)?;
    Ok(html::remedies(&open.answered.run, open.remedies(), style))
}

/// The project file with the remedy whose number, from 0, stands after the name of the kind.
///
/// # Errors
/// There is no such remedy.
pub(super) fn made(asked: &Asked<'_>) -> Result<String, String> {
    let open = &asked.open;
    let number: Option<usize> = asked.words.parse().ok();
    let remedy = number.and_then(|number| open.remedies().get(number));
    let remedy = remedy.ok_or_else(|| "there is no such remedy".to_owned())?;
    let mut project = open.answered.project.clone();
    make_changes(&mut project, &remedy.changes);
    project_text(&project)
}
