//! Water and air on top of the steady answer: where the water goes, what still comes through, what limits see, whether the detector is blind.

mod blind;
mod error;
mod fitted;
mod ice;
mod leg_water;
mod line;
mod low_point;
mod on_site;
mod outcome;
mod remark;
mod standing;
mod supervise;
mod trap;
mod tube_water;
mod words;

pub use error::WholeError;
pub use on_site::{ExpectedOnSite, FilterOnSite, Finding, OnSite, on_site};
pub use outcome::{
    AirflowOutcome, Blind, Change, FaultOutcome, GivenLimits, HangerAdvice, IceOutcome, LegWater,
    LowPoint, PoolLevel, Proposal, StateKind, StateOutcome, TrapOutcome, TubeWater, Whole,
};
pub use remark::Remark;
pub use standing::{Standing, StandingAir, StandingTube, standing_of};
pub use words::fault_words;

use crate::error::Tube;
use crate::input::Run;
use crate::installation::Installation;
use crate::outcome::Outcome;
use fitted::Fitted;
use tube_water::{Context, tube_water};

/// What water and air do in a run, from its steady answer and how it is installed.
///
/// The walls are dry at first and the conditions stay: times count from there.
///
/// # Range
/// As the steady answer; developed flow in round tubes.
///
/// # Accuracy
/// Amounts of water that stay on walls are known to a factor of two, and with them the times; flows as good as fan curve, coefficients and bores.
///
/// # Errors
/// [`WholeError`] says which part of the installation keeps it from being answered.
pub fn water_and_air(
    run: &Run,
    installation: &Installation,
    steady: &Outcome,
) -> Result<Whole, WholeError> {
    installation.check_counts(run)?;
    let mut remarks = Vec::new();
    let fitted = Fitted::new(run, installation, steady, &mut remarks)?;
    let airflow = supervise::supervise(run, installation, &fitted)?;
    let context = Context::new(run, installation, &fitted, &airflow);
    let intake = tube_water(&context, Tube::Intake, &steady.intake)?;
    let exhaust = match &steady.exhaust {
        Some(outcome) => Some(tube_water(&context, Tube::Exhaust, outcome)?),
        None => None,
    };
    let blind = blind::blind(steady, installation, &airflow, &intake, exhaust.as_ref());
    remark::remarks(run, installation, (&intake, exhaust.as_ref()), &mut remarks);
    Ok(Whole {
        intake,
        exhaust,
        airflow,
        blind,
        remarks,
    })
}
