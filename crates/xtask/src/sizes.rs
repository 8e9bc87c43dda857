//! `cargo xtask sizes`: what a first visit loads, compressed as a good server would.

use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::{Result, ensure};

use crate::page;
use crate::workspace::Workspace;

/// The most a first visit may load, kB: the budget of the whole product.
const BUDGET_KB: f64 = 300.0;
/// Brotli's strongest setting and its usual window.
const QUALITY: u32 = 11;
const WINDOW: u32 = 22;

#[derive(clap::Args)]
pub(crate) struct Args {
    /// Fail when a first visit loads more than 300 kB
    #[arg(long)]
    check: bool,
    /// Weigh the page built last
    #[arg(long)]
    no_build: bool,
}

/// Builds the page and prints the size of each file and of them all.
pub(crate) fn run(workspace: &Workspace, args: &Args) -> Result<()> {
    if !args.no_build {
        page::build(workspace)?;
    }
    if args.check {
        check(workspace)
    } else {
        print(workspace).map(|_| ())
    }
}

/// Prints the sizes of the page built last and fails when it is over the budget.
pub(crate) fn check(workspace: &Workspace) -> Result<()> {
    let total = print(workspace)?;
    ensure!(
        total <= BUDGET_KB,
        "a first visit loads {total:.1} kB, over the budget of {BUDGET_KB} kB"
    );
    Ok(())
}

/// Prints the sizes and returns their sum, kB.
fn print(workspace: &Workspace) -> Result<f64> {
    let dist = workspace.dist();
    ensure!(
        dist.is_dir(),
        "there is no page: run `cargo xtask build` first"
    );
    let mut total = 0;
    let files = page::files_below(&dist)?;
    for file in files.into_iter().filter(|file| page::is_loaded(file)) {
        let content = fs::read(dist.join(&file))?;
        let compressed = brotli_length(&content)?;
        total += compressed;
        println!(
            "{:>9} B, {:>8} B with brotli: {}",
            content.len(),
            compressed,
            short(&file)
        );
    }
    let total = kilo(total);
    println!("figure first_load {total:.1} kB");
    Ok(total)
}

fn brotli_length(content: &[u8]) -> Result<usize> {
    let mut compressed = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut compressed, 1 << 16, QUALITY, WINDOW);
    writer.write_all(content)?;
    drop(writer);
    // A server sends a file as it is where compressing it only adds to it, as with fonts.
    Ok(compressed.len().min(content.len()))
}

/// The name without the build's folder, so that two builds compare line by line.
fn short(file: &Path) -> String {
    let mut parts = file.components();
    if 1 < parts.clone().count() {
        parts.next();
    }
    parts.as_path().display().to_string().replace('\\', "/")
}

fn kilo(bytes: usize) -> f64 {
    u32::try_from(bytes).map_or(f64::INFINITY, |bytes| f64::from(bytes) / 1000.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn repetition_compresses_and_noise_does_not_grow() {
        let plain = brotli_length(&[b'a'; 10_000]).expect("memory can be written");
        assert!(plain < 100, "ten thousand equal letters came to {plain} B");
        let one = brotli_length(b"q").expect("memory can be written");
        assert_eq!(one, 1, "a single letter is sent as it is");
    }

    #[test]
    fn names_lose_the_build() {
        assert_eq!(
            short(Path::new("abc/icons/a.svg")),
            "icons/a.svg",
            "an asset"
        );
        assert_eq!(
            short(Path::new("index.html")),
            "index.html",
            "the page itself"
        );
    }
}
