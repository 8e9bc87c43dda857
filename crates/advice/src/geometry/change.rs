//! A change of a run and its installation.

use dewrun_quantity::{Length, Mass};
use dewrun_run::told::TrapKind;
use dewrun_run::{Drain, Installation, Run, Trap, Tube};

/// Nearer to a joint than this a trap lies at it, m.
const AT_JOINT_M: f64 = 1e-9;

/// A change of geometry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Change {
    /// A trap.
    Trap {
        /// In which tube.
        tube: Tube,
        /// Along it.
        at: Length,
        /// How it is emptied.
        drain: Drain,
        /// What it takes until it has to be emptied.
        capacity: Mass,
        /// Height of its standing seal.
        seal: Length,
        /// Height of the tube's floor over its outlet.
        outlet_drop: Length,
    },
    /// Another rise of a leg, and the length that goes with it.
    Leg {
        /// In which tube.
        tube: Tube,
        /// Which leg, counted from 0.
        leg: usize,
        /// Its rise in the direction of flow.
        rise: Length,
        /// Its length.
        length: Length,
    },
    /// Another distance between a leg's hangers.
    Hangers {
        /// In which tube.
        tube: Tube,
        /// Which leg, counted from 0.
        leg: usize,
        /// The distance.
        spacing: Length,
    },
}

/// A run and its installation with changes.
///
/// # Range
/// Legs that there are; others are left alone.
///
/// # Accuracy
/// Exact.
///
/// # Errors
/// None.
///
/// # Source
/// No relation: numbers are put in their places.
#[must_use]
pub fn changed(run: &Run, installation: &Installation, changes: &[Change]) -> (Run, Installation) {
    let (mut run, mut installation) = (run.clone(), installation.clone());
    for change in changes {
        change.make(&mut run, &mut installation);
    }
    (run, installation)
}

impl Change {
    fn make(&self, run: &mut Run, installation: &mut Installation) {
        let (legs, built) = match self.tube() {
            Tube::Intake => (&mut run.intake, &mut installation.intake),
            Tube::Exhaust => (&mut run.exhaust, &mut installation.exhaust),
        };
        match *self {
            Self::Trap {
                at,
                drain,
                capacity,
                seal,
                outlet_drop,
                ..
            } => {
                let bore = legs.last().map_or(Length::ZERO, |leg| leg.tube.bore);
                let behind = built.traps.iter().filter(|trap| trap.at < at).count();
                built.traps.insert(
                    behind,
                    Trap {
                        at,
                        drain,
                        open: false,
                        kind: TrapKind::EqualLegs,
                        capacity,
                        seal,
                        outlet_drop,
                        bore,
                    },
                );
            }
            Self::Leg {
                leg, rise, length, ..
            } => {
                let end_m: f64 = legs
                    .iter()
                    .take(leg + 1)
                    .map(|leg| leg.length.to_metres())
                    .sum();
                let Some(leg) = legs.get_mut(leg) else { return };
                let longer = length - leg.length;
                leg.rise = rise;
                leg.length = length;
                // What lies behind it keeps its place in its own leg.
                for trap in &mut built.traps {
                    if end_m - AT_JOINT_M <= trap.at.to_metres() {
                        trap.at += longer;
                    }
                }
            }
            Self::Hangers { leg, spacing, .. } => {
                if let Some(leg) = built.legs.get_mut(leg) {
                    leg.hanger_spacing = Some(spacing);
                }
            }
        }
    }

    /// The tube that it changes.
    #[must_use]
    pub const fn tube(&self) -> Tube {
        match self {
            Self::Trap { tube, .. } | Self::Leg { tube, .. } | Self::Hangers { tube, .. } => *tube,
        }
    }
}
