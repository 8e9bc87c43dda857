//! Two days of water that stands, worked by hand.
//!
//! Copper tube in a gale keeps its wall at the space's temperature; it is so long that the air leaves saturated at it.
//! Humidity ratios at saturation and 101.325 kPa, 0.010 694 at 15 °C, 0.020 170 at 25 °C, 0.005 424 at 5 °C, 0.001 606 at −10 °C: ASHRAE Handbook Fundamentals (2017), ch. 1, table 2.

use dewrun_numeric::elementary::ln;
use dewrun_quantity::{
    Conductivity, Length, Mass, MassPerArea, Power, PowerPerLength, Pressure, RelativeHumidity,
    Speed, Temperature, Time, VolumeFlow,
};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{
    Detector, Drain, Flow, FlowAt, Installation, Leg, Run, Space, Trap, TubeWall, evaluate,
    standing_of, water_and_air,
};
use dewrun_tests::installations::{plain, trap};
use dewrun_year::{Around, Grid, Hour, Hours, March, Route, Steps, Visits, Water, water_sum};

/// Legs of 10 m that fall and rise by 1:20, as their signs say, in a bore.
fn run(falls: &[f64], bore_mm: f64) -> Run {
    let humidity = Humidity::Relative {
        value: RelativeHumidity::percent(40.0),
        over: Over::Water,
    };
    let leg = |fall: &f64| Leg {
        space: 0,
        length: Length::metres(10.0),
        rise: Length::metres(-0.5 * fall),
        tube: TubeWall {
            bore: Length::millimetres(bore_mm),
            outside_diameter: Length::millimetres(bore_mm + 2.0),
            conductivity: Conductivity::watts_per_metre_kelvin(390.0),
        },
        insulation: None,
        emissivity: 0.1,
        tracing: PowerPerLength::ZERO,
    };
    Run {
        pressure: Pressure::pascals(101_325.0),
        duct_air: Pair::Temperature(Temperature::celsius(20.0), humidity),
        flow: Flow {
            volume: VolumeFlow::litres_per_minute(6.0),
            at: FlowAt::Intake,
        },
        spaces: vec![Space {
            temperature: Temperature::celsius(15.0),
            humidity,
            radiant: None,
            wind: Speed::metres_per_second(10.0),
        }],
        intake: falls.iter().map(leg).collect(),
        detector: Detector {
            heat: Power::ZERO,
            humidity_rating: None,
        },
        exhaust: Vec::new(),
    }
}

/// A stretch of hours: their number, the space, °C, the duct's vapour, kg/kg.
type Stretch = (usize, f64, f64);

fn hours(stretches: &[Stretch], dry_air_kg_s: f64) -> Hours {
    let mut hours = Hours::of_spaces(1);
    for &(count, space_c, w) in stretches {
        for _ in 0..count {
            push(&mut hours, (25.0, w, dry_air_kg_s), (space_c, 0.001));
        }
    }
    hours
}

/// An hour more: the duct's air, °C and kg/kg, with its flow, kg/s; a windy space, °C and kg/kg.
fn push(hours: &mut Hours, (air_c, w, dry_air_kg_s): (f64, f64, f64), space: (f64, f64)) {
    let hour = Hour {
        seconds: 3600.0,
        air_c,
        w,
        p_pa: 101_325.0,
        dry_air_kg_s,
    };
    let around = Around {
        air_c: space.0,
        w: space.1,
        radiant_c: space.0,
        wind_m_s: 10.0,
    };
    hours.push(hour, [around]);
}

/// The march with water at the flow that is given, or at that which follows.
fn marched(run: &Run, built: &Installation, hours: &Hours, visits: Visits, follows: bool) -> March {
    let steady = evaluate(run).expect("a plain run").value;
    let whole = water_and_air(run, built, &steady).expect("a plain installation");
    let water = Water::of_run(run, built, &steady, &whole, visits).expect("a plain installation");
    let water = if follows {
        water
    } else {
        water.with_given_flow()
    };
    let route = Route::of_run(run, MassPerArea::grams_per_square_metre(50.0)).expect("a plain run");
    let mut march = March::with_water(&route, hours, (Grid::PRODUCT, Steps::Whole), water);
    assert!(march.advance(hours, usize::MAX), "all hours");
    march
}

#[track_caller]
fn near(got: f64, expected: f64, share: f64, what: &str) {
    assert!(
        (got - expected).abs() <= share * expected.abs(),
        "{what}: {got}, by hand {expected}"
    );
}

/// A pool that fills, slugs, seals and dries: bore 10 mm, 6 L/min, 1.2e-4 kg/s of dry air.
///
/// Fills: 0.0150 kg/kg enter, 0.010 694 leave: 0.432 kg/h · 0.004 306 = 1.860 g/h deposit within the first metres.
/// Vapour passes at pi · 3.0e-5 · 3.66 = 3.45e-4 kg/(s m), over 1.2e-4: it falls off by e in L = 0.35 m; the heat of it, which warms the wall
/// at the inlet by some 1.8 K, makes that up to 0.5 m. The wall keeps 0.05 · pi · 0.01 = 1.571 g/m of a deposit of 1.860/L g/(h m) at the start:
/// after t hours 1.571 L (1 + ln(1.184 t/L)) g, 1.8 to 2.3 g after 3 h, 2.5 to 3.3 g after 10 h.
/// Slugs: 1e-4 m3/s through the free area at h = 0.519 D moves as fast as (1 - h/D) sqrt(rho_w g A_g/(rho chord)) = 2.67 m/s
/// (A_g = 37.4 mm2, chord 9.99 mm); so deep stand 23.2 % of the sealing volume, (pi/8) 1 mL (19.975 + 19.975) = 15.69 mL: 3.6 g, after 2.9 to 3.2 h.
/// Seals: after (15.68 + 2.5 to 3.3)/1.860 = 9.8 to 10.2 h. So hour 3 or 4 begins with slugs, and hour 10 or 11 closed.
/// Dries: from hour 12 at 25 °C, 0.004 kg/kg. The film gives all the air can take in the first hours. Then, by ln((1 - 0.003 984)/(1 - 0.019 771)) = 0.015 978,
/// density 1.17, diffusivity 2.178e-5 · 1.0915^1.81 = 2.552e-5, Sherwood 3.66: 1.17 · 3.66 · 2.552e-5/0.01 · 0.015 978 = 1.746e-4 kg/(s m2),
/// from a surface of 78.5 mm2 · 40 = 0.003 14 m2 that lies 0.29 transfer units long: 0.870 of it, 1.72 g/h.
/// 19 g shrink with their surface, as about V^0.6: some 25 h. It is gone before the end.
#[test]
fn a_pool_fills_slugs_seals_and_dries() {
    let run = run(&[1.0, -1.0], 10.0);
    let hours = hours(&[(12, 15.0, 0.0150), (36, 25.0, 0.0040)], 1.2e-4);
    let march = marched(&run, &plain(&run), &hours, Visits::Never, false);
    let level_g = |h: usize| 1e3 * march.levels(h)[0];
    near(level_g(2), 3.0 * 1.860 - 2.05, 0.07, "after 3 h");
    near(level_g(9), 10.0 * 1.860 - 2.9, 0.03, "after 10 h");
    let water = march.water_hours();
    let begin = |of: fn(&dewrun_year::StateShares) -> f64| {
        let found = water.iter().position(|hour| 0.0 < of(&hour.states));
        found.expect("it comes to that")
    };
    let (slugs, closed) = (begin(|states| states.slugs), begin(|states| states.sealed));
    assert!((3..=4).contains(&slugs), "first slugs: {slugs}");
    assert!((10..=11).contains(&closed), "closed: {closed}");
    assert_eq!(begin(|states| states.blind), closed, "and blind");
    near(
        1e3 * water[16].went.evaporated_kg,
        1.72,
        0.06,
        "dries in an hour",
    );
    let film_g = 1e3 * march.hours()[16].film_kg;
    assert!(film_g < 1e-6, "the film is gone by then: {film_g} g");
    assert!(level_g(35) < level_g(16), "it shrinks");
    assert_eq!(march.levels(47), [0.0], "and is gone");
    let sum = water_sum(water);
    near(
        sum.went.evaporated_kg,
        march.levels(11)[0],
        1e-2,
        "all of it dried, but for what ran down of the film",
    );
}

/// A trap full between visits: bore 19 mm, 2e-4 kg/s, a trap of 40 g at the low point, emptied each day.
///
/// 0.72 kg/h · (0.0170 - 0.010 694) = 4.540 g/h. It falls off by e in 2e-4/3.45e-4 = 0.580 m; the wall keeps 0.05 · pi · 0.019 = 2.985 g/m
/// of a deposit of 7.83 g/(h m): after t hours 2.985 · 0.580 (1 + ln(2.62 t)) g: 6.1 g after 10 h, 8.9 g after 24 h, 10.1 g after 48 h.
/// The trap is full when 40 + 6.1 g have come: after 10.2 h, so that hour 10 ends with it full; what comes after stands over it.
/// At the end of hour 23 the visit lets out all that has run down, 24 · 4.540 - 8.0 = 101 g.
/// The second day brings 24 · 4.540 less the 1.2 g that the wall still takes: 107.8 g; the trap fills in 40/4.5 = 8.9 h, by the end of hour 32.
/// No air of 15 °C that is saturated dries anything: nothing evaporates.
#[test]
fn a_trap_is_full_between_visits() {
    let run = run(&[1.0, -1.0], 19.0);
    let mut built = plain(&run);
    built.intake.traps.push(Trap {
        capacity: Mass::grams(40.0),
        drain: Drain::ByHand,
        ..trap(Length::metres(10.0))
    });
    let hours = hours(&[(48, 15.0, 0.0170)], 2.0e-4);
    let visits = Visits::Every(Time::days(1.0));
    let march = marched(&run, &built, &hours, visits, false);
    let water = march.water_hours();
    let full: Vec<usize> = (0..48)
        .filter(|h| 0.0 < water[*h].states.trap_full)
        .collect();
    let by_hand: Vec<usize> = (10..23).chain(32..47).collect();
    assert_eq!(full, by_hand, "hours that end with a full trap");
    let kept_g = |t: f64| 2.985 * 0.580 * (1.0 + ln(2.62 * t));
    near(
        1e3 * water[23].went.let_out_kg,
        24.0 * 4.540 - kept_g(24.0),
        0.02,
        "the first visit",
    );
    near(
        1e3 * water[47].went.let_out_kg,
        24.0 * 4.540 - kept_g(48.0) + kept_g(24.0),
        0.02,
        "the second",
    );
    let sum = water_sum(water);
    assert_eq!((sum.fillings, sum.emptyings), (2, 2), "{sum:?}");
    let passed_g = 1e3 * sum.went.overflowed_kg;
    near(
        passed_g,
        1e3 * sum.went.let_out_kg - 80.0,
        1e-6,
        "what the trap had no room for",
    );
    assert!(sum.went.evaporated_kg < 1e-4, "{sum:?}");
    assert_eq!(march.levels(47), [0.0, 0.0], "emptied");
}

/// Frost, then a slug into the trap: bore 19 mm, 1.2e-4 kg/s, a trap of 30 g at the low point.
///
/// A day at −10 °C: 0.432 kg/h · (0.0060 - 0.001 606) = 1.898 g/h, 45.6 g of frost, none of which runs.
/// It falls off by e in 0.35 to 0.4 m: 4.7 to 5.5 g/(h m) at the start, where 200 kg/m3 · 283.5 mm2 = 56.7 g/m close the bore after 10 to 12 h; over a cell of a tenth of a metre, by 15 h.
/// Then +5 °C, and 0.0054 kg/kg, which is saturation there: a metre of wall takes up some 33 W, 119 kJ an hour, and at most 131 g/m ask for 44 kJ:
/// all is gone within the hour. The wall keeps 2.985 · 0.35 (1 + ln(131/2.985)) = 5.0 g of it: 40.6 g come down, 0.5 g less if it lies on 0.4 m, and up to 0.7 g more that the thawing wall has drawn from the air.
/// The trap takes 30 g, the other 10.1 g to 11.3 g stand over it.
#[test]
fn frost_comes_down_into_the_trap() {
    let run = run(&[1.0, -1.0], 19.0);
    let mut built = plain(&run);
    built.intake.traps.push(Trap {
        capacity: Mass::grams(30.0),
        ..trap(Length::metres(10.0))
    });
    let hours = hours(&[(24, -10.0, 0.0060), (24, 5.0, 0.0054)], 1.2e-4);
    let march = marched(&run, &built, &hours, Visits::Never, false);
    let water = march.water_hours();
    near(1e3 * march.hours()[23].frost_kg, 45.6, 0.01, "frost");
    assert_eq!(march.levels(23), [0.0, 0.0], "nothing has run");
    assert_eq!(water[8].states.iced, 0.0, "open at first");
    assert_eq!(
        water[16].states.iced, 1.0,
        "closed by frost: {:?}",
        water[16]
    );
    assert_eq!(water[16].states.blind, 1.0, "and blind");
    assert_eq!(water[26].states.iced, 0.0, "open again");
    let after = march.levels(24);
    near(1e3 * after[1], 30.0, 1e-9, "the trap");
    let over_g = 1e3 * after[0];
    assert!(
        (9.8..12.0).contains(&over_g),
        "over the trap: {over_g} g, by hand 10.1 to 11.3"
    );
    near(
        water[24].went.ran_down_kg,
        after[0] + after[1],
        1e-9,
        "all of the slug",
    );
    assert_eq!(water[24].states.trap_full, 1.0, "full");
}

/// Flow that falls with the pool: bore 10 mm, 6 L/min as fitted.
///
/// 20 m of it at 1.273 m/s cost 32 · 1.82e-5 · 1.273 · 20/1e-4 = 148 Pa, the filter 3 Pa/(L/min) · 6 = 18 Pa, all else about 2 Pa; the fan's pressure is nearly level there.
/// As in the pool that fills, 5 h bring 5 · 1.83 - 2.1 = 7.1 g, 0.453 of what seals: 0.695 D deep, a share of 0.257 free.
/// Both ends cost 0.926 · 0.6 · (1.273/0.257)^2 = 13.6 Pa; the narrow part, laminar, D_h 3.87 mm, 190 Pa/m where it is deepest and as the gap to the power of -3.5
/// beside it: 190 · 3.05 mm/0.05/2.5 = 4.6 Pa on each side. So 177 q + 13.6 q^2 = 168 + a little of the fan: q = 0.89 to 0.95.
/// After 7 h, with 0.93 and 0.85 of the flow meanwhile, 10.2 g stand, 0.65 of what seals: 0.813 D deep, 0.129 free, K 1.194, 69.8 Pa; D_h 2.4 mm, 1000 Pa/m, 15 Pa on each side:
/// 198 q + 69.8 q^2 = 170: q = 0.69.
/// Closed, nothing passes, and the detector is blind.
#[test]
fn the_flow_falls_with_the_pool() {
    let run = run(&[1.0, -1.0], 10.0);
    let hours = hours(&[(48, 15.0, 0.0150)], 1.2e-4);
    let march = marched(&run, &plain(&run), &hours, Visits::Never, true);
    let water = march.water_hours();
    near(water[0].reading, 1.0, 0.005, "as fitted");
    near(water[5].reading, 0.92, 0.035, "after 5 h");
    near(water[7].reading, 0.69, 0.08, "after 7 h");
    assert!(
        water
            .iter()
            .zip(&water[1..24])
            .all(|(one, next)| next.reading <= one.reading + 1e-3),
        "it falls"
    );
    let (later, early) = (march.hours()[9].condensed_kg, march.hours()[1].condensed_kg);
    assert!(
        later < 0.8 * early,
        "less air, less water: {later} kg and {early} kg"
    );
    let low = water.iter().position(|hour| 0.0 < hour.states.low);
    assert!(
        low.is_some_and(|hour| hour < 9),
        "under the low limit first: {low:?}"
    );
}

/// A closed pool that freezes through: bore 10 mm, as the pool that fills, the flow as given.
///
/// 12 h at 15 °C close it with about 19 g (the pool that fills), of which 15.69 g would. From hour 12 at -10 °C, with air so dry that no frost forms: the run's own answer has its surface at the space's temperature,
/// so that what it gives to it is taken as 9 W/(m2 K): of 12 mm pi, half of it wetted, 0.17 W/(m K), over 0.40 to 0.44 m and 10 K 0.68 to 0.75 W. 15.69 g of 333.6 J/g freeze in 1.9 to 2.1 h: hour 14 or 15 begins behind ice, and so do all up to the thaw.
/// At 15 °C 1.0 to 1.1 W, 11 to 12 g/h, thaw the 3.5 g beyond that in the first hour: hour 21 begins with water that closes.
#[test]
fn a_closed_pool_that_freezes_is_closed_by_ice() {
    let run = run(&[1.0, -1.0], 10.0);
    let stretches = [(12, 15.0, 0.0150), (8, -10.0, 0.0012), (6, 15.0, 0.0107)];
    let all = hours(&stretches, 1.2e-4);
    let march = marched(&run, &plain(&run), &all, Visits::Never, false);
    let states = |h: usize| march.water_hours()[h].states;
    let closed = |h: usize| (states(h).sealed, states(h).iced);
    for h in 12..=13 {
        assert_eq!(closed(h), (1.0, 0.0), "by water in hour {h}");
    }
    for h in 15..=20 {
        assert_eq!(closed(h), (1.0, 1.0), "by ice in hour {h}");
    }
    for h in 21..26 {
        assert_eq!(closed(h), (1.0, 0.0), "by water again in hour {h}");
    }
    let most_kg_m2 = march.hours()[12..20]
        .iter()
        .map(|hour| hour.most_frost_kg_m2);
    let most_kg_m2 = most_kg_m2.fold(0.0, f64::max);
    assert!(
        most_kg_m2 < 0.06,
        "no more is frost than what the wall kept: {most_kg_m2} kg/m2"
    );
}

/// What a leg lets through from water in it to its space, in still air: that of its outside film, wherever the air loses its heat.
///
/// Air of 60 °C is at rest with the space long before the leg's end. By Churchill & Chu (1975) a level tube of 12 mm has Nu 1.88, 2.58 and 3.49 at 1, 5 and 20 K: 4.0, 5.5 and 7.5 W/(m2 K), radiation 0.57 more.
/// So between 5.0 and 8.0 W/(m2 K), of 12 mm pi 0.19 to 0.30 W/(m K).
#[test]
fn a_leg_lets_through_what_its_film_does() {
    let mut run = run(&[1.0, -1.0], 10.0);
    run.duct_air = Pair::Temperature(
        Temperature::celsius(60.0),
        Humidity::Relative {
            value: RelativeHumidity::percent(5.0),
            over: Over::Water,
        },
    );
    run.spaces[0].wind = Speed::metres_per_second(0.0);
    let built = plain(&run);
    let steady = evaluate(&run).expect("a plain run").value;
    let whole = water_and_air(&run, &built, &steady).expect("a plain installation");
    let standing = standing_of(&run, &built, &steady, &whole.airflow).expect("the same");
    let passes = standing.tubes[0].passes[0].to_watts_per_metre_kelvin();
    assert!((0.19..0.30).contains(&passes), "{passes} W/(m K)");
}

/// A seal that no water refills falls: 50 mm of a bore of 10 mm, air of 20 °C and 50 % on both sides, 0.007 262 kg/kg.
///
/// Stefan's tube over 50 mm of still air dries it in 28.3 weeks (Bird, Stewart & Lightfoot, as [`dewrun_water::drying::seal_dries_out`] has it by hand):
/// 0.050 m/(28.3 · 168 h) = 1.052e-5 m an hour, of two columns of 78.54 mm2, 0.1568 kg/m: 48 h take 79.2 mg. It is far from dry: nothing leaks.
/// Then 1.860 g/h run down for a day, as in the pool that fills: the first 79 mg fill it up, all else leaves.
#[test]
fn a_seal_falls_and_is_refilled() {
    let run = run(&[1.0, -1.0], 10.0);
    let mut built = plain(&run);
    built.intake.traps.push(Trap {
        drain: Drain::ByItself,
        bore: Length::millimetres(10.0),
        seal: Length::millimetres(50.0),
        ..trap(Length::metres(10.0))
    });
    let mut hours = Hours::of_spaces(1);
    for h in 0..72 {
        let (t_c, w) = if h < 48 {
            (20.0, 0.007_262)
        } else {
            (15.0, 0.0150)
        };
        push(&mut hours, (20.0, w, 1.2e-4), (t_c, 0.007_262));
    }
    let march = marched(&run, &built, &hours, Visits::Never, false);
    let (dry, wet) = march.water_hours().split_at(48);
    let fell_kg: f64 = dry.iter().map(|hour| hour.went.off_seals_kg).sum();
    near(fell_kg, 79.2e-6, 0.02, "off the seal");
    assert_eq!(water_sum(dry).hours.trap_leaks, 0.0, "no air passes");
    let ran_kg: f64 = wet.iter().map(|hour| hour.went.ran_down_kg).sum();
    let left_kg: f64 = wet.iter().map(|hour| hour.went.drained_kg).sum();
    assert!(0.02 < ran_kg, "{ran_kg} kg run down");
    let off_kg: f64 = wet.iter().map(|hour| hour.went.off_seals_kg).sum();
    let filled_kg = ran_kg - left_kg;
    assert!(
        (79e-6..79e-6 + off_kg + 2e-6).contains(&filled_kg),
        "{filled_kg} kg"
    );
}

/// A filter gathers dust: bore 10 mm, 6 L/min as fitted, dry all year, a day at a time.
///
/// As in the flow that falls with the pool, 20 m of tube cost 148 Pa, laminar, the clean filter 18 Pa, all else about 2 Pa, and the fan's pressure is nearly level.
/// After a year the filter costs 27 Pa at the old flow: 175 q + 2 q^2 = 168, q = 0.950; after half a year 22.5 Pa, 170.5 q + 2 q^2 = 168, q = 0.974. The fan gives a little more where less passes.
#[test]
fn a_filter_gathers_dust_through_the_year() {
    let run = run(&[-1.0, -1.0], 10.0);
    let mut hours = Hours::of_spaces(1);
    for _ in 0..365 {
        let hour = Hour {
            seconds: 86_400.0,
            air_c: 20.0,
            w: 0.004,
            p_pa: 101_325.0,
            dry_air_kg_s: 1.2e-4,
        };
        let around = Around {
            air_c: 15.0,
            w: 0.001,
            radiant_c: 15.0,
            wind_m_s: 10.0,
        };
        hours.push(hour, [around]);
    }
    let march = marched(&run, &plain(&run), &hours, Visits::Never, true);
    let water = march.water_hours();
    near(water[0].reading, 1.0, 0.003, "clean");
    near(water[182].reading, 0.976, 0.004, "after half a year");
    near(water[364].reading, 0.953, 0.007, "after a year");
}

/// A seal is blown through before it is dry: halfway along 20 m that cost 148 Pa, as in the flow that falls with the pool, with a hole before them.
///
/// There the tube lies 74 Pa to 78 Pa under the room: 7.5 mm to 8.0 mm of water, half of which falls on each of two equal legs: 3.8 mm to 4.0 mm must stand.
/// The seal falls by 0.010 52 mm an hour, as in the seal that falls: 4.2 mm let air through after 19 h to 38 h, 5 mm not in two days, 3.5 mm from the start.
#[test]
fn a_low_seal_is_blown_through() {
    let run = run(&[1.0, -1.0], 10.0);
    let mut hours = Hours::of_spaces(1);
    for _ in 0..48 {
        push(&mut hours, (20.0, 0.007_262, 1.2e-4), (20.0, 0.007_262));
    }
    let leaks = |seal_mm: f64| {
        let mut built = plain(&run);
        built.intake.traps.push(Trap {
            drain: Drain::ByItself,
            bore: Length::millimetres(10.0),
            seal: Length::millimetres(seal_mm),
            ..trap(Length::metres(10.0))
        });
        let march = marched(&run, &built, &hours, Visits::Never, false);
        let told = march.water_hours().iter();
        told.map(|hour| hour.states.trap_leaks).collect::<Vec<_>>()
    };
    assert_eq!(leaks(5.0), vec![0.0; 48], "high enough");
    assert_eq!(leaks(3.5), vec![1.0; 48], "too low as it is built");
    let falling = leaks(4.2);
    let first = falling.iter().position(|leaks| 0.0 < *leaks);
    assert!(
        first.is_some_and(|hour| (17..40).contains(&hour)),
        "too low after a day: {falling:?}"
    );
}
