//! What becomes of faults over the duct's plausible static pressures: a parted joint follows the pressure, and with it what the limits see.

use dewrun_quantity::Pressure;
use dewrun_run::told::Fault;
use dewrun_run::{Installation, Outcome, Run, WholeError, water_and_air};

/// Parts of the span at which the run is evaluated, from its low to its high end.
///
/// A reading rises or falls with the pressure but where the flow turns round, near no pressure: places lie close there.
const PARTS: [f64; 7] = [0.0, 0.25, 0.42, 0.5, 0.58, 0.75, 1.0];

/// A fault at one static pressure of the duct.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OverDuct {
    /// Static pressure in the duct, at the intake.
    pub duct: Pressure,
    /// The fault.
    pub fault: Fault,
    /// The reading, as a part of that as fitted under that pressure.
    pub reading: f64,
    /// What of the air at the sensor is from the duct.
    pub share: f64,
}

/// Every fault of a run at static pressures of its duct from the lowest that is plausible to the highest.
///
/// Both ends of the tubes are moved by as much as the intake's.
/// The flow as fitted stays as it is entered: a generic fan turns as it must for that.
///
/// # Range
/// As [`water_and_air`].
///
/// # Accuracy
/// As [`water_and_air`]; between the pressures tried nothing is said.
///
/// # Errors
/// [`WholeError`] where a part of the installation keeps the run from being answered.
///
/// # Source
/// By evaluating the run at seven pressures; no relation of its own.
pub fn over_duct(
    run: &Run,
    installation: &Installation,
    steady: &Outcome,
    [low, high]: [Pressure; 2],
) -> Result<Vec<OverDuct>, WholeError> {
    let mut found = Vec::new();
    for part in PARTS {
        let duct = low + (high - low) * part;
        let moved = duct - installation.duct.intake.static_pressure;
        let mut there = installation.clone();
        there.duct.intake.static_pressure += moved;
        there.duct.exhaust.static_pressure += moved;
        let whole = water_and_air(run, &there, steady)?;
        let faults = whole.airflow.faults.iter();
        found.extend(faults.map(|one| OverDuct {
            duct,
            fault: one.fault,
            reading: one.reading,
            share: one.airflow.share,
        }));
    }
    Ok(found)
}
