//! `cargo xtask peers`: the same million dew points by other libraries and by ours.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use xshell::{Shell, cmd};

use crate::setup::on_path;
use crate::workspace::Workspace;

/// Runs `tests/generate/peers.py` in an environment of its own; it prints the figures.
///
/// # Errors
/// Python or a package can't be had, or the comparison fails.
pub(crate) fn run(workspace: &Workspace) -> Result<()> {
    let shell = workspace.shell()?;
    let generate = workspace.root().join("tests").join("generate");
    let python = environment(
        &shell,
        &workspace.target().join("peers"),
        &generate.join("requirements.txt"),
    )?;
    cmd!(
        shell,
        "cargo build --release --package dewrun-tests --example dew_points"
    )
    .run()?;
    let ours = format!("dew_points{}", std::env::consts::EXE_SUFFIX);
    let ours = workspace
        .target()
        .join("release")
        .join("examples")
        .join(ours);
    let script = generate.join("peers.py");
    Ok(cmd!(shell, "{python} {script} {ours}").run()?)
}

/// A Python with exactly the packages that `requirements` pins; made anew when they change.
fn environment(shell: &Shell, folder: &Path, requirements: &Path) -> Result<PathBuf> {
    let bin = if cfg!(windows) { "Scripts" } else { "bin" };
    let python = folder.join(bin).join("python");
    let wanted = fs::read_to_string(requirements)?;
    let installed = folder.join("installed.txt");
    if fs::read_to_string(&installed).is_ok_and(|found| found == wanted) {
        return Ok(python);
    }
    let system =
        on_path(&["python3", "python"]).context("Python is missing: please install Python 3")?;
    cmd!(shell, "{system} -m venv --clear {folder}")
        .run()
        .context("Python can't make an environment: please install its module venv (Debian: python3-venv)")?;
    cmd!(
        shell,
        "{python} -m pip install --quiet --disable-pip-version-check --requirement {requirements}"
    )
    .run()?;
    fs::write(installed, wanted)?;
    Ok(python)
}
