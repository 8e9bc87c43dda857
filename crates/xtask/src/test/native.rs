//! Tests and documentation on this machine.

use xshell::cmd;

use super::report::Report;
use crate::setup::{WASM, on_path, wasm_target};
use crate::workspace::Workspace;

/// What is only ever compiled for the browser, or is somebody else's tool under our roof.
pub(super) const NOT_NATIVE: &[&str] =
    &["--exclude", "dewrun-web", "--exclude", "dewrun-wasm-tools"];

/// Unit tests, property tests, documentation examples and the reference run.
pub(super) fn tests(workspace: &Workspace, report: &mut Report) {
    report.step("tests", || {
        let shell = workspace.shell()?;
        if on_path(&["cargo-nextest"]).is_some() {
            return Ok(cmd!(shell, "cargo nextest run --workspace {NOT_NATIVE...}").run()?);
        }
        Ok(cmd!(
            shell,
            "cargo test --quiet --no-fail-fast --workspace {NOT_NATIVE...} --lib --bins --tests"
        )
        .run()?)
    });
    report.step("documentation examples", || {
        let shell = workspace.shell()?;
        Ok(cmd!(
            shell,
            "cargo test --quiet --no-fail-fast --workspace {NOT_NATIVE...} --doc"
        )
        .run()?)
    });
    report.step("reference run", || {
        let shell = workspace.shell()?;
        Ok(cmd!(
            shell,
            "cargo test --release --package dewrun-tests --test reference"
        )
        .run()?)
    });
}

/// The documentation, with every warning an error.
pub(super) fn docs(workspace: &Workspace, report: &mut Report) {
    report.step("documentation", || {
        let shell = workspace.shell()?;
        let doc = cmd!(
            shell,
            "cargo doc --workspace {NOT_NATIVE...} --no-deps --document-private-items"
        );
        Ok(doc.env("RUSTDOCFLAGS", "-D warnings").run()?)
    });
    report.step("documentation of the page", || {
        let shell = workspace.shell()?;
        wasm_target(&shell)?;
        let doc = cmd!(
            shell,
            "cargo doc --package dewrun-web --target {WASM} --no-deps --document-private-items"
        );
        Ok(doc.env("RUSTDOCFLAGS", "-D warnings").run()?)
    });
}
