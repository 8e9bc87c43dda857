//! Water and energy close.

use dewrun_moist_air::latent::{DRY_AIR_CP, vapour_enthalpy_j_kg};
use dewrun_run::{AirPoint, Outcome, Run, TubeOutcome, evaluate};
use dewrun_tests::routes::route;

const ROUTES: u64 = 1000;
const CLOSED: f64 = 1e-9;

fn outcome(run: &Run, seed: u64) -> Outcome {
    match evaluate(run) {
        Ok(outcome) => outcome.value,
        Err(error) => panic!("seed {seed}: {error}"),
    }
}

fn tubes(outcome: &Outcome) -> impl Iterator<Item = &TubeOutcome> {
    [&outcome.intake].into_iter().chain(&outcome.exhaust)
}

fn outlet(outcome: &Outcome) -> &AirPoint {
    outcome
        .exhaust
        .as_ref()
        .map_or(&outcome.chamber, |exhaust| &exhaust.outlet)
}

fn water(air: &AirPoint) -> f64 {
    (air.humidity_ratio + air.mist).to_kilograms_per_kilogram()
}

#[test]
fn balances_close() {
    for seed in 0..ROUTES {
        let balance = outcome(&route(seed), seed).balance;
        let water = balance.water_left_over / balance.water_in;
        let energy = balance.energy_left_over / balance.energy_turned_over;
        assert!(
            water.abs() <= CLOSED,
            "seed {seed}: {water} of the water is left over"
        );
        assert!(
            energy.abs() <= CLOSED,
            "seed {seed}: {energy} of the energy is left over"
        );
    }
}

#[test]
fn water_summed_over_legs_is_what_the_air_lost() {
    for seed in 0..ROUTES {
        let outcome = outcome(&route(seed), seed);
        let dry_air = outcome.dry_air.to_kilograms_per_second();
        let lost = dry_air * (water(&outcome.duct_air) - water(outlet(&outcome)));
        let deposited: f64 = tubes(&outcome)
            .flat_map(|tube| &tube.legs)
            .map(|leg| leg.condensate.to_kilograms_per_second())
            .sum();
        let off = (lost - deposited) / (dry_air * water(&outcome.duct_air));
        assert!(
            off.abs() <= CLOSED,
            "seed {seed}: {off} of the water is lost between the legs"
        );
        for tube in tubes(&outcome) {
            let sum: f64 = tube
                .legs
                .iter()
                .map(|leg| leg.condensate.to_kilograms_per_second())
                .sum();
            let all = tube.condensate.to_kilograms_per_second();
            assert!(
                (sum - all).abs() <= CLOSED * all,
                "seed {seed}: legs {sum}, tube {all}"
            );
        }
    }
}

#[test]
fn water_of_each_leg_is_what_the_air_lost_in_it() {
    for seed in 0..ROUTES {
        let outcome = outcome(&route(seed), seed);
        let dry_air = outcome.dry_air.to_kilograms_per_second();
        for (tube, inlet) in tubes(&outcome).zip([&outcome.duct_air, &outcome.chamber]) {
            let mut before = water(inlet);
            for leg in &tube.legs {
                let after = water(&leg.air_at_end);
                let off = dry_air * (before - after) - leg.condensate.to_kilograms_per_second();
                assert!(
                    off.abs() <= CLOSED * dry_air * before,
                    "seed {seed}: {off} kg/s are lost in a leg"
                );
                before = after;
            }
        }
    }
}

#[test]
fn heat_of_dry_routes_is_what_the_air_lost() {
    let mut held = 0;
    for seed in 0..ROUTES {
        let run = route(seed);
        let outcome = outcome(&run, seed);
        let legs = || tubes(&outcome).flat_map(|tube| &tube.legs);
        let dry = legs().all(|leg| {
            leg.condensate.to_grams_per_hour() == 0.0
                && leg.sweat.to_grams_per_hour() == 0.0
                && leg.air_at_end.mist.to_kilograms_per_kilogram() == 0.0
        });
        if !dry || outcome.duct_air.mist.to_kilograms_per_kilogram() != 0.0 {
            continue;
        }
        held += 1;
        let dry_air = outcome.dry_air.to_kilograms_per_second();
        let enthalpy = |air: &AirPoint| {
            let t_c = air.temperature.to_celsius();
            DRY_AIR_CP * t_c
                + air.humidity_ratio.to_kilograms_per_kilogram() * vapour_enthalpy_j_kg(t_c)
        };
        let drawn_legs = run.intake.iter().chain(&run.exhaust);
        let traced: f64 = drawn_legs
            .map(|leg| leg.tracing.to_watts_per_metre() * leg.length.to_metres())
            .sum();
        let given: f64 = legs().map(|leg| leg.heat_to_space.to_watts()).sum();
        let gained = dry_air * (enthalpy(&outcome.duct_air) - enthalpy(outlet(&outcome)));
        let off = gained + traced + run.detector.heat.to_watts() - given;
        let turned = outcome.balance.energy_turned_over.to_watts();
        assert!(
            off.abs() <= CLOSED * turned,
            "seed {seed}: {off} W are left over of {turned}"
        );
    }
    assert!(
        ROUTES / 10 < held,
        "only {held} routes were dry inside and out"
    );
}

#[test]
fn frost_and_rime_are_part_of_what_deposits() {
    for seed in 0..ROUTES {
        let outcome = outcome(&route(seed), seed);
        for leg in tubes(&outcome).flat_map(|tube| &tube.legs) {
            let inside = (
                leg.frost.to_grams_per_hour(),
                leg.condensate.to_grams_per_hour(),
            );
            let outside = (leg.rime.to_grams_per_hour(), leg.sweat.to_grams_per_hour());
            for (frozen, all) in [inside, outside] {
                assert!(
                    (0.0..=all * (1.0 + CLOSED)).contains(&frozen),
                    "seed {seed}: {frozen} g/h frozen of {all}"
                );
            }
        }
    }
}
