//! From Rust to the two files a browser loads: the module and its script.

use std::fs;
use std::path::Path;

use anyhow::Result;
use xshell::cmd;

use super::{script, trim};
use crate::setup::{WASM, wasm_opt, wasm_target};
use crate::workspace::Workspace;

/// Compiles `package` with the profile `wasm-release` and writes its module and script into `folder`.
///
/// # Errors
/// Whatever the compiler, wasm-bindgen or wasm-opt says.
pub(crate) fn compile(workspace: &Workspace, package: &str, folder: &Path) -> Result<()> {
    let shell = workspace.shell()?;
    wasm_target(&shell)?;
    cmd!(shell, "cargo build --package dewrun-wasm-tools").run()?;
    cmd!(
        shell,
        "cargo build --package {package} --target {WASM} --profile wasm-release"
    )
    .run()?;
    let module = workspace
        .target()
        .join(WASM)
        .join("wasm-release")
        .join(format!("{package}.wasm"));
    let bindgen = workspace.built("wasm_bindgen");
    cmd!(
        shell,
        "{bindgen} --target web --no-typescript --out-dir {folder} --out-name {package} {module}"
    )
    .run()?;
    let module = folder.join(format!("{package}_bg.wasm"));
    fs::write(&module, trim::trim(&fs::read(&module)?)?)?;
    if let Some((node, script)) = wasm_opt(workspace) {
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
