//! The route of the figure `steady_full`: ten legs with falls, a low point with its trap, fan, filter and limits.

use dewrun_quantity::{
    Density, FlowResistance, Length, Mass, MassPerArea, MassPerLength, Modulus, Power, Pressure,
    TemperatureDifference, Time, Volume, VolumeFlow,
};
use dewrun_run::told::{AirflowError, Entry, FanCurve, FlowSensor, Hole, Reads, TrapKind};
use dewrun_run::{
    Detector, DetectorPath, Drain, DuctEnds, Fan, Flow, FlowAt, Installation, Leg, LegInstallation,
    Run, Trap, TubeInstallation,
};

use crate::steady_route::{leg, space, steady_route};

/// Length and rise of each leg, m, and the temperature around it, °C; the detector stands before the sixth.
const LEGS: [(f64, f64, f64); 10] = [
    (3.0, -0.06, 20.0),
    (4.0, -0.08, 18.0),
    (3.0, 0.05, 12.0),
    (5.0, 0.08, 12.0),
    (1.5, -1.5, 22.0),
    (1.5, 1.5, 22.0),
    (4.0, 0.08, 12.0),
    (4.0, 0.06, 14.0),
    (3.0, -0.05, 18.0),
    (3.0, -0.05, 20.0),
];
/// How many legs lie before the detector.
const INTAKE: usize = 5;
/// Where the tube lies lowest before the detector: the end of the second leg, m.
const LOWEST_M: f64 = 7.0;
/// Flow at the fan, L/min, and what it gives, Pa.
const FAN: [(f64, f64); 5] = [
    (0.0, 300.0),
    (15.0, 280.0),
    (30.0, 220.0),
    (45.0, 110.0),
    (55.0, 0.0),
];
/// Velocity pressure of duct air of about 1.15 kg/m3 at 8 m/s, Pa.
const VELOCITY_PA: f64 = 0.5 * 1.15 * 8.0 * 8.0;

/// The run and how it is installed.
///
/// # Errors
/// None that these numbers cause.
pub fn full_route() -> Result<(Run, Installation), AirflowError> {
    let mut run = steady_route();
    run.spaces = LEGS.map(|(_, _, t_c)| space(t_c)).to_vec();
    run.flow = Flow {
        volume: VolumeFlow::litres_per_minute(30.0),
        at: FlowAt::Sensor,
    };
    run.detector = Detector {
        heat: Power::watts(3.0),
        humidity_rating: None,
    };
    let legs = LEGS.iter().enumerate();
    let mut legs: Vec<Leg> = legs
        .map(|(at, (length_m, rise_m, _))| Leg {
            length: Length::metres(*length_m),
            rise: Length::metres(*rise_m),
            ..leg(at)
        })
        .collect();
    run.exhaust = legs.split_off(INTAKE);
    run.intake = legs;
    let mut intake = tube(INTAKE);
    intake.traps.push(trap());
    let mut exhaust = tube(LEGS.len() - INTAKE);
    // A bend into the drop to the detector and one into the riser behind it.
    let bends = [intake.legs.last_mut(), exhaust.legs.first_mut()];
    for leg in bends.into_iter().flatten() {
        leg.fittings.push((Length::ZERO, 0.9));
    }
    let installation = Installation {
        intake,
        exhaust,
        holes: vec![
            Hole {
                diameter: Length::millimetres(3.5),
                discharge: 0.61,
            };
            6
        ],
        duct: DuctEnds::still(
            Pressure::pascals(-50.0 + VELOCITY_PA),
            Pressure::pascals(-50.0 - 0.3 * VELOCITY_PA),
        ),
        detector: DetectorPath {
            filter: FlowResistance::pascals_per_litre_per_minute(1.2),
            chamber_loss: 4.0,
            chamber_volume: Volume::millilitres(250.0),
            fan: fan()?,
            start_suction: Pressure::pascals(300.0),
        },
        spaces: vec![Pressure::ZERO; LEGS.len()],
        sensor: FlowSensor {
            reads: Reads::Volume,
            sees_direction: false,
        },
        limits: Some([0.8, 1.2]),
        limit_margin: 0.02,
        drain_interval: Time::days(90.0),
        film: MassPerArea::grams_per_square_metre(50.0),
        season: [20.0, 15.0].map(TemperatureDifference::kelvins),
        transition: 1.0,
        dust_after_year: 1.5,
    };
    Ok((run, installation))
}

fn fan() -> Result<Fan, AirflowError> {
    let points = FAN.map(|(q, p)| (VolumeFlow::litres_per_minute(q), Pressure::pascals(p)));
    let reference = Density::kilograms_per_cubic_metre(1.2);
    Ok(Fan::Curve(FanCurve::new(&points, reference)?))
}

fn tube(legs: usize) -> TubeInstallation {
    let built = LegInstallation {
        roughness: Length::millimetres(0.0015),
        corrugations: MassPerLength::ZERO,
        coiled: false,
        density: Density::kilograms_per_cubic_metre(1400.0),
        long_term_modulus: Modulus::megapascals(1200.0),
        hanger_spacing: Some(Length::metres(0.8)),
        fittings: Vec::new(),
        reachable: true,
    };
    TubeInstallation {
        entry: Entry::Side,
        legs: vec![built; legs],
        traps: Vec::new(),
    }
}

fn trap() -> Trap {
    Trap {
        at: Length::metres(LOWEST_M),
        drain: Drain::ByHand,
        open: false,
        kind: TrapKind::EqualLegs,
        capacity: Mass::grams(500.0),
        seal: Length::millimetres(50.0),
        outlet_drop: Length::millimetres(75.0),
        bore: Length::millimetres(19.0),
    }
}

#[cfg(test)]
mod tests {
    use dewrun_run::{evaluate, water_and_air};

    use super::*;

    /// A route without low point, states or faults would measure the easy half only.
    #[test]
    fn route_has_all_that_is_measured() {
        let (run, installation) = full_route().expect("a fan");
        let steady = evaluate(&run).expect("an answer").value;
        let whole = water_and_air(&run, &installation, &steady).expect("water and air");
        assert!(!whole.intake.low_points.is_empty(), "water stands");
        assert!(
            whole.intake.traps.iter().any(|trap| trap.full.is_some()),
            "the trap fills"
        );
        assert_eq!(whole.airflow.states.len(), 9, "expected states");
        assert!(
            24 < whole.airflow.faults.len(),
            "{} faults",
            whole.airflow.faults.len()
        );
        assert!(whole.airflow.given.is_some(), "limits are judged");
    }
}
