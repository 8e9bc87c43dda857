//! `cargo xtask`: builds, serves, tests and measures the project.

mod bench;
mod page;
mod peers;
mod proofs;
mod serve;
mod setup;
mod shots;
mod sizes;
mod test;
mod tidy;
mod workspace;

use std::process::ExitCode;

use anyhow::Result;
use clap::{CommandFactory, Parser};

use crate::workspace::Workspace;

/// Builds, serves, tests and measures Dewrun.
#[derive(Parser)]
#[command(bin_name = "cargo xtask", disable_help_subcommand = true)]
enum Xtask {
    /// Build the page, serve it on this machine and open the worked example
    Serve(serve::Args),
    /// Build the page into `dist`, a plain folder that any web server can serve
    Build,
    /// Run every test, or only the parts named
    Test(test::Args),
    /// Check the rules of the house: arrows between crates, licences, wording, documented physics
    Tidy,
    /// Print what a first visit loads, file by file
    Sizes(sizes::Args),
    /// Picture every section of the page at three widths, light and dark, and the printed sheet
    Shots(shots::Args),
    /// Measure the engine natively and in Chromium
    Bench(bench::Args),
    /// Compare with other libraries for moist air
    Peers,
    /// Prove something that takes long, by its name
    Proofs(proofs::Args),
    /// Finish a page that trunk has built; trunk calls this itself
    Stamp(page::StampArgs),
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            // Words only: where in this program it was noticed helps nobody who builds the page.
            eprintln!("cargo xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<()> {
    if std::env::args_os().len() < 2 {
        Xtask::command().print_help()?;
        return Ok(());
    }
    let command = Xtask::parse();
    let workspace = Workspace::find()?;
    match command {
        Xtask::Serve(args) => serve::run(&workspace, &args),
        Xtask::Build => page::run(&workspace),
        Xtask::Test(args) => test::run(&workspace, &args),
        Xtask::Tidy => tidy::run(&workspace),
        Xtask::Sizes(args) => sizes::run(&workspace, &args),
        Xtask::Shots(args) => shots::run(&workspace, &args),
        Xtask::Bench(args) => bench::run(&workspace, &args),
        Xtask::Peers => peers::run(&workspace),
        Xtask::Proofs(args) => proofs::run(&workspace, &args),
        Xtask::Stamp(args) => page::stamp(&workspace, &args),
    }
}
