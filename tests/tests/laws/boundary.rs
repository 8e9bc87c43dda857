//! The dry boundary: a little drier is dry, a little wetter is wet, along each of its axes.

use dewrun_advice::{Limit, coldest_space, dry_boundary, longest_tube, most_humid_duct_air};
use dewrun_quantity::{Length, Temperature, TemperatureDifference};
use dewrun_run::air::{Humidity, Pair};
use dewrun_run::{Leg, Outcome, Run, Verdict, evaluate};
use dewrun_tests::routes::{awkward, route};

/// Routes of either kind that are looked at.
const ROUTES: u64 = 50;
/// A little drier or wetter, K: ten times what the searches are held to.
const BESIDE_K: f64 = 0.1;
/// A little shorter or longer, m.
const BESIDE_M: f64 = 0.01;

fn outcome(run: &Run) -> Option<Outcome> {
    evaluate(run).ok().map(|outcome| outcome.value)
}

/// Random routes with their answers.
fn routes() -> impl Iterator<Item = (String, Run, Outcome)> {
    let named = |name: &'static str, make: fn(u64) -> Run| {
        (0..ROUTES).filter_map(move |seed| {
            let run = make(seed);
            let now = outcome(&run)?;
            Some((format!("{name} {seed}"), run, now))
        })
    };
    named("route", route).chain(named("awkward", awkward))
}

#[track_caller]
fn verdict(run: &Run, what: &str) -> Verdict {
    match evaluate(run) {
        Ok(outcome) => outcome.value.verdict,
        Err(error) => panic!("{what}: {error}"),
    }
}

fn with_dew_point(run: &Run, air: Temperature, dew_point: Temperature) -> Run {
    Run {
        duct_air: Pair::Temperature(air, Humidity::DewPoint(dew_point)),
        ..run.clone()
    }
}

/// Holds the limit of the duct air at one temperature; says whether there is one.
fn holds(run: &Run, air: Temperature, limit: Limit<Temperature>, what: &str) -> bool {
    let beside = TemperatureDifference::kelvins(BESIDE_K);
    let at = |dew_point| verdict(&with_dew_point(run, air, dew_point), what);
    match limit {
        Limit::At(dew_point) => {
            assert_eq!(at(dew_point - beside), Verdict::Dry, "{what}: drier");
            if dew_point + beside <= air {
                assert_eq!(at(dew_point + beside), Verdict::Wet, "{what}: wetter");
            }
            assert!(dew_point <= air, "{what}: not above saturation");
            true
        }
        Limit::Any => {
            assert_eq!(at(air), Verdict::Dry, "{what}: saturated");
            false
        }
        Limit::Never => {
            let driest = Temperature::celsius(-60.0).min(air);
            assert_eq!(at(driest), Verdict::Wet, "{what}: bone-dry");
            false
        }
    }
}

#[test]
fn duct_air_a_little_drier_is_dry_and_a_little_wetter_is_wet() {
    let mut found = 0;
    for (what, run, now) in routes() {
        let air = now.duct_air.temperature;
        let limit = most_humid_duct_air(&run, &now, air);
        let limit = limit.unwrap_or_else(|error| panic!("{what}: {error}"));
        found += usize::from(holds(&run, air, limit, &what));
        if limit
            .at()
            .is_some_and(|dew_point| Some(dew_point) < now.duct_air.dew_point)
        {
            assert_eq!(now.verdict, Verdict::Wet, "{what}: past its limit");
        }
    }
    assert!(50 <= found, "only {found} routes have a limit");
}

#[test]
fn curve_of_the_boundary_holds_at_each_of_its_points() {
    let temperatures = [-10.0, 5.0, 20.0, 35.0].map(Temperature::celsius);
    let (mut found, mut leaving) = (0, 0);
    for (what, run, now) in routes() {
        let curve = dry_boundary(&run, &now, &temperatures);
        let curve = curve.unwrap_or_else(|error| panic!("{what}: {error}"));
        for point in curve {
            let what = format!("{what} at {:?}", point.temperature);
            found += usize::from(holds(&run, point.temperature, point.dew_point, &what));
            if point.dew_point == Limit::At(point.temperature) {
                let warmer = point.temperature + TemperatureDifference::kelvins(BESIDE_K);
                let saturated = with_dew_point(&run, warmer, warmer);
                assert_eq!(
                    verdict(&saturated, &what),
                    Verdict::Wet,
                    "{what}: saturated"
                );
                leaving += 1;
            }
        }
    }
    assert!(100 <= found, "only {found} points have a limit");
    assert!(30 <= leaving, "only {leaving} curves leave saturation");
}

/// Along the whole axis: dry below the limit, wet above, so that the one crossing found is the only one.
#[test]
fn more_vapour_in_the_duct_never_makes_a_wet_route_dry() {
    for (what, run, now) in routes() {
        let air = now.duct_air.temperature;
        let steps = 40;
        let mut was_wet = None;
        for step in 0..=steps {
            let share = f64::from(step) / f64::from(steps);
            let dew_point_c = -40.0 + (air.to_celsius() + 40.0) * share;
            let dew_point = Temperature::celsius(dew_point_c);
            let wet = verdict(&with_dew_point(&run, air, dew_point), &what) == Verdict::Wet;
            if let (Some(at), false) = (was_wet, wet) {
                panic!("{what}: wet at {at} but dry at {dew_point_c}");
            }
            was_wet = if wet { Some(dew_point_c) } else { was_wet };
        }
    }
}

/// The run with its colder (or warmer) spaces at one temperature.
fn with_spaces(run: &Run, places: &[usize], temperature: Temperature) -> Run {
    let mut changed = run.clone();
    for place in places {
        if let Some(space) = changed.spaces.get_mut(*place) {
            let apart = space.radiant.map(|radiant| radiant - space.temperature);
            space.temperature = temperature;
            space.radiant = apart.map(|apart| temperature + apart);
        }
    }
    changed
}

#[test]
fn spaces_a_little_warmer_are_dry_and_a_little_colder_are_wet() {
    let beside = TemperatureDifference::kelvins(BESIDE_K);
    let mut found = 0;
    for (what, run, now) in routes() {
        let limit = coldest_space(&run, &now).unwrap_or_else(|error| panic!("{what}: {error}"));
        let Limit::At(temperature) = limit.temperature else {
            continue;
        };
        let at = |t| verdict(&with_spaces(&run, &limit.spaces, t), &what);
        assert_eq!(at(temperature + beside), Verdict::Dry, "{what}: warmer");
        assert_eq!(at(temperature - beside), Verdict::Wet, "{what}: colder");
        found += 1;
    }
    assert!(50 <= found, "only {found} routes have a limit");
}

#[test]
fn tube_a_little_shorter_is_dry_and_a_little_longer_is_wet() {
    let mut found = 0;
    for (what, run, now) in routes() {
        let whole_m: f64 = run.intake.iter().map(|leg| leg.length.to_metres()).sum();
        let limit = longest_tube(&run, &now).unwrap_or_else(|error| panic!("{what}: {error}"));
        let at = |length_m| verdict(&cut(&run, length_m), &what);
        match limit.length {
            Limit::At(length) => {
                let length_m = length.to_metres();
                if BESIDE_M + 1e-3 < length_m {
                    assert_eq!(at(length_m - BESIDE_M), Verdict::Dry, "{what}: shorter");
                }
                assert!(length_m < whole_m, "{what}: all of it is no limit");
                let longer_m = (length_m + BESIDE_M).min(whole_m);
                assert_eq!(at(longer_m), Verdict::Wet, "{what}: longer");
                found += 1;
            }
            Limit::Any => {
                let whole = Run {
                    exhaust: Vec::new(),
                    ..run.clone()
                };
                assert_eq!(verdict(&whole, &what), Verdict::Dry, "{what}: all of it");
            }
            Limit::Never => assert_eq!(at(1e-3), Verdict::Wet, "{what}: a millimetre"),
        }
    }
    assert!(20 <= found, "only {found} routes have a limit");
}

/// The route up to a length of its intake, without an exhaust.
fn cut(run: &Run, length_m: f64) -> Run {
    let mut left_m = length_m;
    let mut intake: Vec<Leg> = Vec::new();
    for leg in &run.intake {
        if left_m < 1e-3 && !intake.is_empty() {
            break;
        }
        let part_m = leg.length.to_metres().min(left_m);
        let steep = leg.rise / leg.length;
        left_m -= part_m;
        intake.push(Leg {
            length: Length::metres(part_m),
            rise: Length::metres(part_m * steep),
            ..*leg
        });
    }
    Run {
        intake,
        exhaust: Vec::new(),
        ..run.clone()
    }
}
