//! The one style sheet: the files of `www/styles` and each component's own, joined in order.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::workspace::Workspace;

/// These come first, in this order: they declare what the others use.
const FIRST: &[&str] = &["layers.css", "tokens.css", "base.css"];
/// These come last: paper overrules the screen.
const LAST: &[&str] = &["print.css"];

/// Before these a space means nothing.
const OPEN_OR_END: [char; 4] = ['{', '}', ';', ','];

/// Joins the style sheets: first the base, then `www/styles` and the components by path, last the print rules.
///
/// # Errors
/// A sheet can't be read.
pub(crate) fn join(workspace: &Workspace) -> Result<String> {
    let mut sheets = sheets_in(&workspace.root().join("www").join("styles"))?;
    let components = sheets_in(&workspace.root().join("crates").join("web").join("src"))?;
    sheets.extend(components);
    sheets.sort_by_key(|path| rank(path));
    joined(&sheets)
}

/// Joins the style sheets of what is shown once the second module is there.
///
/// # Errors
/// A sheet can't be read.
pub(crate) fn join_later(workspace: &Workspace) -> Result<String> {
    let mut sheets = Vec::new();
    for package in ["sheet", "workshop", "almanac"] {
        sheets.extend(sheets_in(&workspace.root().join("crates").join(package))?);
    }
    joined(&sheets)
}

fn joined(sheets: &[PathBuf]) -> Result<String> {
    let mut joined = String::new();
    for path in sheets {
        let text = fs::read_to_string(path)
            .with_context(|| format!("{} can't be read", path.display()))?;
        joined.push_str(text.trim_end());
        joined.push('\n');
    }
    Ok(squeezed(&joined))
}

/// The same rules without remarks and without spaces that mean nothing; what stands in quotes is kept.
fn squeezed(sheet: &str) -> String {
    let mut short = String::new();
    let mut rest = sheet;
    while let Some(sign) = rest.chars().next() {
        if let Some(after) = rest.strip_prefix("/*") {
            rest = after.split_once("*/").map_or("", |(_, after)| after);
            continue;
        }
        let length = match sign {
            '"' => rest
                .get(1..)
                .and_then(|text| text.find('"'))
                .map_or(1, |end| end + 2),
            _ => sign.len_utf8(),
        };
        let (piece, after) = rest.split_at(length);
        rest = after;
        if !sign.is_whitespace() {
            if sign == '}' && short.ends_with(';') {
                short.pop();
            }
            if OPEN_OR_END.contains(&sign) && short.ends_with(' ') {
                short.pop();
            }
            short.push_str(piece);
        } else if !short.is_empty() && !short.ends_with([' ', '{', '}', ';', ',', ':']) {
            short.push(' ');
        }
    }
    short.truncate(short.trim_end().len());
    short
}

/// Where a sheet stands; equal ranks keep the order they came in.
fn rank(path: &Path) -> usize {
    let name = path.file_name().map(|name| name.to_string_lossy());
    let place = |list: &[&str]| {
        list.iter()
            .position(|entry| name.as_deref() == Some(*entry))
    };
    if let Some(first) = place(FIRST) {
        return first;
    }
    place(LAST).map_or(FIRST.len(), |last| FIRST.len() + 1 + last)
}

/// All sheets below `folder`, sorted by path; none when there is no such folder.
fn sheets_in(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    if !folder.is_dir() {
        return Ok(found);
    }
    let mut entries = fs::read_dir(folder)?
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<std::io::Result<Vec<_>>>()?;
    entries.sort();
    for path in entries {
        if path.is_dir() {
            found.extend(sheets_in(&path)?);
        } else if path.extension().is_some_and(|extension| extension == "css") {
            found.push(path);
        }
    }
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_means_nothing_is_squeezed() {
        let sheet = "/* Tokens. */\n:root {\n  --gap: 4px;\n}\n\n.a :hover,\n.b > .c {\n  content: \", { \";\n  margin: calc(1px + 2px) auto;\n}\n@media (max-width: 600px) { .a { color: red; } }\n";
        let expected = ":root{--gap:4px}.a :hover,.b > .c{content:\", { \";margin:calc(1px + 2px) auto}@media (max-width:600px){.a{color:red}}";
        assert_eq!(
            squeezed(sheet),
            expected,
            "rules, quotes and combinators are whole"
        );
    }

    #[test]
    fn base_comes_first_and_print_last() {
        let mut paths: Vec<PathBuf> = [
            "print.css",
            "base.css",
            "leg.css",
            "tokens.css",
            "layers.css",
        ]
        .iter()
        .map(PathBuf::from)
        .collect();
        paths.sort_by_key(|path| rank(path));
        let expected: Vec<PathBuf> = [
            "layers.css",
            "tokens.css",
            "base.css",
            "leg.css",
            "print.css",
        ]
        .iter()
        .map(PathBuf::from)
        .collect();
        assert_eq!(paths, expected, "order of the joined sheet");
    }
}
