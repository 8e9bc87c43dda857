//! The page in Chromium: its crate's own tests, and the built page driven from outside.

use std::fs;
use std::path::PathBuf;

use anyhow::{Result, ensure};
use xshell::cmd;

use super::report::Report;
use crate::setup::{Browser, Node, WASM, wasm_target};
use crate::workspace::Workspace;
use crate::{page, sizes};

/// What is compiled for the browser and tested in it: the page's crate, and that the engine's bits are those of this machine.
const IN_BROWSER: [(&str, &str); 2] = [
    ("dewrun-web", "crates/web"),
    ("dewrun-same-bits", "tests/same-bits"),
];

/// Tests compiled for the browser and run in it, a step for each crate.
pub(super) fn in_browser(workspace: &Workspace, report: &mut Report) {
    for (package, folder) in IN_BROWSER {
        report.step(&format!("{package} in the browser"), || {
            test_in_browser(workspace, package, folder)
        });
    }
}

fn test_in_browser(workspace: &Workspace, package: &str, folder: &str) -> Result<()> {
    let shell = workspace.shell()?;
    wasm_target(&shell)?;
    let browser = Browser::set_up(&shell)?;
    let driver = Browser::driver(&shell)?;
    cmd!(shell, "cargo build --package dewrun-wasm-tools").run()?;
    let told = workspace.root().join(folder).join("webdriver.json");
    fs::write(told, browser.capabilities())?;
    let runner = workspace.built("wasm_bindgen_test_runner");
    let targets = ["--lib", "--bins", "--tests"];
    let tests = cmd!(
        shell,
        "cargo test --no-fail-fast --package {package} --target {WASM} {targets...}"
    );
    Ok(tests
        .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", runner)
        .env("CHROMEDRIVER", driver)
        .run()?)
}

/// Builds the page, weighs it and drives it from Node.
pub(super) fn end_to_end(workspace: &Workspace, report: &mut Report) {
    report.step("page", || page::build(workspace));
    report.step("size of the page", || sizes::check(workspace));
    report.step("end to end", || drive(workspace));
}

fn drive(workspace: &Workspace) -> Result<()> {
    let shell = workspace.shell()?;
    let browser = Browser::set_up(&shell)?;
    let node = Node::set_up(workspace)?.program;
    let files = test_files(workspace)?;
    let run = cmd!(
        shell,
        "{node} --test --test-reporter=spec --test-concurrency=2 {files...}"
    );
    Ok(run
        .env("DEWRUN_XTASK", std::env::current_exe()?)
        .env("CHROMIUM", browser.program)
        .env("CHROMIUM_ARGUMENTS", Browser::arguments())
        .run()?)
}

fn test_files(workspace: &Workspace) -> Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    for entry in fs::read_dir(workspace.e2e())? {
        let path = entry?.path();
        if path.to_string_lossy().ends_with(".test.mjs") {
            files.push(path);
        }
    }
    ensure!(
        !files.is_empty(),
        "there are no tests in {}",
        workspace.e2e().display()
    );
    files.sort();
    Ok(files)
}
