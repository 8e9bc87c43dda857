//! The reference run: every solved case and published value in one folder, held against the product.

pub mod cases;
pub mod checks;
pub mod compare;
pub mod flow;
mod front_end;
pub mod hangers;
pub mod inputs;
pub mod pools;
pub mod report;
pub mod solved;
pub mod states;
pub mod steady;
pub mod traps;
pub mod weather;
pub mod year;

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;

use report::{FileReport, Values};

/// Names the folder to read instead of `tests/cases`.
const FOLDER: &str = "DEWRUN_CASES";
/// Names a file that takes every computed value by id.
const OUT: &str = "DEWRUN_CASES_OUT";

/// Reads the folder, prints what holds and what does not, writes the values where asked to.
///
/// True where nothing was missed.
///
/// # Errors
/// A sentence where a file cannot be read or written, or is not of its form.
pub fn run() -> Result<bool, String> {
    let folder = env::var_os(FOLDER).map_or_else(
        || Path::new(env!("CARGO_MANIFEST_DIR")).join("cases"),
        PathBuf::from,
    );
    let mut reports = Vec::new();
    for name in steady_files(&folder)? {
        reports.push(steady::hold(&name, &list(&folder, &name)?));
    }
    for (name, hold) in [
        ("flow.json", flow::hold as fn(&str, &[Value]) -> FileReport),
        ("pools.json", pools::hold),
        ("hangers.json", hangers::hold),
        ("traps.json", traps::hold),
    ] {
        if folder.join(name).exists() {
            reports.push(hold(name, &list(&folder, name)?));
        } else {
            println!("{name}: absent");
        }
    }
    for (name, hold) in [
        (
            "checks.json",
            checks::hold as fn(&str, &[Value], &Path) -> FileReport,
        ),
        ("cases.json", cases::hold),
    ] {
        if folder.join(name).exists() {
            reports.push(hold(name, &list(&folder, name)?, &folder));
        } else {
            println!("{name}: absent");
        }
    }
    if folder.join("year.json").exists() {
        let cases = cases_of(&folder, "year.json")?;
        reports.push(year::hold("year.json", &folder, &cases));
    } else {
        println!("year.json: absent");
    }
    if folder.join("cases.json").exists() {
        let cases = list(&folder, "cases.json")?;
        let name = "cases.json, an endless tube through the year";
        reports.push(year::hold_endless(name, &folder, &cases));
        let name = "cases.json, a project through real years";
        reports.push(year::hold_whole(name, &folder, &cases));
    }
    for report in &reports {
        report.print();
    }
    if let Some(path) = env::var_os(OUT) {
        write(Path::new(&path), &reports)?;
    }
    Ok(reports.iter().all(FileReport::all_held))
}

/// The files of steady cases: `steady.json` and its like.
fn steady_files(folder: &Path) -> Result<Vec<String>, String> {
    let entries = fs::read_dir(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut names: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| name.starts_with("steady") && name.ends_with(".json"))
        .collect();
    names.sort();
    if names.is_empty() {
        println!("steady.json: absent");
    }
    Ok(names)
}

/// The rows of a file that is a list.
fn list(folder: &Path, name: &str) -> Result<Vec<Value>, String> {
    let text = fs::read_to_string(folder.join(name)).map_err(|error| format!("{name}: {error}"))?;
    serde_json::from_str(&text).map_err(|error| format!("{name}: {error}"))
}

/// The cases of a file that says something about itself besides.
fn cases_of(folder: &Path, name: &str) -> Result<Vec<Value>, String> {
    let text = fs::read_to_string(folder.join(name)).map_err(|error| format!("{name}: {error}"))?;
    let all: Value = serde_json::from_str(&text).map_err(|error| format!("{name}: {error}"))?;
    let cases = all["cases"].as_array();
    cases
        .cloned()
        .ok_or_else(|| format!("{name} holds no cases"))
}

/// Every computed value by id.
fn write(path: &Path, reports: &[FileReport]) -> Result<(), String> {
    let all: Values = reports
        .iter()
        .flat_map(|report| report.computed.clone())
        .collect();
    let text = serde_json::to_string_pretty(&all).map_err(|error| error.to_string())?;
    fs::write(path, text + "\n").map_err(|error| format!("{}: {error}", path.display()))
}
