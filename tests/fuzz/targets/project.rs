//! Any bytes as a project file: no panic, what is read is written and read back bit for bit, and no answer, that of its year included, holds a number that is not finite.

#![no_main]

use dewrun_document::output::{AssessOutput, RunOutput, YearOutput};
use dewrun_document::{
    Project, Telling, YearTelling, answer, read, read_bytes, read_keeping_years, to_installation,
    to_run, to_season, write, year_answer,
};
use dewrun_season::{hours_of, year_of};
use dewrun_weather::{Reader, Understanding};
use libfuzzer_sys::fuzz_target;

/// Air of a few hours, from frost to a muggy day.
const HOURS: &str = "time,temperature (C),dew point (C),wind (m/s),global radiation (W/m2)\n\
    2001-01-01T00:00,-12.0,-13.0,1.0,0\n2001-01-01T01:00,4.0,4.0,6.0,100\n\
    2001-01-01T02:00,31.0,27.0,0.0,900\n2001-01-01T03:00,22.0,8.0,3.0,300\n";
/// Longer routes cost time and find nothing new.
const MOST_LEGS: usize = 6;

fuzz_target!(|bytes: &[u8]| {
    let Ok(project) = read_bytes(bytes) else {
        return;
    };
    let text = write(&project).expect("what was read can be written");
    let back = read(&text).expect("what was written can be read");
    assert_eq!(format!("{back:?}"), format!("{project:?}"), "bit for bit");
    let kept = read_keeping_years(&text).expect("what is read can be kept");
    assert_eq!(format!("{kept:?}"), format!("{project:?}"), "looked at or not");
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
        year: year(project, index, &run),
        error: None,
    };
    let answer = AssessOutput::new("", vec![run]);
    answer.to_json(true).expect("every figure is finite");
}

/// A few hours of a year.
fn year(project: &Project, index: usize, run: &dewrun_run::Run) -> Option<YearOutput> {
    let said = to_season(project, index).ok()?;
    let (built, _) = to_installation(project, index).ok()?;
    let mut reader = Reader::new(Understanding::default());
    reader.push(HOURS.as_bytes()).expect("it is a table");
    let weather = reader.finish().expect("it is a table").series;
    let hourly = hours_of(run, &said.season, &weather, Some(&weather)).ok()?;
    let outcome = year_of(run, &built, hourly).ok()?;
    Some(year_answer(YearTelling {
        sentence: "",
        said: &said,
        weather: said.weather.as_ref(),
        outcome: Some(&outcome),
        design: &[],
        stress: &[],
        series: true,
    }))
}
