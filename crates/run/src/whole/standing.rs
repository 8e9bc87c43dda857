//! What the hours of a year need of a run besides its heat: its tubes as water sees them, and the air through it in every state that water makes.

use dewrun_airflow::{
    Airflow, AirflowError, FlowSensor, Leak, Line, Pool as AirPool, State, airflow,
};
use dewrun_quantity::{Conductivity, Length, Mass, Pressure};
use dewrun_water::drainage::DrainTube;

use super::error::WholeError;
use super::fitted::{Fitted, leak_of};
use super::ice::losses;
use super::line::side;
use super::low_point::standing;
use super::outcome::AirflowOutcome;
use super::tube_water::{Context, drain_tube};
use crate::error::Tube;
use crate::input::Run;
use crate::installation::{Drain, Installation, Trap};
use crate::outcome::{Outcome, TubeOutcome};

/// A run as the water of many hours meets it.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// The intake tube, and the exhaust tube where one is drawn.
    pub tubes: Vec<StandingTube>,
    /// The air through them.
    pub air: StandingAir,
}

/// A tube as water meets it.
#[derive(Debug, Clone, PartialEq)]
pub struct StandingTube {
    /// Which.
    pub tube: Tube,
    /// Its legs and what it keeps; traps that drain themselves have no capacity.
    pub drain: DrainTube,
    /// Its traps as they are installed.
    pub traps: Vec<Trap>,
    /// What each leg passes between standing water and its space, for each metre and kelvin.
    pub passes: Vec<Conductivity>,
    /// The space of each leg.
    pub spaces: Vec<usize>,
}

/// The line of a run, in the air of its steady answer and in colder and warmer air.
#[derive(Debug, Clone, PartialEq)]
pub struct StandingAir {
    /// Rising: by how many kelvins the air is warmer, and the line then.
    lines: Vec<(f64, Line)>,
    /// As fitted.
    pub fitted: Airflow,
    /// What the airflow sensor answers to.
    pub sensor: FlowSensor,
    /// Low and high limit as parts of the reading as fitted, in use or, where none is known, recommended.
    pub limits: Option<[f64; 2]>,
    /// Traps that stand open from the start.
    pub open: Vec<(Tube, usize)>,
    leaks: Vec<(Tube, usize, Leak)>,
    /// What a year of dust makes of the filter's resistance.
    dust_after_year: f64,
    /// Pressure that drives air through a closed low point: the fan's at no flow and the duct's, with its fan on and off.
    pub driving: [Pressure; 2],
}

/// Steps of the air's warmth, K, and how many of them each way: farther than any weather.
const STEP_K: f64 = 20.0;
const STEPS: i8 = 4;

/// What the hours of a year need of a run, from its steady answer and how it is installed.
///
/// # Range
/// As [`water_and_air`](crate::water_and_air), whose airflow the limits are taken from.
///
/// # Errors
/// [`WholeError`] says which part of the installation keeps it from being answered.
pub fn standing_of(
    run: &Run,
    installation: &Installation,
    steady: &Outcome,
    known: &AirflowOutcome,
) -> Result<Standing, WholeError> {
    installation.check_counts(run)?;
    let fitted = Fitted::new(run, installation, steady, &mut Vec::new())?;
    let context = Context::new(run, installation, &fitted, known);
    let mut tubes = vec![tube(&context, Tube::Intake, &steady.intake)?];
    if let Some(exhaust) = &steady.exhaust {
        tubes.push(tube(&context, Tube::Exhaust, exhaust)?);
    }
    Ok(Standing {
        tubes,
        air: air(&context, known),
    })
}

fn tube(
    context: &Context<'_>,
    tube: Tube,
    outcome: &TubeOutcome,
) -> Result<StandingTube, WholeError> {
    let (run, installation) = (context.run, context.installation);
    let (legs, built) = match tube {
        Tube::Intake => (&run.intake, &installation.intake),
        Tube::Exhaust => (&run.exhaust, &installation.exhaust),
    };
    let drain = drain_tube(context, tube, legs, built, outcome)?;
    let losses = losses(run, legs, outcome);
    Ok(StandingTube {
        tube,
        drain,
        traps: built.traps.clone(),
        passes: losses.iter().map(|loss| loss.passes).collect(),
        spaces: legs.iter().map(|leg| leg.space).collect(),
    })
}

fn air(context: &Context<'_>, known: &AirflowOutcome) -> StandingAir {
    let (run, installation, fitted) = (context.run, context.installation, context.fitted);
    let lines = (-STEPS..=STEPS).map(|step| {
        let warmer_k = STEP_K * f64::from(step);
        (warmer_k, fitted.warmer(warmer_k))
    });
    let all = [
        (Tube::Intake, &installation.intake, &run.intake),
        (Tube::Exhaust, &installation.exhaust, &run.exhaust),
    ];
    let (mut open, mut leaks) = (Vec::new(), Vec::new());
    for (tube, built, legs) in all {
        for (number, trap) in built.traps.iter().enumerate() {
            leaks.push((tube, number, leak_of(installation, tube, legs, trap)));
            if trap.open {
                open.push((tube, number));
            }
        }
    }
    let duct = installation.duct.total();
    let suction = installation.detector.start_suction;
    StandingAir {
        lines: lines.collect(),
        fitted: fitted.airflow.clone(),
        sensor: installation.sensor,
        limits: known.limits(),
        open,
        leaks,
        dust_after_year: installation.dust_after_year,
        driving: [duct.intake - duct.exhaust + suction, suction],
    }
}

impl StandingAir {
    /// By how many kelvins the air of each line is warmer than in the steady answer, rising.
    pub fn warmer_k(&self) -> impl Iterator<Item = f64> + '_ {
        self.lines.iter().map(|(warmer_k, _)| *warmer_k)
    }

    /// The air through dry tubes, their traps shut, with a year's dust on the filter; `line` counts those of [`StandingAir::warmer_k`].
    ///
    /// # Errors
    /// [`AirflowError`] where no single flow balances.
    pub fn dusty(&self, line: usize) -> Result<Airflow, AirflowError> {
        let Some((_, line)) = self.lines.get(line) else {
            return Ok(self.fitted.clone());
        };
        let state = State {
            dust: self.dust_after_year,
            ..State::default()
        };
        Ok(airflow(line, &state)?.value)
    }

    /// The air with water in the tubes, traps that leak, the duct's fan on or off; `line` counts those of [`StandingAir::warmer_k`].
    ///
    /// # Errors
    /// [`AirflowError`] where no single flow balances.
    pub fn passing(
        &self,
        line: usize,
        duct_runs: bool,
        leaking: &[(Tube, usize)],
        pools: Vec<AirPool>,
    ) -> Result<Airflow, AirflowError> {
        let Some((_, line)) = self.lines.get(line) else {
            return Ok(self.fitted.clone());
        };
        let leaks = self.leaks.iter();
        let leaks = leaks.filter(|(tube, trap, _)| leaking.contains(&(*tube, *trap)));
        let still = dewrun_airflow::DuctPressures {
            intake: Pressure::ZERO,
            exhaust: Pressure::ZERO,
        };
        let state = State {
            leaks: leaks.map(|(.., leak)| *leak).collect(),
            duct: (!duct_runs).then_some(still),
            pools,
            ..State::default()
        };
        Ok(airflow(line, &state)?.value)
    }
}

impl StandingTube {
    /// Water of a depth at a low point as the air meets it; none where there is no room for any.
    #[must_use]
    pub fn pool(&self, at: Length, until: Length, bore: Length, depth: Length) -> Option<AirPool> {
        let shape = standing(&self.drain, (at, until), bore, depth)?;
        let side = side(self.tube);
        Some(AirPool { side, shape })
    }

    /// What a trap takes until it is emptied; none where it drains itself.
    #[must_use]
    pub fn capacity(&self, trap: usize) -> Option<Mass> {
        self.drain.traps.get(trap)?.capacity
    }

    /// Whether a trap is emptied by hand.
    #[must_use]
    pub fn by_hand(&self, trap: usize) -> bool {
        let found = self.traps.get(trap);
        found.is_some_and(|trap| trap.drain == Drain::ByHand)
    }
}
