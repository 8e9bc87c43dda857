//! Every solved steady case passes through a project file unchanged.

use std::fs;

use dewrun_document::{read, to_run, write};
use dewrun_run::Run;
use dewrun_tests::projects::project_of;
use dewrun_tests::reference::steady::run_of;
use serde_json::Value;

/// The solved cases of the repository.
fn cases() -> Vec<Value> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/cases/steady.json");
    let text = fs::read_to_string(path).expect("the solved cases are there");
    serde_json::from_str(&text).expect("they are a list")
}

/// The run after writing and reading the case as a project.
fn through_a_file(case: &Value) -> Result<Run, String> {
    let project = project_of(case)?;
    let text = write(&project).map_err(|error| error.sentence())?;
    let back = read(&text).map_err(|error| error.sentence())?;
    let (run, _) = to_run(&back, 0).map_err(|error| error.sentence())?;
    Ok(run)
}

#[test]
fn every_solved_case_is_the_same_run_after_its_file() {
    let cases = cases();
    assert_eq!(cases.len(), 92, "all solved cases");
    for case in &cases {
        assert_eq!(through_a_file(case), run_of(case), "{}", case["id"]);
    }
}
