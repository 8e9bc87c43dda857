//! Remedies over a year: the smallest of each kind, and what they claim is so.

use dewrun_ensemble::Climate;
use dewrun_remedies::{DesignHour, Kind, Miss, RankBy, Subject, Target, rank};
use dewrun_tests::ensembles::{example, weather};
use dewrun_tests::remedies::{Counted, all_tried, counted, looked_at};

/// A humid month of the invented weather.
const JULY: core::ops::Range<usize> = 4400..5100;

/// What a closure finds of the worked example with a target, in some hours of the invented weather.
fn in_weather<T>(
    hours: core::ops::Range<usize>,
    target: Target,
    find: impl Fn(&Subject, Climate<'_>) -> T,
) -> T {
    let series = weather(hours).expect("the invented weather is there");
    let climate = Climate {
        weather: &series,
        measured: None,
    };
    let said = example("gull-harbour-roof").expect("the example is there");
    let subject = Subject::new(said.usual.inputs, target, Some(climate));
    find(&subject.expect("it has a year"), climate)
}

#[test]
fn each_cure_of_the_worked_example_is_the_smallest() {
    let of_the_year = Target {
        dry_in: Some(DesignHour::Wettest2),
        wet_hours: Some(150.0),
        ..Target::default()
    };
    for target in [Target::default(), of_the_year] {
        let (found, tried) = in_weather(0..8760, target, |subject, climate| {
            assert!(!subject.is_met(), "the example is wet");
            let mut tried = all_tried(subject, climate);
            let mut found = Counted::default();
            for one in &tried {
                let looked = looked_at(subject, one, climate);
                let looked =
                    looked.unwrap_or_else(|sentence| panic!("{:?}: {sentence}", one.kinds));
                found = found.plus(looked);
            }
            rank(&mut tried, RankBy::Left);
            (found, tried)
        });
        assert!(1 < found.cures && 0 < found.smaller, "{found:?}");
        let cures = tried.iter().take_while(|one| one.is_cure).count();
        assert_eq!(cures, found.cures, "cures come first, and all of them");
    }
}

/// The trap of the worked example: whether it cures, and what it misses.
fn trap(target: Target) -> (bool, Vec<Miss>) {
    in_weather(JULY, target, |subject, climate| {
        let tried = all_tried(subject, climate);
        let trap = tried.into_iter().find(|one| one.kinds == [Kind::Trap]);
        let trap = trap.expect("the example lacks a trap");
        let missed = subject.target.missed(&trap.left, subject.rating);
        (trap.is_cure, missed)
    })
}

#[test]
fn a_trap_does_not_dry_a_tube() {
    let missed = trap(Target::default());
    assert_eq!(missed, (false, vec![Miss::Design]), "water forms as before");
    let never_blind = Target {
        dry_in: None,
        ..Target::default()
    };
    assert_eq!(trap(never_blind), (true, vec![]), "but it stands nowhere");
}

#[test]
fn what_needs_power_is_told_without_it() {
    in_weather(JULY, Target::default(), |subject, climate| {
        let tried = all_tried(subject, climate);
        let traced = tried.iter().find(|one| one.kinds == [Kind::Trace]);
        let powered = traced.and_then(|one| one.powered.as_ref());
        let powered = powered.expect("tracing needs power");
        let is_met = subject.target.is_met(&powered.failed, subject.rating);
        assert!(!is_met, "it is wet again");
        let energy = powered.energy_kwh.expect("there is weather");
        // So many watts for 700 h.
        let expected = 0.7 * powered.power.to_watts();
        assert!((energy - expected).abs() < 1e-9 * energy, "{energy} kWh");
        let hot = powered.stuck_on.expect("a tube is traced").to_celsius();
        let bears = powered.bears.expect("the tube is of plastic").to_celsius();
        assert!(hot <= bears, "{hot} °C, and the tube bears {bears} °C");
        let thermostat = powered.thermostat.expect("hours are wet without it");
        assert!(thermostat.energy_kwh <= energy, "{thermostat:?}");
    });
}

/// A smoke of the proof over a hundred routes.
#[test]
fn cures_of_random_routes_are_the_smallest() {
    let series = weather(JULY).expect("the invented weather is there");
    let climate = Climate {
        weather: &series,
        measured: None,
    };
    let mut found = Counted::default();
    for seed in 0..4 {
        let one = counted(seed, climate).unwrap_or_else(|sentence| panic!("{sentence}"));
        found = found.plus(one);
    }
    assert!(0 < found.cures && 0 < found.smaller, "{found:?}");
}
