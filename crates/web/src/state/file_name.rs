//! What the file of a project is called.

use dewrun_document::Project;

/// No name is longer, characters.
const LONGEST: usize = 60;

/// The project's name in letters and digits that every file system takes.
pub(crate) fn of(project: &Project) -> String {
    let mut name = String::new();
    for sign in project.name.chars().take(LONGEST) {
        if sign.is_alphanumeric() {
            name.extend(sign.to_lowercase());
        } else if !name.is_empty() && !name.ends_with('-') {
            name.push('-');
        }
    }
    let name = name.trim_end_matches('-');
    let name = if name.is_empty() { "project" } else { name };
    format!("{name}.json")
}
