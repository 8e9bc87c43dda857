//! Where water goes, by hand and over random tubes.

use super::*;
use crate::held::{Keeping, Puddle};
use crate::{Incline, Water};
use dewrun_quantity::{Density, ForcePerLength, MassFlow, MassPerArea, MassPerLength, Volume};
use proptest::prelude::{Just, Strategy, any, prop_assert, proptest};
use proptest::prop_oneof;

use core::f64::consts::PI;

/// Round numbers for sums by hand.
const WATER: Water = Water {
    density: Density::kilograms_per_cubic_metre(1000.0),
    surface_tension: ForcePerLength::newtons_per_metre(0.073),
};

const DRY_WALL: Keeping = Keeping {
    film: MassPerArea::ZERO,
    puddle: Puddle {
        cosine_difference: 0.0,
        ..Puddle::USUAL
    },
    corrugations: MassPerLength::ZERO,
};

/// A leg of 20 mm bore that rises so many millimetres at so much per horizontal length.
fn leg(rise_mm: f64, slope: f64, keeping: Keeping) -> DrainLeg {
    let sine = Incline::per_horizontal(slope).sine();
    DrainLeg {
        length: Length::millimetres(rise_mm.abs() / sine),
        rise: Length::millimetres(rise_mm),
        bore: Length::millimetres(20.0),
        keeping,
        reachable: true,
    }
}

fn tube(legs: Vec<DrainLeg>) -> DrainTube {
    DrainTube {
        legs,
        traps: Vec::new(),
        water: WATER,
    }
}

fn everywhere(tube: &DrainTube, grams_per_hour: f64) -> Vec<Formed> {
    vec![Formed {
        from: Length::ZERO,
        to: Length::metres(tube.end_m()),
        rate: MassFlow::grams_per_hour(grams_per_hour),
    }]
}

fn way(tube: &DrainTube, formed: &[Formed]) -> Drainage {
    Drainage::of(tube, formed, Traps::Emptied).expect("a plain tube")
}

#[track_caller]
fn near(got: f64, expected: f64, relative: f64) {
    assert!(
        (got - expected).abs() <= relative * expected.abs(),
        "{got}, by hand {expected}"
    );
}

/// Two legs of 80 mm fall each at 1:50 meet: 4.0008 m each. 20 g/h form evenly.
/// The walls keep 50 g/m2 · π · 0.020 m · 8.0016 m = 25.138 g, which takes 1.2569 h, the same everywhere.
/// It seals at (π/8) · 8 mL · 100 = 314.159 mL = 314.159 g, after 1.2569 + 15.7080 = 16.9649 h.
#[test]
fn a_v_seals_after_its_walls_are_wet() {
    let tube = tube(vec![
        leg(-80.0, 0.02, Keeping::USUAL),
        leg(80.0, 0.02, Keeping::USUAL),
    ]);
    let drainage = way(&tube, &everywhere(&tube, 20.0));
    let [pool] = drainage.pools.as_slice() else {
        panic!("one low point: {drainage:?}");
    };
    near(pool.at.to_metres(), 4.0008, 1e-6);
    let seal = Mass::grams(pool.shape.seal_volume().to_millilitres());
    near(seal.to_grams(), 314.159_265, 1e-8);
    let hours = pool.inflow.time_for(seal).map(Time::to_hours);
    near(hours.expect("water comes"), 16.9649, 1e-5);
    let standing = drainage.after(Time::hours(10.0)).standing.to_grams();
    near(standing, 200.0, 1e-12);
}

/// Dips of 10 and 30 mm beside each other, legs at 1:50 on a dry wall, 100 g/h into the first.
///
/// The first holds D³/12 · 100 = 66.667 mL when its water stands 10 mm deep at the lower crest (after 40 min),
/// then runs over into the second, which is 10 mm lower there and as wide: at 30 mm over its floor both would be level,
/// but its other crest lies 20 mm over its floor, so it fills to its crown: (π/8) · 8 · 100 = 314.159 mL, and runs out at the end.
#[test]
fn a_dip_runs_over_into_the_next_and_that_out_of_the_end() {
    let tube = tube(vec![
        leg(-40.0, 0.02, DRY_WALL),
        leg(10.0, 0.02, DRY_WALL),
        leg(-30.0, 0.02, DRY_WALL),
        leg(20.0, 0.02, DRY_WALL),
    ]);
    let forms = Formed {
        from: Length::ZERO,
        to: Length::metres(1.0),
        rate: MassFlow::grams_per_hour(100.0),
    };
    let drainage = way(&tube, &[forms]);
    let [first, second] = drainage.pools.as_slice() else {
        panic!("two low points: {drainage:?}");
    };
    near(first.capacity.to_grams(), 66.666_667, 1e-6);
    near(first.full.expect("it fills").to_hours(), 0.666_667, 1e-6);
    assert_eq!(first.runs_over_to, Some(Destination::Pool(1)), "{first:?}");
    // Square to the tube the leg of 20 mm rise is a little longer than its water reaches.
    near(second.capacity.to_grams(), 314.159, 1e-3);
    assert_eq!(second.runs_over_to, Some(Destination::End), "{second:?}");
    let balance = drainage.after(Time::hours(10.0));
    near(
        balance.carried_off.to_grams(),
        1000.0 - 66.667 - 314.159,
        1e-3,
    );
}

/// Dips of 10 mm on both sides of a crest within a trough of 40 mm: both fill, run together, and rise on as one.
#[test]
fn two_dips_run_together() {
    let tube = tube(vec![
        leg(-40.0, 0.02, DRY_WALL),
        leg(10.0, 0.02, DRY_WALL),
        leg(-10.0, 0.02, DRY_WALL),
        leg(40.0, 0.02, DRY_WALL),
    ]);
    let drainage = way(&tube, &everywhere(&tube, 100.0));
    let [first, second, both] = drainage.pools.as_slice() else {
        panic!("two low points and both together: {drainage:?}");
    };
    assert_eq!(both.joins, [0, 1], "both are in it");
    assert_eq!(
        (first.joined_by, second.joined_by),
        (Some(2), Some(2)),
        "they say so"
    );
    // 100 g/h come to both alike; each holds 66.667 g at the crest between them.
    near(both.begins.to_hours(), 1.333_333, 1e-6);
    let late = Time::hours(3.0);
    assert_eq!(first.amount(late), Mass::ZERO, "it is counted in both");
    near(both.amount(late).to_grams(), 300.0, 1e-9);
}

/// A level tube of 4 m and 20 mm bore lets half of its water out at either end, once its floor is wet.
#[test]
fn a_level_tube_drains_to_both_ends() {
    let level = DrainLeg {
        length: Length::metres(4.0),
        rise: Length::ZERO,
        ..leg(-10.0, 0.02, Keeping::USUAL)
    };
    let tube = tube(vec![level]);
    let drainage = way(&tube, &everywhere(&tube, 40.0));
    let rates = [&drainage.out_at_start, &drainage.out_at_end].map(|out| out.final_rate());
    near(rates[0].to_grams_per_hour(), 20.0, 1e-12);
    near(rates[1].to_grams_per_hour(), 20.0, 1e-12);
    let holds = legs(&tube).expect("plain")[0].holds;
    let soon = drainage.after(Time::hours(0.99 * holds.to_grams() / 40.0));
    assert_eq!(
        soon.carried_off,
        Mass::ZERO,
        "the puddles hold it: {soon:?}"
    );
}

/// A level step on a slope passes on what comes, once its puddle is full: 3 m fall, 2 m level, 3 m fall to the end.
#[test]
fn a_flat_leg_keeps_its_puddle_of_what_comes_from_above() {
    let slope = leg(-60.0, 0.02, Keeping::USUAL);
    let level = DrainLeg {
        length: Length::metres(2.0),
        rise: Length::ZERO,
        ..slope
    };
    let tube = tube(vec![slope, level, slope]);
    let forms = Formed {
        from: Length::ZERO,
        to: Length::metres(1.0),
        rate: MassFlow::grams_per_hour(10.0),
    };
    let drainage = way(&tube, &[forms]);
    let report = legs(&tube).expect("plain");
    // The first metre of wall keeps 50 g/m2 · π · 0.020 m · 1 m = 3.1416 g, the level leg its puddle.
    let keeps = 0.050 * 20.0 * PI + report[1].holds.to_grams();
    let first_drop = drainage
        .out_at_end
        .time_for(Mass::grams(1e-9))
        .map(Time::to_hours);
    near(first_drop.expect("it passes"), keeps / 10.0, 1e-6);
}

#[test]
fn a_trap_takes_what_comes_from_above() {
    let mut tube = tube(vec![leg(-80.0, 0.02, DRY_WALL), leg(80.0, 0.02, DRY_WALL)]);
    tube.traps.push(TrapAt {
        at: Length::metres(3.0),
        capacity: Some(Mass::grams(60.0)),
    });
    let drainage = way(&tube, &everywhere(&tube, 80.016));
    // 10 g/h a metre: 3 m above the trap, 1.0008 m between it and the low point, 4.0008 m on the other side;
    // the low point runs over into the trap once it stands 20 mm deep.
    near(
        drainage.into_traps[0].amount(Time::hours(1.0)).to_grams(),
        30.0,
        1e-6,
    );
    assert_eq!(
        drainage.pools[0].runs_over_to,
        Some(Destination::Trap(0)),
        "back to the trap"
    );
    near(
        drainage.pools[0].inflow.final_rate().to_grams_per_hour(),
        50.016,
        1e-5,
    );
    near(
        drainage.trap_full(&tube, 0).expect("it fills").to_hours(),
        2.0,
        1e-6,
    );
    let overflow = Drainage::overflow_of(&tube, 0);
    assert_eq!(overflow, Ok(Some(Destination::Pool(0))), "on down the leg");
}

#[test]
fn a_forgotten_trap_fills_and_lets_pass() {
    let mut tube = tube(vec![leg(-80.0, 0.02, DRY_WALL), leg(80.0, 0.02, DRY_WALL)]);
    tube.traps.push(TrapAt {
        at: Length::metres(tube.end_m() / 2.0),
        capacity: Some(Mass::grams(60.0)),
    });
    let formed = everywhere(&tube, 20.0);
    assert!(
        way(&tube, &formed).pools.is_empty(),
        "emptied, it takes all"
    );
    let drainage = Drainage::of(&tube, &formed, Traps::Forgotten).expect("plain");
    let pool = &drainage.pools[0];
    // 60 g in the trap, then 100 g at the low point: 8 h.
    let time = pool.inflow.time_for(Mass::grams(100.0)).map(Time::to_hours);
    near(time.expect("it stands"), 8.0, 1e-9);
}

#[test]
fn a_forgotten_trap_at_the_end_fills_before_water_leaves() {
    let mut tube = tube(vec![leg(-80.0, 0.02, DRY_WALL)]);
    tube.traps.push(TrapAt {
        at: Length::metres(tube.end_m()),
        capacity: Some(Mass::grams(60.0)),
    });
    let drainage = Drainage::of(&tube, &everywhere(&tube, 20.0), Traps::Forgotten).expect("plain");
    let full = drainage.trap_full(&tube, 0).map(Time::to_hours);
    near(full.expect("it fills"), 3.0, 1e-9);
    let balance = drainage.after(Time::hours(5.0));
    near(balance.carried_off.to_grams(), 40.0, 1e-9);
    near(balance.drained.to_grams(), 60.0, 1e-9);
}

#[test]
fn what_no_wall_keeps_is_refused() {
    let good = leg(-80.0, 0.02, Keeping::USUAL);
    let keeping = |film, length_m| Keeping {
        film: MassPerArea::grams_per_square_metre(film),
        puddle: Puddle {
            length: Length::metres(length_m),
            ..Puddle::USUAL
        },
        ..Keeping::USUAL
    };
    for keeping in [
        keeping(f64::NAN, 0.2),
        keeping(-1.0, 0.2),
        keeping(50.0, 0.0),
    ] {
        let tube = tube(vec![good, DrainLeg { keeping, ..good }]);
        let refused = legs(&tube);
        assert!(
            matches!(refused, Err(DrainageError::Leg { leg: 1, .. })),
            "{refused:?}"
        );
    }
    let mut tube = tube(vec![good]);
    tube.traps.push(TrapAt {
        at: Length::ZERO,
        capacity: Some(Mass::grams(f64::NAN)),
    });
    assert!(legs(&tube).is_err(), "a trap of no known size");
}

#[test]
fn water_dries_on_its_way() {
    let tube = tube(vec![leg(-80.0, 0.02, DRY_WALL), leg(80.0, 0.02, DRY_WALL)]);
    let stretch = |from, to, rate| Formed {
        from: Length::metres(from),
        to: Length::metres(to),
        rate: MassFlow::grams_per_hour(rate),
    };
    let drainage = way(&tube, &[stretch(0.0, 1.0, 9.0), stretch(2.0, 3.0, -4.0)]);
    let rates = [&drainage.evaporates, &drainage.pools[0].inflow].map(|flow| flow.final_rate());
    near(rates[0].to_grams_per_hour(), 4.0, 1e-12);
    near(rates[1].to_grams_per_hour(), 5.0, 1e-12);
}

#[test]
fn the_trap_goes_to_the_lowest_place_within_reach() {
    let mut tube = tube(vec![leg(-80.0, 0.02, DRY_WALL), leg(80.0, 0.02, DRY_WALL)]);
    let formed = everywhere(&tube, 20.0);
    let proposed = |tube: &DrainTube| propose(tube, &formed, None).expect("plain")[0];
    let all = proposed(&tube);
    assert_eq!(all.at, Some(all.low_point), "the low point itself");
    assert_eq!(all.leaves, Volume::ZERO, "nothing stays below");
    for leg in &mut tube.legs {
        leg.reachable = false;
    }
    assert_eq!(proposed(&tube).at, None, "no leg within reach");
    // The second half of the second leg: 40 mm over the low point, where the bore is closed already.
    let second = tube.legs[1];
    let half = DrainLeg {
        length: second.length * 0.5,
        rise: second.rise * 0.5,
        ..second
    };
    tube.legs = vec![
        tube.legs[0],
        half,
        DrainLeg {
            reachable: true,
            ..half
        },
    ];
    let high = proposed(&tube);
    near(high.over.to_millimetres(), 40.0, 1e-9);
    assert!(
        Volume::millilitres(314.0) < high.leaves,
        "the water below it seals: {high:?}"
    );
}

#[test]
fn an_end_that_water_must_not_reach_gets_its_trap() {
    let tube = tube(vec![leg(-80.0, 0.02, DRY_WALL)]);
    let formed = everywhere(&tube, 20.0);
    let proposed = propose(&tube, &formed, Some(Destination::End)).expect("plain");
    let at = proposed.first().and_then(|trap| trap.at);
    assert_eq!(at, Some(Length::metres(tube.end_m())), "before the end");
    let none = propose(&tube, &formed, Some(Destination::Start)).expect("plain");
    assert!(none.is_empty(), "no water comes to the start: {none:?}");
}

#[test]
fn what_is_no_tube_says_why() {
    let sentence = |legs, traps| {
        let tube = DrainTube {
            legs,
            traps,
            water: WATER,
        };
        let formed = [];
        Drainage::of(&tube, &formed, Traps::Emptied)
            .map(|_| ())
            .map_err(|error| error.to_string())
    };
    let good = leg(-80.0, 0.02, DRY_WALL);
    let steep = DrainLeg {
        rise: Length::metres(5.0),
        length: Length::metres(4.0),
        ..good
    };
    let nothing = DrainLeg {
        length: Length::ZERO,
        ..good
    };
    let off = TrapAt {
        at: Length::metres(9.0),
        capacity: None,
    };
    for (legs, traps, expected) in [
        (
            vec![],
            vec![],
            "the tube has no legs, must have at least one",
        ),
        (
            vec![steep],
            vec![],
            "a rise of 5 m is more than the length of 4 m",
        ),
        (
            vec![nothing],
            vec![],
            "the length is 0 m, must be from 0.001 to 1\u{2009}000 m",
        ),
    ] {
        assert_eq!(sentence(legs, traps), Err(expected.to_owned()), "said so");
    }
    assert!(
        sentence(vec![good], vec![off]).is_err_and(|text| text.starts_with("the trap lies at 9 m")),
        "a trap off the tube"
    );
}

fn a_leg() -> impl Strategy<Value = DrainLeg> {
    let slope = prop_oneof![
        Just(0.0),
        -0.1..0.1_f64,
        -0.005..0.005_f64,
        Just(1.0),
        Just(-1.0),
        -1.0..1.0_f64,
    ];
    (0.05..6.0_f64, slope, 0.0..150.0_f64, any::<bool>()).prop_map(
        |(length_m, sine, film, reachable)| DrainLeg {
            length: Length::metres(length_m),
            rise: Length::metres(length_m * sine),
            bore: Length::millimetres(16.0),
            keeping: Keeping {
                film: MassPerArea::grams_per_square_metre(film),
                ..Keeping::USUAL
            },
            reachable,
        },
    )
}

fn a_tube() -> impl Strategy<Value = (DrainTube, Vec<Formed>)> {
    let legs = proptest::collection::vec(a_leg(), 1..9);
    let traps = proptest::collection::vec((0.0..1.0_f64, any::<bool>(), 1.0..500.0_f64), 0..3);
    let rates = proptest::collection::vec(-20.0..60.0_f64, 1..7);
    (legs, traps, rates).prop_map(|(legs, traps, rates)| {
        let mut tube = tube(legs);
        let end = Length::metres(tube.end_m());
        for (share, by_hand, grams) in traps {
            tube.traps.push(TrapAt {
                at: end * share,
                capacity: by_hand.then(|| Mass::grams(grams)),
            });
        }
        let count = rates.len() as f64;
        let formed = rates.iter().zip(0_u8..).map(|(rate, number)| Formed {
            from: end * (f64::from(number) / count),
            to: end * ((f64::from(number) + 1.0) / count),
            rate: MassFlow::grams_per_hour(*rate),
        });
        let formed = formed.collect();
        (tube, formed)
    })
}

/// The same tube with one leg in two.
fn split(tube: &DrainTube, number: usize, share: f64) -> DrainTube {
    let mut split = tube.clone();
    let number = number % tube.legs.len();
    let whole = split.legs[number];
    let part = |share: f64| DrainLeg {
        length: whole.length * share,
        rise: whole.rise * share,
        ..whole
    };
    split
        .legs
        .splice(number..=number, [part(share), part(1.0 - share)]);
    split
}

proptest! {
    #[test]
    fn all_water_is_somewhere((tube, formed) in a_tube(), hours in 0.0..3000.0_f64, forgotten in any::<bool>()) {
        let traps = if forgotten { Traps::Forgotten } else { Traps::Emptied };
        let drainage = Drainage::of(&tube, &formed, traps)?;
        let balance = drainage.after(Time::hours(hours));
        let came: f64 = formed.iter().map(|stretch| stretch.rate.to_grams_per_hour().max(0.0) * hours).sum();
        let went = balance.standing + balance.drained + balance.evaporated + balance.carried_off;
        prop_assert!((balance.formed.to_grams() - came).abs() <= 1e-9 * came, "{} of {came} g formed", balance.formed.to_grams());
        prop_assert!((went.to_grams() - came).abs() <= 1e-9 * came, "{} of {came} g are somewhere: {balance:?}", went.to_grams());
    }

    #[test]
    fn splitting_a_leg_changes_nothing((tube, formed) in a_tube(), number in 0_usize..8, share in 0.05..0.95_f64, hours in 0.0..3000.0_f64) {
        let split = split(&tube, number, share);
        let (one, two) = (Drainage::of(&tube, &formed, Traps::Emptied)?, Drainage::of(&split, &formed, Traps::Emptied)?);
        prop_assert!(one.pools.len() == two.pools.len(), "as many pools: {one:?} {two:?}");
        let came = one.after(Time::hours(hours)).formed.to_grams();
        let (one, two) = (one.after(Time::hours(hours)), two.after(Time::hours(hours)));
        for (one, two) in [
            (one.standing, two.standing),
            (one.drained, two.drained),
            (one.evaporated, two.evaporated),
            (one.carried_off, two.carried_off),
        ] {
            prop_assert!((one - two).to_grams().abs() <= 1e-6 * (came + 1.0), "{one:?} {two:?}");
        }
    }

    #[test]
    fn nothing_that_stands_grows_less((tube, formed) in a_tube(), hours in 0.0..1000.0_f64, more in 0.0..1000.0_f64) {
        let drainage = Drainage::of(&tube, &formed, Traps::Emptied)?;
        let (early, late) = (drainage.after(Time::hours(hours)), drainage.after(Time::hours(hours + more)));
        let slack = Mass::grams(1e-9 * (1.0 + late.formed.to_grams()));
        prop_assert!(early.standing <= late.standing + slack, "{early:?} {late:?}");
        prop_assert!(early.carried_off <= late.carried_off + slack, "{early:?} {late:?}");
    }
}
