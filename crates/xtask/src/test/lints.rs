//! Formatting and clippy, on this machine and for the browser.

use xshell::cmd;

use super::native::NOT_NATIVE;
use super::report::Report;
use crate::setup::{WASM, wasm_target};
use crate::workspace::Workspace;

pub(super) fn run(workspace: &Workspace, report: &mut Report) {
    report.step("formatting", || {
        let shell = workspace.shell()?;
        Ok(cmd!(shell, "cargo fmt --all --check").run()?)
    });
    report.step("clippy", || {
        let shell = workspace.shell()?;
        Ok(cmd!(
            shell,
            "cargo clippy --keep-going --workspace {NOT_NATIVE...} --all-targets -- -D warnings"
        )
        .run()?)
    });
    report.step("clippy for the browser", || {
        let shell = workspace.shell()?;
        wasm_target(&shell)?;
        Ok(cmd!(
            shell,
            "cargo clippy --keep-going --package dewrun-web --target {WASM} --all-targets -- -D warnings"
        )
        .run()?)
    });
}
