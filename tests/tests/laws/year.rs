//! The year: what each hour leaves for the next closes, and does not hang on cells, lanes or stops.

use dewrun_tests::hours::route_and_hours;
use dewrun_tube::{Accuracy, Factors, Segment, Stream, march};
use dewrun_year::{Around, Grid, Hour, HourSum, Hours, Leg, March, Route, Steps, dry_by_bound};

const ROUTES: u64 = 40;
/// Hours of each.
const HOURS: usize = 720;
/// Share by which what runs off, and what dries, may be off the march of fine cells; and what no bottle shows, kg.
const DRAINED: f64 = 0.003;
const EVAPORATED: f64 = 0.02;
const NOTHING_KG: f64 = 1e-3;
/// The same of what the walls of a route that freezes have taken from the air.
const TAKEN_AS_FROST: f64 = 0.03;

fn drawn(seed: u64) -> (Route, Hours) {
    match route_and_hours(seed, HOURS) {
        Ok(drawn) => drawn,
        Err(error) => panic!("seed {seed}: {error}"),
    }
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
                let stays = hour.on_walls_kg() - film;
                let off = hour.water_in_kg - hour.water_out_kg - hour.drained_kg - stays;
                let deposited = hour.condensed_kg - hour.evaporated_kg - hour.drained_kg - stays;
                assert!(
                    off.abs() <= 1e-9 * entered && deposited.abs() <= 1e-9 * entered,
                    "seed {seed}, hour {h}, {steps:?}: {off} and {deposited} of {entered} kg"
                );
                assert!(
                    0.0 <= hour.outlet.w && -60.0 < hour.coldest_wall_c && 0.0 <= hour.film_kg,
                    "seed {seed}, hour {h}, {steps:?}: {hour:?}"
                );
                film = hour.on_walls_kg();
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
    let (mut off, mut thawed) = (Vec::new(), 0);
    for seed in 0..ROUTES {
        let (route, hours) = drawn(seed);
        let product = marched(&route, &hours, Grid::PRODUCT, Steps::Whole);
        let fine = marched(&route, &hours, Grid::Even(0.05), Steps::Whole);
        let freezes = sum(&fine, |hour| hour.frost_kg) != 0.0;
        let film = [
            (
                "drained",
                DRAINED,
                (|hour| hour.drained_kg) as fn(&HourSum) -> f64,
            ),
            ("evaporated", EVAPORATED, |hour| hour.evaporated_kg),
        ];
        // When ice comes down hangs on a fraction of a kelvin: of routes that freeze it is asked what the walls took.
        let frost = [(
            "taken",
            TAKEN_AS_FROST,
            (|hour| hour.condensed_kg - hour.evaporated_kg) as fn(&HourSum) -> f64,
        )];
        thawed += u32::from(!freezes);
        for &(what, share, of) in if freezes { &frost[..] } else { &film[..] } {
            let (got, expected) = (sum(&product, of), sum(&fine, of));
            if share * expected + NOTHING_KG < (got - expected).abs() {
                off.push(format!("seed {seed}: {what} {got} kg for {expected}"));
            }
        }
    }
    assert!(10 < thawed, "{thawed} routes without ice");
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
    alone_as_steady(Factors::PUBLISHED);
}

/// Relations as far off as each is known, one at a time and together: the year carries them as the steady answer does.
#[test]
fn the_year_carries_the_spread_of_relations() {
    let published = Factors::PUBLISHED;
    for factors in [
        Factors {
            inside: 1.25,
            ..published
        },
        Factors {
            outside: 0.8,
            ..published
        },
        Factors {
            diffusivity: 1.03,
            ..published
        },
        Factors {
            inside: 0.75,
            outside: 1.2,
            diffusivity: 0.97,
        },
    ] {
        alone_as_steady(factors);
    }
}

#[track_caller]
fn alone_as_steady(factors: Factors) {
    let mut off = Vec::new();
    for seed in 0..ROUTES {
        let (route, hours) = drawn(seed);
        let year = March::new(&route, &hours, Grid::PRODUCT, Steps::Whole).with_factors(factors);
        let (mut got, mut expected) = (0.0, 0.0);
        for h in (0..HOURS).step_by(9) {
            got += year
                .alone(&hours, h)
                .expect("the hour is there")
                .condensed_kg;
            expected += steady_kg(&route, &hours, h, factors);
        }
        if 0.005 * expected + NOTHING_KG < (got - expected).abs() {
            off.push(format!("seed {seed}: {got} kg for {expected}"));
        }
    }
    assert!(off.is_empty(), "{} {off:#?}", off.len());
}

/// What the steady march deposits in an hour, kg.
fn steady_kg(route: &Route, hours: &Hours, h: usize, factors: Factors) -> f64 {
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
    let inlet = Stream::new(hour.air_c, hour.w, hour.dry_air_kg_s, hour.p_pa).with_factors(factors);
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

#[test]
fn what_is_dry_by_bound_stays_dry() {
    let mut proved = 0;
    for seed in 0..ROUTES {
        let (route, hours) = drawn(seed);
        let march = marched(&route, &hours, Grid::PRODUCT, Steps::QuartersWhereDrying);
        let mut film_kg = 0.0;
        for (h, hour) in march.hours().iter().enumerate() {
            if dry_by_bound(&route, &hours, h, film_kg == 0.0) {
                proved += 1;
                assert_eq!(hour.condensed_kg, 0.0, "seed {seed}, hour {h}: {hour:?}");
            }
            film_kg = hour.on_walls_kg();
        }
    }
    assert!(100 < proved, "{proved} hours are proved dry");
}

/// Three quarters at 0.004 kg/kg and one at 0.014 about a tube at 12 °C: the mean, 0.0065 kg/kg, has its dew point at 7.6 °C, the wet quarter at 19.3 °C.
#[test]
fn a_wet_quarter_shows_only_in_quarters() {
    let (route, hour) = plain();
    let around = Around {
        air_c: 12.0,
        w: 0.004,
        radiant_c: 12.0,
        wind_m_s: 0.0,
    };
    let mut by_mean = Hours::of_spaces(1);
    by_mean.push(Hour { w: 0.0065, ..hour }, [around]);
    let mut by_quarters = Hours::of_spaces(1);
    for w in [0.004, 0.014, 0.004, 0.004] {
        let quarter = Hour {
            seconds: 900.0,
            w,
            ..hour
        };
        by_quarters.push(quarter, [around]);
    }
    let condensed = |hours: &Hours| {
        let march = marched(&route, hours, Grid::PRODUCT, Steps::Whole);
        sum(&march, |hour| hour.condensed_kg)
    };
    assert_eq!(condensed(&by_mean), 0.0, "the mean is dry");
    assert!(1e-4 < condensed(&by_quarters), "a quarter is wet");
}

/// Six metres of plastic tube, 30 L/min at 24 °C.
fn plain() -> (Route, Hour) {
    let leg = Leg {
        length_m: 6.0,
        bore_m: 0.019,
        tube_outside_m: 0.022,
        tube_w_mk: 0.19,
        insulation_m: 0.0,
        insulation_w_mk: 0.036,
        emissivity: 0.9,
        tracing_w_m: 0.0,
        riser_m: None,
        space: 0,
        retained_kg_m2: 0.05,
    };
    let hour = Hour {
        seconds: 3600.0,
        air_c: 24.0,
        w: 0.01,
        p_pa: 101_325.0,
        dry_air_kg_s: 5.9e-4,
    };
    let route = Route {
        intake: vec![leg],
        detector_w: 0.0,
        exhaust: Vec::new(),
    };
    (route, hour)
}

/// A trickle past a strong heater, and air that hardly flows: the detector's heat then leaves through its housing.
#[test]
fn no_heat_of_a_detector_brings_the_year_beyond_its_relations() {
    for seed in 0..6 {
        let (mut route, hours) = drawn(seed);
        for watts in [5.0, 30.0, 500.0] {
            route.detector_w = watts;
            for share in [1.0, 1e-2, 1e-4] {
                let mut slow = Hours::of_spaces(hours.spaces());
                for position in 0..48 {
                    let hour = *hours.hour(position).expect("two days");
                    let around =
                        (0..hours.spaces()).filter_map(|space| hours.around(position, space));
                    let slower = Hour {
                        dry_air_kg_s: share * hour.dry_air_kg_s,
                        ..hour
                    };
                    slow.push(slower, around.copied());
                }
                let march = marched(&route, &slow, Grid::PRODUCT, Steps::Whole);
                for hour in march.hours() {
                    let sums = [
                        hour.condensed_kg,
                        hour.evaporated_kg,
                        hour.outlet.t_c,
                        hour.outlet.w,
                    ];
                    assert!(
                        sums.iter().all(|sum| sum.is_finite()),
                        "{watts} W, {share}: {hour:?}"
                    );
                    assert!(hour.chamber.t_c < 160.001, "{watts} W, {share}: {hour:?}");
                }
            }
        }
    }
}
