//! What an answer rests on, water and air included: what is claimed of an assumed value is what the changed run does.

use std::fs;

use dewrun_advice::{Resting, rests_on_whole};
use dewrun_document::{Installed, givens, installed, read, to_run};
use dewrun_run::figure::{Figure, Given, Origin, set, set_installed};
use dewrun_run::{Installation, Outcome, Place, Run, Tube, Whole, evaluate, water_and_air};

struct Example {
    run: Run,
    installation: Installation,
    outcome: Outcome,
    whole: Whole,
    givens: Vec<Given>,
}

fn example(name: &str, from: &str, to: &str) -> Example {
    let path = format!("{}/../demo/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = fs::read_to_string(path).expect("the example is there");
    assert!(text.contains(from), "{name} holds `{from}`");
    let project = read(&text.replacen(from, to, 1)).expect("it can be read");
    let (run, _) = to_run(&project, 0).expect("it has a run");
    let Installed {
        installation,
        givens: installed,
        ..
    } = installed(&project, 0).expect("it is installed");
    let outcome = evaluate(&run).expect("it has an answer").value;
    let whole = water_and_air(&run, &installation, &outcome).expect("water and air too");
    let mut givens = givens(&project, 0);
    givens.extend(installed);
    Example {
        run,
        installation,
        outcome,
        whole,
        givens,
    }
}

impl Example {
    fn ranked(&self) -> Vec<Resting> {
        let (run, installation) = (&self.run, &self.installation);
        rests_on_whole(
            (run, installation),
            (&self.outcome, &self.whole),
            &self.givens,
        )
    }

    /// Whether the detector is blind with another value for an input.
    fn is_blind_with(&self, figure: Figure, places: &[Place], value: f64) -> bool {
        let (mut run, mut installation) = (self.run.clone(), self.installation.clone());
        for place in places {
            let changed = set(&mut run, figure, *place, value)
                .or_else(|| set_installed(&mut installation, figure, *place, value));
            assert_eq!(changed, Some(()), "{} is an input", figure.id());
        }
        let outcome = evaluate(&run).expect("it has an answer").value;
        let whole = water_and_air(&run, &installation, &outcome).expect("water and air too");
        whole.blind.is_some()
    }
}

#[test]
fn what_ends_blindness_comes_first() {
    for name in ["make-up-air", "pool-hall-exhaust", "sagging-tube"] {
        let told = example(name, "", "");
        let ranked = told.ranked();
        let first_that_does_not = ranked.iter().position(|one| !one.changes_blindness);
        for (at, one) in ranked
            .iter()
            .enumerate()
            .filter(|(_, one)| one.changes_blindness)
        {
            assert!(Some(at) < first_that_does_not, "{name}: in front");
            let ends = [one.assumed.low, one.assumed.high];
            let seen =
                ends.map(|end| !told.is_blind_with(one.assumed.figure, &one.assumed.places, end));
            assert!(
                seen.contains(&true),
                "{name}: {} ends it",
                one.assumed.figure.id()
            );
        }
    }
}

/// A loft above 0 °C grows no frost: the warm end of its span, 2 °C, ends what the example is about.
#[test]
fn ice_rests_on_how_cold_the_loft_is() {
    let told = example("pool-hall-exhaust", "", "");
    let ranked = told.ranked();
    let first = ranked.first().expect("something is assumed");
    assert_eq!(first.assumed.figure, Figure::SpaceTemperature, "the loft");
    assert!(first.changes_blindness && first.decides, "{first:?}");
}

/// A fan of its own curve gives 300 Pa at most: against 900 Pa at the exhaust the air runs backwards.
#[test]
fn an_assumed_pressure_of_the_duct_decides_where_the_air_may_turn_round() {
    let point = |flow, pressure| {
        let typed = |value| format!(r#"{{"value": {value}, "origin": "typed"}}"#);
        let (flow, pressure) = (typed(flow), typed(pressure));
        format!(r#"{{"flow_l_min": {flow}, "pressure_pa": {pressure}}}"#)
    };
    let fan = [point(0, 300), point(60, 150), point(120, 0)].join(", ");
    let pressure = r#"{"value": 0, "origin": {"assumed": {"row": "duct-not-known", "low": -300, "high": 900}}}"#;
    let with = format!(
        r#""air_path": {{"exhaust_static_pa": {pressure}, "fan": [{fan}]}}, "detector": {{"#
    );
    let told = example("chilled-supply", "\"detector\": {", &with);
    assert!(told.whole.blind.is_none(), "it sees as drawn");
    let ranked = told.ranked();
    let blinding = ranked.iter().filter(|one| one.changes_blindness);
    let found: Vec<(Figure, Vec<Place>)> = blinding
        .map(|one| (one.assumed.figure, one.assumed.places.clone()))
        .collect();
    let end = |tube| (Figure::DuctStatic, vec![Place::Duct(tube)]);
    // The example assumes the pressure at the intake from -300 Pa on.
    assert_eq!(found.len(), 2, "{found:?}");
    assert!(found.contains(&end(Tube::Intake)), "{found:?}");
    assert!(found.contains(&end(Tube::Exhaust)), "{found:?}");
}

/// The exhaust goes back into the same duct: one pressure, one assumption, and the fan does not feel it.
#[test]
fn one_duct_has_one_pressure() {
    let told = example("chilled-supply", "", "");
    let ranked = told.ranked();
    let statics: Vec<&Resting> = ranked
        .iter()
        .filter(|one| one.assumed.figure == Figure::DuctStatic)
        .collect();
    let places = statics.iter().map(|one| one.assumed.places.clone());
    let both = vec![Place::Duct(Tube::Intake), Place::Duct(Tube::Exhaust)];
    assert_eq!(places.collect::<Vec<_>>(), [both], "one assumption");
    assert!(statics.iter().all(|one| !one.decides), "{statics:?}");
}

/// Every input of how the examples are installed can be changed, and is the only thing that changes.
#[test]
fn every_installed_input_goes_to_its_place() {
    for name in [
        "make-up-air",
        "pool-hall-exhaust",
        "chilled-supply",
        "sagging-tube",
    ] {
        let told = example(name, "", "");
        for given in &told.givens {
            let Origin::Assumed { high, .. } = &given.origin else {
                continue;
            };
            let (mut run, mut changed) = (told.run.clone(), told.installation.clone());
            if set(&mut run, given.figure, given.place, *high).is_some() {
                continue;
            }
            // Both swings of the season are one figure: they are told together.
            if given.figure == Figure::Season {
                continue;
            }
            let set_to = |built: &mut Installation, value| {
                set_installed(built, given.figure, given.place, value)
            };
            assert_eq!(set_to(&mut changed, *high), Some(()), "{name}: {given:?}");
            if *high != given.value {
                assert_ne!(changed, told.installation, "{name}: {given:?} changes it");
            }
            assert_eq!(set_to(&mut changed, given.value), Some(()), "{given:?}");
            assert_eq!(changed, told.installation, "{name}: {given:?} and back");
        }
    }
}
