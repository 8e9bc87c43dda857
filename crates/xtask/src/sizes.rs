//! `cargo xtask sizes`: what a first visit loads, what the first open run and the first weather file load besides, compressed as a good server would.

use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::{Result, ensure};

use crate::page::{self, Load};
use crate::workspace::Workspace;

/// What is weighed: its figure, what loads it, and the most that it may, kB.
const BUDGETS: [(Load, &str, &str, f64); 3] = [
    (Load::First, "first_load", "a first visit", 300.0),
    (Load::Later, "later_load", "the first open run", 400.0),
    (Load::Year, "year_load", "the first weather file", 450.0),
];
/// Brotli's strongest setting and its usual window.
const QUALITY: u32 = 11;
const WINDOW: u32 = 22;

#[derive(clap::Args)]
pub(crate) struct Args {
    /// Fail when a load is over its budget
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

/// Prints the sizes of the page built last and fails when one is over its budget.
pub(crate) fn check(workspace: &Workspace) -> Result<()> {
    for (total, (.., who, budget)) in print(workspace)?.into_iter().zip(BUDGETS) {
        ensure!(
            total <= budget,
            "{who} loads {total:.1} kB, over the budget of {budget} kB"
        );
    }
    Ok(())
}

/// Prints the sizes and returns the sum of each load, kB.
fn print(workspace: &Workspace) -> Result<Vec<f64>> {
    let dist = workspace.dist();
    ensure!(
        dist.is_dir(),
        "there is no page: run `cargo xtask build` first"
    );
    let files = page::files_below(&dist)?;
    let mut totals = Vec::new();
    for (load, figure, ..) in BUDGETS {
        let mut total = 0;
        for file in files.iter().filter(|file| page::load(file) == load) {
            let content = fs::read(dist.join(file))?;
            let compressed = brotli_length(&content)?;
            total += compressed;
            println!(
                "{:>9} B, {:>8} B with brotli: {}",
                content.len(),
                compressed,
                short(file)
            );
        }
        let total = kilo(total);
        println!("figure {figure} {total:.1} kB");
        totals.push(total);
    }
    Ok(totals)
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
