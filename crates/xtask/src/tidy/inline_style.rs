//! No style attribute in what the page shows: its content policy refuses them, though not always visibly.
//!
//! `style:property=`, `style:--name=` and `style=("property", ..)` go through the object model and are allowed.

use super::source::Source;

/// The crates whose markup ends up in the page.
const MARKUP: &[&str] = &["web", "drawing"];
const ATTRIBUTE: &str = "style=";

pub(super) fn check(source: &Source) -> Vec<String> {
    let shown = source
        .crate_folder()
        .is_some_and(|folder| MARKUP.contains(&folder));
    if !shown || !source.is_rust() {
        return Vec::new();
    }
    let lines = (1..).zip(source.text.lines());
    let offending =
        lines.filter(|(_, line)| !line.trim_start().starts_with("//") && sets_style(line));
    offending
        .map(|(number, _)| {
            format!(":{number}: a style attribute, which the content policy refuses")
        })
        .collect()
}

fn sets_style(line: &str) -> bool {
    line.match_indices(ATTRIBUTE).any(|(at, _)| {
        let (before, after) = line.split_at(at);
        let begins_a_word = before
            .chars()
            .next_back()
            .is_none_or(|last| last.is_whitespace() || last == '"');
        begins_a_word && !after.starts_with("style=(")
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tidy::source::source;

    #[test]
    fn style_attributes_are_found() {
        for line in [
            "<p style=\"color: red\">",
            "<p style=move || a()>",
            "    style={a}",
            "\"style='a'\"",
        ] {
            let found = check(&source("crates/web/src/a.rs", line));
            assert_eq!(found.len(), 1, "refused: {line}");
        }
    }

    #[test]
    fn properties_by_the_object_model_are_allowed() {
        for line in [
            "<p style:width=w>",
            "<p style:--x=x>",
            "<p style=(\"width\", w)>",
            "<p data-style=\"a\">",
        ] {
            let found = check(&source("crates/web/src/a.rs", line));
            assert_eq!(found.len(), 0, "allowed: {line}");
        }
    }
}
