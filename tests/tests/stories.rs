//! Each worked example tells its own story: water and where its trap goes, ice instead of water, sweat outside alone, a tube that seals itself.

use std::fs;

use dewrun_document::{read, to_installation, to_run};
use dewrun_quantity::{Length, Time};
use dewrun_run::told::{AirPlace, Freezes, Trouble};
use dewrun_run::{Blind, HangerAdvice, Outcome, Run, Tube, Whole, evaluate, water_and_air};

struct Story {
    run: Run,
    outcome: Outcome,
    whole: Whole,
}

/// The story of an example, with some of its text replaced.
fn told_with(name: &str, from: &str, to: &str) -> Story {
    let path = format!("{}/../demo/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = fs::read_to_string(path).expect("the example is there");
    assert!(text.contains(from), "{name} holds `{from}`");
    let project = read(&text.replacen(from, to, 1)).expect("it can be read");
    let (run, _) = to_run(&project, 0).expect("it has a run");
    let (installation, _) = to_installation(&project, 0).expect("it is installed");
    let outcome = evaluate(&run).expect("it has an answer").value;
    let whole = water_and_air(&run, &installation, &outcome).expect("water and air too");
    Story {
        run,
        outcome,
        whole,
    }
}

fn told(name: &str) -> Story {
    told_with(name, "", "")
}

/// Where and after how long a low point of the intake seals.
#[track_caller]
fn sealed(whole: &Whole) -> (Length, Time) {
    match &whole.blind {
        Some(Blind::Sealed {
            tube: Tube::Intake,
            at,
            after,
        }) => (*at, *after),
        other => panic!("sealed, not {other:?}"),
    }
}

/// A self-draining trap in the intake of an example, in the form of its file.
const WITH_TRAP: &str = "\"traps\": [{\"at_m\": {\"value\": 5.2, \"origin\": \"typed\"}, \"kind\": \"self_draining\"}], \"legs\": [";

#[test]
fn humid_make_up_air_seals_its_low_point_and_wants_a_trap_there() {
    let Story {
        run,
        outcome,
        whole,
    } = told("make-up-air");
    // The second joint is the lowest: 1.0 and 4.2 m fall 1:50, then the tube rises.
    let joint_m = 1.0 + 4.2;
    let (at, after) = sealed(&whole);
    assert!(
        (at.to_metres() - joint_m).abs() < 1e-9,
        "at the low point, not {at:?}"
    );
    let [first] = whole.intake.proposals.as_slice() else {
        panic!("one trap, not {:?}", whole.intake.proposals);
    };
    assert_eq!(first.trap.at, Some(at), "the trap goes there");
    // By hand: pi/8 D^3 (1/t1 + 1/t2) for square-cut legs, 1:50 before and 1:60 after; then the walls' film, then all that forms there.
    let bore_m = run.intake[1].tube.bore.to_metres();
    let falls = [1, 2].map(|at: usize| {
        let sine = (run.intake[at].rise / run.intake[at].length).abs();
        (1.0 - sine * sine).sqrt() / sine
    });
    let seal_ml =
        core::f64::consts::PI / 8.0 * bore_m * bore_m * bore_m * (falls[0] + falls[1]) * 1e6;
    let low = &whole.intake.low_points[0];
    assert!(
        (low.seal_volume.to_millilitres() - seal_ml).abs() < 1e-6 * seal_ml,
        "{seal_ml} mL by hand"
    );
    let rate_g_h = outcome.intake.condensate.to_grams_per_hour();
    // The film of 50 g/m2 on all walls that get wet or are run over: from first wet to last wet.
    let wet = &outcome.intake.wet;
    let wet_m = wet.last().map_or(0.0, |last| last.to.to_metres()) - wet[0].from.to_metres();
    let film_g = core::f64::consts::PI * bore_m * wet_m * 50.0;
    let hours = (seal_ml * 0.998 + film_g) / rate_g_h;
    assert!(
        (after.to_hours() - hours).abs() < 0.03 * hours,
        "{} h, by hand {hours} h",
        after.to_hours()
    );
    assert!(whole.intake.ice.is_empty(), "no ice");
    let order: Vec<Trouble> = whole
        .intake
        .troubles
        .iter()
        .map(|one| one.trouble)
        .collect();
    assert_eq!(
        order,
        [Trouble::FirstSlugs, Trouble::LowLimit, Trouble::Sealed],
        "one after the other"
    );
}

#[test]
fn a_trap_at_the_low_point_ends_that_story() {
    let Story { whole, .. } = told_with("make-up-air", "\"legs\": [", WITH_TRAP);
    assert_eq!(whole.blind, None, "nothing seals any more");
    assert!(
        whole.intake.proposals.is_empty() && whole.intake.low_points.is_empty(),
        "all water is taken out"
    );
    let trap = whole.intake.traps.first().expect("it is told of");
    assert!(
        5.0 < trap.rate.to_grams_per_hour(),
        "{:?} come to it",
        trap.rate
    );
    assert!(
        trap.drop_is_enough && trap.seal_is_enough,
        "the usual one will do: {trap:?}"
    );
}

/// An open trap of 10 mm bore under suction lets room air in through 6 mm: by hand Q = Cd A sqrt(2 dp/rho) with Cd 0.61,
/// and the sample share is what is left of the flow at the sensor, by mass.
#[test]
fn an_open_trap_blinds_the_detector() {
    let open = WITH_TRAP.replace("\"kind\"", "\"condition\": \"open\", \"kind\"");
    let Story { whole, run, .. } = told_with("make-up-air", "\"legs\": [", &open);
    let now = &whole.airflow.now;
    let suction_pa = -now
        .pressure(AirPlace::Leak(0))
        .expect("the trap is a leak")
        .to_pascals();
    assert!(
        20.0 < suction_pa,
        "the tube is under suction there, {suction_pa} Pa"
    );
    let density = now.mass.to_kilograms_per_second() / now.sensor.to_cubic_metres_per_second();
    let area_m2 = core::f64::consts::PI / 4.0 * 0.006 * 0.006;
    let leak_kg_s = 0.61 * area_m2 * (2.0 * density * suction_pa).sqrt();
    let share = 1.0 - leak_kg_s / now.mass.to_kilograms_per_second();
    // The air in the tube is a few kelvins from that at the sensor.
    assert!(
        (now.share - share).abs() < 0.01,
        "{} and by hand {share}",
        now.share
    );
    let Some(Blind::Diluted { share }) = whole.blind else {
        panic!("diluted, not {:?}", whole.blind);
    };
    assert!(
        (share - now.share).abs() < 1e-12 && share < 0.8,
        "{share} of it from the duct"
    );
    assert!(
        1.0 < whole.airflow.reading_now,
        "the flow rises, as if all were better"
    );
    assert!(run.exhaust.len() == 4, "the rest is as drawn");
}

#[test]
fn the_pool_hall_ices_up_in_its_loft() {
    let Story { outcome, whole, .. } = told("pool-hall-exhaust");
    let Some(Blind::Iced {
        tube: Tube::Intake,
        at,
        ..
    }) = whole.blind
    else {
        panic!("iced, not {:?}", whole.blind);
    };
    let loft = &outcome.intake.legs[1];
    assert!(
        loft.from <= at && at <= loft.to,
        "in the loft, not at {at:?}"
    );
    assert!(whole.intake.low_points.is_empty(), "no pool anywhere");
    let ice = whole
        .intake
        .ice
        .iter()
        .map(|ice| ice.rate.to_grams_per_hour())
        .fold(0.0, f64::max);
    assert!(
        (ice - loft.frost.to_grams_per_hour()).abs() < 1e-12 && 5.0 < ice,
        "{ice} g/h of frost"
    );
}

#[test]
fn the_chilled_duct_stays_dry_inside() {
    let Story { outcome, whole, .. } = told("chilled-supply");
    assert_eq!(whole.blind, None, "it samples its duct");
    let tubes = [&whole.intake].into_iter().chain(&whole.exhaust);
    for water in tubes {
        assert!(
            water.low_points.is_empty() && water.troubles.is_empty(),
            "no water: {water:?}"
        );
        assert!(
            water.ice.is_empty() && water.proposals.is_empty(),
            "no ice, no trap"
        );
        assert_eq!(water.drain_interval, None, "nothing to drain");
    }
    assert!(
        0.1 < outcome.intake.sweat.to_grams_per_hour(),
        "sweat outside alone"
    );
    assert!(
        (whole.airflow.now.share - 1.0).abs() < 1e-12,
        "all of it from the duct"
    );
}

#[test]
fn the_flexible_tube_seals_itself() {
    let Story { whole, .. } = told("sagging-tube");
    let (at, after) = sealed(&whole);
    assert!(
        (at.to_metres() - 2.5).abs() < 1e-9,
        "in the sag, not at {at:?}"
    );
    assert!(
        after.to_hours() < 24.0,
        "within a day, not {} h",
        after.to_hours()
    );
    let advice: Vec<HangerAdvice> = whole.intake.legs.iter().map(|leg| leg.hangers).collect();
    assert_eq!(
        advice[1],
        HangerAdvice::AllAlong,
        "a coiled tube is no beam"
    );
    let low = &whole.intake.low_points[0];
    assert!(
        low.stand.sealed && low.freezes == Freezes::No,
        "water stands over the crown: {low:?}"
    );
    assert!(1.0 < low.bubbling.to_pascals(), "and holds the air back");
}
