//! The fields of the installation, of the year and of the target, and the project with a text taken into one of them.

use dewrun_desk::{
    OpenProject, enter, enter_target, enter_year, entries_html, project_text, set_limits, style_of,
    target_html, year_entries_html,
};

use crate::asked::Asked;
use crate::open::Open;

/// The fields as mark-up.
pub(super) fn fields(asked: &Asked<'_>) -> String {
    let (style, _) = style_of(asked.numbers);
    entries_html(&asked.open.answered.project, style)
}

/// The project file with a text taken into a field: both stand after the name of the kind.
///
/// The field `limits` takes the two numbers after the style.
///
/// # Errors
/// What is wrong with the text; or why the run would have no answer any more, which it has now.
pub(super) fn entered(asked: &Asked<'_>) -> Result<String, String> {
    let (style, rest) = style_of(asked.numbers);
    let open = &asked.open;
    let mut project: OpenProject = open.answered.project.clone();
    match (asked.words.split_once(' '), rest) {
        (None, [low, high]) if asked.words == "limits" => set_limits(&mut project, [*low, *high])?,
        (named, _) => {
            let (name, text) = named.unwrap_or((asked.words, ""));
            enter(&mut project, name, text, style)?;
        }
    }
    let text = project_text(&project)?;
    if open.whole().is_ok() {
        let changed = Open::read(&text, project.run)?;
        changed.whole().map_err(|error| format!("{error}."))?;
    }
    Ok(text)
}

/// The fields of the year as mark-up.
pub(super) fn year_fields(asked: &Asked<'_>) -> String {
    let (style, _) = style_of(asked.numbers);
    year_entries_html(&asked.open.answered.project, style)
}

/// The project file with a text taken into a field of the year.
///
/// # Errors
/// What is wrong with the text, as a sentence.
pub(super) fn year_entered(asked: &Asked<'_>) -> Result<String, String> {
    let (style, _) = style_of(asked.numbers);
    with_entry(asked, |project, name, text| {
        enter_year(project, name, text, style)
    })
}

/// The target as mark-up.
pub(super) fn target(asked: &Asked<'_>) -> String {
    let (style, _) = style_of(asked.numbers);
    target_html(&asked.open.answered.project, style)
}

/// The project file with a text taken into a blank of the target.
///
/// # Errors
/// What is wrong with the text, as a sentence.
pub(super) fn target_entered(asked: &Asked<'_>) -> Result<String, String> {
    with_entry(asked, enter_target)
}

/// The project file with a text taken into a field: both stand after the name of the kind.
fn with_entry(
    asked: &Asked<'_>,
    enter: impl FnOnce(&mut OpenProject, &str, &str) -> Result<(), String>,
) -> Result<String, String> {
    let mut project: OpenProject = asked.open.answered.project.clone();
    let (name, text) = asked.words.split_once(' ').unwrap_or((asked.words, ""));
    enter(&mut project, name, text)?;
    project_text(&project)
}
