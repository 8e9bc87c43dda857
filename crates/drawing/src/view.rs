//! What a drawing shows: a run, its answer and the names that people gave.

use dewrun_quantity::{FallForm, Length, Style};
use dewrun_run::{Leg, Outcome, Run, Tube, TubeOutcome};

/// The words that people use for the parts of a run and what they fitted to it, each list in the order of the run's own.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Names {
    /// The run.
    pub run: String,
    /// The duct.
    pub duct: String,
    /// The spaces.
    pub spaces: Vec<String>,
    /// How the fall of each intake leg is written.
    pub intake_falls: Vec<FallForm>,
    /// How the fall of each exhaust leg is written.
    pub exhaust_falls: Vec<FallForm>,
    /// What is fitted to the intake tube.
    pub intake_fitted: Fitted,
    /// What is fitted to the exhaust tube.
    pub exhaust_fitted: Fitted,
}

/// What is fitted to a tube and only drawn.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Fitted {
    /// Where its traps are, from its start.
    pub traps: Vec<Length>,
    /// Between the hangers of each leg, where that is known.
    pub hangers: Vec<Option<Length>>,
}

/// One tube of an evaluated run, and how numbers are read.
#[derive(Debug, Clone, Copy)]
pub struct View<'a> {
    /// What was evaluated.
    pub run: &'a Run,
    /// Its answer.
    pub outcome: &'a Outcome,
    /// Its names.
    pub names: &'a Names,
    /// Units and decimal mark.
    pub style: Style,
    /// Which tube is drawn.
    pub tube: Tube,
}

impl<'a> View<'a> {
    /// The legs of the tube.
    #[must_use]
    pub fn legs(&self) -> &'a [Leg] {
        match self.tube {
            Tube::Intake => &self.run.intake,
            Tube::Exhaust => &self.run.exhaust,
        }
    }

    /// The answer for the tube; none for an exhaust tube that is not drawn.
    #[must_use]
    pub fn answer(&self) -> Option<&'a TubeOutcome> {
        match self.tube {
            Tube::Intake => Some(&self.outcome.intake),
            Tube::Exhaust => self.outcome.exhaust.as_ref(),
        }
    }

    /// Length of the tube.
    #[must_use]
    pub fn length(&self) -> Length {
        self.legs().iter().map(|leg| leg.length).sum()
    }

    /// How the fall of a leg is written.
    #[must_use]
    pub fn fall_form(&self, leg: usize) -> FallForm {
        let forms = match self.tube {
            Tube::Intake => &self.names.intake_falls,
            Tube::Exhaust => &self.names.exhaust_falls,
        };
        forms.get(leg).copied().unwrap_or_default()
    }

    /// What is fitted to the tube.
    #[must_use]
    pub fn fitted(&self) -> &'a Fitted {
        match self.tube {
            Tube::Intake => &self.names.intake_fitted,
            Tube::Exhaust => &self.names.exhaust_fitted,
        }
    }

    /// The number that a leg goes by: intake legs count from 1, exhaust legs go on from there.
    #[must_use]
    pub fn leg_number(&self, leg: usize) -> usize {
        match self.tube {
            Tube::Intake => leg + 1,
            Tube::Exhaust => self.run.intake.len() + leg + 1,
        }
    }

    /// The name of a space.
    #[must_use]
    pub fn space_name(&self, space: usize) -> &'a str {
        self.names.spaces.get(space).map_or("", String::as_str)
    }
}
