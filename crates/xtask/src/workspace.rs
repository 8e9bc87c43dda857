//! Where the project lies and where cargo builds it.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use cargo_metadata::MetadataCommand;
use xshell::Shell;

/// The project's folders.
pub(crate) struct Workspace {
    root: PathBuf,
    target: PathBuf,
}

impl Workspace {
    /// Finds the project that this binary belongs to.
    pub(crate) fn find() -> Result<Self> {
        let own = std::env::var_os("CARGO_MANIFEST_DIR")
            .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
        let metadata = MetadataCommand::new()
            .manifest_path(own.join("Cargo.toml"))
            .no_deps()
            .exec()
            .context("cargo could not describe the workspace")?;
        Ok(Self {
            root: metadata.workspace_root.into(),
            target: metadata.target_directory.into(),
        })
    }

    /// The project's top folder.
    pub(crate) fn root(&self) -> &Path {
        &self.root
    }

    /// The folder cargo builds into.
    pub(crate) fn target(&self) -> &Path {
        &self.target
    }

    /// The finished page.
    pub(crate) fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// The tests that drive a browser from Node.
    pub(crate) fn e2e(&self) -> PathBuf {
        self.root.join("tests").join("e2e")
    }

    /// A shell that stands in the top folder.
    pub(crate) fn shell(&self) -> Result<Shell> {
        let shell = Shell::new()?;
        shell.change_dir(&self.root);
        Ok(shell)
    }

    /// A binary that cargo built with the development profile.
    pub(crate) fn built(&self, name: &str) -> PathBuf {
        let file = format!("{name}{}", std::env::consts::EXE_SUFFIX);
        self.target.join("debug").join(file)
    }
}
