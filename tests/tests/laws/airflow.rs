//! What holds for every airflow line: balances, orderings, continuity, mirror images.

use dewrun_airflow::{
    Airflow, AirflowError, Direction, DuctPressures, FanCurve, Fitting, Inlet, Line, OpenEnd, Pool,
    PoolShape, Side, State, airflow,
};
use dewrun_numeric::circular_segment::height_of_integral;
use dewrun_quantity::{Density, Length, Pressure, Volume, VolumeFlow};
use dewrun_tests::lines::{humped_fan, line, state, whole_state, wild};

const LINES: u64 = 1000;
/// Of the pressures at work, what may be left of their balance.
const CLOSED: f64 = 1e-9;

fn flow(line: &Line, state: &State, seed: u64) -> Airflow {
    match airflow(line, state) {
        Ok(flow) => flow.value,
        Err(error) => panic!("seed {seed}: {error}"),
    }
}

fn litres(line: &Line, state: &State, seed: u64) -> f64 {
    flow(line, state, seed).sensor.to_litres_per_minute()
}

/// The flow has not risen by more than the last digits of the root.
#[track_caller]
fn not_more(after: f64, before: f64, seed: u64) {
    let slack = 1e-9 * before.abs().max(0.01);
    assert!(
        after <= before + slack,
        "seed {seed}: {before} became {after} L/min"
    );
}

/// Where water leaves next to nothing of a bore behind a leak, the last digit of the flow moves the pressure there by more than that.
#[test]
fn pressures_balance() {
    let mut held = 0;
    for seed in 0..6 * LINES {
        let line = line(seed);
        let state = state(&line, seed);
        if nearly_closed(&line, &state) {
            continue;
        }
        held += 1;
        let flow = flow(&line, &state, seed);
        let budget = flow.budget;
        let at_work = flow
            .pressures
            .iter()
            .map(|at| at.pressure.to_pascals().abs())
            .fold(1.0, f64::max);
        let left = flow.imbalance.to_pascals();
        assert!(
            left.abs() <= CLOSED * at_work,
            "seed {seed}: {left} Pa are left of {at_work}"
        );
        let left = (budget.fan + budget.ends - budget.spent()).to_pascals();
        assert!(
            left.abs() <= CLOSED * at_work,
            "seed {seed}: the budget does not add up by {left} Pa"
        );
    }
    assert!(4 * LINES < held, "only {held} lines were held");
}

/// Some pool leaves less than a sixth of its bore's height.
fn nearly_closed(line: &Line, state: &State) -> bool {
    state.pools.iter().any(|pool| {
        let bore_m = line.tube(pool.side).stretches[0].bore.to_metres();
        let depth_m = match pool.shape {
            PoolShape::Uniform { depth, .. } => depth.to_metres(),
            PoolShape::Wedge {
                volume,
                fall_before,
                fall_after,
                ..
            } => {
                let widths = 1.0 / fall_before + 1.0 / fall_after;
                height_of_integral(volume.to_cubic_metres() / widths, bore_m)
            }
        };
        (5.0 / 6.0..1.0).contains(&(depth_m / bore_m))
    })
}

/// Holes and leaks of the intake give what passes the sensor.
#[test]
fn mass_is_conserved() {
    for seed in 0..LINES {
        let line = line(seed);
        let state = whole_state(&line, seed);
        let flow = flow(&line, &state, seed);
        let density = line.intake.stretches[0]
            .air
            .density
            .to_kilograms_per_cubic_metre();
        let in_intake = state.leaks.iter().zip(&flow.leaks);
        let entered: VolumeFlow = in_intake
            .filter(|(leak, _)| leak.side == Side::Intake)
            .map(|(_, inflow)| *inflow)
            .sum();
        let holes = flow.holes.unwrap_or(VolumeFlow::ZERO);
        let mass = (holes + entered).to_cubic_metres_per_second() * density;
        let left = mass - flow.mass.to_kilograms_per_second();
        let turned_over = holes.to_cubic_metres_per_second().abs() * density;
        assert!(
            left.abs() <= 1e-12 * turned_over,
            "seed {seed}: {left} of {turned_over} kg/s are left"
        );
    }
}

#[test]
fn shares_and_times_are_in_order() {
    let mut sampled = 0;
    for seed in 0..4 * LINES {
        let line = line(seed);
        let flow = flow(&line, &state(&line, seed), seed);
        assert!(
            (0.0..=1.0).contains(&flow.share),
            "seed {seed}: a sample share of {}",
            flow.share
        );
        assert!(
            flow.direction == Direction::Forward || flow.share == 0.0,
            "seed {seed}: {:?} and a sample share of {}",
            flow.direction,
            flow.share
        );
        let Some(time) = flow.transport else {
            continue;
        };
        sampled += 1;
        assert!(
            time.first <= time.plug && time.plug <= time.ninety_percent,
            "seed {seed}: {time:?}"
        );
    }
    assert!(LINES < sampled, "only {sampled} lines sampled their duct");
}

/// Dust on the filter, whatever leaks there are; another bend anywhere where there are none.
#[test]
fn more_resistance_never_gives_more_flow() {
    for seed in 0..LINES {
        let line = line(seed);
        let state = whole_state(&line, seed);
        let before = litres(&line, &state, seed);
        let dusty = State {
            dust: state.dust * 1.5,
            ..state.clone()
        };
        if 0.0 <= before {
            not_more(litres(&line, &dusty, seed), before, seed);
        }
        let tight = State {
            leaks: Vec::new(),
            ..state
        };
        let before = litres(&line, &tight, seed);
        if before < 0.0 {
            continue;
        }
        let mut more = [line.clone(), line.clone(), line.clone(), line.clone()];
        more[0].intake.fittings.push(Fitting {
            at: Length::ZERO,
            loss_coefficient: 0.7,
        });
        more[1].exhaust.stretches[0].roughness = line.exhaust.stretches[0].bore * 0.02;
        more[2].intake.stretches[0].length += Length::metres(1.0);
        more[2].intake.stretches[0].rise = line.intake.stretches[0].rise;
        more[3].detector.chamber_loss_coefficient += 1.0;
        for line in more {
            not_more(litres(&line, &tight, seed), before, seed);
        }
    }
}

/// A joint comes apart, a leak, water: the sign of the change is free; but more pressure at the intake's end never gives less flow.
#[test]
fn more_pressure_at_the_intake_never_gives_less_flow() {
    for seed in 0..LINES {
        let line = line(seed);
        let mut state = whole_state(&line, seed);
        let before = litres(&line, &state, seed);
        let duct = state.duct.unwrap_or(line.duct);
        state.duct = Some(DuctPressures {
            intake: duct.intake + Pressure::pascals(5.0),
            ..duct
        });
        not_more(before, litres(&line, &state, seed), seed);
    }
}

/// Through the transition from laminar to turbulent the flow follows the pressure without a jump.
#[test]
fn flow_is_continuous_through_the_transition() {
    const STEP_PA: f64 = 0.05;
    let mut crossed = 0;
    for seed in 0..40 {
        let mut line = line(seed);
        let state = State::default();
        line.detector.fan = flat_fan();
        let mut before: Option<Airflow> = None;
        for step in 0..8000 {
            line.duct.intake = line.duct.exhaust + Pressure::pascals(STEP_PA * f64::from(step));
            let here = flow(&line, &state, seed);
            if let Some(before) = &before {
                let (q0, q1) = (
                    before.sensor.to_litres_per_minute(),
                    here.sensor.to_litres_per_minute(),
                );
                let inside = |flow: &Airflow| (2100.0..4000.0).contains(&flow.reynolds_intake);
                if inside(before) || inside(&here) {
                    crossed += 1;
                    // Resistance never falls, so a step gives at most the flow in proportion to the pressure.
                    let most = 2.0 * q0 / f64::from(step);
                    assert!(
                        q0 <= q1 && q1 - q0 <= most,
                        "seed {seed}: {q0} to {q1} L/min"
                    );
                }
            }
            before = Some(here);
        }
    }
    assert!(5000 < crossed, "only {crossed} steps in the transition");
}

/// A fan that gives nothing.
fn flat_fan() -> FanCurve {
    linear_fan(0.0, 0.0)
}

/// `p = at_rest - slope q`, q in L/min, on both sides of no flow.
fn linear_fan(at_rest_pa: f64, slope: f64) -> FanCurve {
    let points = [-100.0, 0.0, 100.0].map(|q| {
        (
            VolumeFlow::litres_per_minute(q),
            Pressure::pascals(at_rest_pa - slope * q),
        )
    });
    FanCurve::new(&points, Density::kilograms_per_cubic_metre(1.2)).expect("the flows rise")
}

/// The line run backwards, its fan turned round, has the opposite flow.
#[test]
fn a_mirrored_line_has_the_opposite_flow() {
    let mut reversed = 0;
    for seed in 0..LINES {
        let mut line = line(seed);
        let air = line.detector.air;
        let at_rest = 400.0 * (line.duct.intake.to_pascals() / 300.0);
        line.detector.fan = linear_fan(at_rest, 1.5);
        line.inlet = Inlet::OpenEnd(OpenEnd::SHARP);
        for tube in [&mut line.intake, &mut line.exhaust] {
            for stretch in &mut tube.stretches {
                stretch.air = air;
            }
        }
        let mut mirrored = line.clone();
        mirrored.intake = turned(&line.exhaust);
        mirrored.exhaust = turned(&line.intake);
        mirrored.detector.fan = linear_fan(-at_rest, 1.5);
        mirrored.duct = DuctPressures {
            intake: line.duct.exhaust,
            exhaust: line.duct.intake,
        };
        let (one, other) = (
            litres(&line, &State::default(), seed),
            litres(&mirrored, &State::default(), seed),
        );
        assert!(
            (one + other).abs() <= 1e-9 * one.abs().max(0.01),
            "seed {seed}: {one} and {other} L/min"
        );
        reversed += usize::from(one < 0.0);
    }
    assert!(100 < reversed, "only {reversed} lines ran backwards");
}

fn turned(tube: &dewrun_airflow::Tube) -> dewrun_airflow::Tube {
    let length = tube.length();
    let mut turned = tube.clone();
    turned.stretches.reverse();
    for stretch in &mut turned.stretches {
        stretch.rise = -stretch.rise;
    }
    for fitting in &mut turned.fittings {
        fitting.at = length - fitting.at;
    }
    for trap in &mut turned.traps {
        trap.at = length - trap.at;
    }
    turned
}

/// Water at a low point, filled until it seals: the flow falls to nothing and never rises, whichever way it goes.
#[test]
fn more_water_never_raises_the_flow() {
    const STEPS: u32 = 60;
    for seed in 0..LINES / 4 {
        let line = line(seed);
        let side = if seed % 2 == 0 {
            Side::Intake
        } else {
            Side::Exhaust
        };
        let bore_m = line.tube(side).stretches[0].bore.to_metres();
        let sealing_m3 = core::f64::consts::PI / 8.0 * bore_m * bore_m * bore_m * (50.0 + 20.0);
        let mut before = f64::INFINITY;
        for step in 0..=STEPS {
            let share = 1.02 * f64::from(step) / f64::from(STEPS);
            let pool = Pool {
                side,
                shape: PoolShape::Wedge {
                    at: line.tube(side).length() * 0.6,
                    volume: Volume::cubic_metres(share * sealing_m3),
                    fall_before: 0.02,
                    fall_after: 0.05,
                },
            };
            let state = State {
                pools: vec![pool],
                ..State::default()
            };
            let here = flow(&line, &state, seed);
            let size = here.sensor.to_litres_per_minute().abs();
            not_more(size, before, seed);
            before = size;
            if 1.0 < share {
                assert_eq!(here.direction, Direction::Still, "seed {seed}: sealed");
            }
        }
    }
}

/// A stretch cut in two anywhere is the same tube.
#[test]
fn splitting_a_stretch_changes_nothing() {
    for seed in 0..LINES {
        let line = line(seed);
        let state = state(&line, seed);
        let mut split = line.clone();
        let whole = line.intake.stretches[0];
        let (mut one, mut two) = (whole, whole);
        one.length = whole.length * 0.3;
        one.rise = whole.rise * 0.3;
        two.length = whole.length - one.length;
        two.rise = whole.rise - one.rise;
        split.intake.stretches.splice(0..1, [one, two]);
        let (before, after) = (flow(&line, &state, seed), flow(&split, &state, seed));
        let (q0, q1) = (
            before.sensor.to_litres_per_minute(),
            after.sensor.to_litres_per_minute(),
        );
        assert!(
            (q0 - q1).abs() <= 1e-9 * q0.abs().max(0.01),
            "seed {seed}: {q0} and {q1} L/min"
        );
        assert!(
            (before.share - after.share).abs() < 1e-9,
            "seed {seed}: {} and {} of duct air",
            before.share,
            after.share
        );
    }
}

/// Each of several operating points is one: a fan that gives that pressure throughout settles there.
#[test]
fn every_operating_point_listed_balances() {
    let mut several = 0;
    for seed in 0..LINES {
        let mut line = line(seed);
        let (_, last) = line.detector.fan.span(1.0);
        let fan = humped_fan(last.to_litres_per_minute(), 300.0);
        line.detector.fan = fan.clone();
        for against_pa in [60.0, 120.0, 180.0, 220.0, 260.0] {
            line.duct.exhaust = line.duct.intake + Pressure::pascals(against_pa);
            let Err(AirflowError::SeveralOperatingPoints { flows }) =
                airflow(&line, &State::default())
            else {
                continue;
            };
            several += 1;
            let rising = flows.windows(2).all(|pair| pair[0] < pair[1]);
            assert!(rising, "seed {seed}: {flows:?}");
            for point in flows {
                let pressure = fan.pressure(point, line.detector.air.density, 1.0);
                let reference = Density::kilograms_per_cubic_metre(1.2);
                let steady = pressure * (reference / line.detector.air.density);
                let mut held = line.clone();
                held.detector.fan = linear_fan(steady.to_pascals(), 0.0);
                let settled = litres(&held, &State::default(), seed);
                let listed = point.to_litres_per_minute();
                assert!(
                    (settled - listed).abs() <= 1e-6 * listed.abs().max(0.1),
                    "seed {seed}: {listed} is listed, {settled} L/min balances"
                );
            }
        }
    }
    assert!(100 < several, "only {several} lines had several points");
}

/// Any finite number anywhere gives an answer or a sentence.
#[test]
fn wild_lines_are_answered_or_refused() {
    let mut answered = 0;
    for seed in 0..20 * LINES {
        let (line, state) = wild(seed);
        match airflow(&line, &state) {
            Ok(flow) => {
                answered += 1;
                let q = flow.value.sensor.to_litres_per_minute();
                assert!(q.is_finite(), "seed {seed}: {q} L/min");
            }
            Err(error) => assert!(!error.to_string().is_empty(), "seed {seed}: a sentence"),
        }
    }
    assert!(LINES < answered, "only {answered} lines were answered");
}
