//! `cargo xtask shots`: pictures of every section of the page, to look at and for the README.

use anyhow::{Result, ensure};
use xshell::cmd;

use crate::page;
use crate::setup::{Browser, Node};
use crate::workspace::Workspace;

#[derive(clap::Args)]
pub(crate) struct Args {
    /// Take the page built last
    #[arg(long)]
    no_build: bool,
    /// Only refresh the pictures that the README shows, in `demo`
    #[arg(long)]
    readme: bool,
}

/// Builds the page and pictures it in Chromium into `tests/e2e/shots`, which git ignores.
///
/// # Errors
/// The page doesn't build, or Chromium or Node are missing.
pub(crate) fn run(workspace: &Workspace, args: &Args) -> Result<()> {
    if !args.no_build {
        page::build(workspace)?;
    }
    ensure!(
        workspace.dist().is_dir(),
        "there is no page: run `cargo xtask build` first"
    );
    let shell = workspace.shell()?;
    let browser = Browser::set_up(&shell)?;
    let node = Node::set_up(workspace)?.program;
    let script = workspace.e2e().join("shots.mjs");
    let (what, folder) = if args.readme {
        ("readme", workspace.root().join("demo"))
    } else {
        ("sections", workspace.e2e().join("shots"))
    };
    Ok(cmd!(shell, "{node} {script} {what} {folder}")
        .env("DEWRUN_XTASK", std::env::current_exe()?)
        .env("CHROMIUM", browser.program)
        .env("CHROMIUM_ARGUMENTS", Browser::arguments())
        .run()?)
}
