//! `cargo xtask peers`: the same million dew points by other libraries and by ours, and the same year by NumPy.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use xshell::{Shell, cmd};

use crate::setup::on_path;
use crate::workspace::Workspace;

/// Each script with our program that it compares with.
const COMPARED: [(&str, &str); 2] = [("peers.py", "dew_points"), ("year_numpy.py", "year")];

/// Runs the scripts that compare in an environment of their own; they print the figures.
///
/// # Errors
/// Python or a package can't be had, or a comparison fails.
pub(crate) fn run(workspace: &Workspace) -> Result<()> {
    let shell = workspace.shell()?;
    let generate = workspace.root().join("tests").join("generate");
    let python = environment(
        &shell,
        &workspace.target().join("peers"),
        &generate.join("requirements.txt"),
    )?;
    let programs = workspace.target().join("release").join("examples");
    for (script, example) in COMPARED {
        cmd!(
            shell,
            "cargo build --release --package dewrun-tests --example {example}"
        )
        .run()?;
        let ours = programs.join(format!("{example}{}", std::env::consts::EXE_SUFFIX));
        let script = generate.join(script);
        cmd!(shell, "{python} {script} {ours}").run()?;
    }
    Ok(())
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
