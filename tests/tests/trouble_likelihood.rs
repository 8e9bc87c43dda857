//! How likely a log is, against SciPy's Poisson distribution and its root of the fit.
//!
//! The rows are `tests/cases/trouble_likelihood.csv`, written by `tests/generate/trouble_likelihood.py`.

use std::fs;
use std::path::Path;

use dewrun_troubles::{best_background_and_scale, best_scale, log_likelihood};

const HOURS: usize = 12;

fn near(got: f64, expected: f64, tolerance: f64) -> bool {
    // A background of none is found to the last bits of the share.
    (got - expected).abs() <= tolerance * expected.abs().max(1e-3)
}

#[test]
fn likelihoods_are_those_of_scipy() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("cases/trouble_likelihood.csv");
    let text = fs::read_to_string(path).expect("the rows are committed");
    let mut rows = 0;
    for line in text.lines().skip(1) {
        let fields: Vec<&str> = line.split(',').collect();
        let [_id, _source, numbers @ .., tolerance, kind, _why] = fields.as_slice() else {
            panic!("a row has more fields: {line}");
        };
        assert_eq!(*kind, "relative", "the only kind of tolerance here: {line}");
        let number = |text: &&str| -> f64 {
            let number = text.parse();
            number.unwrap_or_else(|_| panic!("a number in {line}"))
        };
        let tolerance = number(tolerance);
        let numbers: Vec<f64> = numbers.iter().map(number).collect();
        let (hazard, rest) = numbers.split_at(HOURS);
        let (events, expected) = rest.split_at(HOURS);
        let scaled = best_scale(hazard, events).expect("a hazard");
        let both = best_background_and_scale(hazard, events).expect("a hazard");
        let got = [
            log_likelihood(hazard, events),
            scaled.scale,
            scaled.log_likelihood,
            both.background,
            both.scale,
            both.log_likelihood,
        ];
        assert_eq!(got.len(), expected.len(), "as many values: {line}");
        for (got, expected) in got.into_iter().zip(expected) {
            assert!(
                near(got, *expected, tolerance),
                "{got} and {expected}: {line}"
            );
        }
        rows += 1;
    }
    assert_eq!(rows, 40, "all rows");
}
