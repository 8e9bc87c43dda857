//! From Rust to the files a browser loads: modules and their scripts.

use std::fs;
use std::path::{Path, PathBuf};
use std::thread;

use anyhow::{Result, bail};
use xshell::cmd;

use super::{script, trim};
use crate::setup::{WASM, wasm_opt, wasm_target};
use crate::workspace::Workspace;

/// What a module is compiled for: a profile of the workspace.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Made {
    /// Few bytes: optimised as a whole.
    Small,
    /// Much arithmetic, several numbers at a time: each crate is optimised by itself, for what is optimised as a whole is unrolled before its loops are looked at.
    Wide,
}

impl Made {
    const fn profile(self) -> &'static str {
        match self {
            Self::Small => "wasm-release",
            Self::Wide => "wasm-wide",
        }
    }
}

/// Compiles packages, each for what it is made, and writes module and script of each into `folder`.
///
/// Each is a build of its own: in one build a feature that one of them needs would be part of all.
/// What needs no compiler is done for one while the next is compiled.
///
/// # Errors
/// Whatever the compiler, wasm-bindgen or wasm-opt says.
pub(crate) fn compile(
    workspace: &Workspace,
    packages: &[(&str, Made)],
    folder: &Path,
) -> Result<()> {
    let shell = workspace.shell()?;
    wasm_target(&shell)?;
    cmd!(shell, "cargo build --package dewrun-wasm-tools").run()?;
    let optimizer = wasm_opt(workspace);
    thread::scope(|scope| {
        let mut finishing = Vec::new();
        for &(package, made) in packages {
            let profile = made.profile();
            cmd!(
                shell,
                "cargo build --package {package} --target {WASM} --profile {profile}"
            )
            .run()?;
            let optimizer = optimizer.as_ref();
            finishing
                .push(scope.spawn(move || finish(workspace, (package, made), folder, optimizer)));
        }
        for finished in finishing {
            let Ok(done) = finished.join() else {
                bail!("a module could not be finished");
            };
            done?;
        }
        Ok(())
    })
}

/// From what the compiler wrote to what is loaded.
fn finish(
    workspace: &Workspace,
    (package, made): (&str, Made),
    folder: &Path,
    optimizer: Option<&(PathBuf, PathBuf)>,
) -> Result<()> {
    let shell = workspace.shell()?;
    let module = workspace
        .target()
        .join(WASM)
        .join(made.profile())
        .join(format!("{package}.wasm"));
    let bindgen = workspace.built("wasm_bindgen");
    cmd!(
        shell,
        "{bindgen} --target web --no-typescript --out-dir {folder} --out-name {package} {module}"
    )
    .run()?;
    let module = folder.join(format!("{package}_bg.wasm"));
    fs::write(&module, trim::trim(&fs::read(&module)?)?)?;
    if let Some((node, script)) = optimizer {
        // No feature flags: the module's own section says which features it uses.
        // The lowest kilobyte belongs to the far end of the stack, where no pointer ever points.
        cmd!(
            shell,
            "{node} {script} --low-memory-unused --one-caller-inline-max-function-size=0 --flatten --rereloop -Oz -Oz {module} -o {module}"
        )
        .run()?;
    }
    let called = format!("./{package}_bg.js");
    let (short, renamed) = trim::shorten(&fs::read(&module)?, &called)?;
    fs::write(&module, short)?;
    let path = folder.join(format!("{package}.js"));
    let squeezed = script::squeeze(&fs::read_to_string(&path)?, &called, &renamed)?;
    Ok(fs::write(path, squeezed)?)
}
