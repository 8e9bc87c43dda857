//! What a remedy changes in a run, its installation and its year.

use dewrun_advice::{Change, changed};
use dewrun_ensemble::Inputs;
use dewrun_quantity::{Length, Mass, MassPerLength, Power, PowerPerLength, Time, VolumeFlow};
use dewrun_run::library::{self, BoreForm, Supply, TubeRow};
use dewrun_run::{Insulation, Leg, LegInstallation, Trap, Tube, TubeWall};

/// The row of the insulation that is offered.
pub const INSULATION_ROW: &str = "insulation-closed-cell";
/// The row of what the ribs of a corrugated bore hold.
const RIBS_ROW: &str = "corrugations";
/// Pascals in a megapascal.
const MEGA: f64 = 1e6;

/// One thing that is done to a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Alteration {
    /// A trap, another fall, hangers.
    Geometry(Change),
    /// A trap that is there takes more.
    TrapCapacity {
        /// In which tube.
        tube: Tube,
        /// Which trap of it, counted from 0.
        trap: usize,
        /// What it takes until it has to be emptied.
        capacity: Mass,
    },
    /// Traps are emptied more often.
    DrainEvery(Time),
    /// Insulation around a leg, of the library's row [`INSULATION_ROW`].
    Insulate {
        /// In which tube.
        tube: Tube,
        /// Which leg, counted from 0.
        leg: usize,
        /// How thick.
        thickness: Length,
    },
    /// The insulation of a leg is taken off.
    Bare {
        /// In which tube.
        tube: Tube,
        /// Which leg, counted from 0.
        leg: usize,
    },
    /// Heat tracing of a leg.
    Trace {
        /// In which tube.
        tube: Tube,
        /// Which leg, counted from 0.
        leg: usize,
        /// What it gives.
        power: PowerPerLength,
    },
    /// A leg is led through another space.
    Space {
        /// In which tube.
        tube: Tube,
        /// Which leg, counted from 0.
        leg: usize,
        /// Position of the space among those of the run.
        space: usize,
    },
    /// A leg is made of another tube.
    Tube {
        /// In which tube.
        tube: Tube,
        /// Which leg, counted from 0.
        leg: usize,
        /// The row of the library.
        row: &'static str,
    },
    /// The detector draws another flow, counted where the run counts it.
    Flow(VolumeFlow),
    /// The detector gives so much heat to the air, its own included.
    Warm(Power),
    /// The detector sits at the end of another leg, nearer to the duct.
    DetectorAt {
        /// So many legs of the intake stay.
        intake_legs: usize,
        /// So many legs of the exhaust go, counted from the detector.
        exhaust_gone: usize,
    },
}

/// The inputs of a year with alterations.
///
/// # Range
/// Legs, traps, spaces and rows that there are; others are left alone.
/// # Source
/// No relation: numbers are put in their places.
#[must_use]
pub fn altered(inputs: &Inputs, alterations: &[Alteration]) -> Inputs {
    let mut inputs = inputs.clone();
    for alteration in alterations {
        alteration.make(&mut inputs);
    }
    inputs
}

impl Alteration {
    fn make(&self, inputs: &mut Inputs) {
        match *self {
            Self::Geometry(change) => {
                let made = changed(&inputs.run, &inputs.installation, &[change]);
                (inputs.run, inputs.installation) = made;
            }
            Self::TrapCapacity {
                tube,
                trap,
                capacity,
            } => {
                if let Some(trap) = traps_mut(inputs, tube).get_mut(trap) {
                    trap.capacity = capacity;
                }
            }
            Self::DrainEvery(time) => inputs.installation.drain_interval = time,
            Self::Flow(volume) => inputs.run.flow.volume = volume,
            Self::Warm(heat) => inputs.run.detector.heat = heat,
            Self::DetectorAt {
                intake_legs,
                exhaust_gone,
            } => detector_at(inputs, intake_legs, exhaust_gone),
            Self::Space { tube, leg, space } => {
                let is_there = space < inputs.run.spaces.len();
                if let Some(leg) = leg_mut(inputs, tube, leg).filter(|_| is_there) {
                    leg.space = space;
                }
            }
            Self::Tube { tube, leg, row } => {
                if let Some(row) = library::find(library::tubes(), row) {
                    make_of(inputs, (tube, leg), row);
                }
            }
            Self::Insulate {
                tube,
                leg,
                thickness,
            } => {
                if let Some(leg) = leg_mut(inputs, tube, leg) {
                    insulate(leg, thickness);
                }
            }
            Self::Bare { tube, leg } => {
                if let Some(leg) = leg_mut(inputs, tube, leg) {
                    leg.insulation = None;
                }
            }
            Self::Trace { tube, leg, power } => {
                if let Some(leg) = leg_mut(inputs, tube, leg) {
                    leg.tracing = power;
                }
            }
        }
    }

    /// The tube and the leg that it is about; none where it is about something else.
    #[must_use]
    pub const fn leg(&self) -> Option<(Tube, usize)> {
        match *self {
            Self::Geometry(Change::Leg { tube, leg, .. } | Change::Hangers { tube, leg, .. })
            | Self::Insulate { tube, leg, .. }
            | Self::Bare { tube, leg }
            | Self::Trace { tube, leg, .. }
            | Self::Space { tube, leg, .. }
            | Self::Tube { tube, leg, .. } => Some((tube, leg)),
            Self::Geometry(Change::Trap { .. })
            | Self::TrapCapacity { .. }
            | Self::DrainEvery(_)
            | Self::Flow(_)
            | Self::Warm(_)
            | Self::DetectorAt { .. } => None,
        }
    }

    /// The same without power, as if its supply had failed; what needs none stays.
    #[must_use]
    pub const fn failed(self, own_heat: Power) -> Self {
        match self {
            Self::Trace { tube, leg, .. } => Self::Trace {
                tube,
                leg,
                power: PowerPerLength::ZERO,
            },
            Self::Warm(_) => Self::Warm(own_heat),
            other => other,
        }
    }

    /// Whether it needs power.
    #[must_use]
    pub const fn has_power(&self) -> bool {
        matches!(self, Self::Trace { .. } | Self::Warm(_))
    }
}

pub(crate) fn legs(inputs: &Inputs, tube: Tube) -> &[Leg] {
    match tube {
        Tube::Intake => &inputs.run.intake,
        Tube::Exhaust => &inputs.run.exhaust,
    }
}

fn leg_mut(inputs: &mut Inputs, tube: Tube, leg: usize) -> Option<&mut Leg> {
    match tube {
        Tube::Intake => inputs.run.intake.get_mut(leg),
        Tube::Exhaust => inputs.run.exhaust.get_mut(leg),
    }
}

fn built_mut(inputs: &mut Inputs, tube: Tube, leg: usize) -> Option<&mut LegInstallation> {
    match tube {
        Tube::Intake => inputs.installation.intake.legs.get_mut(leg),
        Tube::Exhaust => inputs.installation.exhaust.legs.get_mut(leg),
    }
}

const fn traps_mut(inputs: &mut Inputs, tube: Tube) -> &mut Vec<Trap> {
    match tube {
        Tube::Intake => &mut inputs.installation.intake.traps,
        Tube::Exhaust => &mut inputs.installation.exhaust.traps,
    }
}

fn insulate(leg: &mut Leg, thickness: Length) {
    if let Some(row) = library::find(library::insulation(), INSULATION_ROW) {
        leg.insulation = Some(Insulation {
            thickness,
            conductivity: row.conductivity.usual,
        });
        leg.emissivity = row.emissivity.usual;
    }
}

/// Makes a leg of a tube of the library; its outermost surface stays as it is.
fn make_of(inputs: &mut Inputs, (tube, leg): (Tube, usize), row: &TubeRow) {
    if let Some(leg) = leg_mut(inputs, tube, leg) {
        leg.tube = TubeWall {
            bore: row.bore.usual,
            outside_diameter: row.outside_diameter.usual,
            conductivity: row.conductivity.usual,
        };
    }
    let ribs = library::find(library::assumptions(), RIBS_ROW);
    if let Some(built) = built_mut(inputs, tube, leg) {
        built.roughness = row.roughness.usual;
        built.density = row.density.usual;
        let modulus_mpa = row.long_term_modulus.usual.to_pascals() / MEGA;
        built.long_term_modulus = dewrun_quantity::Modulus::megapascals(modulus_mpa);
        built.coiled = row.supply == Supply::Coiled;
        built.corrugations = match (row.bore_form, ribs) {
            (BoreForm::Corrugated, Some(ribs)) => MassPerLength::grams_per_metre(ribs.value.usual),
            _ => MassPerLength::ZERO,
        };
    }
}

fn detector_at(inputs: &mut Inputs, intake_legs: usize, exhaust_gone: usize) {
    let run = &mut inputs.run;
    let built = &mut inputs.installation;
    run.intake.truncate(intake_legs);
    built.intake.legs.truncate(intake_legs);
    let end: Length = run.intake.iter().map(|leg| leg.length).sum();
    built.intake.traps.retain(|trap| trap.at <= end);
    let gone = exhaust_gone.min(run.exhaust.len());
    let short: Length = run.exhaust.drain(..gone).map(|leg| leg.length).sum();
    built
        .exhaust
        .legs
        .drain(..gone.min(built.exhaust.legs.len()));
    built.exhaust.traps.retain(|trap| short <= trap.at);
    for trap in &mut built.exhaust.traps {
        trap.at = trap.at - short;
    }
}
