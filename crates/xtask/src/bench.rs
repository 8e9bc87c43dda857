//! `cargo xtask bench`: measures the engine, natively by criterion and in Chromium by a page of its own.

mod browser;
mod native;

use anyhow::Result;

use crate::workspace::Workspace;

/// Where to measure.
#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum Place {
    /// On this machine
    Native,
    /// In Chromium
    Wasm,
}

#[derive(clap::Args)]
pub(crate) struct Args {
    /// Where to measure; in both places when none is named
    places: Vec<Place>,
}

/// Measures and prints lines `figure NAME VALUE UNIT`.
///
/// # Errors
/// A bench doesn't build or run.
pub(crate) fn run(workspace: &Workspace, args: &Args) -> Result<()> {
    let asked = |place| args.places.is_empty() || args.places.contains(&place);
    if asked(Place::Native) {
        native::run(workspace)?;
    }
    if asked(Place::Wasm) {
        browser::run(workspace)?;
    }
    Ok(())
}
