//! The compiler's library for the browser.

use std::path::Path;

use anyhow::{Context, Result};
use xshell::{Shell, cmd};

/// The target the page is compiled for.
pub(crate) const WASM: &str = "wasm32-unknown-unknown";

/// Fetches the compiler's library for the browser when it is missing.
///
/// # Errors
/// The library is missing and `rustup` can't bring it.
pub(crate) fn wasm_target(shell: &Shell) -> Result<()> {
    let folder = cmd!(shell, "rustc --print target-libdir --target {WASM}")
        .quiet()
        .read()?;
    if Path::new(&folder).is_dir() {
        return Ok(());
    }
    cmd!(shell, "rustup target add {WASM}").run().with_context(|| {
        format!("the target {WASM} is missing and rustup could not add it: please install it and start again")
    })
}
