//! Every number of an answer names its figure, and every figure that is named has an entry.

use std::collections::BTreeSet;

use dewrun_advice::{SteadyDoubts, rests_on, staying_dry};
use dewrun_document::output::{AssessOutput, RunOutput};
use dewrun_document::{
    Telling, answer, figures, givens, read, to_installation, to_run, year_figures,
};
use dewrun_run::figure::Figure;
use serde_json::Value;

const DEMOS: [&str; 4] = [
    include_str!("../../../demo/sagging-tube.json"),
    include_str!("../../../demo/make-up-air.json"),
    include_str!("../../../demo/pool-hall-exhaust.json"),
    include_str!("../../../demo/chilled-supply.json"),
];

/// Numbers that say what document this is, and where in a text something stands.
const HEAD: [&str; 3] = ["version", "revision", "line"];

fn answered(text: &str) -> Value {
    let project = read(text).expect("an example can be read");
    let runs = (0..project.runs.len()).map(|index| {
        let (run, names) = to_run(&project, index).expect("the run is whole");
        let outcome = dewrun_run::evaluate(&run).expect("it has an answer");
        let staying = staying_dry(&run, &outcome.value).ok();
        let (installation, assumed) = to_installation(&project, index).expect("it is installed");
        let whole = dewrun_run::water_and_air(&run, &installation, &outcome.value)
            .expect("water and air have an answer");
        let mut doubts = SteadyDoubts::new(&run, &givens(&project, index), 1);
        doubts.take(8);
        let doubt = doubts.so_far();
        let telling = Telling {
            sentence: "",
            profile: true,
            rests_on: &rests_on(&run, &outcome.value, &givens(&project, index)),
            staying_dry: staying.as_ref(),
            whole: Some((&whole, &assumed)),
            doubt: doubt.as_ref(),
        };
        RunOutput {
            id: project.runs[index].id.clone(),
            name: project.runs[index].name.clone(),
            steady: Some(answer(index, &run, &names, &outcome, telling)),
            year: None,
            error: None,
        }
    });
    let output = AssessOutput::new(&project.name, runs.collect()).with_figures();
    let json = output.to_json(true).expect("it can be written");
    serde_json::from_str(&json).expect("it is JSON")
}

/// Calls `see` for each number with its path, `[]` for every entry of a list, and the figure that stands beside it.
fn numbers<'a>(
    path: &str,
    value: &'a Value,
    beside: Option<&'a str>,
    see: &mut impl FnMut(&str, Option<&str>),
) {
    match value {
        Value::Number(_) => see(path, beside),
        Value::Array(entries) => {
            for entry in entries {
                numbers(&format!("{path}[]"), entry, None, see);
            }
        }
        Value::Object(members) => {
            let figure = members.get("figure").and_then(Value::as_str);
            for (name, member) in members {
                let dot = if path.is_empty() { "" } else { "." };
                numbers(&format!("{path}{dot}{name}"), member, figure, see);
            }
        }
        _ => {}
    }
}

#[test]
fn every_number_of_an_answer_has_a_figure() {
    for text in DEMOS {
        let answer = answered(text);
        let entries = answer["figures"].as_array().expect("it has figures");
        let named: BTreeSet<&str> = entries
            .iter()
            .flat_map(|entry| entry["fields"].as_array().into_iter().flatten())
            .filter_map(Value::as_str)
            .collect();
        let ids: BTreeSet<&str> = entries
            .iter()
            .filter_map(|entry| entry["id"].as_str())
            .collect();
        let mut seen = 0;
        numbers("", &answer, None, &mut |path, beside| {
            seen += 1;
            let is_named = named.contains(path) || beside.is_some_and(|id| ids.contains(id));
            assert!(is_named || HEAD.contains(&path), "{path} has no figure");
        });
        assert!(400 < seen, "a whole answer was walked, not {seen} numbers");
    }
}

#[test]
fn no_field_is_named_for_two_figures() {
    let entries: Vec<_> = figures().into_iter().chain(year_figures()).collect();
    let mut seen = BTreeSet::new();
    for field in entries.iter().flat_map(|entry| &entry.fields) {
        assert!(seen.insert(field.clone()), "{field}");
    }
}

/// A field that no answer holds would be an old name left behind.
#[test]
fn every_field_named_is_in_the_schema() {
    let schema = dewrun_document::answer_schema();
    let entries: Vec<_> = figures().into_iter().chain(year_figures()).collect();
    for field in entries.iter().flat_map(|entry| entry.fields.clone()) {
        for part in field.split('.') {
            let name = part.trim_end_matches("[]");
            assert!(schema.contains(&format!("\"{name}\"")), "{name} of {field}");
        }
    }
}

#[test]
fn what_an_entry_follows_from_has_an_entry_too() {
    let entries: Vec<_> = figures().into_iter().chain(year_figures()).collect();
    let ids: BTreeSet<&str> = entries.iter().map(|entry| entry.id.as_str()).collect();
    for entry in &entries {
        for input in &entry.inputs {
            assert!(ids.contains(input.as_str()), "{input} of {}", entry.id);
        }
        let is_whole = entry.relation.is_empty() == entry.source.is_empty();
        assert!(is_whole, "{}: relation and source go together", entry.id);
    }
    assert!(
        ids.contains(Figure::Bore.id()),
        "down to the inputs of a run"
    );
}
