//! Node and the packages of `tests/e2e`: the optimiser of the page and the browser tests.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};
use xshell::{Shell, cmd};

use super::program::{Packages, install, on_path};
use crate::workspace::Workspace;

const PACKAGES: Packages = Packages {
    apt: &["nodejs", "npm"],
    dnf: &["nodejs", "npm"],
    pacman: &["nodejs", "npm"],
    brew: &["node"],
};

/// The oldest Node that the browser tests run on.
const OLDEST: u32 = 20;

/// A Node whose packages are in place.
pub(crate) struct Node {
    pub(crate) program: PathBuf,
}

impl Node {
    /// Finds Node, or installs it, and fetches the packages of `tests/e2e`.
    ///
    /// # Errors
    /// Node or a package can't be had.
    pub(crate) fn set_up(workspace: &Workspace) -> Result<Self> {
        let shell = workspace.shell()?;
        let by_hand = format!("please install Node {OLDEST} or newer with npm");
        if on_path(&["node"]).is_none() || npm().is_none() {
            install(&shell, "Node", &PACKAGES).context(by_hand.clone())?;
        }
        let program = on_path(&["node"]).with_context(|| format!("Node is missing: {by_hand}"))?;
        let version = cmd!(shell, "{program} --version").quiet().read()?;
        ensure!(
            is_recent(&version),
            "Node {version} is too old for the browser tests: {by_hand}"
        );
        packages(workspace, &shell)?;
        Ok(Self { program })
    }
}

/// The optimiser's script and the Node that runs it, where both can be had; its absence is said in words.
pub(crate) fn wasm_opt(workspace: &Workspace) -> Option<(PathBuf, PathBuf)> {
    let without = "the page is built without wasm-opt and is about 3 % larger";
    let Some(node) = on_path(&["node"]).filter(|_| npm().is_some()) else {
        eprintln!("Node with npm not found: {without}.");
        return None;
    };
    let fetched = workspace
        .shell()
        .and_then(|shell| packages(workspace, &shell));
    if let Err(error) = fetched {
        eprintln!("Node packages not fetched: {without}.\n{error:#}");
        return None;
    }
    let script = workspace
        .e2e()
        .join("node_modules")
        .join("binaryen")
        .join("bin")
        .join("wasm-opt");
    script.is_file().then_some((node, script))
}

/// Whether `node --version` names a version that is new enough.
fn is_recent(version: &str) -> bool {
    let major = version.trim_start_matches('v').split('.').next();
    major
        .and_then(|major| major.parse().ok())
        .is_some_and(|major: u32| OLDEST <= major)
}

/// Fetches the pinned packages unless they are there already.
fn packages(workspace: &Workspace, shell: &Shell) -> Result<()> {
    let folder = workspace.e2e();
    if are_fetched(&folder) {
        return Ok(());
    }
    let npm = npm().context("npm is missing: please install it")?;
    let _there = shell.push_dir(&folder);
    cmd!(shell, "{npm} ci --ignore-scripts --no-audit --no-fund").run()?;
    ensure!(
        folder.join("node_modules").is_dir(),
        "npm left no packages in {}",
        folder.display()
    );
    // Remembered by content, since a fresh clone has arbitrary file times.
    fs::copy(folder.join("package-lock.json"), fetched_lock(&folder))?;
    Ok(())
}

fn are_fetched(folder: &Path) -> bool {
    let wanted = fs::read(folder.join("package-lock.json"));
    let fetched = fs::read(fetched_lock(folder));
    matches!((wanted, fetched), (Ok(wanted), Ok(fetched)) if wanted == fetched)
}

fn fetched_lock(folder: &Path) -> PathBuf {
    folder.join("node_modules").join(".fetched-lock.json")
}

fn npm() -> Option<PathBuf> {
    if cfg!(windows) {
        let node = on_path(&["node"])?;
        return Some(node.with_file_name("npm.cmd")).filter(|npm| npm.is_file());
    }
    on_path(&["npm"])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn old_versions_are_refused() {
        for (version, recent) in [
            ("v20.1.0", true),
            ("v100.0.0", true),
            ("v18.20.4", false),
            ("", false),
        ] {
            assert_eq!(is_recent(version), recent, "Node {version}");
        }
    }
}
