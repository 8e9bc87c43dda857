//! The one style sheet: the files of `www/styles` and each component's own, joined in order.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::workspace::Workspace;

/// These come first, in this order: they declare what the others use.
const FIRST: &[&str] = &["layers.css", "tokens.css", "base.css"];
/// These come last: paper overrules the screen.
const LAST: &[&str] = &["print.css"];

/// Joins the style sheets: first the base, then `www/styles` and the components by path, last the print rules.
///
/// # Errors
/// A sheet can't be read.
pub(crate) fn join(workspace: &Workspace) -> Result<String> {
    let mut sheets = sheets_in(&workspace.root().join("www").join("styles"))?;
    let components = sheets_in(&workspace.root().join("crates").join("web").join("src"))?;
    sheets.extend(components);
    sheets.sort_by_key(|path| rank(path));
    let mut joined = String::new();
    for path in sheets {
        let text = fs::read_to_string(&path)
            .with_context(|| format!("{} can't be read", path.display()))?;
        joined.push_str(text.trim_end());
        joined.push('\n');
    }
    Ok(joined)
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
