//! The ensemble of a year: what must hold of it whatever its numbers.

use std::fs;

use dewrun_advice::Relation;
use dewrun_document::{EnsembleSaid, read, to_ensemble};
use dewrun_ensemble::{
    Climate, Gathered, Kept, Measured, Measurement, Member, MemberWork, Plan, Quantity, Span,
    Varied, reweighted, told,
};
use dewrun_run::Place;
use dewrun_run::figure::{Figure, Origin};
use dewrun_season::told::Space;
use dewrun_season::{hours_of, year_of};
use dewrun_weather::{Reader, Series, Understanding};

/// Lines of the weather file before its readings.
const HEAD: usize = 7;
/// The first reading of July, and how many are taken: the wettest days of the file among them.
const JULY: usize = 4351;
const HOURS: usize = 960;

fn example() -> EnsembleSaid {
    said("gull-harbour-roof")
}

fn said(name: &str) -> EnsembleSaid {
    let path = format!("{}/../demo/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = fs::read_to_string(path).expect("the example is there");
    to_ensemble(&read(&text).expect("it can be read"), 0).expect("it has a run")
}

/// Forty days of the invented weather.
fn summer() -> Series {
    let path = format!("{}/../demo/gull-harbour.csv", env!("CARGO_MANIFEST_DIR"));
    let text = fs::read_to_string(path).expect("the weather is there");
    let lines = text.lines();
    let kept = lines
        .enumerate()
        .filter(|(at, _)| *at < HEAD || (JULY..JULY + HOURS).contains(at));
    let kept: Vec<&str> = kept.map(|(_, line)| line).collect();
    let mut reader = Reader::new(Understanding::default());
    reader
        .push(kept.join("\n").as_bytes())
        .expect("it is a table");
    reader.finish().expect("it has readings").series
}

const fn climate(weather: &Series) -> Climate<'_> {
    Climate {
        weather,
        measured: None,
    }
}

fn member(plan: &Plan, number: u32, weather: &Series) -> Member {
    let work = MemberWork::of(plan, number, climate(weather), 1).expect("it can be marched");
    work.finished(climate(weather))
}

fn gathered(plan: &Plan, numbers: impl Iterator<Item = u32>, weather: &Series) -> Gathered {
    let mut found = Gathered::default();
    for number in numbers {
        found.take(number, Ok(member(plan, number, weather)));
    }
    found
}

/// With all values as they stand the year is the year.
#[test]
fn a_member_of_usual_values_is_the_year_itself() {
    let (said, weather) = (example(), summer());
    let inputs = said.usual.inputs.clone();
    let plan = Plan::new(said.usual, 1);
    let hourly = hours_of(&inputs.run, &inputs.season, &weather, None).expect("hours");
    let year = year_of(&inputs.run, &inputs.installation, hourly).expect("a year");
    let work = MemberWork::usual(&plan, climate(&weather), 1).expect("a year");
    assert_eq!(work.clone().year(), year, "hour by hour");
    let usual: Vec<f64> = plan.spans().iter().map(|span| span.usual).collect();
    let with = plan.with(&usual);
    assert_eq!(with.run, inputs.run, "the same run");
    assert_eq!(with.installation, inputs.installation, "installed the same");
    assert_eq!(with.season, inputs.season, "in the same season");
    let member = work.finished(climate(&weather));
    let water = member.totals.get(Quantity::Water);
    assert_eq!(water, Some(year.sum.condensed_kg), "and its sums");
    let kept: f64 = member
        .hours
        .hours
        .iter()
        .map(|hour| hour.condensed_g())
        .sum();
    let grams = 1e3 * year.sum.condensed_kg;
    // Single precision of each hour.
    assert!((kept - grams).abs() < 1e-6 * grams, "{kept} and {grams}");
}

/// Every example's season follows its run, and the other way round nothing else does.
#[test]
fn usual_values_leave_every_example_as_it_is() {
    for name in [
        "make-up-air",
        "pool-hall-exhaust",
        "chilled-supply",
        "sagging-tube",
    ] {
        let said = said(name);
        let plan = Plan::new(said.usual.clone(), 1);
        let usual: Vec<f64> = plan.spans().iter().map(|span| span.usual).collect();
        let with = plan.with(&usual);
        assert_eq!(with.run, said.usual.inputs.run, "{name}");
        assert_eq!(with.installation, said.usual.inputs.installation, "{name}");
        assert_eq!(with.season, said.usual.inputs.season, "{name}");
        assert!(!plan.spans().is_empty(), "{name}: something varies");
    }
}

/// A space that is as entered all year is as warm as the member's run says.
#[test]
fn seasons_follow_their_run() {
    let said = said("make-up-air");
    let plan = Plan::new(said.usual, 1);
    let corridor = plan.spans().iter().position(|span| {
        let Varied::Input { figure, places } = &span.varied else {
            return false;
        };
        *figure == Figure::SpaceTemperature && places.contains(&Place::Space(1))
    });
    let corridor = corridor.expect("the corridor is assumed");
    for number in 0..8 {
        let inputs = plan.inputs(number);
        let value = plan.values(number)[corridor];
        let Space::Room { temperature_c, .. } = &inputs.season.spaces[1].space else {
            panic!("the corridor is a room");
        };
        assert!(
            (temperature_c.otherwise - value).abs() < 1e-9,
            "{number}: {value}"
        );
    }
}

/// Members follow from project and number alone, whoever takes them, in whatever order and pieces.
#[test]
fn members_are_the_same_whoever_takes_them() {
    let (said, weather) = (example(), summer());
    let plan = Plan::new(said.usual.clone(), 7);
    let all = gathered(&plan, 0..4, &weather);
    let again = Plan::new(said.usual.clone(), 7);
    let mut parts = gathered(&again, [3, 1].into_iter(), &weather);
    parts.merge(gathered(&again, [2, 0].into_iter(), &weather));
    assert_eq!(parts, all, "in other hands");
    let mut slices = MemberWork::of(&plan, 2, climate(&weather), 1).expect("a year");
    let mut until = 0;
    while !slices.advance(until) {
        until += 100;
    }
    let slices = slices.member(climate(&weather));
    assert_eq!(Some(&slices), all.members().nth(2), "in slices");
    let other = Plan::new(said.usual, 8);
    assert_ne!(
        other.values(0),
        plan.values(0),
        "another seed, other members"
    );
}

/// Equal weights say what no weights say, and a member without weight is as if it were not there.
/// Friction varies as the other relations do; what it does to a flow is told in `airflow_by_hand`.
#[test]
fn friction_is_a_relation_of_the_ensemble() {
    let plan = Plan::new(example().usual, 1);
    let spans = plan.spans();
    let is_friction = |span: &Span| span.varied == Varied::Relation(Relation::Friction);
    let at = spans.iter().position(is_friction).expect("it varies");
    let mut values: Vec<f64> = spans.iter().map(|span| span.usual).collect();
    assert_eq!(
        plan.with(&values).installation.transition,
        1.0,
        "as published"
    );
    values[at] = spans[at].high;
    let found = plan.with(&values).installation.transition;
    // Of the flow's square: 1 / 0.86^2.
    assert!((found - 1.352_082_2).abs() < 1e-6, "{found}");
}

#[test]
fn equal_weights_change_nothing() {
    let (said, weather) = (example(), summer());
    let plan = Plan::new(said.usual, 1);
    let all = gathered(&plan, 0..12, &weather);
    let plain = told(&plan, &all, None).expect("members");
    assert_eq!(plain.members, 12, "all of them");
    let halves = told(&plan, &all, Some(&[0.5; 12])).expect("members");
    for (one, other) in plain.quantities.iter().zip(&halves.quantities) {
        let ends = |told: &dewrun_advice::Spread| [told.p10, told.p50, told.p90];
        for (one, other) in ends(&one.spread).into_iter().zip(ends(&other.spread)) {
            assert!(
                (one - other).abs() <= 1e-12 * one.abs(),
                "{one} and {other}"
            );
        }
    }
    assert!((halves.worth - 12.0).abs() < 1e-9, "{}", halves.worth);
    let mut weights = [1.0; 12];
    weights[8..].fill(0.0);
    let without = told(&plan, &all, Some(&weights)).expect("members");
    let fewer = told(&plan, &gathered(&plan, 0..8, &weather), None).expect("members");
    assert_eq!(
        without.of(Quantity::Water).map(|one| one.spread),
        fewer.of(Quantity::Water).map(|one| one.spread),
        "eight of twelve"
    );
    assert_eq!(without.worth, 8.0, "are worth eight");
    assert_eq!(told(&plan, &all, Some(&[0.0; 12])), None, "none counts");
}

/// The end of a spread moves less and less, and its ends stand in order.
#[test]
fn spreads_settle() {
    let (said, weather) = (example(), summer());
    let plan = Plan::new(said.usual, 3);
    let some = told(&plan, &gathered(&plan, 0..32, &weather), None).expect("members");
    let more = told(&plan, &gathered(&plan, 32..96, &weather), None).expect("members");
    let water = |told: &dewrun_ensemble::EnsembleTold| {
        told.of(Quantity::Water).expect("water forms").spread
    };
    let (some, more) = (water(&some), water(&more));
    let width = more.p90 - more.p10;
    assert!(more.p10 < more.p50 && more.p50 < more.p90, "{more:?}");
    // 32 independent cases would be off by 0.4 of the width at two deviations.
    for (one, other) in [
        (some.p10, more.p10),
        (some.p50, more.p50),
        (some.p90, more.p90),
    ] {
        assert!((one - other).abs() < 0.4 * width, "{some:?} and {more:?}");
    }
}

/// What was read narrows what it depends on, around the truth; what no case comes near is left out, and taking it away gives everything back.
#[test]
fn readings_narrow_the_ensemble() {
    let (mut said, weather) = (example(), summer());
    for given in &mut said.usual.givens {
        if given.figure == Figure::Flow {
            given.origin = Origin::Assumed {
                row: "flow".to_owned(),
                low: 20.0,
                high: 40.0,
            };
        }
    }
    let plan = Plan::new(said.usual, 1);
    let all = gathered(&plan, 0..48, &weather);
    let truth = member(&plan, 1000, &weather);
    let flow = truth.on_site.expects(Measured::Airflow).expect("air flows");
    let read = |value| Measurement {
        what: Measured::Airflow,
        value,
        error: 1.0,
    };
    let by = reweighted(&all, &[read(flow)]);
    let [reading] = &by.readings[..] else {
        panic!("one reading, not {:?}", by.readings);
    };
    let (before, after) = (
        reading.before.expect("known"),
        reading.after.expect("known"),
    );
    assert_eq!(reading.contradicts, None, "some case agrees");
    assert!(by.worth < 48.0 && 8.0 <= by.worth, "{}", by.worth);
    assert!(
        after.p90 - after.p10 < 0.7 * (before.p90 - before.p10),
        "{before:?} {after:?}"
    );
    assert!(
        after.p10 - 1.0 < flow && flow < after.p90 + 1.0,
        "{flow} in {after:?}"
    );
    let wrong = reweighted(&all, &[read(200.0)]);
    assert!(
        wrong.readings[0].contradicts.is_some(),
        "no case gives so much"
    );
    assert!(
        wrong.weights.iter().all(|weight| *weight == 1.0),
        "it is left out"
    );
    assert_eq!(wrong.worth, 48.0, "and all count again");
}

/// What an ensemble keeps says the same as the year it was kept of.
#[test]
fn hours_are_kept_within_bounds() {
    let (said, weather) = (example(), summer());
    let plan = Plan::new(said.usual, 1);
    let whole = member(&plan, 0, &weather);
    let work = MemberWork::of(&plan, 0, climate(&weather), 4).expect("a year");
    let fours = work.finished(climate(&weather));
    assert_eq!(
        fours.hours.hours.len(),
        whole.hours.hours.len().div_ceil(4),
        "four as one"
    );
    let grams = |kept: &Kept| {
        kept.hours
            .iter()
            .map(|hour| hour.condensed_g())
            .sum::<f64>()
    };
    let (one, other) = (grams(&whole.hours), grams(&fours.hours));
    assert!((one - other).abs() < 1e-5 * one, "{one} and {other}");
    assert_eq!(fours.totals, whole.totals, "sums are of every hour");
}

/// Carried as numbers from where they were marched, members say the same where they are told; only their hours stay behind.
#[test]
fn members_that_are_carried_as_numbers_say_the_same() {
    let (said, weather) = (example(), summer());
    let plan = Plan::new(said.usual, 7);
    let here = gathered(&plan, 0..6, &weather);
    let mut there = Gathered::default();
    for (number, one) in (0..).zip(here.members()) {
        let numbers = one.as_numbers();
        let found = Member::carried(&plan, Some(number), &numbers).expect("a member");
        assert_eq!(found.totals, one.totals, "what its year comes to");
        assert_eq!(found.on_site, one.on_site, "what it says of readings");
        assert_eq!(found.wet_along, one.wet_along, "where it is wet");
        for length in 0..numbers.len() {
            let cut = Member::carried(&plan, Some(number), &numbers[..length]);
            assert_eq!(cut, None, "{length} of {} numbers are none", numbers.len());
        }
        there.take(number, Ok(found));
    }
    assert_eq!(
        told(&plan, &there, None),
        told(&plan, &here, None),
        "all of them together"
    );
    assert_eq!(Member::carried(&plan, None, &[]), None, "no numbers");
}
