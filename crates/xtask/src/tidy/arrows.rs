//! Crates depend on each other in one direction only, along the arrows drawn here and in `DEVELOPERS.md`.

use cargo_metadata::{DependencyKind, Metadata};

/// What each crate of ours may depend on; `ANY` may depend on all.
const ARROWS: &[(&str, &[&str])] = &[
    ("quantity", &[]),
    ("numeric", &[]),
    ("moist-air", &["quantity", "numeric"]),
    ("tube", &["moist-air", "quantity", "numeric"]),
    ("water", &["moist-air", "quantity", "numeric"]),
    ("airflow", &["moist-air", "quantity", "numeric"]),
    ("weather", &["moist-air", "quantity", "numeric"]),
    ("duct-air", &["moist-air", "quantity", "numeric"]),
    (
        "run",
        &[
            "tube",
            "water",
            "airflow",
            "weather",
            "moist-air",
            "quantity",
            "numeric",
        ],
    ),
    (
        "year",
        &[
            "run",
            "tube",
            "water",
            "airflow",
            "weather",
            "moist-air",
            "quantity",
            "numeric",
        ],
    ),
    (
        "season",
        &[
            "year",
            "duct-air",
            "run",
            "weather",
            "moist-air",
            "quantity",
            "numeric",
        ],
    ),
    ("advice", &["run", "quantity", "numeric"]),
    (
        "ensemble",
        &["season", "advice", "run", "weather", "quantity", "numeric"],
    ),
    (
        "remedies",
        &[
            "ensemble",
            "season",
            "advice",
            "run",
            "tube",
            "moist-air",
            "quantity",
            "numeric",
        ],
    ),
    (
        "troubles",
        &[
            "ensemble", "advice", "run", "weather", "quantity", "numeric",
        ],
    ),
    (
        "document",
        &[
            "remedies", "ensemble", "season", "run", "advice", "troubles", "weather", "quantity",
        ],
    ),
    (
        "drawing",
        &[
            "remedies", "ensemble", "season", "run", "advice", "troubles", "weather", "quantity",
        ],
    ),
    (
        "desk",
        &[
            "document", "drawing", "run", "advice", "troubles", "weather", "quantity",
        ],
    ),
    (
        "sheet",
        &["document", "drawing", "season", "run", "advice", "quantity"],
    ),
    (
        "workshop",
        &[
            "sheet", "desk", "document", "drawing", "run", "advice", "troubles", "weather",
            "quantity",
        ],
    ),
    (
        "almanac",
        &[
            "sheet",
            "remedies",
            "desk",
            "document",
            "drawing",
            "ensemble",
            "season",
            "run",
            "advice",
            "troubles",
            "weather",
            "moist-air",
            "quantity",
        ],
    ),
    ("cli", FRONT_END),
    (
        "web",
        &[
            "desk", "document", "drawing", "run", "advice", "troubles", "weather", "quantity",
        ],
    ),
    ("wasm-tools", &[]),
];
const FRONT_END: &[&str] = &[
    "remedies", "ensemble", "season", "sheet", "document", "drawing", "run", "advice", "troubles",
    "weather", "quantity",
];
/// These test and build the others, so they may see everything.
const ANY: &[&str] = &["tests", "bench-page", "same-bits", "xtask"];
/// Only documents that cross a boundary are read and written by these.
const DOCUMENTS_ONLY: &[&str] = &["serde", "serde_json", "schemars", "toml"];
const DOCUMENT: &str = "document";
const PREFIX: &str = "dewrun-";

/// A crate of ours and what it depends on when it is built, by package name.
pub(super) struct Crate {
    name: String,
    needs: Vec<String>,
}

/// The crates of the workspace. What only their tests use is left out: it reaches no user.
pub(super) fn crates(metadata: &Metadata) -> Vec<Crate> {
    let of_package = |package: &&cargo_metadata::Package| Crate {
        name: package.name.to_string(),
        needs: package
            .dependencies
            .iter()
            .filter(|dependency| dependency.kind != DependencyKind::Development)
            .map(|dependency| dependency.name.clone())
            .collect(),
    };
    metadata
        .workspace_packages()
        .iter()
        .map(of_package)
        .collect()
}

pub(super) fn check(crates: &[Crate]) -> Vec<String> {
    crates.iter().flat_map(of_crate).collect()
}

fn of_crate(checked: &Crate) -> Vec<String> {
    let name = checked.name.strip_prefix(PREFIX).unwrap_or(&checked.name);
    if ANY.contains(&name) {
        return Vec::new();
    }
    let Some((_, allowed)) = ARROWS.iter().find(|(from, _)| *from == name) else {
        return vec![format!("{name}: this crate is not on the map of arrows")];
    };
    checked
        .needs
        .iter()
        .filter_map(|needed| problem(name, allowed, needed))
        .collect()
}

fn problem(name: &str, allowed: &[&str], needed: &str) -> Option<String> {
    if let Some(ours) = needed.strip_prefix(PREFIX) {
        return (!allowed.contains(&ours))
            .then(|| format!("{name} -> {ours}: no such arrow is drawn"));
    }
    let leaks = DOCUMENTS_ONLY.contains(&needed) && name != DOCUMENT;
    leaks.then(|| format!("{name} -> {needed}: only {DOCUMENT} reads and writes documents"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn problems(name: &str, needs: &[&str]) -> usize {
        let needs = needs.iter().map(ToString::to_string).collect();
        check(&[Crate {
            name: name.to_owned(),
            needs,
        }])
        .len()
    }

    #[test]
    fn drawn_arrows_pass() {
        assert_eq!(
            problems("dewrun-tube", &["dewrun-moist-air", "thiserror"]),
            0,
            "downwards"
        );
        assert_eq!(
            problems("dewrun-document", &["dewrun-run", "serde"]),
            0,
            "documents"
        );
        assert_eq!(
            problems("dewrun-tests", &["dewrun-numeric", "serde_json"]),
            0,
            "tests see all"
        );
    }

    #[test]
    fn other_arrows_are_found() {
        assert_eq!(problems("dewrun-moist-air", &["dewrun-tube"]), 1, "upwards");
        assert_eq!(
            problems("dewrun-web", &["dewrun-tube", "dewrun-numeric"]),
            2,
            "physics in the page"
        );
        assert_eq!(
            problems("dewrun-run", &["serde"]),
            1,
            "documents in the engine"
        );
        assert_eq!(
            problems("dewrun-cli", &["dewrun-web"]),
            1,
            "nothing depends on a front end"
        );
        assert_eq!(problems("dewrun-attic", &[]), 1, "a crate nobody drew");
    }

    #[test]
    fn map_has_no_circle() {
        // Each crate may only point at crates drawn above it, except that the front ends come last anyway.
        for (place, (name, allowed)) in ARROWS.iter().enumerate() {
            for target in *allowed {
                let above = ARROWS
                    .iter()
                    .take(place)
                    .any(|(earlier, _)| earlier == target);
                assert!(above, "{name} -> {target} points downwards in the list");
            }
        }
    }
}
