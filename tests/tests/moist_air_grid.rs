//! Dew points of real moist air by temperature and relative humidity, and by humidity ratio, against CoolProp.
//!
//! The grid is `tests/cases/moist_air_grid.csv`, written by `tests/generate/moist_air_grid.py`; below 0.01 °C humidity is over ice and the dew point is the frost point.

use std::fs;
use std::path::Path;

use dewrun_moist_air::{Humidity, MoistAir, Over, Pair, fast, mixture};
use dewrun_quantity::{HumidityRatio, Pressure, RelativeHumidity, Temperature};

struct Row {
    id: String,
    t_c: f64,
    humidity: Humidity,
    by_ratio: bool,
    p_pa: f64,
    expected_c: f64,
    tolerance_k: f64,
}

fn rows() -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("cases/moist_air_grid.csv");
    let text = fs::read_to_string(path).expect("the grid is committed");
    text.lines().skip(1).map(row).collect()
}

fn row(line: &str) -> Row {
    let fields: Vec<&str> = line.split(',').collect();
    let [
        id,
        _source,
        t_c,
        rh_percent,
        w,
        p_pa,
        expected,
        tolerance,
        kind,
        ..,
    ] = fields.as_slice()
    else {
        panic!("a row has nine fields and a reason: {line}");
    };
    let number = |text: &str| -> f64 {
        text.parse()
            .unwrap_or_else(|_| panic!("a number in {line}"))
    };
    assert_eq!(*kind, "absolute", "the only kind of tolerance here: {line}");
    let by_ratio = rh_percent.is_empty();
    let humidity = if by_ratio {
        Humidity::Ratio(HumidityRatio::kilograms_per_kilogram(number(w)))
    } else {
        Humidity::Relative {
            value: RelativeHumidity::percent(number(rh_percent)),
            over: Over::Ice,
        }
    };
    Row {
        id: (*id).to_owned(),
        t_c: number(t_c),
        humidity,
        by_ratio,
        p_pa: number(p_pa),
        expected_c: number(expected),
        tolerance_k: number(tolerance),
    }
}

/// Frost point where that lies below the triple point, dew point elsewhere [°C].
fn dew_or_frost_point_c(row: &Row) -> f64 {
    let pair = Pair::Temperature(Temperature::celsius(row.t_c), row.humidity);
    let air = MoistAir::new(pair, Pressure::pascals(row.p_pa)).map(|air| air.value);
    let point = air.map(|air| air.frost_point().or_else(|| air.dew_point()));
    match point {
        Ok(Some(point)) => point.to_celsius(),
        Ok(None) => panic!("{} has neither dew nor frost point", row.id),
        Err(error) => panic!("{} is refused: {error}", row.id),
    }
}

/// Every row within its tolerance.
#[track_caller]
fn check(point_c: impl Fn(&Row) -> f64) {
    let rows = rows();
    let misses: Vec<String> = rows
        .iter()
        .map(|row| (row, point_c(row)))
        .filter(|(row, got)| got.is_nan() || row.tolerance_k < (got - row.expected_c).abs())
        .map(|(row, got)| format!("{} got {got:.4} expected {:.4}", row.id, row.expected_c))
        .collect();
    assert!(
        misses.is_empty(),
        "{} of {} states miss:\n{}",
        misses.len(),
        rows.len(),
        misses.join("\n")
    );
}

#[test]
fn dew_points_of_states_are_those_of_the_real_gas() {
    check(dew_or_frost_point_c);
}

#[test]
fn fast_dew_points_are_those_of_the_real_gas() {
    check(|row| {
        let point_c = match row.humidity {
            Humidity::Relative { value, .. } => {
                fast::dew_or_frost_point_c(row.t_c, value.to_fraction(), row.p_pa)
            }
            Humidity::Ratio(ratio) => {
                let x = mixture::mole_fraction(ratio.to_kilograms_per_kilogram());
                fast::dew_or_frost_point_of_c(x, row.p_pa)
            }
            _ => None,
        };
        point_c.unwrap_or(f64::NAN)
    });
}

#[test]
fn both_routes_are_there_over_the_whole_grid() {
    let rows = rows();
    let by_ratio = rows.iter().filter(|row| row.by_ratio).count();
    assert_eq!(
        2 * by_ratio,
        rows.len(),
        "as many states by humidity ratio as by relative humidity"
    );
    assert!(3000 <= rows.len(), "only {} states", rows.len());
    for (low, high) in [(-40.0, -35.0), (0.0, 0.0), (85.0, 90.0)] {
        let inside = rows
            .iter()
            .filter(|row| low <= row.t_c && row.t_c <= high)
            .count();
        assert!(0 < inside, "no states from {low} to {high} °C");
    }
}
