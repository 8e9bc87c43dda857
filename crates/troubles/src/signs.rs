//! Which way each fault moves the airflow of a run: the sign follows from the pressures and is computed, never assumed.

use dewrun_ensemble::Plan;
use dewrun_run::told::Fault;
use dewrun_run::{evaluate, water_and_air};

use crate::poisson::count;

/// A reading that is off by less does not show.
const SEEN: f64 = 0.04;
/// Members that are asked.
const ASKED: u32 = 24;

/// In which share of the cases a fault lowers the reading, and in which it raises it; in the rest it does not show.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Sign {
    /// Lowers it.
    pub low: f64,
    /// Raises it.
    pub high: f64,
}

/// Which way each fault moves the reading.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FaultSigns {
    /// A joint came apart, any of them.
    pub parted: Sign,
    /// A trap ran dry.
    pub dry_trap: Sign,
    /// The filter is missing.
    pub no_filter: Sign,
    /// The holes are fouled.
    pub fouled: Sign,
    /// The fan is weak.
    pub weak: Sign,
}

/// Readings under a fault, as parts of that as fitted, over what is assumed of the run.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct FaultReadings {
    pub(crate) parted: Vec<f64>,
    pub(crate) no_filter: Vec<f64>,
    pub(crate) weak: Vec<f64>,
    pub(crate) dry_trap: Vec<f64>,
}

#[derive(Default)]
struct Counted {
    readings: Vec<f64>,
    low: usize,
    high: usize,
    all: usize,
}

impl Counted {
    fn take(&mut self, reading: f64) {
        self.readings.push(reading);
        self.all += 1;
        self.low += usize::from(reading < 1.0 - SEEN);
        self.high += usize::from(1.0 + SEEN < reading);
    }

    fn sign(&self) -> Sign {
        let all = count(self.all.max(1));
        Sign {
            low: count(self.low) / all,
            high: count(self.high) / all,
        }
    }
}

impl FaultSigns {
    /// Of a run whose assumed values may lie anywhere in their spans.
    #[must_use]
    pub fn of(plan: &Plan) -> Self {
        Self::with_readings(plan).0
    }

    /// With the readings that they are of.
    pub(crate) fn with_readings(plan: &Plan) -> (Self, FaultReadings) {
        let mut counted: [Counted; 5] = Default::default();
        for member in 0..ASKED {
            let inputs = plan.inputs(member);
            let Ok(steady) = evaluate(&inputs.run) else {
                continue;
            };
            let Ok(whole) = water_and_air(&inputs.run, &inputs.installation, &steady.value) else {
                continue;
            };
            for outcome in &whole.airflow.faults {
                let place = match outcome.fault {
                    Fault::Parted(..) => 0,
                    Fault::TrapDry(_) => 1,
                    Fault::FilterMissing => 2,
                    Fault::HolesFouled => 3,
                    Fault::FanWeak => 4,
                    Fault::Sealed(..) => continue,
                };
                if let Some(counted) = counted.get_mut(place) {
                    counted.take(outcome.reading);
                }
            }
        }
        let [parted, dry_trap, no_filter, fouled, weak] = counted;
        let signs = Self {
            parted: parted.sign(),
            dry_trap: dry_trap.sign(),
            no_filter: no_filter.sign(),
            fouled: fouled.sign(),
            weak: weak.sign(),
        };
        let readings = FaultReadings {
            parted: parted.readings,
            no_filter: no_filter.readings,
            weak: weak.readings,
            dry_trap: dry_trap.readings,
        };
        (signs, readings)
    }
}
