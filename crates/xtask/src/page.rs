//! `cargo xtask build`: the release page as a plain folder.

mod assemble;
mod build_id;
mod compile;
mod module;
mod pack;
mod script;
mod styles;
mod trim;

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};

use sha2::{Digest, Sha256};
use xshell::cmd;

use crate::setup::on_path;
use crate::workspace::Workspace;

use build_id::hex;

pub(crate) use assemble::{Load, load};
pub(crate) use build_id::files_below;
pub(crate) use compile::{Made, compile};

/// The crates the page is made of, those that are loaded first before the others; their files take the same names.
const PACKAGES: [(&str, Made); 3] = [
    ("dewrun-web", Made::Small),
    (LATER, Made::Small),
    (YEAR, Made::Wide),
];
/// What is loaded once the first answer stands.
const LATER: &str = "dewrun-workshop";
/// What is loaded once a weather file is opened.
const YEAR: &str = "dewrun-almanac";

/// What Node is asked: the digest of what a script unpacks from two files.
const UNPACK: &str = "\
const fs = require('node:fs');
const [script, ...files] = process.argv.slice(1);
import('data:text/javascript,' + encodeURIComponent(fs.readFileSync(script, 'utf8'))).then(({ unpack }) => {
  const module = unpack(...files.map((file) => new Uint8Array(fs.readFileSync(file))));
  console.log(require('node:crypto').createHash('sha256').update(module).digest('hex'));
});";

/// The folder that trunk has built.
#[derive(clap::Args)]
pub(crate) struct StampArgs {
    /// Folder to finish; by default the one trunk names in TRUNK_STAGING_DIR
    folder: Option<PathBuf>,
}

/// Builds the page and says where it lies.
pub(crate) fn run(workspace: &Workspace) -> Result<()> {
    build(workspace)?;
    println!("Page built: {}", workspace.dist().display());
    Ok(())
}

/// Builds the page into `dist`, which is replaced only once the new page is whole.
pub(crate) fn build(workspace: &Workspace) -> Result<()> {
    let staging = workspace
        .root()
        .join(format!("dist.{}.new", std::process::id()));
    empty(&staging)?;
    let built = compile(workspace, &PACKAGES, &staging)
        .and_then(|()| {
            PACKAGES
                .iter()
                .try_for_each(|(name, _)| pack(workspace, &staging, name))
        })
        .and_then(|()| assemble::assemble(workspace, &staging));
    if let Err(error) = built {
        fs::remove_dir_all(&staging)?;
        return Err(error);
    }
    let dist = workspace.dist();
    if dist.exists() {
        fs::remove_dir_all(&dist).context("the old page could not be removed")?;
    }
    fs::rename(&staging, &dist).context("the new page could not be put in place")
}

/// Packs a module of the page, and sees to it that a browser gets out of it what was put in.
fn pack(workspace: &Workspace, folder: &Path, package: &str) -> Result<()> {
    let path = folder.join(format!("{package}_bg.wasm"));
    let module = fs::read(&path)?;
    let order = folder.join(format!("{package}_order.wasm"));
    let files = pack::pack(&module)?;
    fs::write(&path, files.parts)?;
    fs::write(&order, files.order)?;
    let Some(node) = on_path(&["node"]) else {
        eprintln!("Node not found: the page is built, but nothing has tried to unpack {package}.");
        return Ok(());
    };
    let shell = workspace.shell()?;
    let script = workspace.root().join("www").join("unpack.js");
    let unpacked = cmd!(shell, "{node} --eval {UNPACK} {script} {path} {order}").read()?;
    ensure!(
        unpacked == hex(&Sha256::digest(&module)),
        "{} makes another module of the packed one",
        script.display()
    );
    Ok(())
}

/// Finishes a page that trunk has built.
pub(crate) fn stamp(workspace: &Workspace, args: &StampArgs) -> Result<()> {
    let from_trunk = || std::env::var_os("TRUNK_STAGING_DIR").map(PathBuf::from);
    let folder = args.folder.clone().or_else(from_trunk);
    assemble::assemble(workspace, &folder.context("no folder is named")?)
}

/// Makes `folder`, and makes it empty.
pub(crate) fn empty(folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder)?;
    }
    Ok(fs::create_dir_all(folder)?)
}
