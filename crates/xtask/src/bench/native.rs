//! Benches on this machine: criterion measures, we read its medians.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use serde_json::Value;
use xshell::cmd;

use crate::workspace::Workspace;

/// The figures, each with the criterion bench it comes from, its unit and how many nanoseconds that is.
const FIGURES: &[Figure] = &[
    Figure {
        name: "dew_point",
        bench: "dew_point/million",
        unit: "ns",
        in_ns: 1.0,
    },
    Figure {
        name: "steady",
        bench: "steady",
        unit: "us",
        in_ns: 1e3,
    },
    Figure {
        name: "steady_full",
        bench: "steady_full",
        unit: "ms",
        in_ns: 1e6,
    },
    Figure {
        name: "year",
        bench: "year",
        unit: "ms",
        in_ns: 1e6,
    },
    Figure {
        name: "year_full",
        bench: "year_full",
        unit: "ms",
        in_ns: 1e6,
    },
    // Beside the browser's figure, for the ratio.
    Figure {
        name: "logger_million_rows_native",
        bench: "logger_rows/million",
        unit: "s",
        in_ns: 1e9,
    },
];

struct Figure {
    name: &'static str,
    bench: &'static str,
    unit: &'static str,
    in_ns: f64,
}

/// Runs every bench of `dewrun-tests` and prints its figure.
pub(super) fn run(workspace: &Workspace) -> Result<()> {
    let shell = workspace.shell()?;
    let results = workspace.target().join("criterion");
    // What an earlier run left must not pass for a figure of this one.
    if results.exists() {
        fs::remove_dir_all(&results)?;
    }
    let times = ["--warm-up-time", "0.3", "--measurement-time", "0.7"];
    // The pattern leaves out the unit tests, which don't know criterion's options.
    cmd!(
        shell,
        "cargo bench --package dewrun-tests --bench * -- --noplot {times...}"
    )
    .env("CRITERION_HOME", &results)
    .run()?;
    for figure in FIGURES {
        let ns = median_ns(&results.join(figure.bench).join("new"))?;
        let Figure {
            name, unit, in_ns, ..
        } = figure;
        println!("figure {name} {:.3} {unit}", ns / in_ns);
    }
    // They take seconds on all threads, which criterion is not made for; they print their own figures.
    let program = ["--release", "--package", "dewrun-tests", "--example"];
    for example in ["ensemble_year", "remedies_all"] {
        cmd!(shell, "cargo run {program...} {example}").run()?;
    }
    Ok(())
}

/// The median time of one element of a bench, ns.
fn median_ns(folder: &Path) -> Result<f64> {
    let estimates = json(&folder.join("estimates.json"))?;
    let bench = json(&folder.join("benchmark.json"))?;
    one_element_ns(&estimates, &bench)
}

fn json(path: &Path) -> Result<Value> {
    let text = fs::read_to_string(path)
        .with_context(|| format!("criterion left no {}", path.display()))?;
    Ok(serde_json::from_str(&text)?)
}

/// Criterion's median is for one call; a call that handles many elements says how many.
fn one_element_ns(estimates: &Value, bench: &Value) -> Result<f64> {
    let call = estimates["median"]["point_estimate"].as_f64();
    let call = call.context("criterion's estimates hold no median")?;
    let elements = bench["throughput"]["Elements"].as_f64().unwrap_or(1.0);
    ensure!(0.0 < elements, "a bench of no elements");
    Ok(call / elements)
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn median_is_shared_by_the_elements() {
        let estimates =
            json!({ "median": { "point_estimate": 500.0 }, "mean": { "point_estimate": 1.0 } });
        let many = json!({ "throughput": { "Elements": 100 } });
        let one = json!({ "throughput": null });
        let of = |bench| one_element_ns(&estimates, &bench).expect("a median is there");
        assert!((of(many) - 5.0).abs() < 1e-12, "a hundred elements a call");
        assert!((of(one) - 500.0).abs() < 1e-12, "one call");
    }

    #[test]
    fn missing_median_is_an_error() {
        assert!(
            one_element_ns(&json!({}), &json!({})).is_err(),
            "no estimate, no figure"
        );
    }
}
