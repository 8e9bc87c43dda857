//! Any bytes as a project file: no panic, what is read is written and read back bit for bit, and no answer holds a number that is not finite.

#![no_main]

use dewrun_document::output::{AssessOutput, RunOutput};
use dewrun_document::{Project, Telling, answer, read, read_bytes, to_installation, to_run, write};
use libfuzzer_sys::fuzz_target;

/// Longer routes cost time and find nothing new.
const MOST_LEGS: usize = 6;

fuzz_target!(|bytes: &[u8]| {
    let Ok(project) = read_bytes(bytes) else {
        return;
    };
    let text = write(&project).expect("what was read can be written");
    let back = read(&text).expect("what was written can be read");
    assert_eq!(format!("{back:?}"), format!("{project:?}"), "bit for bit");
    for index in 0..project.runs.len() {
        evaluate(&project, index);
    }
});

fn evaluate(project: &Project, index: usize) {
    let Ok((run, names)) = to_run(project, index) else {
        return;
    };
    if MOST_LEGS < run.intake.len() + run.exhaust.len() {
        return;
    }
    let Ok(outcome) = dewrun_run::evaluate(&run) else {
        return;
    };
    let whole = to_installation(project, index).ok().and_then(|(built, assumed)| {
        let whole = dewrun_run::water_and_air(&run, &built, &outcome.value).ok()?;
        Some((whole, assumed))
    });
    let telling = Telling {
        sentence: "",
        profile: true,
        rests_on: &[],
        staying_dry: None,
        whole: whole.as_ref().map(|(whole, assumed)| (whole, assumed.as_slice())),

        doubt: None,
    };
    let run = RunOutput {
        id: String::new(),
        name: String::new(),
        steady: Some(answer(index, &run, &names, &outcome, telling)),
        year: None,
        error: None,
    };
    let answer = AssessOutput::new("", vec![run]);
    answer.to_json(true).expect("every figure is finite");
}
