//! Friction factors, pipe losses and the ends of a pool against the library `fluids`.
//!
//! The rows are `tests/cases/friction_losses.csv`, written by `tests/generate/friction_losses.py`:
//! `FRI` Reynolds number, roughness over bore; `END` free share; `PIP` flow [L/min], bore (m), length (m) in air of 1.2 kg/m3 and 18.2 µPa s.

use std::fs;
use std::path::Path;

use dewrun_airflow::friction::{churchill_1977, mean_speed_m_s, straight_tube_pa};
use dewrun_airflow::pool_ends_coefficient;

fn computed(id: &str, [a, b, c]: [f64; 3]) -> f64 {
    match id.get(..3) {
        Some("FRI") => churchill_1977(a, b),
        Some("END") => pool_ends_coefficient(c),
        Some("PIP") => {
            let speed = mean_speed_m_s(a / 60_000.0, b);
            let factor = churchill_1977(1.2 * speed * b / 1.82e-5, 1.5e-6 / b);
            straight_tube_pa(factor, c, b, 1.2, speed)
        }
        _ => panic!("{id} is of no kind known here"),
    }
}

#[test]
fn every_row_is_met() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("cases/friction_losses.csv");
    let text = fs::read_to_string(path).expect("the rows are committed");
    let mut count = 0;
    for line in text.lines().skip(1) {
        let fields: Vec<&str> = line.split(',').collect();
        let [id, _source, a, b, c, expected, tolerance, kind, _why] = fields.as_slice() else {
            panic!("a row has nine fields: {line}");
        };
        let number = |text: &str| -> f64 {
            text.parse()
                .unwrap_or_else(|_| panic!("a number in {line}"))
        };
        let given = [a, b, c].map(|text| {
            if text.is_empty() {
                f64::NAN
            } else {
                number(text)
            }
        });
        let (got, expected) = (computed(id, given), number(expected));
        let allowed = match *kind {
            "relative" => number(tolerance) * expected.abs(),
            "absolute" => number(tolerance),
            _ => panic!("a tolerance of a known kind: {line}"),
        };
        assert!(
            (got - expected).abs() <= allowed,
            "{id} got {got} expected {expected}"
        );
        count += 1;
    }
    assert!(200 <= count, "only {count} rows");
}
