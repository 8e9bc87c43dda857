//! The line as it was fitted: the generic fan at the speed that gives the flow of the run.

use dewrun_airflow::{
    Airflow, AirflowError, AirflowNote, FanCurve, Leak, Line, State, Usual, airflow,
};
use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_numeric::itp;
use dewrun_quantity::{Density, Noted, Pressure, VolumeFlow};

use super::Remark;
use super::error::WholeError;
use super::line::{line, side};
use crate::error::Tube;
use crate::input::{Leg, Run};
use crate::installation::{Fan, Installation, Trap};
use crate::outcome::Outcome;

/// Density at which fan curves are given.
const REFERENCE: Density = Density::kilograms_per_cubic_metre(1.2);
/// A fan that falls: parts of its flow at no pressure and of its pressure at no flow.
///
/// Common practice, no source.
const FALLING: [(f64, f64); 6] = [
    (0.0, 1.0),
    (0.2, 0.96),
    (0.4, 0.87),
    (0.6, 0.74),
    (0.8, 0.45),
    (1.0, 0.0),
];
/// Speeds between which the one that gives the flow is looked for; no fan turns outside them.
const SPEEDS: [f64; 2] = [0.1, 8.0];
/// It is found to this share.
const SPEED_SHARE: f64 = 1e-9;
/// A computed flow that differs by more than this share from the one entered is told.
const FLOW_DIFFERS: f64 = 0.1;

/// The line as it was fitted, and what it takes to make it in other air.
pub(super) struct Fitted<'a> {
    run: &'a Run,
    installation: &'a Installation,
    steady: &'a Outcome,
    /// The line, in the air of the steady answer.
    pub(super) line: Line,
    /// Speed of a generic fan against its curve.
    pub(super) fan_speed: f64,
    /// As fitted.
    pub(super) airflow: Airflow,
    /// As it is.
    pub(super) now: Noted<Airflow, AirflowNote>,
}

impl<'a> Fitted<'a> {
    pub(super) fn new(
        run: &'a Run,
        installation: &'a Installation,
        steady: &'a Outcome,
        remarks: &mut Vec<Remark>,
    ) -> Result<Self, WholeError> {
        let wanted = flow_at_sensor(run, steady);
        let (fan, fan_speed) = match &installation.detector.fan {
            Fan::Curve(curve) => (curve.clone(), 1.0),
            Fan::Generic { standing, free } => {
                let full = generic(*standing, *free, 1.0)?;
                let tried = line(run, installation, steady, full, 0.0);
                let speed = speed_for(&tried, wanted).unwrap_or_else(|| {
                    remarks.push(Remark::NoGenericFan { wanted });
                    1.0
                });
                (generic(*standing, *free, speed)?, speed)
            }
        };
        let line = line(run, installation, steady, fan, 0.0);
        let fitted = airflow(&line, &State::default())?.value;
        let now = airflow(&line, &as_it_is(run, installation))?;
        let computed = fitted.sensor;
        let off = (computed - wanted).to_cubic_metres_per_second().abs();
        if FLOW_DIFFERS * wanted.to_cubic_metres_per_second() < off {
            remarks.push(Remark::FlowDiffers { computed, wanted });
        }
        Ok(Self {
            run,
            installation,
            steady,
            line,
            fan_speed,
            airflow: fitted,
            now,
        })
    }

    /// The same line in warmer air.
    pub(super) fn warmer(&self, kelvins: f64) -> Line {
        let fan = self.line.detector.fan.clone();
        line(self.run, self.installation, self.steady, fan, kelvins)
    }
}

/// The flow of the run at the sensor.
fn flow_at_sensor(run: &Run, steady: &Outcome) -> VolumeFlow {
    let chamber = &steady.chamber;
    let w = chamber.humidity_ratio.to_kilograms_per_kilogram();
    let t_c = chamber.temperature.to_celsius();
    let density = density_kg_m3(t_c, w, run.pressure.to_pascals());
    let m3_s = steady.dry_air.to_kilograms_per_second() * (1.0 + w) / density;
    VolumeFlow::cubic_metres_per_second(m3_s)
}

/// The generic fan at a speed.
fn generic(standing: Pressure, free: VolumeFlow, speed: f64) -> Result<FanCurve, AirflowError> {
    let points = FALLING.map(|(q, p)| (free * (q * speed), standing * (p * speed * speed)));
    FanCurve::new(&points, REFERENCE)
}

/// The speed at which the flow at the sensor is the one wanted; none where no speed gives it.
fn speed_for(line: &Line, wanted: VolumeFlow) -> Option<f64> {
    let off = |fan_speed: f64| {
        let state = State {
            fan_speed,
            ..State::default()
        };
        let found = airflow(line, &state).map(|found| found.value.sensor);
        found.map_or(f64::NAN, |flow| (flow - wanted).to_litres_per_minute())
    };
    let [slow, fast] = SPEEDS;
    itp(off, slow, fast, SPEED_SHARE).ok()
}

/// The state as it is: traps that stand open leak.
fn as_it_is(run: &Run, installation: &Installation) -> State {
    let mut leaks = Vec::new();
    for (tube, built, legs) in [
        (Tube::Intake, &installation.intake, &run.intake),
        (Tube::Exhaust, &installation.exhaust, &run.exhaust),
    ] {
        let open = built.traps.iter().filter(|trap| trap.open);
        leaks.extend(open.map(|trap| leak_of(installation, tube, legs, trap)));
    }
    State {
        leaks,
        ..State::default()
    }
}

/// What a trap lets in or out that stands open.
pub(super) fn leak_of(installation: &Installation, tube: Tube, legs: &[Leg], trap: &Trap) -> Leak {
    let mut hole = Usual::PRACTICE.trap_outlet;
    hole.diameter = hole.diameter.min(trap.bore);
    Leak {
        side: side(tube),
        at: trap.at.min(legs.iter().map(|leg| leg.length).sum()),
        hole,
        space: pressure_around(installation, legs, trap.at),
    }
}

/// Pressure of the space around a place along a tube.
fn pressure_around(
    installation: &Installation,
    legs: &[Leg],
    at: dewrun_quantity::Length,
) -> Pressure {
    let mut end = dewrun_quantity::Length::ZERO;
    let leg = legs.iter().find(|leg| {
        end += leg.length;
        at <= end
    });
    let leg = leg.or_else(|| legs.last());
    let found = leg.and_then(|leg| installation.spaces.get(leg.space));
    found.copied().unwrap_or(Pressure::ZERO)
}
