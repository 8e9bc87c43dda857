//! `cargo xtask tidy`: the rules of the house that a compiler can't check.

mod arrows;
mod form;
mod inline_style;
mod licences;
mod physics_docs;
mod source;
mod top_level;
mod wording;

use anyhow::{Context, Result, bail};
use cargo_metadata::MetadataCommand;

use crate::workspace::Workspace;
use source::Source;

/// Checks every rule and prints each place that breaks one.
///
/// # Errors
/// A rule is broken, or the project can't be read.
pub(crate) fn run(workspace: &Workspace) -> Result<()> {
    let sources = source::all(workspace)?;
    let metadata = MetadataCommand::new()
        .manifest_path(workspace.root().join("Cargo.toml"))
        .exec()
        .context("cargo could not describe the workspace")?;
    let mut problems = arrows::check(&arrows::crates(&metadata));
    problems.extend(licences::check(&licences::packages(&metadata)));
    problems.extend(top_level::check(
        sources.iter().map(|source| source.path.as_str()),
    ));
    problems.extend(sources.iter().flat_map(check));
    for problem in &problems {
        println!("{problem}");
    }
    if !problems.is_empty() {
        bail!("{} place(s) break a rule of the house", problems.len());
    }
    println!(
        "tidy: {} files, {} packages",
        sources.len(),
        metadata.packages.len()
    );
    Ok(())
}

/// What one file breaks.
fn check(source: &Source) -> Vec<String> {
    [
        form::check,
        physics_docs::check,
        inline_style::check,
        wording::check,
    ]
    .iter()
    .flat_map(|rule| rule(source))
    .map(|problem| format!("{}{problem}", source.path))
    .collect()
}
