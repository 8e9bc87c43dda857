//! The rows of `checks.json` that the product has to hold: by id, each computed by a function of its own.

mod adv;
mod afl;
mod air;
mod con;
mod drn;
mod exp;
mod ext;
mod flo;
mod held_wall;
mod mas;
mod prc;
mod psy;
mod trb;
mod wx;

use std::path::Path;

use serde_json::Value;

use super::compare::{Comparison, Tolerance};
use super::inputs::Inputs;
use super::report::{Answer, FileReport, Values};

/// What the product says of a row.
#[derive(Debug, Default)]
pub struct Computed {
    /// By the keys of `expected`.
    values: Values,
    /// The same values by another route, which have to hold as well: key, route, value.
    routes: Vec<(&'static str, &'static str, Value)>,
    /// Asked for in the row's `how` beside the expected values.
    also: Vec<Comparison>,
    /// Keys that the row's `how` lets go where the product measures otherwise.
    let_go: Vec<&'static str>,
}

impl Computed {
    fn of<const N: usize>(values: [(&str, Value); N]) -> Self {
        let values = values.map(|(key, value)| (key.to_owned(), value));
        Self {
            values: values.into_iter().collect(),
            ..Self::default()
        }
    }

    fn route(mut self, key: &'static str, route: &'static str, value: impl Into<Value>) -> Self {
        self.routes.push((key, route, value.into()));
        self
    }

    fn let_go(mut self, key: &'static str) -> Self {
        self.let_go.push(key);
        self
    }

    fn also(mut self, comparison: Comparison) -> Self {
        self.also.push(comparison);
        self
    }
}

/// Computes a row from its inputs.
type Compute = fn(&Inputs<'_>) -> Result<Computed, String>;

/// The rows of one group.
type Rows = &'static [(&'static str, Compute)];

const GROUPS: [Rows; 12] = [
    psy::ROWS,
    air::ROWS,
    flo::ROWS,
    afl::ROWS,
    ext::ROWS,
    mas::ROWS,
    exp::ROWS,
    con::ROWS,
    drn::ROWS,
    adv::ROWS,
    trb::ROWS,
    prc::ROWS,
];

/// Holds every row for the product against its computation, and names those that have none.
#[must_use]
pub fn hold(name: &str, rows: &[Value], folder: &Path) -> FileReport {
    let mut report = FileReport::new(name);
    for row in rows.iter().filter(|row| row["use"] == "product") {
        let id = row["id"].as_str().unwrap_or("a row without id");
        match GROUPS
            .iter()
            .flat_map(|group| group.iter())
            .find(|(known, _)| *known == id)
        {
            Some((_, compute)) => {
                report.take(
                    id,
                    compute(&Inputs::of_row(row)).map(|computed| answer(row, computed)),
                );
            }
            None => match wx::compute(id, &row["inputs"], folder) {
                Some(computed) => {
                    report.take(id, computed.map(|computed| answer(row, computed)));
                }
                None => report.skip(id),
            },
        }
    }
    report
}

/// Each expected value beside the computed one of the same key.
fn answer(row: &Value, computed: Computed) -> Answer {
    let mut comparisons = computed.also;
    for (key, route, got) in computed.routes {
        comparisons.push(Comparison {
            key: format!("{key} by {route}"),
            got,
            expected: row["expected"][key].clone(),
            tolerance: Tolerance::of_key(&row["tolerance"], key),
        });
    }
    for (key, expected) in row["expected"].as_object().into_iter().flatten() {
        if computed.let_go.contains(&key.as_str()) {
            continue;
        }
        comparisons.push(Comparison {
            key: key.clone(),
            got: computed.values.get(key).cloned().unwrap_or(Value::Null),
            expected: expected.clone(),
            tolerance: Tolerance::of_key(&row["tolerance"], key),
        });
    }
    Answer {
        values: computed.values,
        comparisons,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_key_that_is_not_computed_is_a_miss() {
        let row = json!({"expected": {"a": 1.0, "b": 2.0}, "tolerance": {"rel": 0.1}});
        let answer = answer(&row, Computed::of([("a", json!(1.0))]));
        let misses: usize = answer
            .comparisons
            .iter()
            .map(|comparison| comparison.misses().len())
            .sum();
        assert_eq!(misses, 1, "b is expected and not there");
    }
}
