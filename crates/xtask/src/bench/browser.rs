//! Benches in Chromium: a page of its own holds them, a script of the browser tests times them and the start of the product's page.

use std::fs;

use anyhow::Result;
use xshell::cmd;

use crate::page::{Made, build, compile, empty};
use crate::setup::{Browser, Node};
use crate::workspace::Workspace;

const PACKAGE: &str = "dewrun-bench-page";
/// Each figure is taken of the module that is made as that of the product is which does the work.
const MADE: [(Made, &str); 2] = [(Made::Small, "small"), (Made::Wide, "wide")];
/// The page itself shows nothing: the script loads the module where it measures.
const PAGE: &str = "<!doctype html>\n<html lang=\"en\"><title>Benches</title></html>\n";

/// Builds the page of benches, as the product's own page is built, and runs them.
pub(super) fn run(workspace: &Workspace) -> Result<()> {
    build(workspace)?;
    let shell = workspace.shell()?;
    let folder = workspace.target().join("bench-page");
    empty(&folder)?;
    for (made, name) in MADE {
        let folder = folder.join(name);
        fs::create_dir_all(&folder)?;
        compile(workspace, &[(PACKAGE, made)], &folder)?;
    }
    fs::write(folder.join("index.html"), PAGE)?;
    let browser = Browser::set_up(&shell)?;
    let node = Node::set_up(workspace)?.program;
    let script = workspace.e2e().join("bench.mjs");
    Ok(cmd!(shell, "{node} {script} {folder}")
        .env("DEWRUN_XTASK", std::env::current_exe()?)
        .env("CHROMIUM", browser.program)
        .env("CHROMIUM_ARGUMENTS", Browser::arguments())
        .run()?)
}
