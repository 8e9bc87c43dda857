//! The water of the year: what has left the walls closes, and does not hang on lanes or stops.

use dewrun_tests::hours::route_hours_and_water;
use dewrun_year::{Grid, Hours, March, Route, Steps, Water, WaterHour, water_balance, water_sum};

const ROUTES: u64 = 60;
/// Hours of each.
const HOURS: usize = 480;
/// What no bottle shows, kg.
const NOTHING_KG: f64 = 1e-3;
/// Less of the first hour's flow is hardly any.
const PASSES: f64 = 0.05;

/// None where the steady answer is none.
fn drawn(seed: u64) -> Option<(Route, Hours, Water)> {
    route_hours_and_water(seed, HOURS).ok()
}

fn marched((route, hours, water): &(Route, Hours, Water), steps: Steps) -> March {
    let mut march = March::with_water(route, hours, (Grid::PRODUCT, steps), water.clone());
    assert!(march.advance(hours, usize::MAX), "all hours are marched");
    march
}

#[test]
fn all_water_is_somewhere() {
    let (mut answered, mut seen) = (0, [0.0; 9]);
    for seed in 0..ROUTES {
        let Some(drawn) = drawn(seed) else { continue };
        answered += 1;
        for steps in [Steps::Whole, Steps::QuartersWhereDrying] {
            for follows in [true, false] {
                let (route, hours, water) = drawn.clone();
                let water = if follows {
                    water
                } else {
                    water.with_given_flow()
                };
                let march = marched(&(route, hours, water), steps);
                let balance = water_balance(&march);
                assert!(
                    balance.off_kg.abs() <= 1e-9 * balance.entered_kg,
                    "seed {seed}, {steps:?}: {balance:?}"
                );
                each_hour_closes(&march, balance.entered_kg, seed);
                let sum = water_sum(march.water_hours());
                let found = [
                    sum.went.evaporated_kg,
                    sum.went.drained_kg,
                    sum.went.into_duct_kg,
                    sum.went.into_detector_kg,
                    sum.went.let_out_kg,
                    sum.went.overflowed_kg,
                    sum.went.off_seals_kg,
                    f64::from(sum.thaws),
                    sum.hours.sealed,
                ];
                for (all, one) in seen.iter_mut().zip(found) {
                    *all += one;
                }
            }
        }
    }
    assert!(
        30 < answered,
        "{answered} of {ROUTES} routes have an answer"
    );
    assert!(
        seen.iter().all(|term| 0.0 < *term),
        "each happens somewhere: {seen:?}"
    );
}

fn each_hour_closes(march: &March, entered_kg: f64, seed: u64) {
    let mut held_kg = march.water().map_or(0.0, Water::at_start_kg);
    let mut on_walls_kg = 0.0;
    for (h, (hour, water)) in march.hours().iter().zip(march.water_hours()).enumerate() {
        let stays = hour.on_walls_kg() - on_walls_kg;
        let air = hour.water_in_kg - hour.water_out_kg + water.went.evaporated_kg;
        let walls = air - water.went.ran_down_kg - stays;
        let stands = water.held_kg() - held_kg;
        let stores =
            water.went.ran_down_kg - water.went.evaporated_kg - water.went.gone_kg() - stands;
        assert!(
            walls.abs() <= 1e-9 * entered_kg && stores.abs() <= 1e-9 * entered_kg,
            "seed {seed}, hour {h}: {walls} and {stores} of {entered_kg} kg, {water:?}"
        );
        let levels = march.levels(h);
        assert!(
            levels.iter().all(|kg| 0.0 <= *kg),
            "seed {seed}, hour {h}: {levels:?}"
        );
        (held_kg, on_walls_kg) = (water.held_kg(), hour.on_walls_kg());
    }
}

#[test]
fn stops_make_no_difference_to_the_water() {
    for seed in 0..20 {
        let Some(drawn) = drawn(seed) else { continue };
        let whole = marched(&drawn, Steps::QuartersWhereDrying);
        let (route, hours, water) = &drawn;
        let how = (Grid::PRODUCT, Steps::QuartersWhereDrying);
        let mut sliced = March::with_water(route, hours, how, water.clone());
        let mut until = 0;
        while !sliced.advance(hours, until) {
            until += 7;
        }
        assert_eq!(whole.water_hours(), sliced.water_hours(), "seed {seed}");
        assert_eq!(whole.hours(), sliced.hours(), "seed {seed}");
    }
}

/// A part of what an hour tells, kg.
type Part = fn(&WaterHour) -> f64;

#[test]
fn hours_side_by_side_are_hours_one_by_one() {
    let (mut off, mut compared) = (Vec::new(), 0);
    for seed in 0..ROUTES {
        let Some(drawn) = drawn(seed) else { continue };
        let side_by_side = marched(&drawn, Steps::Whole);
        let (route, hours, water) = drawn;
        let one_by_one = marched(&(route, hours, water.one_by_one()), Steps::Whole);
        // While air passes: what little does through nearly closed bores is told less closely.
        let first = one_by_one
            .water_hours()
            .first()
            .map_or(0.0, |hour| hour.dry_air_kg_s);
        let passes = |hour: &WaterHour| PASSES * first < hour.dry_air_kg_s;
        let until = one_by_one
            .water_hours()
            .iter()
            .take_while(|hour| passes(hour))
            .count();
        compared += until;
        let sum = |march: &March, of: Part| -> f64 {
            march.water_hours().iter().take(until).map(of).sum()
        };
        let of: [(&str, f64, Part); 3] = [
            ("ran down", 0.01, |hour| hour.went.ran_down_kg),
            ("evaporated", 0.02, |hour| hour.went.evaporated_kg),
            ("let out", 0.01, |hour| hour.went.let_out_kg),
        ];
        let pairs =
            of.map(|(what, share, of)| (what, share, sum(&side_by_side, of), sum(&one_by_one, of)));
        for (what, share, got, expected) in pairs {
            if share * expected + NOTHING_KG < (got - expected).abs() {
                off.push(format!("seed {seed}: {what} {got} kg for {expected}"));
            }
        }
    }
    assert!(10 * HOURS < compared, "{compared} hours are compared");
    assert!(off.is_empty(), "{} {off:#?}", off.len());
}

/// A search that circles, or takes a wild wall as found, shows as air without water, or as a wall that no space makes.
#[test]
fn air_and_walls_stay_within_what_bounds_them() {
    for seed in 40..400 {
        let (route, hours, water) = match route_hours_and_water(seed, 120) {
            Ok(drawn) => drawn,
            Err(error) => panic!("seed {seed}: {error}"),
        };
        let how = (Grid::PRODUCT, Steps::QuartersWhereDrying);
        let mut march = March::with_water(&route, &hours, how, water);
        march.advance(&hours, usize::MAX);
        for (h, hour) in march.hours().iter().enumerate() {
            let within = 0.0 <= hour.outlet.w && -70.0 < hour.coldest_wall_c;
            assert!(
                within && hour.outlet.t_c < 400.0,
                "seed {seed}, hour {h}: {hour:?}"
            );
        }
    }
}
