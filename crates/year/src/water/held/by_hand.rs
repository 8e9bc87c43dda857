//! Water that stands, followed by hand: each amount that moves in a step, and where it is told.

use super::*;
use crate::water::way::InTheWay;
use dewrun_quantity::{Conductivity, Length, Mass, Temperature};
use dewrun_run::{Drain, StandingTube, Trap, Tube};
use dewrun_water::Water;
use dewrun_water::drainage::{DrainLeg, DrainTube, TrapAt as DrainTrapAt};
use dewrun_water::held::{Keeping, Puddle};
use dewrun_water::trap::TrapKind;

/// Legs of 10 m with their rise, m, in a bore of 20 mm that passes 0.30 W/(m K); by-hand traps with what they take, kg.
pub(in crate::water) fn places(rises_m: &[f64], traps: &[(f64, f64)]) -> Places {
    of_tube(rises_m, traps, Drain::ByHand)
}

/// One that drains itself over a seal of 50 mm in a bore of 19 mm, at the end of 10 m that fall.
fn over_seal() -> Places {
    of_tube(&[-0.2, 0.4], &[(10.0, f64::INFINITY)], Drain::ByItself)
}

fn of_tube(rises_m: &[f64], traps: &[(f64, f64)], drain: Drain) -> Places {
    let leg = |rise_m: &f64| DrainLeg {
        length: Length::metres(10.0),
        rise: Length::metres(*rise_m),
        bore: Length::millimetres(20.0),
        keeping: Keeping {
            puddle: Puddle {
                length: Length::metres(10.0),
                ..Puddle::USUAL
            },
            ..Keeping::USUAL
        },
        reachable: true,
    };
    let at = |(at_m, kg): &(f64, f64)| DrainTrapAt {
        at: Length::metres(*at_m),
        capacity: kg.is_finite().then(|| Mass::kilograms(*kg)),
    };
    let built = |(at_m, kg): &(f64, f64)| Trap {
        at: Length::metres(*at_m),
        drain,
        open: false,
        kind: TrapKind::EqualLegs,
        capacity: Mass::kilograms(*kg),
        seal: match drain {
            Drain::ByItself => Length::millimetres(50.0),
            _ => Length::ZERO,
        },
        outlet_drop: Length::ZERO,
        bore: Length::millimetres(19.0),
    };
    let tube = StandingTube {
        tube: Tube::Intake,
        drain: DrainTube {
            legs: rises_m.iter().map(leg).collect(),
            traps: traps.iter().map(at).collect(),
            water: Water::at(Temperature::celsius(4.0)),
        },
        traps: traps.iter().map(built).collect(),
        passes: vec![Conductivity::watts_per_metre_kelvin(0.30); rises_m.len()],
        spaces: vec![0; rises_m.len()],
    };
    Places::of(&[tube]).expect("a plain tube")
}

/// An hour at a temperature of space and walls with what runs down each slope, kg.
fn hour(held: &mut Held, places: &Places, runs: &[f64], t_c: f64, visited: bool) -> WaterHour {
    let walls = vec![t_c; held.stands()];
    held.step(
        places,
        &Came {
            seconds: 3600.0,
            runs,
            took: &[],
            wall_c: &walls,
            outside_c: &[t_c],
            seal_falls_m: &[],
            visited,
        },
    )
}

#[track_caller]
fn near(got: f64, expected: f64, share: f64) {
    assert!(
        (got - expected).abs() <= share * expected.abs(),
        "{got}, by hand {expected}"
    );
}

/// Standing water freezes and thaws: 50 g between falls of 1:50 and 1:25 wet 0.5 m and 0.25 m of floor (the pool's own test).
///
/// They wet half of the wall, which passes 0.30 W/(m K): at −10 °C 0.5 · 0.75 · 0.30 · 10 = 1.125 W leave, 4.05 kJ an hour,
/// and freeze 4.05/333.46 = 12.15 g; all is ice after 4.1 h. At +5 °C half as much comes in: 6.07 g an hour, all is water again after 8.2 h.
#[test]
fn a_pool_freezes_and_thaws() {
    // Per length: sines of 1:50 and 1:25.
    let places = places(&[-0.199_96, 0.399_68], &[]);
    let mut held = Held::new(&places);
    let first = hour(&mut held, &places, &[0.050, 0.0], -10.0, false);
    near(first.standing_kg, 0.050, 1e-9);
    near(first.ice_kg, 0.012_15, 0.01);
    for _ in 0..3 {
        assert!(0.0 < held.pools[0].water, "some is water still: {held:?}");
        hour(&mut held, &places, &[], -10.0, false);
    }
    let frozen = hour(&mut held, &places, &[], -10.0, false);
    near(frozen.ice_kg, 0.050, 1e-9);
    let thaws = hour(&mut held, &places, &[], 5.0, false);
    near(0.050 - thaws.ice_kg, 0.006_07, 0.01);
    let hours = (1..20).find(|_| hour(&mut held, &places, &[], 5.0, false).ice_kg == 0.0);
    assert_eq!(hours, Some(8), "in the ninth hour");
}

/// A closed trap freezes, cracks, leaks at thaw, and is mended at a visit: 100 g in a bore of 19 mm.
///
/// 100 mL have 4 · 1e-4/0.019 = 0.021 05 m2 of wall: at −10 °C 9 · 0.021 05 · 10 = 1.895 W leave, 6.82 kJ an hour, 20.5 g:
/// ice through and through in the fifth hour. At +10 °C it thaws as fast, and then runs out, with all that comes until somebody mends it.
#[test]
fn a_trap_cracks_in_the_frost() {
    let places = places(&[-0.2, 0.4], &[(10.0, 0.5)]);
    let mut held = Held::new(&places);
    let first = hour(&mut held, &places, &[0.100], -10.0, false);
    near(first.trapped_kg, 0.100, 1e-9);
    near(held.traps[0].store.ice, 0.020_5, 0.01);
    for _ in 0..4 {
        assert!(!held.traps[0].cracked, "not yet: {held:?}");
        hour(&mut held, &places, &[], -10.0, false);
    }
    assert!(held.traps[0].cracked && !held.traps[0].leaks, "{held:?}");
    let thaw = (1..20).find(|_| {
        let thawed = hour(&mut held, &places, &[], 10.0, false);
        0.0 < thawed.went.leaked_kg
    });
    assert_eq!(thaw, Some(5), "in the fifth hour: {held:?}");
    let more = hour(&mut held, &places, &[0.030], 10.0, true);
    near(more.went.leaked_kg, 0.030, 1e-9);
    let mended = hour(&mut held, &places, &[0.030], 10.0, false);
    assert_eq!(
        (mended.went.leaked_kg, held.traps[0].store.water),
        (0.0, 0.030),
        "{held:?}"
    );
}

/// Down 0.4 m, up 0.1 m, down 0.1 m, up 0.4 m: two low points with a crest of 0.1 m between them, each of which holds the same.
///
/// The first fills and runs over into the second; when both are full they are one, which rises towards the ends;
/// as it dries below the crest there are two again, each full.
#[test]
fn two_pools_run_together_and_part() {
    let places = places(&[-0.4, 0.1, -0.1, 0.4], &[]);
    let mut held = Held::new(&places);
    let capacity = places.pools[0].capacity_kg;
    hour(&mut held, &places, &[1.5 * capacity], 10.0, false);
    near(held.pools[0].water, capacity, 1e-9);
    near(held.pools[1].water, 0.5 * capacity, 1e-9);
    hour(&mut held, &places, &[capacity], 10.0, false);
    assert!(held.joined[2] && held.pools[0].water == 0.0, "{held:?}");
    near(held.pools[2].water, 2.5 * capacity, 1e-9);
    held.step(
        &places,
        &Came {
            seconds: 3600.0,
            runs: &[],
            took: &[0.0, 0.0, capacity],
            wall_c: &[10.0; 3],
            outside_c: &[10.0],
            seal_falls_m: &[],
            visited: false,
        },
    );
    assert!(!held.joined[2], "{held:?}");
    near(held.pools[0].water, 0.75 * capacity, 1e-6);
    near(held.pools[1].water, 0.75 * capacity, 1e-6);
}

/// A tube that falls all the way gives its water to the detector; one that rises, to the duct.
#[test]
fn ends_take_what_comes() {
    for (rise_m, duct_kg, detector_kg) in [(-0.4, 0.0, 0.010), (0.4, 0.010, 0.0)] {
        let places = places(&[rise_m], &[]);
        let mut held = Held::new(&places);
        let told = hour(&mut held, &places, &[0.010], 10.0, false);
        assert_eq!(told.went.into_duct_kg, duct_kg, "{rise_m} m");
        assert_eq!(told.went.into_detector_kg, detector_kg, "{rise_m} m");
    }
}

/// A step in which so much dries from each pool, then each flat stretch, kg, and the first seal falls, m, all at 0 °C, so that nothing freezes or thaws.
fn dries(
    held: &mut Held,
    places: &Places,
    took: &[f64],
    seal_falls_m: f64,
    runs: &[f64],
) -> WaterHour {
    let walls = vec![0.0; held.stands()];
    held.step(
        places,
        &Came {
            seconds: 3600.0,
            runs,
            took,
            wall_c: &walls,
            outside_c: &[0.0],
            seal_falls_m: &[seal_falls_m],
            visited: false,
        },
    )
}

/// 30 g run to a low point, 10 g of them dry: 20 g stand. Of 50 g that are frozen 10 g dry as ice, once no water is left.
#[test]
fn what_runs_down_and_dries_is_told() {
    let places = places(&[-0.2, 0.4], &[]);
    let mut held = Held::new(&places);
    let came = dries(&mut held, &places, &[], 0.0, &[0.030, 0.0]);
    assert_eq!(
        (came.went.ran_down_kg, came.standing_kg),
        (0.030, 0.030),
        "{came:?}"
    );
    let dried = dries(&mut held, &places, &[0.010], 0.0, &[]);
    assert_eq!(dried.went.evaporated_kg, 0.010, "{dried:?}");
    near(dried.standing_kg, 0.020, 1e-12);
    held.pools[0] = Store {
        water: 0.004,
        ice: 0.046,
    };
    let dried = dries(&mut held, &places, &[0.014], 0.0, &[]);
    near(dried.standing_kg, 0.036, 1e-9);
    assert_eq!(held.pools[0].water, 0.0, "its water went first: {held:?}");
}

/// A level stretch of 10 m keeps its puddle: what is beyond its capacity runs on into the detector.
///
/// Half full it wets a quarter of the wall over 5 m, which passes 0.30 W/(m K): at −1 °C 0.25 · 5 · 0.30 · 1 = 0.375 W leave, 1.35 kJ an hour, and freeze 4.05 g.
#[test]
fn a_puddle_keeps_what_it_can_and_freezes() {
    let places = places(&[-0.4, 0.0], &[]);
    let slope = places
        .slopes
        .iter()
        .position(|slope| !slope.fills.is_empty());
    let runs = |kg: f64| {
        let mut runs = vec![0.0; places.slopes.len()];
        runs[slope.expect("a slope that meets the level stretch")] = kg;
        runs
    };
    let capacity = places.flats[0].capacity_kg;
    let mut held = Held::new(&places);
    let first = hour(&mut held, &places, &runs(0.5 * capacity), -1.0, false);
    near(first.standing_kg, 0.5 * capacity, 1e-9);
    assert_eq!(
        first.went.into_detector_kg, 0.0,
        "all of it stays: {first:?}"
    );
    near(first.ice_kg, 0.004_05, 0.01);
    let more = hour(
        &mut held,
        &places,
        &runs(0.5 * capacity + 0.010),
        10.0,
        false,
    );
    near(more.went.into_detector_kg, 0.010, 1e-6);
}

/// 600 g come to a trap of 500 g: 100 g pass it and stand over it; the visit lets out both. Cracked and thawed it keeps none of 600 g.
#[test]
fn a_full_trap_lets_the_rest_pass() {
    let places = places(&[-0.2, 0.4], &[(10.0, 0.5)]);
    let mut held = Held::new(&places);
    let full = hour(&mut held, &places, &[0.600], 10.0, false);
    near(full.went.overflowed_kg, 0.100, 1e-9);
    near(full.standing_kg, 0.100, 1e-9);
    near(full.trapped_kg, 0.500, 1e-9);
    assert_eq!(full.states.trap_full, 1.0, "{full:?}");
    let visited = hour(&mut held, &places, &[], 10.0, true);
    near(visited.went.let_out_kg, 0.600, 1e-9);
    assert_eq!(
        (
            visited.standing_kg,
            visited.trapped_kg,
            visited.states.trap_full
        ),
        (0.0, 0.0, 0.0),
        "{visited:?}"
    );
    held.traps[0].leaks = true;
    let leaks = hour(&mut held, &places, &[0.600], 10.0, false);
    near(leaks.went.leaked_kg, 0.600, 1e-9);
    assert_eq!(
        (leaks.standing_kg, leaks.states.trap_leaks),
        (0.0, 1.0),
        "{leaks:?}"
    );
}

/// A seal of 50 mm in 19 mm holds two columns of 283.5 mm2: 0.567 kg/m, 28.35 g. It falls by 10 mm, 5.67 g; of 20 g that come then 5.67 g fill it up and 14.33 g drain.
///
/// Where 20 mm are needed against the suction, 31 mm less let air through, and water that comes closes it again; without suction it would have been tight.
#[test]
fn a_seal_falls_is_refilled_and_is_blown_through() {
    let mut places = over_seal();
    let mut held = Held::new(&places);
    let fallen = dries(&mut held, &places, &[], 0.010, &[]);
    near(fallen.went.off_seals_kg, 0.005_67, 0.002);
    near(fallen.trapped_kg, 0.022_68, 0.002);
    let refilled = dries(&mut held, &places, &[], 0.0, &[0.020, 0.0]);
    near(refilled.went.drained_kg, 0.014_33, 0.002);
    near(refilled.trapped_kg, 0.028_35, 0.002);
    let tight = |held: &Held, places: &Places| {
        InTheWay::of(places, (&[], held), false, &[])
            .leaking
            .is_empty()
    };
    let low = dries(&mut held, &places, &[], 0.031, &[]);
    assert_eq!(
        low.states.trap_leaks, 0.0,
        "19 mm are left, and nothing sucks: {low:?}"
    );
    assert!(tight(&held, &places), "no air comes in");
    places.traps[0].blown_m = 0.020;
    let blown = dries(&mut held, &places, &[], 0.0, &[]);
    assert_eq!(blown.states.trap_leaks, 1.0, "{blown:?}");
    assert!(!tight(&held, &places), "air comes in through it");
    let closed = dries(&mut held, &places, &[], 0.0, &[0.100, 0.0]);
    assert_eq!(closed.states.trap_leaks, 0.0, "{closed:?}");
    assert!(tight(&held, &places), "and no more");
    let gone = dries(&mut held, &places, &[], 0.060, &[]);
    assert_eq!(
        (gone.trapped_kg, gone.states.trap_leaks),
        (0.0, 1.0),
        "{gone:?}"
    );
}

/// Closed water stands in the way with its head: 100 g beyond what seals, on the detector's side of 1:25, in 314.2 mm2: 1000 · 9.81 · (1e-4/3.142e-4) · 0.04 = 124.9 Pa.
///
/// Ice that closes a bore, and a trap that has cracked, are in the way as well.
#[test]
fn what_stands_is_in_the_way_of_the_air() {
    let places = places(&[-0.199_96, 0.399_68], &[(10.0, 0.5)]);
    let mut held = Held::new(&places);
    let way = |kg: f64, held: &Held, iced: bool| InTheWay::of(&places, (&[kg], held), iced, &[]);
    let seals = places.pools[0].seal_kg;
    let closed = way(seals + 0.100, &held, false);
    near(closed.head_pa.unwrap_or(0.0), 124.9, 0.01);
    assert!(closed.is_sealed() && 0.99 < closed.deepest(), "{closed:?}");
    let open = way(0.5 * seals, &held, false);
    assert!(
        !open.is_sealed() && 0.5 < open.deepest() && open.deepest() < 1.0,
        "{open:?}"
    );
    assert!(way(0.0, &held, true).is_iced(), "frost");
    held.traps[0].leaks = true;
    assert_eq!(way(0.0, &held, false).leaking.len(), 1, "a cracked trap");
}
