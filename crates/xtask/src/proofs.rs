//! Long proofs, each asked for by its name.

use std::fs::{self, File};
use std::path::Path;
use std::process::{Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};
use clap::ValueEnum;
use serde_json::{Value, json};
use xshell::cmd;

use crate::workspace::Workspace;

/// Runs of the project.
const RUNS: u32 = 500;
/// Between two looks at the memory.
const LOOK: Duration = Duration::from_millis(20);

/// Which proof.
#[derive(clap::Args)]
pub(super) struct Args {
    /// Its name.
    #[arg(value_enum)]
    name: Name,
}

/// A long proof.
#[derive(Clone, Copy, ValueEnum)]
enum Name {
    /// Time and memory of 500 runs, each a year with water and airflow.
    #[value(name = "runs_500")]
    Runs500,
    /// How far 256 members settle the doubt of a year, against 4096, on three years.
    Doubt,
    /// What readings make of an ensemble: how often the truth is found, and how closely.
    Reweighting,
    /// That each remedy of a hundred random routes is the smallest of its kind, and does what it claims.
    Remedies,
    /// How often the true cause of an invented trouble log is found.
    Troubles,
}

pub(super) fn run(workspace: &Workspace, args: &Args) -> Result<()> {
    match args.name {
        Name::Runs500 => runs_500(workspace),
        Name::Doubt => example(workspace, "doubt_settles"),
        Name::Reweighting => example(workspace, "reweighting"),
        Name::Remedies => example(workspace, "remedies_smallest"),
        Name::Troubles => example(workspace, "troubles"),
    }
}

/// A proof that is a program of the tests; a picture that it makes goes into the folder of the proofs.
fn example(workspace: &Workspace, name: &str) -> Result<()> {
    let shell = workspace.shell()?;
    let folder = workspace.target().join("proofs");
    fs::create_dir_all(&folder)?;
    let picture = folder.join(format!("{name}.svg"));
    let program = ["--release", "--package", "dewrun-tests", "--example", name];
    cmd!(shell, "cargo run {program...} -- {picture}").run()?;
    Ok(())
}

/// A project of 500 runs of other lengths, answered by the command line.
fn runs_500(workspace: &Workspace) -> Result<()> {
    let shell = workspace.shell()?;
    cmd!(shell, "cargo build --release --package dewrun-cli").run()?;
    let folder = workspace.target().join("proofs/runs_500");
    fs::create_dir_all(&folder)?;
    let demo = workspace.root().join("demo");
    fs::copy(
        demo.join("gull-harbour.csv"),
        folder.join("gull-harbour.csv"),
    )?;
    let project: Value =
        serde_json::from_str(&fs::read_to_string(demo.join("gull-harbour-roof.json"))?)?;
    let path = folder.join("project.json");
    fs::write(&path, many(project, RUNS)?.to_string())?;
    let program = workspace.target().join("release/dewrun");
    let answer = folder.join("answer.json");
    let (seconds, peak_kb) = measured(&program, &path, &answer)?;
    let answer: Value = serde_json::from_str(&fs::read_to_string(&answer)?)?;
    let runs = answer["runs"].as_array().context("an answer has runs")?;
    let whole = runs.iter().filter(|run| run["year"]["whole"].is_object());
    ensure!(whole.count() == usize::try_from(RUNS)?, "a run has no year");
    println!("figure runs_500 {seconds:.1} s");
    println!("figure runs_500_memory {:.0} MB", peak_kb / 1000.0);
    Ok(())
}

/// The project with so many runs; each has a first leg of its own length.
fn many(mut project: Value, count: u32) -> Result<Value> {
    let run = project["runs"][0].clone();
    let length = "/intake/legs/0/length_m/value";
    let metres = run.pointer(length).and_then(Value::as_f64);
    let metres = metres.context("a run has a leg with a length")?;
    let runs = (0..count).map(|number| {
        let mut run = run.clone();
        run["id"] = json!(format!("run-{number}"));
        if let Some(value) = run.pointer_mut(length) {
            *value = json!(metres * (1.0 + 0.001 * f64::from(number)));
        }
        run
    });
    project["runs"] = runs.collect();
    Ok(project)
}

/// How long the command line takes, s, and the most memory that it had, kB.
fn measured(program: &Path, project: &Path, answer: &Path) -> Result<(f64, f64)> {
    let begun = Instant::now();
    let mut child = Command::new(program)
        .arg("year")
        .arg(project)
        .arg("--json")
        .stdout(Stdio::from(File::create(answer)?))
        .spawn()
        .with_context(|| format!("{} does not start", program.display()))?;
    let status = format!("/proc/{}/status", child.id());
    let mut peak_kb: f64 = 0.0;
    while child.try_wait()?.is_none() {
        if let Some(kb) = fs::read_to_string(&status).ok().as_deref().and_then(peak) {
            peak_kb = peak_kb.max(kb);
        }
        sleep(LOOK);
    }
    Ok((begun.elapsed().as_secs_f64(), peak_kb))
}

/// The most memory that a process had so far, kB, from what Linux says of it.
fn peak(status: &str) -> Option<f64> {
    let line = status
        .lines()
        .find_map(|line| line.strip_prefix("VmHWM:"))?;
    line.trim().strip_suffix("kB")?.trim().parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn memory_is_read_from_its_line() {
        let status = "Name:\tdewrun\nVmPeak:\t  99 kB\nVmHWM:\t    1234 kB\n";
        assert_eq!(peak(status), Some(1234.0), "not the address space");
        assert_eq!(peak("Name:\tdewrun\n"), None, "elsewhere it is not said");
    }

    #[test]
    fn runs_have_ids_and_lengths_of_their_own() {
        let leg = json!({ "length_m": { "value": 2.0 } });
        let project = json!({ "runs": [{ "id": "a", "intake": { "legs": [leg] } }] });
        let project = many(project, 3).expect("three runs");
        assert_eq!(project["runs"][2]["id"], "run-2", "its own id");
        let length = project["runs"][2]["intake"]["legs"][0]["length_m"]["value"].as_f64();
        assert!(
            length.is_some_and(|length| (length - 2.004).abs() < 1e-12),
            "{length:?}"
        );
    }
}
