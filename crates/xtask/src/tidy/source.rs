//! The project's own text files, as git knows them.

use std::fs;

use anyhow::{Context, Result};
use xshell::cmd;

use crate::workspace::Workspace;

/// A text file of the project.
pub(super) struct Source {
    /// Its place below the top folder, with forward slashes.
    pub(super) path: String,
    pub(super) text: String,
}

impl Source {
    /// Whether this is Rust.
    pub(super) fn is_rust(&self) -> bool {
        self.path.ends_with(".rs")
    }

    /// The crate it belongs to, by folder.
    pub(super) fn crate_folder(&self) -> Option<&str> {
        self.path.strip_prefix("crates/")?.split('/').next()
    }
}

/// Every text file that is, or is about to be, under version control.
///
/// # Errors
/// git can't list the files.
pub(super) fn all(workspace: &Workspace) -> Result<Vec<Source>> {
    let shell = workspace.shell()?;
    let listed = cmd!(shell, "git ls-files --cached --others --exclude-standard")
        .quiet()
        .read()
        .context("git could not list the project's files")?;
    let read = |path: &str| {
        // Files that are not text, or were just removed, have no lines to check.
        let text = fs::read_to_string(workspace.root().join(path)).ok()?;
        Some(Source {
            path: path.to_owned(),
            text,
        })
    };
    Ok(listed.lines().filter_map(read).collect())
}

/// A source for the tests of the rules.
#[cfg(test)]
pub(super) fn source(path: &str, text: &str) -> Source {
    Source {
        path: path.to_owned(),
        text: text.to_owned(),
    }
}
