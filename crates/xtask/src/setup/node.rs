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
        if on_path(&["node"]).is_none() || npm().is_none() {
            install(&shell, "Node", &PACKAGES)?;
        }
        let program = on_path(&["node"])
            .context("Node is missing: please install Node 20 or newer with npm")?;
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
