//! Runs and answers to draw: invented, roughly as air behaves, so that drawings can be tested without the engine.

#![allow(
    dead_code,
    unreachable_pub,
    reason = "each test file uses a part of it"
)]

use dewrun_drawing::{Names, View};
use dewrun_quantity::{
    Conductivity, FallForm, HumidityRatio, Length, MassFlow, MassFlowPerLength, Power,
    PowerPerLength, Pressure, RelativeHumidity, Speed, Style, Temperature, VolumeFlow,
};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{
    AirPoint, Balance, Detector, Flow, FlowAt, Grade, Leg, LegOutcome, Outcome, ProfilePoint, Run,
    Space, Stretch, Tube, TubeOutcome, TubeWall, Verdict, WallPoint,
};

/// Steps in a leg.
const STEPS: u32 = 24;

/// A space: name, temperature.
pub type SampleSpace = (&'static str, f64);
/// A leg: space, length in m, rise in m.
pub type SampleLeg = (usize, f64, f64);

/// A run with its answer and names.
#[derive(Debug, Clone)]
pub struct Sample {
    pub run: Run,
    pub outcome: Outcome,
    pub names: Names,
}

impl Sample {
    /// Its intake tube as it is drawn in a style.
    pub fn view(&self, style: Style) -> View<'_> {
        View {
            run: &self.run,
            outcome: &self.outcome,
            names: &self.names,
            style,
            tube: Tube::Intake,
        }
    }
}

/// Makes a run of its spaces and intake legs, drawing air of a temperature and dew point.
pub fn sample(duct: (f64, f64), spaces: &[SampleSpace], legs: &[SampleLeg]) -> Sample {
    let intake: Vec<Leg> = legs.iter().map(leg).collect();
    let exhaust = vec![leg(&(legs.last().map_or(0, |l| l.0), 3.0, 0.1))];
    let run = Run {
        pressure: Pressure::pascals(101_325.0),
        duct_air: Pair::Temperature(
            Temperature::celsius(duct.0),
            Humidity::DewPoint(Temperature::celsius(duct.1)),
        ),
        flow: Flow {
            volume: VolumeFlow::litres_per_minute(30.0),
            at: FlowAt::Sensor,
        },
        spaces: spaces.iter().map(space).collect(),
        intake,
        detector: Detector::default(),
        exhaust,
    };
    let tube = answer(duct, &run);
    let names = Names {
        run: "Make-up air 1".into(),
        duct: "Make-up air duct".into(),
        spaces: spaces.iter().map(|(name, _)| (*name).into()).collect(),
        intake_falls: vec![FallForm::Ratio; legs.len()],
        exhaust_falls: vec![FallForm::Ratio],
        ..Names::default()
    };
    let outcome = outcome(duct, tube);
    Sample {
        run,
        outcome,
        names,
    }
}

/// A humid make-up duct with a low point in a cool corridor.
#[must_use]
pub fn make_up_air() -> Sample {
    sample(
        (32.0, 26.0),
        &[
            ("Plant room", 28.0),
            ("Service corridor", 20.0),
            ("Lobby", 23.0),
        ],
        &[
            (0, 1.0, -0.02),
            (1, 4.2, -0.084),
            (1, 3.8, 0.0633),
            (2, 1.6, 0.0267),
            (2, 1.5, -1.5),
        ],
    )
}

/// Up into a freezing loft and down again.
pub fn loft() -> Sample {
    sample(
        (29.0, 21.0),
        &[("Pool plant room", 27.0), ("Loft", -6.0), ("Lobby", 19.0)],
        &[
            (0, 0.5, 0.5),
            (1, 0.8, 0.8),
            (1, 4.2, -0.07),
            (1, 3.2, -0.0533),
            (2, 1.9, -1.9),
        ],
    )
}

/// So many legs, up and down, through three spaces in turn.
pub fn many(legs: usize) -> Sample {
    let spaces = [
        ("Plant room", 28.0),
        ("Ceiling void", 20.0),
        ("Lobby", 23.0),
    ];
    let pattern = [
        (2.4, -0.048),
        (1.2, 0.03),
        (0.9, -0.9),
        (1.7, -0.02),
        (0.6, 0.6),
        (3.0, -0.1),
    ];
    let course: Vec<SampleLeg> = pattern
        .iter()
        .cycle()
        .take(legs)
        .enumerate()
        .map(|(place, (length, rise))| ((place / 3) % 3, *length, *rise))
        .collect();
    sample((32.0, 26.0), &spaces, &course)
}

fn space((_, t): &SampleSpace) -> Space {
    Space {
        temperature: Temperature::celsius(*t),
        humidity: Humidity::Relative {
            value: RelativeHumidity::percent(50.0),
            over: Over::Water,
        },
        radiant: None,
        wind: Speed::metres_per_second(0.0),
    }
}

fn leg(&(space, length, rise): &SampleLeg) -> Leg {
    Leg {
        space,
        length: Length::metres(length),
        rise: Length::metres(rise),
        tube: TubeWall {
            bore: Length::millimetres(19.0),
            outside_diameter: Length::millimetres(22.0),
            conductivity: Conductivity::watts_per_metre_kelvin(0.2),
        },
        insulation: None,
        emissivity: 0.9,
        tracing: PowerPerLength::watts_per_metre(0.0),
    }
}

/// Air and wall go towards the space, the dew point towards the wall where that lies below it.
fn answer((air, dew): (f64, f64), run: &Run) -> TubeOutcome {
    let (mut air, mut dew, mut x) = (air, dew, 0.0);
    let (mut profile, mut legs, mut wet) = (Vec::new(), Vec::new(), Vec::<Stretch>::new());
    for (place, leg) in run.intake.iter().enumerate() {
        let around = run.spaces[leg.space].temperature.to_celsius();
        let step = leg.length.to_metres() / f64::from(STEPS);
        let from = x;
        let (mut sum, mut frost, mut first, mut lowest) = (0.0, 0.0, None, f64::INFINITY);
        for count in 0..=STEPS {
            let wall = air - 0.35 * (air - around);
            let formed = (dew - wall).max(0.0) * 0.9;
            let frozen = if wall < 0.0 { 1.0 } else { 0.0 };
            profile.push(point(x, place, (air, wall, around, dew), formed, frozen));
            lowest = f64::min(lowest, wall);
            if count == STEPS {
                break;
            }
            if 0.0 < formed {
                first = first.or(Some(Length::metres(x)));
                grow(&mut wet, x, x + step);
            }
            sum += formed * step;
            frost += formed * step * frozen;
            dew -= formed * step * 0.35;
            air -= (air - around) * step * 0.33;
            x += step;
        }
        legs.push(LegOutcome {
            from: Length::metres(from),
            to: Length::metres(x),
            condensate: MassFlow::grams_per_hour(sum),
            frost: MassFlow::grams_per_hour(frost),
            sweat: MassFlow::ZERO,
            rime: MassFlow::ZERO,
            first_wet: first,
            lowest_wall: Temperature::celsius(lowest),
            air_at_end: air_point(air, dew),
            heat_to_space: Power::ZERO,
        });
    }
    let coldest = profile.iter().min_by(|a: &&ProfilePoint, b| {
        a.inner_wall
            .to_celsius()
            .total_cmp(&b.inner_wall.to_celsius())
    });
    TubeOutcome {
        condensate: legs.iter().map(|leg| leg.condensate).sum(),
        sweat: MassFlow::ZERO,
        coldest_wall: coldest.map(|point| WallPoint {
            x: point.x,
            temperature: point.inner_wall,
        }),
        legs,
        outlet: air_point(air, dew),
        wet,
        most_mist: HumidityRatio::ZERO,
        near_wall_mist: None,
        profile,
    }
}

fn grow(wet: &mut Vec<Stretch>, from: f64, to: f64) {
    match wet.last_mut() {
        Some(last) if (last.to.to_metres() - from).abs() < 1e-9 => last.to = Length::metres(to),
        _ => wet.push(Stretch {
            from: Length::metres(from),
            to: Length::metres(to),
        }),
    }
}

fn point(x: f64, leg: usize, t: (f64, f64, f64, f64), formed: f64, frozen: f64) -> ProfilePoint {
    ProfilePoint {
        x: Length::metres(x),
        leg,
        air: Temperature::celsius(t.0),
        inner_wall: Temperature::celsius(t.1),
        outer_surface: Temperature::celsius(t.1 - 0.2 * (t.1 - t.2)),
        dew_point: Some(Temperature::celsius(t.3)),
        humidity_ratio: HumidityRatio::kilograms_per_kilogram(0.015),
        mist: HumidityRatio::ZERO,
        deposit: MassFlowPerLength::grams_per_hour_metre(formed),
        frozen_share: frozen,
        sweat: MassFlowPerLength::ZERO,
    }
}

fn air_point(air: f64, dew: f64) -> AirPoint {
    AirPoint {
        temperature: Temperature::celsius(air),
        humidity_ratio: HumidityRatio::kilograms_per_kilogram(0.015),
        mist: HumidityRatio::ZERO,
        relative_humidity: RelativeHumidity::percent(90.0),
        dew_point: Some(Temperature::celsius(dew)),
    }
}

fn outcome(duct: (f64, f64), intake: TubeOutcome) -> Outcome {
    Outcome {
        verdict: if 0.01 < intake.condensate.to_grams_per_hour() {
            Verdict::Wet
        } else {
            Verdict::Dry
        },
        grade: Grade::ByModel,
        dry_air: MassFlow::grams_per_hour(2100.0),
        duct_air: air_point(duct.0, duct.1),
        chamber: intake.outlet,
        intake,
        exhaust: None,
        balance: Balance {
            water_left_over: MassFlow::ZERO,
            water_in: MassFlow::grams_per_hour(30.0),
            energy_left_over: Power::ZERO,
            energy_turned_over: Power::watts(100.0),
        },
    }
}
