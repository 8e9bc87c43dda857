//! Every solved steady case passes through a project file and a link unchanged, and its answer file says what was solved.

use std::fs;

use dewrun_document::output::{AssessOutput, RunOutput, SteadyOutput, TubeOutput, VerdictOutput};
use dewrun_document::{Names, Project};
use dewrun_document::{Telling, answer, from_link, read, share_link, to_run, write};
use dewrun_run::Run;
use dewrun_tests::installations::installation;
use dewrun_tests::projects::project_of;
use dewrun_tests::reference::steady::run_of;
use dewrun_tests::routes::awkward;
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

/// All bits of all numbers: -0.0 is another number than 0.0, though equal.
#[track_caller]
fn check_link(name: &str, project: &Project) {
    let back = share_link(project).and_then(|link| from_link(&format!("http://a.test/{link}")));
    let bits = back.map(|back| format!("{back:?}"));
    assert_eq!(bits, Ok(format!("{project:?}")), "{name} after its link");
}

#[test]
fn every_solved_case_is_the_same_project_after_its_link() {
    for case in &cases() {
        let project = project_of(case).unwrap_or_else(|error| panic!("{}: {error}", case["id"]));
        check_link(&project.name, &project);
    }
}

#[test]
fn every_worked_example_is_the_same_project_after_its_link() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo");
    let files = fs::read_dir(folder).expect("the examples are there");
    let mut count = 0;
    for file in files.map(|file| file.expect("the folder can be read").path()) {
        if file.extension().is_some_and(|ending| ending == "json") {
            let text = fs::read_to_string(&file).expect("it is text");
            let name = file.display().to_string();
            check_link(&name, &read(&text).expect("it is a project"));
            count += 1;
        }
    }
    assert!(3 <= count, "{count} examples");
}

/// The answer file's part for a case.
fn answer_of(case: &Value) -> Result<SteadyOutput, String> {
    let project = project_of(case)?;
    let (run, names) = to_run(&project, 0).map_err(|error| error.sentence())?;
    let outcome = dewrun_run::evaluate(&run).map_err(|error| error.to_string())?;
    let telling = Telling {
        sentence: "",
        profile: false,
        rests_on: &[],
        staying_dry: None,
        whole: None,

        doubt: None,
    };
    Ok(answer(0, &run, &names, &outcome, telling))
}

/// Expected values and tolerances: `cases/steady.json` and its README.
#[test]
fn the_answer_file_says_what_was_solved() {
    for case in cases() {
        let id = &case["id"];
        let answer = answer_of(&case).unwrap_or_else(|error| panic!("{id}: {error}"));
        let tubes: Vec<&TubeOutput> = [&answer.intake]
            .into_iter()
            .chain(&answer.exhaust)
            .collect();
        let expected = |key: &str| case["expect"][key].as_f64();
        let condensate: f64 = tubes.iter().map(|tube| tube.condensate_g_h.0).sum();
        let solved = expected("condensate_g_h").unwrap_or(f64::NAN);
        let tolerance = (0.01 * solved).max(0.02);
        assert!(
            (condensate - solved).abs() <= tolerance,
            "{id}: {condensate} g/h, solved {solved}"
        );
        let outlet = tubes
            .last()
            .map_or(f64::NAN, |tube| tube.outlet.temperature_c.0);
        let solved = expected("t_out_c").unwrap_or(f64::NAN);
        assert!(
            (outlet - solved).abs() <= 0.1,
            "{id}: {outlet} \u{b0}C, solved {solved}"
        );
        let sweat = tubes
            .iter()
            .flat_map(|tube| &tube.legs)
            .map(|leg| leg.sweat_g_h.0);
        let solved = case["expect"]["leg_sweat_g_h"]
            .as_array()
            .into_iter()
            .flatten();
        for (got, solved) in sweat.zip(solved.filter_map(Value::as_f64)) {
            let tolerance = (0.02 * solved).max(0.05);
            assert!(
                (got - solved).abs() <= tolerance,
                "{id}: sweat {got} g/h, solved {solved}"
            );
        }
        if let Some(solved) = expected("chamber_t_c") {
            let chamber = answer.chamber.temperature_c.0;
            assert!(
                (chamber - solved).abs() <= 0.1,
                "{id}: chamber {chamber} \u{b0}C, solved {solved}"
            );
        }
        let wettest = tubes
            .iter()
            .map(|tube| tube.condensate_g_h.0)
            .fold(0.0, f64::max);
        let is_wet = answer.verdict == VerdictOutput::Wet;
        assert!(
            is_wet || wettest <= 0.01,
            "{id}: {wettest} g/h in a tube is wet"
        );
    }
}

/// On awkward ground too an answer on water and air can be written: every figure of it is finite, or left out.
#[test]
fn water_and_air_of_awkward_routes_can_be_written() {
    let mut written = 0;
    for seed in 0..300 {
        let run = awkward(seed);
        let built = installation(&run, seed);
        let Ok(outcome) = dewrun_run::evaluate(&run) else {
            continue;
        };
        let Ok(whole) = dewrun_run::water_and_air(&run, &built, &outcome.value) else {
            continue;
        };
        let telling = Telling {
            sentence: "",
            profile: false,
            rests_on: &[],
            staying_dry: None,
            whole: Some((&whole, &[])),

            doubt: None,
        };
        let told = RunOutput {
            id: String::new(),
            name: String::new(),
            steady: Some(answer(0, &run, &Names::default(), &outcome, telling)),
            year: None,
            error: None,
        };
        let json = AssessOutput::new("", vec![told]).to_json(true);
        assert!(json.is_ok(), "seed {seed}: {json:?}, {whole:?}");
        written += 1;
    }
    assert!(100 < written, "{written} answers were written");
}
