//! What the file of a project is called.

use dewrun_document::Project;
use web_sys::js_sys::{JsString, RegExp};

/// No name is longer, characters.
const LONGEST: usize = 60;

/// What is neither letter nor digit of any script.
const NEITHER: &str = "[^\\p{Alphabetic}\\p{N}]+";

/// The project's name in letters and digits that every file system takes; the browser knows those of all scripts.
pub(crate) fn of(project: &Project) -> String {
    let start: String = project.name.chars().take(LONGEST).collect();
    let neither = RegExp::new(NEITHER, "gu");
    let name = JsString::from(start).replace_by_pattern(&neither, "-");
    let name = String::from(name.to_lower_case());
    let name = name.trim_matches('-');
    let name = if name.is_empty() { "project" } else { name };
    format!("{name}.json")
}
