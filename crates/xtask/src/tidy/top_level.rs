//! The top folder holds what a visitor expects and nothing else.

use std::collections::BTreeSet;

const ALLOWED: &[&str] = &[
    "CHANGELOG.md",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "README.md",
    "Trunk.toml",
    "crates",
    "demo",
    "rust-toolchain.toml",
    "tests",
    "www",
];

/// Checks the first part of each path; configuration of tools may hide behind a dot.
pub(super) fn check<'a>(paths: impl Iterator<Item = &'a str>) -> Vec<String> {
    let top: BTreeSet<&str> = paths.filter_map(|path| path.split('/').next()).collect();
    let strange = top
        .into_iter()
        .filter(|name| !name.starts_with('.') && !ALLOWED.contains(name));
    strange
        .map(|name| format!("{name}: not a name of the top folder"))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strangers_are_found_once() {
        let paths = [
            "README.md",
            ".ci/run",
            "crates/a/b.rs",
            "notes/a.md",
            "notes/b.md",
            "clippy.toml",
        ];
        let found = check(paths.into_iter());
        assert_eq!(found.len(), 2, "notes and clippy.toml: {found:?}");
    }
}
