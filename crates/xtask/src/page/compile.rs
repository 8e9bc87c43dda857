//! From Rust to the two files a browser loads: the module and its script.

use std::path::Path;

use anyhow::Result;
use xshell::cmd;

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
    if let Some((node, script)) = wasm_opt(workspace) {
        // No feature flags: the module's own section says which features it uses.
        cmd!(shell, "{node} {script} -Oz {module} -o {module}").run()?;
    }
    Ok(())
}
