//! What files of solved cases with `in` and `expect` have in common.

use serde_json::Value;

use super::compare::{Comparison, Tolerance};
use super::inputs::Inputs;
use super::report::{Answer, FileReport, Values};

/// For reading, not for holding.
pub(super) const INFO: &str = "info";

/// Holds every case of a file by the values that its inputs give.
#[must_use]
pub fn hold(
    name: &str,
    cases: &[Value],
    tolerances: &[(&str, Tolerance)],
    values: impl Fn(&Inputs<'_>) -> Result<Values, String>,
) -> FileReport {
    hold_each(name, cases, |case| {
        let values = values(&Inputs::of(&case["in"]))?;
        answer(case, values, &[INFO], tolerances)
    })
}

/// Holds every case of a file by what it is answered.
pub(super) fn hold_each(
    name: &str,
    cases: &[Value],
    answer: impl Fn(&Value) -> Result<Answer, String>,
) -> FileReport {
    let mut report = FileReport::new(name);
    for case in cases {
        let id = case["id"].as_str().unwrap_or("a case without id");
        report.take(id, answer(case));
    }
    report
}

/// Puts the values of a case beside those expected, but for keys that are only for reading.
pub(super) fn answer(
    case: &Value,
    values: Values,
    for_reading: &[&str],
    tolerances: &[(&str, Tolerance)],
) -> Result<Answer, String> {
    let mut comparisons = Vec::new();
    for (key, expected) in case["expect"].as_object().into_iter().flatten() {
        if for_reading.contains(&key.as_str()) {
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
