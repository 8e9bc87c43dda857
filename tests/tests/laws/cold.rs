//! What colder surroundings do: less vapour is left, and where mist forms less may reach the wall.

use dewrun_quantity::{
    Conductivity, HumidityRatio, Length, PowerPerLength, Pressure, RelativeHumidity, Speed,
    Temperature, TemperatureDifference, VolumeFlow,
};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{
    Detector, Flow, FlowAt, Leg, LegOutcome, Outcome, Run, Space, TubeOutcome, TubeWall, evaluate,
    evaluate_fine,
};
use dewrun_tests::routes::{Draw, route};

const ROUTES: u64 = 1000;
/// Parts of the last leg, each with its end looked at.
const PARTS: u32 = 6;
/// Vapour that two answers of equal truth may differ by, as a share: the march is held to 0.3 % of what deposits.
const SLACK: f64 = 1e-5;
/// What the misty stream deposits in warmer and in colder surroundings, g/h: less in the colder.
const WARM_G_H: f64 = 5.602;
const COLD_G_H: f64 = 5.228;

fn outcome(run: &Run, seed: u64) -> Outcome {
    match evaluate(run) {
        Ok(outcome) => outcome.value,
        Err(error) => panic!("seed {seed}: {error}"),
    }
}

/// The route with its last leg in a space of its own and drawn as parts.
fn with_last_leg_apart(seed: u64) -> Run {
    let mut run = route(seed);
    // Counted at the sensor, the amount of air would follow the temperature of the last leg.
    run.flow.at = FlowAt::Intake;
    let tube = if run.exhaust.is_empty() {
        &mut run.intake
    } else {
        &mut run.exhaust
    };
    if let Some(mut leg) = tube.pop() {
        let space = run.spaces.get(leg.space).copied();
        run.spaces.extend(space);
        leg.space = run.spaces.len() - 1;
        leg.length = leg.length * (1.0 / f64::from(PARTS));
        leg.rise = leg.rise * (1.0 / f64::from(PARTS));
        tube.extend((0..PARTS).map(|_| leg));
    }
    run
}

fn colder(run: &Run, by: TemperatureDifference) -> Run {
    let mut run = run.clone();
    if let Some(space) = run.spaces.last_mut() {
        let floor = Temperature::celsius(-59.0);
        space.temperature = (space.temperature - by).max(floor);
        space.radiant = space.radiant.map(|radiant| (radiant - by).max(floor));
    }
    run
}

fn last_tube(outcome: &Outcome) -> &TubeOutcome {
    outcome.exhaust.as_ref().unwrap_or(&outcome.intake)
}

/// The parts of the last leg.
fn parts(outcome: &Outcome) -> impl Iterator<Item = &LegOutcome> {
    let legs = &last_tube(outcome).legs;
    let others = legs.len() - usize::try_from(PARTS).unwrap_or(0);
    legs.iter().skip(others)
}

fn vapour(leg: &LegOutcome) -> f64 {
    leg.air_at_end.humidity_ratio.to_kilograms_per_kilogram()
}

#[test]
fn colder_surroundings_never_leave_more_vapour() {
    let mut drier = 0;
    for seed in 0..ROUTES {
        let run = with_last_leg_apart(seed);
        let by = TemperatureDifference::kelvins(Draw::new(seed).between(0.2, 20.0));
        let (warm, cold) = (outcome(&run, seed), outcome(&colder(&run, by), seed));
        let misty = [&warm, &cold]
            .iter()
            .any(|outcome| 0.0 < last_tube(outcome).most_mist.to_kilograms_per_kilogram());
        let ends: Vec<(f64, f64)> = parts(&warm)
            .zip(parts(&cold))
            .map(|(warm, cold)| (vapour(warm), vapour(cold)))
            .collect();
        for (part, (warm, cold)) in ends.iter().enumerate() {
            let at_end = part + 1 == ends.len();
            assert!(
                *cold <= warm * (1.0 + SLACK) || (misty && !at_end),
                "seed {seed}, part {part}: {cold} in the cold, {warm} in the warm, {by:?}"
            );
        }
        drier += u32::from(ends.last().is_some_and(|(warm, cold)| *cold < 0.999 * warm));
    }
    assert!(
        100 < drier,
        "the cold took vapour out of only {drier} routes"
    );
}

/// A saturated stream of 6 L/min in a bare plastic tube through the cold.
fn misty(space_c: f64) -> Run {
    let saturated = Humidity::Relative {
        value: RelativeHumidity::fraction(1.0),
        over: Over::Water,
    };
    Run {
        pressure: Pressure::pascals(101_325.0),
        duct_air: Pair::Temperature(Temperature::celsius(20.0), saturated),
        flow: Flow {
            volume: VolumeFlow::litres_per_minute(6.0),
            at: FlowAt::Intake,
        },
        spaces: vec![Space {
            temperature: Temperature::celsius(space_c),
            humidity: Humidity::Ratio(HumidityRatio::ZERO),
            radiant: None,
            wind: Speed::ZERO,
        }],
        intake: vec![Leg {
            space: 0,
            length: Length::metres(7.0),
            rise: Length::ZERO,
            tube: TubeWall {
                bore: Length::millimetres(13.0),
                outside_diameter: Length::millimetres(16.0),
                conductivity: Conductivity::watts_per_metre_kelvin(0.19),
            },
            insulation: None,
            emissivity: 0.9,
            tracing: PowerPerLength::ZERO,
        }],
        detector: Detector::default(),
        exhaust: Vec::new(),
    }
}

/// The law ends where the bulk turns to mist: what is mist no longer reaches the wall.
///
/// The deposits are those of `tests/generate/steady`, a solver of its own.
#[test]
fn where_mist_forms_a_colder_wall_may_deposit_less() {
    for evaluate in [evaluate, evaluate_fine] {
        for (space_c, expected_g_h) in [(-15.0, WARM_G_H), (-35.0, COLD_G_H)] {
            let intake = match evaluate(&misty(space_c)) {
                Ok(outcome) => outcome.value.intake,
                Err(error) => panic!("{space_c} °C: {error}"),
            };
            let got = intake.condensate.to_grams_per_hour();
            assert!(
                (got / expected_g_h - 1.0).abs() <= 0.01,
                "{got} g/h at {space_c} °C, {expected_g_h} expected"
            );
            assert!(
                1e-4 < intake.most_mist.to_kilograms_per_kilogram(),
                "no mist at {space_c} °C"
            );
        }
    }
}
