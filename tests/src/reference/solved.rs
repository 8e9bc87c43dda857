//! What files of solved cases with `in` and `expect` have in common.

use serde_json::Value;

use super::compare::{Comparison, Tolerance};
use super::inputs::Inputs;
use super::report::{Answer, FileReport, Values};

/// For reading, not for holding.
const INFO: &str = "info";

/// Holds every case of a file by the values that its inputs give.
#[must_use]
pub fn hold(
    name: &str,
    cases: &[Value],
    tolerances: &[(&str, Tolerance)],
    values: impl Fn(&Inputs<'_>) -> Result<Values, String>,
) -> FileReport {
    let mut report = FileReport::new(name);
    for case in cases {
        let id = case["id"].as_str().unwrap_or("a case without id");
        let values = values(&Inputs::of(&case["in"]));
        report.take(
            id,
            values.and_then(|values| answer(case, values, tolerances)),
        );
    }
    report
}

fn answer(
    case: &Value,
    values: Values,
    tolerances: &[(&str, Tolerance)],
) -> Result<Answer, String> {
    let mut comparisons = Vec::new();
    for (key, expected) in case["expect"].as_object().into_iter().flatten() {
        if key == INFO {
            continue;
        }
        let (_, tolerance) = tolerances
            .iter()
            .find(|(known, _)| known == key)
            .ok_or_else(|| format!("expects {key}, of which no tolerance is known"))?;
        comparisons.push(Comparison {
            key: key.clone(),
            got: values.get(key).cloned().unwrap_or(Value::Null),
            expected: expected.clone(),
            tolerance: *tolerance,
        });
    }
    Ok(Answer {
        values,
        comparisons,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_key_without_tolerance_is_a_miss() {
        let case = json!({"id": "A", "in": {}, "expect": {"x": 1.0, "info": {"y": 2.0}}});
        let known = [("x", Tolerance::default())];
        let held = |tolerances: &[(&str, Tolerance)]| {
            let values = |_: &Inputs<'_>| Ok(Values::from_iter([("x".to_owned(), json!(1.0))]));
            hold("a.json", std::slice::from_ref(&case), tolerances, values).all_held()
        };
        assert!(held(&known), "x is as expected, the rest is for reading");
        assert!(!held(&[]), "nobody says how near x has to be");
    }
}
