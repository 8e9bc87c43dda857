//! The answers to a case of `year.json`, beside what is expected and as near as the file asks.

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::mixture::mole_fraction;
use dewrun_year::{HourSum, Hours, LegSum, March};
use serde_json::{Value, json};

use crate::reference::compare::{Comparison, Tolerance};
use crate::reference::report::{Answer, Values};

/// Days of the months of a year without a leap day.
const DAYS: [usize; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// Holds what came of a case, with hours as they come and in quarters.
pub(super) fn answer(
    case: &Value,
    hours: &Hours,
    whole: &March,
    quarters: &March,
) -> Result<Answer, String> {
    let mut comparisons = Vec::new();
    let mut values = Values::new();
    let expected = &case["expect"];
    let got = totals(whole);
    hold_totals("", &got, expected, &mut comparisons)?;
    let wettest = Comparison::number(
        "rh_out_max",
        most_humid(hours, whole),
        number(expected, "rh_out_max")?,
        Tolerance::absolute(0.002),
    );
    comparisons.push(wettest);
    hold_input(&got, expected, &mut comparisons);
    hold_legs(whole, expected, &mut comparisons);
    hold_months(whole, expected, &mut comparisons);
    for key in ["first_168_h", "wettest_168_h"] {
        hold_series(key, whole, &expected[key], &mut comparisons);
    }
    hold_balance(whole, &mut comparisons);
    values.insert("expect".to_owned(), Value::Object(got));
    let got = totals(quarters);
    hold_totals(
        "quarters ",
        &got,
        &expected["quarter_hours"],
        &mut comparisons,
    )?;
    hold_balance(quarters, &mut comparisons);
    values.insert("quarter_hours".to_owned(), Value::Object(got));
    Ok(Answer {
        values,
        comparisons,
    })
}

fn sum(march: &March, of: impl Fn(&HourSum) -> f64) -> f64 {
    march.hours().iter().map(of).sum()
}

fn count(march: &March, of: impl Fn(&HourSum) -> bool) -> usize {
    march.hours().iter().filter(|hour| of(hour)).count()
}

fn totals(march: &March) -> Values {
    let most = |of: fn(&HourSum) -> f64| march.hours().iter().map(of).fold(0.0, f64::max);
    let length = |hour: &HourSum| hour.seconds;
    let mean =
        |of: fn(&HourSum) -> f64| sum(march, |hour| of(hour) * hour.seconds) / sum(march, length);
    let coldest = march
        .hours()
        .iter()
        .map(|hour| hour.coldest_wall_c)
        .fold(f64::INFINITY, f64::min);
    let drained: Vec<f64> = by_leg(march, |leg| leg.drained_kg);
    let values = [
        ("condensed_kg", json!(sum(march, |hour| hour.condensed_kg))),
        (
            "evaporated_kg",
            json!(sum(march, |hour| hour.evaporated_kg)),
        ),
        ("drained_kg", json!(drained)),
        (
            "film_end_kg",
            json!(march.hours().last().map_or(0.0, |hour| hour.film_kg)),
        ),
        ("film_max_kg", json!(most(|hour| hour.film_kg))),
        (
            "wet_hours",
            json!(count(march, |hour| 1e-6 < hour.wettest_kg_hm)),
        ),
        (
            "wet_hours_10mg",
            json!(count(march, |hour| 1e-5 < hour.condensed_kg)),
        ),
        (
            "film_hours",
            json!(count(march, |hour| 1e-6 < hour.most_film_kg_m2)),
        ),
        ("w_out_mean", json!(mean(|hour| hour.outlet.w))),
        ("t_out_mean_c", json!(mean(|hour| hour.outlet.t_c))),
        (
            "mist_kg",
            json!(sum(march, |hour| hour.dry_air_kg * hour.outlet.mist)),
        ),
        (
            "mist_hours",
            json!(count(march, |hour| 1e-5 < hour.outlet.mist)),
        ),
        ("water_in_kg", json!(sum(march, |hour| hour.water_in_kg))),
        (
            "w_in_mean",
            json!(mean(|hour| hour.water_in_kg / hour.dry_air_kg)),
        ),
        ("dry_air_kg", json!(sum(march, |hour| hour.dry_air_kg))),
        ("coldest_wall_c", json!(coldest)),
    ];
    values
        .into_iter()
        .map(|(key, value)| (key.to_owned(), value))
        .collect()
}

fn by_leg(march: &March, of: impl Fn(&LegSum) -> f64) -> Vec<f64> {
    let mut sums = Vec::new();
    for hour in 0..march.hours().len() {
        for (position, leg) in march.legs(hour).iter().enumerate() {
            if sums.len() <= position {
                sums.push(0.0);
            }
            if let Some(sum) = sums.get_mut(position) {
                *sum += of(leg);
            }
        }
    }
    sums
}

fn hold_totals(
    prefix: &str,
    got: &Values,
    expected: &Value,
    comparisons: &mut Vec<Comparison>,
) -> Result<(), String> {
    for (key, tolerance) in [
        ("condensed_kg", Tolerance::either(0.01, 0.002)),
        ("evaporated_kg", Tolerance::either(0.01, 0.001)),
        ("film_end_kg", Tolerance::either(0.01, 0.001)),
        ("film_max_kg", Tolerance::either(0.01, 0.001)),
        ("w_out_mean", Tolerance::relative(0.001)),
        ("t_out_mean_c", Tolerance::absolute(0.05)),
        ("mist_kg", Tolerance::either(0.05, 0.001)),
    ] {
        if expected[key].is_null() {
            continue;
        }
        push(prefix, key, got, expected, tolerance, comparisons);
    }
    let condensed = expected["condensed_kg"]
        .as_f64()
        .ok_or("condensed_kg is missing")?;
    let of_total = Tolerance::absolute((0.01 * condensed).max(0.002));
    push(prefix, "drained_kg", got, expected, of_total, comparisons);
    for (key, hours, share) in [
        ("wet_hours", 2.0, 0.01),
        ("wet_hours_10mg", 2.0, 0.01),
        ("film_hours", 2.0, 0.01),
        ("mist_hours", 3.0, 0.0),
    ] {
        let count = expected[key]
            .as_f64()
            .ok_or_else(|| format!("{key} is missing"))?;
        let wider = hours + share * count;
        let band = &expected[format!("{key}_band")];
        let low = band[0].as_f64().unwrap_or(count) - wider;
        let high = band[1].as_f64().unwrap_or(count) + wider;
        let number = got[key].as_f64().unwrap_or(f64::NAN);
        let middle = Tolerance::absolute(0.5 * (high - low));
        comparisons.push(Comparison::number(
            &format!("{prefix}{key}"),
            number,
            0.5 * (low + high),
            middle,
        ));
    }
    Ok(())
}

fn push(
    prefix: &str,
    key: &str,
    got: &Values,
    expected: &Value,
    tolerance: Tolerance,
    comparisons: &mut Vec<Comparison>,
) {
    comparisons.push(Comparison {
        key: format!("{prefix}{key}"),
        got: got.get(key).cloned().unwrap_or(Value::Null),
        expected: expected[key].clone(),
        tolerance,
    });
}

fn number(expected: &Value, key: &str) -> Result<f64, String> {
    expected[key]
        .as_f64()
        .ok_or_else(|| format!("{key} is missing"))
}

/// Largest relative humidity of the air at the end.
fn most_humid(hours: &Hours, march: &March) -> f64 {
    let humid = |(at, hour): (usize, &HourSum)| {
        let p_pa = hours.hour(at).map_or(f64::NAN, |hour| hour.p_pa);
        let outlet = &hour.outlet;
        if 0.0 < outlet.mist {
            1.0
        } else {
            mole_fraction(outlet.w) / saturated_over_water(outlet.t_c, p_pa)
        }
    };
    march
        .hours()
        .iter()
        .enumerate()
        .map(humid)
        .fold(0.0, f64::max)
}

/// The reading of the input, and what only the hours as they come are told of.
fn hold_input(got: &Values, expected: &Value, comparisons: &mut Vec<Comparison>) {
    for key in ["water_in_kg", "w_in_mean", "dry_air_kg"] {
        push(
            "",
            key,
            got,
            expected,
            Tolerance::relative(0.001),
            comparisons,
        );
    }
}

fn hold_legs(march: &March, expected: &Value, comparisons: &mut Vec<Comparison>) {
    let condensed = expected["condensed_kg"].as_f64().unwrap_or(0.0);
    let of_total = Tolerance::absolute((0.01 * condensed).max(0.002));
    for (key, got) in [
        ("condensed_by_leg_kg", by_leg(march, |leg| leg.condensed_kg)),
        (
            "evaporated_by_leg_kg",
            by_leg(march, |leg| leg.evaporated_kg),
        ),
    ] {
        comparisons.push(Comparison {
            key: key.to_owned(),
            got: json!(got),
            expected: expected[key].clone(),
            tolerance: of_total,
        });
    }
}

fn hold_months(march: &March, expected: &Value, comparisons: &mut Vec<Comparison>) {
    let months = &expected["condensed_by_month_kg"];
    if months.is_null() {
        return;
    }
    let condensed = expected["condensed_kg"].as_f64().unwrap_or(0.0);
    let mut hours = march.hours().iter();
    let got: Vec<f64> = DAYS
        .iter()
        .map(|days| {
            hours
                .by_ref()
                .take(days * 24)
                .map(|hour| hour.condensed_kg)
                .sum()
        })
        .collect();
    comparisons.push(Comparison {
        key: "condensed_by_month_kg".to_owned(),
        got: json!(got),
        expected: months.clone(),
        tolerance: Tolerance::absolute((0.01 * condensed).max(0.002)),
    });
}

fn hold_series(key: &str, march: &March, expected: &Value, comparisons: &mut Vec<Comparison>) {
    let from = expected["first_hour"].as_u64().unwrap_or(0);
    let hours = || {
        march
            .hours()
            .iter()
            .skip(usize::try_from(from).unwrap_or(0))
    };
    for (name, share, of) in [
        (
            "condensed_kg",
            0.015,
            (|hour| hour.condensed_kg) as fn(&HourSum) -> f64,
        ),
        ("evaporated_kg", 0.03, |hour| hour.evaporated_kg),
        ("film_kg", 0.015, |hour| hour.film_kg),
    ] {
        let Some(list) = expected[name].as_array() else {
            continue;
        };
        let largest = list.iter().filter_map(Value::as_f64).fold(0.0, f64::max);
        let got: Vec<f64> = hours().take(list.len()).map(of).collect();
        comparisons.push(Comparison {
            key: format!("{key} {name}"),
            got: json!(got),
            expected: expected[name].clone(),
            tolerance: Tolerance::absolute(share * largest),
        });
    }
}

/// What enters is what leaves, runs off and stays, each hour and in all.
fn hold_balance(march: &March, comparisons: &mut Vec<Comparison>) {
    let mut film = 0.0;
    let (mut worst, mut all) = (0.0_f64, 0.0);
    let entered = sum(march, |hour| hour.water_in_kg);
    for hour in march.hours() {
        let off =
            hour.water_in_kg - hour.water_out_kg - hour.drained_kg - (hour.on_walls_kg() - film);
        film = hour.on_walls_kg();
        all += off;
        worst = worst.max(off.abs());
    }
    comparisons.push(Comparison::number(
        "balance of an hour",
        worst,
        0.0,
        Tolerance::absolute(1e-9 * entered),
    ));
    comparisons.push(Comparison::number(
        "balance",
        all,
        0.0,
        Tolerance::absolute(1e-9 * entered),
    ));
}
