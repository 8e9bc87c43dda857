//! The bits of every outcome that is compared, by name; compiled for both machines from this one file.

use dewrun_run::{Run, evaluate, water_and_air};
use dewrun_tests::fingerprint::{fingerprint, fingerprint_of, whole_numbers};
use dewrun_tests::hours::{route_and_hours, route_hours_and_water};
use dewrun_tests::installations::installation;
use dewrun_tests::reference::steady::run_of;
use dewrun_tests::routes::{awkward, route};
use dewrun_year::{Grid, March, Steps};
use serde_json::Value;

/// Random routes that are compared besides the solved cases.
const ROUTES: u64 = 200;

/// Random installations whose water and air are compared.
const INSTALLED: u64 = 60;

/// Random routes whose hours are compared, and so many of them each.
const HOURLY: u64 = 20;
const HOURS: usize = 96;

/// The solved cases.
const CASES: [&str; 2] = [
    include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../cases/steady.json")),
    include_str!(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../cases/steady_more.json"
    )),
];

/// Name and bits of each outcome; none where a run has no answer.
#[must_use]
pub(crate) fn all() -> Vec<(String, Option<u64>)> {
    let mut rows = Vec::new();
    for case in CASES.iter().flat_map(|text| cases(text)) {
        let bits = run_of(&case).ok().as_ref().and_then(bits);
        rows.push((case["id"].as_str().unwrap_or_default().to_owned(), bits));
    }
    for seed in 0..ROUTES {
        rows.push((format!("route {seed}"), bits(&route(seed))));
    }
    for seed in 0..INSTALLED {
        rows.push((format!("water and air of route {seed}"), whole_bits(seed)));
    }
    for seed in 0..HOURLY {
        rows.push((format!("hours of route {seed}"), hours_bits(seed)));
        rows.push((format!("water of hours of route {seed}"), water_bits(seed)));
    }
    for seed in (0..ROUTES).filter(|seed| flows(&awkward(*seed))) {
        rows.push((format!("awkward route {seed}"), bits(&awkward(seed))));
    }
    rows
}

fn cases(text: &str) -> Vec<Value> {
    serde_json::from_str(text).unwrap_or_default()
}

fn bits(run: &Run) -> Option<u64> {
    Some(fingerprint(&evaluate(run).ok()?.value))
}

/// Water and air of a random route, randomly installed.
fn whole_bits(seed: u64) -> Option<u64> {
    let run = route(seed);
    let steady = evaluate(&run).ok()?.value;
    let whole = water_and_air(&run, &installation(&run, seed), &steady).ok()?;
    Some(fingerprint_of(&whole_numbers(&whole)))
}

/// Hours of a random route, divided where one cell dries out while another takes up water.
fn hours_bits(seed: u64) -> Option<u64> {
    let (route, hours) = route_and_hours(seed, HOURS).ok()?;
    let mut march = March::new(&route, &hours, Grid::PRODUCT, Steps::QuartersWhereDrying);
    march.advance(&hours, HOURS);
    let numbers = march.hours().iter().flat_map(|hour| {
        [
            hour.condensed_kg,
            hour.evaporated_kg,
            hour.film_kg,
            hour.outlet.t_c,
            hour.outlet.w,
            hour.coldest_wall_c,
        ]
    });
    Some(fingerprint_of(&numbers.collect::<Vec<_>>()))
}

/// The same hours with their water and the air that follows it.
fn water_bits(seed: u64) -> Option<u64> {
    let (route, hours, water) = route_hours_and_water(seed, HOURS).ok()?;
    let how = (Grid::PRODUCT, Steps::QuartersWhereDrying);
    let mut march = March::with_water(&route, &hours, how, water);
    march.advance(&hours, HOURS);
    let numbers = march.water_hours().iter().flat_map(|hour| {
        [
            hour.dry_air_kg_s,
            hour.reading,
            hour.share,
            hour.went.evaporated_kg,
            hour.went.gone_kg(),
            hour.held_kg(),
            hour.ice_kg,
        ]
    });
    Some(fingerprint_of(&numbers.collect::<Vec<_>>()))
}

/// Enough to be quick about it.
fn flows(run: &Run) -> bool {
    0.01 < run.flow.volume.to_litres_per_minute()
}
