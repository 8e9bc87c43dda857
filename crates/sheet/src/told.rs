//! What a sheet is made of: a run of a project, how it is installed, and its answer.

use dewrun_advice::Resting;
use dewrun_document::{Access, Names, Project, Route};
use dewrun_quantity::{Length, Style};
use dewrun_run::{HangerAdvice, Installation, Outcome, Run, Trap, Tube, TubeWater, Whole};

/// A run of a project with its answer.
#[derive(Debug, Clone, Copy)]
pub struct Told<'a> {
    /// The project.
    pub project: &'a Project,
    /// Position of the run in it.
    pub run_index: usize,
    /// The run as it was evaluated.
    pub run: &'a Run,
    /// What its parts are called.
    pub names: &'a Names,
    /// How it is installed.
    pub installation: &'a Installation,
    /// Its steady answer.
    pub outcome: &'a Outcome,
    /// Its water and air.
    pub whole: &'a Whole,
    /// The assumed values that the answer rests on, the one that decides most first.
    pub resting: &'a [Resting],
}

/// Hangers are set out to this.
const HANGERS_MM: f64 = 50.0;

impl<'a> Told<'a> {
    /// The run as the project has it.
    pub(crate) fn entered(&self) -> Option<&'a dewrun_document::Run> {
        self.project.runs.get(self.run_index)
    }

    /// A tube as the project has it.
    pub(crate) fn route(&self, tube: Tube) -> Option<&'a Route> {
        let run = self.entered()?;
        match tube {
            Tube::Intake => Some(&run.intake),
            Tube::Exhaust => run.exhaust.as_ref(),
        }
    }

    /// Its water; none for a tube that is not drawn.
    pub(crate) fn water(&self, tube: Tube) -> Option<&'a TubeWater> {
        match tube {
            Tube::Intake => Some(&self.whole.intake),
            Tube::Exhaust => self.whole.exhaust.as_ref(),
        }
    }

    /// Its traps as they are installed.
    pub(crate) fn traps(&self, tube: Tube) -> &'a [Trap] {
        match tube {
            Tube::Intake => &self.installation.intake.traps,
            Tube::Exhaust => &self.installation.exhaust.traps,
        }
    }

    /// Where traps are and where they are missing, along a tube.
    pub(crate) fn trap_places(&self, tube: Tube) -> Vec<Length> {
        let missing = self
            .water(tube)
            .into_iter()
            .flat_map(|water| &water.proposals);
        let there = self.traps(tube).iter().map(|trap| trap.at);
        there.chain(missing.filter_map(|one| one.trap.at)).collect()
    }

    /// How a person gets to a place along a tube; of two legs that meet there, the easier way.
    pub(crate) fn access(&self, tube: Tube, at: Length) -> Option<Access> {
        const TOUCHES: Length = Length::millimetres(1.0);
        let route = self.route(tube)?;
        let mut from = Length::ZERO;
        let mut best = None;
        for leg in &route.legs {
            let to = from + Length::metres(leg.length_m.value);
            if from - TOUCHES <= at && at <= to + TOUCHES {
                best = Some(easier(best, leg.access));
            }
            from = to;
        }
        best
    }

    /// How far apart the hangers of a leg stand at most, to what is set out on site; none where it hangs by none.
    pub(crate) fn hangers(&self, tube: Tube, leg: usize) -> Option<Length> {
        match self.water(tube)?.legs.get(leg)?.hangers {
            HangerAdvice::Spacing { largest, now } => {
                let step = Length::millimetres(HANGERS_MM);
                let rounded = step * (largest / step).floor();
                let largest = if rounded == Length::ZERO {
                    largest
                } else {
                    rounded
                };
                // Nobody takes hangers down that stand close enough.
                let stands = now.map(|(now, _)| now).filter(|now| *now <= largest);
                Some(stands.unwrap_or(largest))
            }
            HangerAdvice::Steep | HangerAdvice::AllAlong | HangerAdvice::Level => None,
        }
    }

    /// The names for drawings, with the hangers and traps as they have to be.
    pub(crate) fn drawing_names(&self) -> dewrun_drawing::Names {
        let fitted = |tube: Tube, legs: usize| dewrun_drawing::Fitted {
            traps: self.trap_places(tube),
            hangers: (0..legs).map(|leg| self.hangers(tube, leg)).collect(),
        };
        dewrun_drawing::Names {
            run: self.names.run.clone(),
            duct: self.names.duct.clone(),
            spaces: self.names.spaces.clone(),
            intake_falls: self.names.intake_falls.clone(),
            exhaust_falls: self.names.exhaust_falls.clone(),
            intake_fitted: fitted(Tube::Intake, self.run.intake.len()),
            exhaust_fitted: fitted(Tube::Exhaust, self.run.exhaust.len()),
        }
    }

    /// The names for drawings, with the hangers and traps as they are.
    pub(crate) fn names_as_drawn(&self) -> dewrun_drawing::Names {
        let fitted = |tube: Tube| dewrun_drawing::Fitted {
            traps: self.traps(tube).iter().map(|trap| trap.at).collect(),
            hangers: self
                .water(tube)
                .into_iter()
                .flat_map(|water| &water.legs)
                .map(|leg| match leg.hangers {
                    HangerAdvice::Spacing { now, .. } => now.map(|(now, _)| now),
                    HangerAdvice::Steep | HangerAdvice::AllAlong | HangerAdvice::Level => None,
                })
                .collect(),
        };
        dewrun_drawing::Names {
            intake_fitted: fitted(Tube::Intake),
            exhaust_fitted: fitted(Tube::Exhaust),
            ..self.drawing_names()
        }
    }

    /// One of its tubes, to be drawn under those names.
    pub(crate) fn view<'b>(
        &'b self,
        names: &'b dewrun_drawing::Names,
        tube: Tube,
        style: Style,
    ) -> dewrun_drawing::View<'b> {
        dewrun_drawing::View {
            run: self.run,
            outcome: self.outcome,
            names,
            style,
            tube,
        }
    }
}

fn easier(one: Option<Access>, other: Access) -> Access {
    let rank = |access: Access| match access {
        Access::Floor => 0,
        Access::Ladder => 1,
        Access::Lift => 2,
        Access::None => 3,
    };
    match one {
        Some(one) if rank(one) <= rank(other) => one,
        _ => other,
    }
}

/// From where a person reaches it, in words.
pub(crate) const fn reached(access: Access) -> &'static str {
    match access {
        Access::Floor => "the floor",
        Access::Ladder => "a ladder",
        Access::Lift => "a lift",
        Access::None => "out of reach",
    }
}

/// What a tube is called.
pub(crate) const fn called(tube: Tube) -> &'static str {
    match tube {
        Tube::Intake => "intake tube",
        Tube::Exhaust => "exhaust tube",
    }
}
