//! The year: what each hour leaves for the next closes, and does not hang on cells, lanes or stops.

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio};
use dewrun_quantity::MassPerArea;
use dewrun_run::Run;
use dewrun_tests::routes::{Draw, route};
use dewrun_tube::{Accuracy, Segment, Stream, march};
use dewrun_year::{Around, Grid, Hour, HourSum, Hours, Leg, March, Route, Steps};

const ROUTES: u64 = 60;
/// Hours of each.
const HOURS: usize = 240;
/// Share by which what runs off, and what dries, may be off the march of fine cells; and what no bottle shows, kg.
const DRAINED: f64 = 0.003;
const EVAPORATED: f64 = 0.02;
const NOTHING_KG: f64 = 1e-3;

/// A route and its weather: days and fronts about a state that the seed draws, walls above and below 0 °C.
fn drawn(seed: u64) -> (Route, Hours) {
    let run = route(seed);
    let retained = MassPerArea::grams_per_square_metre(50.0);
    let route = match Route::of_run(&run, retained) {
        Ok(route) => route,
        Err(error) => panic!("seed {seed}: {error}"),
    };
    let hours = weather(&run, seed);
    (route, hours)
}

fn weather(run: &Run, seed: u64) -> Hours {
    let mut draw = Draw::new(seed ^ 0x5eed);
    let p_pa = run.pressure.to_pascals();
    let litres = run.flow.volume.to_litres_per_minute();
    let mut hours = Hours::of_spaces(run.spaces.len());
    let (mut air_c, mut rh) = (draw.between(0.0, 32.0), 0.7);
    for h in 0..HOURS {
        // A day's swing, and a front now and then.
        if draw.chance(0.03) {
            (air_c, rh) = (draw.between(-5.0, 35.0), draw.between(0.2, 1.0));
        }
        let turn = f64::from(u32::try_from(h % 24).unwrap_or(0)) / 24.0;
        let swing = 1.0 - (4.0 * turn - 2.0).abs();
        let air_c = air_c + 4.0 * swing;
        let w =
            humidity_ratio((rh - 0.1 * swing).clamp(0.05, 1.0) * saturated_over_water(air_c, p_pa));
        let flow = litres / 60_000.0 * density_kg_m3(air_c, w, p_pa) / (1.0 + w);
        let hour = Hour {
            seconds: 3600.0,
            air_c,
            w,
            p_pa,
            dry_air_kg_s: flow,
        };
        let spaces = run.spaces.iter().map(|space| {
            let space_c = space.temperature.to_celsius() + 3.0 * swing;
            Around {
                air_c: space_c,
                w: humidity_ratio(0.5 * saturated_over_water(space_c, p_pa)),
                radiant_c: space_c,
                wind_m_s: space.wind.to_metres_per_second(),
            }
        });
        hours.push(hour, spaces);
    }
    hours
}

fn marched(route: &Route, hours: &Hours, grid: Grid, steps: Steps) -> March {
    let mut march = March::new(route, hours, grid, steps);
    assert!(march.advance(hours, usize::MAX), "all hours are marched");
    march
}

fn sum(march: &March, of: impl Fn(&HourSum) -> f64) -> f64 {
    march.hours().iter().map(of).sum()
}

#[test]
fn water_closes_in_every_hour() {
    for seed in 0..ROUTES {
        let (route, hours) = drawn(seed);
        for steps in [Steps::Whole, Steps::Quarters, Steps::QuartersWhereDrying] {
            let march = marched(&route, &hours, Grid::PRODUCT, steps);
            let entered = sum(&march, |hour| hour.water_in_kg);
            let mut film = 0.0;
            let mut all = 0.0;
            for (h, hour) in march.hours().iter().enumerate() {
                let stays = hour.film_kg - film;
                let off = hour.water_in_kg - hour.water_out_kg - hour.drained_kg - stays;
                let deposited = hour.condensed_kg - hour.evaporated_kg - hour.drained_kg - stays;
                assert!(
                    off.abs() <= 1e-9 * entered && deposited.abs() <= 1e-9 * entered,
                    "seed {seed}, hour {h}, {steps:?}: {off} and {deposited} of {entered} kg"
                );
                film = hour.film_kg;
                all += off;
            }
            assert!(
                all.abs() <= 1e-9 * entered,
                "seed {seed}, {steps:?}: {all} of {entered} kg"
            );
        }
    }
}

#[test]
fn the_cells_are_fine_enough() {
    let mut off = Vec::new();
    for seed in 0..ROUTES {
        let (route, hours) = drawn(seed);
        let product = marched(&route, &hours, Grid::PRODUCT, Steps::Whole);
        let fine = marched(&route, &hours, Grid::Even(0.05), Steps::Whole);
        for (what, share, of) in [
            (
                "drained",
                DRAINED,
                (|hour| hour.drained_kg) as fn(&HourSum) -> f64,
            ),
            ("evaporated", EVAPORATED, |hour| hour.evaporated_kg),
        ] {
            let (got, expected) = (sum(&product, of), sum(&fine, of));
            if share * expected + NOTHING_KG < (got - expected).abs() {
                off.push(format!("seed {seed}: {what} {got} kg for {expected}"));
            }
        }
    }
    assert!(off.is_empty(), "{off:#?}");
}

#[test]
fn without_carry_over_each_hour_stands_alone() {
    for seed in 0..ROUTES {
        let (route, hours) = drawn(seed);
        let mut year = March::new(&route, &hours, Grid::PRODUCT, Steps::Whole).without_carry_over();
        year.advance(&hours, usize::MAX);
        for (h, hour) in year.hours().iter().enumerate() {
            let alone = year.alone(&hours, h).expect("the hour is there");
            let off = (hour.condensed_kg - alone.condensed_kg).abs();
            assert!(
                off <= 1e-9 * alone.water_in_kg,
                "seed {seed}, hour {h}: {hour:?}, {alone:?}"
            );
            let off = (hour.outlet.t_c - alone.outlet.t_c).abs();
            assert!(off <= 1e-9, "seed {seed}, hour {h}: {hour:?}, {alone:?}");
        }
    }
}

#[test]
fn an_hour_alone_is_the_steady_answer() {
    let mut off = Vec::new();
    for seed in 0..ROUTES {
        let (route, hours) = drawn(seed);
        let year = March::new(&route, &hours, Grid::PRODUCT, Steps::Whole);
        let (mut got, mut expected) = (0.0, 0.0);
        for h in (0..HOURS).step_by(9) {
            got += year.alone(&hours, h).expect("the hour is there").condensed_kg;
            expected += steady_kg(&route, &hours, h);
        }
        if 0.005 * expected + NOTHING_KG < (got - expected).abs() {
            off.push(format!("seed {seed}: {got} kg for {expected}"));
        }
    }
    assert!(off.is_empty(), "{} {off:#?}", off.len());
}

/// What the steady march deposits in an hour, kg.
fn steady_kg(route: &Route, hours: &Hours, h: usize) -> f64 {
    let hour = hours.hour(h).expect("the hour is there");
    let segments = |legs: &[Leg]| -> Vec<Segment> {
        let segment = |leg: &Leg| {
            let around = hours.around(h, leg.space).expect("the space is there");
            Segment {
                length_m: leg.length_m,
                bore_m: leg.bore_m,
                tube_outside_m: leg.tube_outside_m,
                tube_w_mk: leg.tube_w_mk,
                insulation_m: leg.insulation_m,
                insulation_w_mk: leg.insulation_w_mk,
                emissivity: leg.emissivity,
                tracing_w_m: leg.tracing_w_m,
                riser_m: leg.riser_m,
                air_c: around.air_c,
                air_w: around.w,
                radiant_c: around.radiant_c,
                wind_m_s: around.wind_m_s,
            }
        };
        legs.iter().map(segment).collect()
    };
    let inlet = Stream::new(hour.air_c, hour.w, hour.dry_air_kg_s, hour.p_pa);
    let intake = march(&inlet, &segments(&route.intake), Accuracy::PRODUCT);
    let chamber = intake.end.warmed(route.detector_w);
    let exhaust = march(&chamber, &segments(&route.exhaust), Accuracy::PRODUCT);
    (intake.condensate_kg_s() + exhaust.condensate_kg_s()) * hour.seconds
}

#[test]
fn where_it_stops_makes_no_difference() {
    for seed in 0..10 {
        let (route, hours) = drawn(seed);
        let whole = marched(&route, &hours, Grid::PRODUCT, Steps::QuartersWhereDrying);
        let mut sliced = March::new(&route, &hours, Grid::PRODUCT, Steps::QuartersWhereDrying);
        let mut until = 0;
        while !sliced.advance(&hours, until) {
            until += 7;
        }
        assert_eq!(whole.hours(), sliced.hours(), "seed {seed}");
    }
}

#[test]
fn four_equal_quarters_are_the_hour() {
    for seed in 0..ROUTES {
        let (route, hours) = drawn(seed);
        let march = |steps| {
            let mut march = March::new(&route, &hours, Grid::PRODUCT, steps).without_carry_over();
            march.advance(&hours, usize::MAX);
            march
        };
        let (whole, quarters) = (march(Steps::Whole), march(Steps::Quarters));
        for (h, (hour, parts)) in whole.hours().iter().zip(quarters.hours()).enumerate() {
            let off = (hour.condensed_kg - parts.condensed_kg).abs();
            assert!(
                off <= 1e-9 * hour.water_in_kg,
                "seed {seed}, hour {h}: {hour:?}, {parts:?}"
            );
            assert_eq!(parts.parts, 4, "seed {seed}, hour {h}");
        }
    }
}
