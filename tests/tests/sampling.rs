//! Even points and normal quantiles against SciPy, and what even points are for: the chance of an event and the shares of a spread.
//!
//! The rows are `tests/cases/sampling.csv`, written by `tests/generate/sobol.py`.

use std::fs;
use std::path::Path;

use dewrun_numeric::{quantile, sobol};

#[test]
fn points_and_quantiles_are_those_of_scipy() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("cases/sampling.csv");
    let text = fs::read_to_string(path).expect("the rows are committed");
    let mut held = 0;
    for line in text.lines().skip(1) {
        let cells: Vec<&str> = line.split(',').collect();
        let [id, _source, what, first, second, expected, tolerance, ..] = cells.as_slice() else {
            panic!("a row has seven cells and more: {line}");
        };
        let number = |text: &str| -> f64 { text.parse().expect("a number") };
        let found = match *what {
            "point" => {
                let point = first.parse().expect("a count");
                sobol::unscrambled(point, second.parse().expect("a count"))
            }
            _ => quantile::normal(number(first)),
        };
        let off = (found - number(expected)).abs();
        assert!(off <= number(tolerance), "{id}: {found}, not {expected}");
        held += 1;
    }
    assert_eq!(held, 67, "all rows");
}
