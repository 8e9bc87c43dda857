//! One state of an airflow line: as fitted, leaking, and with a wedge of water in the path.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use dewrun_airflow::airflow;
use dewrun_tests::reference::flow::{line_of, state_of};
use serde_json::Value;

/// Solved cases by name: 25 m and 25 m as fitted, leaks in both tubes, 90 mL of water between two falls.
const CASES: [(&str, &str); 3] = [
    ("airflow/as_fitted", "FO-01"),
    ("airflow/leaks", "FO-17"),
    ("airflow/wedge", "FO-20"),
];

fn states(criterion: &mut Criterion) {
    let cases: Value = serde_json::from_str(include_str!("../cases/flow.json")).expect("cases");
    for (name, id) in CASES {
        let mut all = cases.as_array().into_iter().flatten();
        let case = all
            .find(|case| case["id"] == id)
            .expect("the case is there");
        let line = line_of(&case["in"]).expect("a line");
        let state = state_of(&case["in"]).expect("a state");
        criterion.bench_function(name, |bench| {
            bench.iter(|| airflow(black_box(&line), black_box(&state)));
        });
    }
}

criterion_group!(benches, states);
criterion_main!(benches);
