//! Remedies over a year: the smallest of each kind, and what they claim is so.

use dewrun_document::{make_alterations, read, to_ensemble, write};
use dewrun_ensemble::Climate;
use dewrun_remedies::{DesignHour, Kind, Left, Miss, RankBy, Subject, Target, rank};
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

/// Figures by which a run made anew is held against what a remedy claims.
fn figures(left: &Left) -> Vec<f64> {
    let year = left.year.as_ref().expect("there is weather");
    let air = left
        .entered
        .air
        .as_ref()
        .expect("water and air have an answer");
    let mut all = vec![
        year.wet_hours,
        year.formed_kg,
        year.sweat_kg,
        year.most_humid_chamber,
        year.blind_hours.unwrap_or(-1.0),
        year.limit_hours.unwrap_or(-1.0),
        year.trap_days.unwrap_or(-1.0),
        left.entered.forms.to_grams_per_hour(),
        air.flow.to_litres_per_minute(),
        air.water.standing.to_grams(),
    ];
    all.extend(
        air.transport
            .into_iter()
            .flatten()
            .map(|time| time.to_seconds()),
    );
    all
}

/// A remedy made in the project file, read and answered anew, leaves what it claims.
#[test]
fn what_is_claimed_is_what_the_changed_project_answers() {
    let found = in_weather(JULY, Target::default(), |subject, climate| {
        let text = include_str!("../../demo/gull-harbour-roof.json");
        let project = read(text).expect("the example is a project");
        let mut made = 0;
        for one in all_tried(subject, climate) {
            let mut changed = project.clone();
            make_alterations(&mut changed, 0, &one.alterations);
            let changed = write(&changed).expect("it can be written");
            let changed = read(&changed).expect("it can be read again");
            let inputs = to_ensemble(&changed, 0)
                .expect("it has a year")
                .usual
                .inputs;
            let fresh = Subject::new(inputs, subject.target, Some(climate)).expect("an answer");
            // Values go through the units of the file, and may come back a last digit off.
            let pairs = figures(&fresh.left).into_iter().zip(figures(&one.left));
            for (number, (is, claimed)) in pairs.enumerate() {
                let close = (is - claimed).abs() <= 1e-6 * claimed.abs().max(1e-3);
                assert!(
                    close,
                    "{:?}, figure {number}: {is} for {claimed}",
                    one.kinds
                );
            }
            made += 1;
        }
        made
    });
    assert!(10 < found, "{found} remedies were made");
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
