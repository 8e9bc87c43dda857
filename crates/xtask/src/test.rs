//! `cargo xtask test`: every test of the project, or the parts asked for.

mod lints;
mod native;
mod page;
mod report;

use anyhow::Result;

use crate::tidy;
use crate::workspace::Workspace;
use report::Report;

/// A part of the tests.
#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum Part {
    /// Rules of the house
    Tidy,
    /// Formatting and clippy
    Lints,
    /// Tests on this machine, documentation examples and the reference run
    Native,
    /// Documentation builds without a warning
    Docs,
    /// Tests of the page's crate in Chromium
    Web,
    /// The built page, driven in Chromium
    E2e,
}

const ALL: [Part; 6] = [
    Part::Tidy,
    Part::Lints,
    Part::Native,
    Part::Docs,
    Part::Web,
    Part::E2e,
];

#[derive(clap::Args)]
pub(crate) struct Args {
    /// Parts to run; all of them when none is named
    parts: Vec<Part>,
}

/// Runs the parts asked for, all of them whatever fails, and lists what passed and what failed.
///
/// # Errors
/// A step failed.
pub(crate) fn run(workspace: &Workspace, args: &Args) -> Result<()> {
    let mut report = Report::new();
    let parts = if args.parts.is_empty() {
        &ALL[..]
    } else {
        &args.parts
    };
    for part in parts {
        match part {
            Part::Tidy => report.step("tidy", || tidy::run(workspace)),
            Part::Lints => lints::run(workspace, &mut report),
            Part::Native => native::tests(workspace, &mut report),
            Part::Docs => native::docs(workspace, &mut report),
            Part::Web => page::in_browser(workspace, &mut report),
            Part::E2e => page::end_to_end(workspace, &mut report),
        }
    }
    report.close()
}
