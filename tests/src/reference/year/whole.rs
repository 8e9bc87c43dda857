//! A whole project through real years, as `dewrun year` takes it: what its tubes hold back is known from the file's dew points alone.
//!
//! Every leg lies in a space of 10 °C and is long enough that air leaves as at its walls, whatever lies on them: in an hour
//! whose dew point is higher, what comes in above saturation at 10 °C stays. Dry hours evaporate what is left; they are not counted.

use std::path::Path;

use dewrun_document::{Project, installed, read, to_run, to_season};
use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::mixture::humidity_ratio;
use dewrun_season::{YearOutcome, hours_of, year_of};
use dewrun_weather::{Range, Series};
use serde_json::{Value, json};

use crate::reference::compare::{Comparison, Tolerance};
use crate::reference::report::{Answer, Values};
use crate::reference::weather::series_of;

/// The key of what is expected, g a year for each kg of dry air an hour.
const KEY: &str = "annual_condensate_g_per_(kg_dryair/h)_wall_10C";
const AIR: &str = "Tdb_C_min_max_mean";
const WALL_C: f64 = 10.0;
const DEMO: &str = include_str!("../../../../demo/make-up-air.json");

/// Whether a case says what it would be.
pub(super) fn asks(case: &Value) -> bool {
    !case["expected"][KEY].is_null()
}

/// Holds the water of a year within 1 %, its air to the digits of the case, and its balances.
pub(super) fn answer(case: &Value, folder: &Path) -> Result<Answer, String> {
    let file = case["fixture"][0].as_str().ok_or("a case without file")?;
    let series = series_of(&folder.join(file))?;
    let outcome = year(&project()?, &series)?;
    let expected = &case["expected"];
    let kept = kept_g(&outcome)?;
    let air = air_c(&outcome).ok_or("no hours")?;
    let (balance, all) = (&outcome.balance, outcome.sum.hours);
    let off = balance.off_kg.abs() / balance.entered_kg;
    let exact = |key: &str, got: f64, expected: f64, allowed: f64| {
        Comparison::number(key, got, expected, Tolerance::absolute(allowed))
    };
    let wanted = expected[KEY].as_f64().ok_or("not a number")?;
    let mut comparisons = vec![
        Comparison::number(KEY, kept, wanted, Tolerance::relative(0.01)),
        exact("water that is missing, share", off, 0.0, 1e-9),
        exact("hours", all, expected["rows"].as_f64().unwrap_or(0.0), 1e-9),
    ];
    let of_air = [("least", air.min), ("most", air.max), ("mean", air.mean)];
    for (position, (key, got)) in of_air.into_iter().enumerate() {
        let wanted = expected[AIR][position].as_f64().ok_or("not a number")?;
        comparisons.push(exact(&format!("duct air, {key}, °C"), got, wanted, 0.005));
    }
    // What deposits may not be less than what stays, and what stays is all that runs off or lies there.
    let stays = outcome.sum.condensed_kg - outcome.sum.evaporated_kg;
    let lies = outcome.sum.drained_kg + balance.on_walls_kg;
    comparisons.push(Comparison::number(
        "deposited less evaporated, kg",
        stays,
        lies,
        Tolerance::relative(1e-9),
    ));
    Ok(Answer {
        values: Values::from_iter([(KEY.to_owned(), json!(kept))]),
        comparisons,
    })
}

/// What `dewrun year` does with a project and the rows of a file.
fn year(project: &Project, series: &Series) -> Result<YearOutcome, String> {
    let (run, _) = to_run(project, 0).map_err(|error| error.to_string())?;
    let said = to_season(project, 0).map_err(|error| error.to_string())?;
    let built = installed(project, 0).map_err(|error| error.to_string())?;
    let hourly = hours_of(&run, &said.season, series, None).map_err(|error| error.to_string())?;
    year_of(&run, &built.installation, hourly).map_err(|error| error.to_string())
}

/// A worked example with untreated make-up air, all of its legs 10 m long, 10 °C around them, and falling to the duct.
fn project() -> Result<Project, String> {
    let mut project: Value = serde_json::from_str(DEMO).map_err(|error| error.to_string())?;
    let entered = |value: f64| json!({"value": value, "origin": "typed"});
    for space in project["spaces"].as_array_mut().into_iter().flatten() {
        space["temperature_c"] = entered(WALL_C);
        space["year"] = json!({"follows": "settings"});
    }
    let run = &mut project["runs"][0];
    run["duct"]["source"] = json!({"from": "outdoors"});
    run["flow"]["volume_l_min"] = entered(10.0);
    for (tube, rise_m) in [("intake", 0.5), ("exhaust", -0.5)] {
        for leg in run[tube]["legs"].as_array_mut().into_iter().flatten() {
            leg["length_m"] = entered(10.0);
            leg["rise_m"] = entered(rise_m);
        }
    }
    read(&project.to_string()).map_err(|error| error.to_string())
}

/// What stays of a kg of dry air an hour, g, in hours whose air is more humid than the walls allow.
fn kept_g(outcome: &YearOutcome) -> Result<f64, String> {
    let mut kept_g = 0.0;
    for (at, sum) in outcome.sums.iter().enumerate() {
        let hour = outcome.hourly.hours.hour(at).ok_or("an hour is missing")?;
        let saturated = humidity_ratio(saturated_over_water(WALL_C, hour.p_pa));
        if saturated < hour.w && 0.0 < sum.dry_air_kg {
            let share = (sum.condensed_kg - sum.evaporated_kg) / sum.dry_air_kg;
            kept_g += 1e3 * share * sum.seconds / 3600.0;
        }
    }
    Ok(kept_g)
}

fn air_c(outcome: &YearOutcome) -> Option<Range> {
    let hours = 0..outcome.sums.len();
    let air = hours.filter_map(|at| Some(outcome.hourly.hours.hour(at)?.air_c));
    Range::of(&air.collect::<Vec<_>>())
}
