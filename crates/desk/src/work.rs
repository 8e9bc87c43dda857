//! Work that may take longer than a frame, as text and numbers in and numbers out, so that it can be done away from the page.
//!
//! Who asks does not know where it is done: the same function answers in a worker, on the page and in a test.

use dewrun_advice::{
    BoundaryPoint, Limit, SpaceLimit, StayingDry, TubeLimit, dry_boundary, staying_dry,
};
use dewrun_document::{read, write};
use dewrun_quantity::{Length, Temperature};

use crate::{Answered, OpenProject};

/// What there is to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Work {
    /// What a run would still take dry; read back by [`limits_of`].
    StayingDry,
    /// The dry boundary at the duct temperatures given, °C; read back by [`boundary_of`].
    DryBoundary,
}

/// All kinds of work.
const ALL: [Work; 2] = [Work::StayingDry, Work::DryBoundary];

impl Work {
    /// The word by which it is asked for.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::StayingDry => "staying-dry",
            Self::DryBoundary => "dry-boundary",
        }
    }

    /// The work of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        ALL.into_iter().find(|work| work.name() == name)
    }

    /// Does it for a run of a project file.
    ///
    /// # Errors
    /// What is wrong with the project, or why there is no answer, as a sentence.
    pub fn done(self, project: &str, run: usize, numbers: &[f64]) -> Result<Vec<f64>, String> {
        let project = read(project).map_err(|error| error.to_string())?;
        let answered = Answered::unranked(&OpenProject { project, run });
        self.done_for(&answered.map_err(|error| error.to_string())?, numbers)
    }

    /// Does it for a run and its answer.
    ///
    /// # Errors
    /// Why there is none, as a sentence.
    pub fn done_for(self, answered: &Answered, numbers: &[f64]) -> Result<Vec<f64>, String> {
        let (run, outcome) = (&answered.run, &answered.outcome);
        let done = match self {
            Self::StayingDry => staying_dry(run, outcome).map(|found| limits_as_numbers(&found)),
            Self::DryBoundary => {
                let at: Vec<_> = numbers.iter().copied().map(Temperature::celsius).collect();
                dry_boundary(run, outcome, &at).map(|found| boundary_as_numbers(&found))
            }
        };
        done.map_err(|error| error.to_string())
    }
}

/// The text that [`Work::done`] reads the project from.
///
/// # Errors
/// The project can't be written, as a sentence.
pub fn project_text(project: &OpenProject) -> Result<String, String> {
    write(project).map_err(|error| error.to_string())
}

/// Duct temperature; then of duct air, spaces and tube whether there is a limit and where; the tube's leg and whether it ends there; the spaces.
fn limits_as_numbers(found: &StayingDry) -> Vec<f64> {
    let t_c = |t: Temperature| t.to_celsius();
    let mut numbers = vec![found.duct_temperature.to_celsius()];
    numbers.extend(limit_as_numbers(found.duct_air.map(t_c)));
    numbers.extend(limit_as_numbers(found.space.temperature.map(t_c)));
    numbers.extend(limit_as_numbers(found.tube.length.map(Length::to_metres)));
    numbers.push(counted(found.tube.leg));
    numbers.push(f64::from(u8::from(found.tube.at_end_of_leg)));
    numbers.extend(found.space.spaces.iter().copied().map(counted));
    numbers
}

/// What [`Work::StayingDry`] found; none where the numbers are no such answer.
#[must_use]
pub fn limits_of(numbers: &[f64]) -> Option<StayingDry> {
    let [
        t,
        air_is,
        air,
        space_is,
        space,
        tube_is,
        tube,
        leg,
        ends,
        spaces @ ..,
    ] = numbers
    else {
        return None;
    };
    Some(StayingDry {
        duct_temperature: Temperature::celsius(*t),
        duct_air: limit_of(*air_is, *air)?.map(Temperature::celsius),
        space: SpaceLimit {
            temperature: limit_of(*space_is, *space)?.map(Temperature::celsius),
            spaces: spaces.iter().map(|at| place(*at)).collect::<Option<_>>()?,
        },
        tube: TubeLimit {
            length: limit_of(*tube_is, *tube)?.map(Length::metres),
            leg: place(*leg)?,
            at_end_of_leg: *ends != 0.0,
        },
    })
}

/// Of each point the duct temperature, whether there is a limit and where.
fn boundary_as_numbers(found: &[BoundaryPoint]) -> Vec<f64> {
    let point = |point: &BoundaryPoint| {
        let [is, at] = limit_as_numbers(point.dew_point.map(|t| t.to_celsius()));
        [point.temperature.to_celsius(), is, at]
    };
    found.iter().flat_map(point).collect()
}

/// What [`Work::DryBoundary`] found; none where the numbers are no such answer.
#[must_use]
pub fn boundary_of(numbers: &[f64]) -> Option<Vec<BoundaryPoint>> {
    let (points, rest) = numbers.as_chunks::<3>();
    let point = |[t, is, at]: &[f64; 3]| {
        Some(BoundaryPoint {
            temperature: Temperature::celsius(*t),
            dew_point: limit_of(*is, *at)?.map(Temperature::celsius),
        })
    };
    rest.is_empty()
        .then(|| points.iter().map(point).collect())
        .flatten()
}

const AT: f64 = 0.0;
const ANY: f64 = 1.0;
const NEVER: f64 = 2.0;

fn limit_as_numbers(limit: Limit<f64>) -> [f64; 2] {
    match limit {
        Limit::At(value) => [AT, value],
        Limit::Any => [ANY, 0.0],
        Limit::Never => [NEVER, 0.0],
    }
}

fn limit_of(is: f64, at: f64) -> Option<Limit<f64>> {
    match is {
        AT => Some(Limit::At(at)),
        ANY => Some(Limit::Any),
        NEVER => Some(Limit::Never),
        _ => None,
    }
}

/// A position as a number; no project has so many parts that it would not be one.
fn counted(at: usize) -> f64 {
    u32::try_from(at).map_or(f64::INFINITY, f64::from)
}

/// The position that a number says.
#[allow(
    clippy::cast_possible_truncation,
    reason = "what the cast changed is noticed in the line after it"
)]
fn place(number: f64) -> Option<usize> {
    let at = number as usize;
    (counted(at) == number).then_some(at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::EXAMPLES;

    fn projects() -> Vec<OpenProject> {
        let examples = EXAMPLES.iter();
        let read = |example: &crate::Example| example.project().expect("it is read by the tests");
        examples.map(|example| read(example).into()).collect()
    }

    #[test]
    fn limits_come_back_as_they_were_found() {
        for project in projects() {
            let answered = Answered::unranked(&project).expect("examples have an answer");
            let direct = staying_dry(&answered.run, &answered.outcome).expect("limits are found");
            let text = project_text(&project).expect("it can be written");
            let done = Work::StayingDry.done(&text, project.run, &[]);
            let back = limits_of(&done.expect("limits are found"));
            assert_eq!(back, Some(direct), "of {}", project.name);
        }
    }

    #[test]
    fn the_boundary_comes_back_as_it_was_found() {
        let at = [12.0, 20.0, 28.0, 36.0];
        for project in projects() {
            let answered = Answered::unranked(&project).expect("examples have an answer");
            let direct = dry_boundary(
                &answered.run,
                &answered.outcome,
                &at.map(Temperature::celsius),
            )
            .expect("a boundary is found");
            let text = project_text(&project).expect("it can be written");
            let done = Work::DryBoundary.done(&text, project.run, &at);
            let back = boundary_of(&done.expect("a boundary is found"));
            assert_eq!(back, Some(direct), "of {}", project.name);
        }
    }

    #[test]
    fn what_can_not_be_done_is_said() {
        let done = Work::StayingDry.done("{}", 0, &[]);
        assert!(done.is_err(), "that is no project");
        let project = projects().remove(0);
        let text = project_text(&project).expect("it can be written");
        let done = Work::StayingDry.done(&text, 99, &[]);
        assert!(done.is_err(), "there is no such run: {done:?}");
    }

    #[test]
    fn numbers_of_no_answer_are_none() {
        assert_eq!(limits_of(&[1.0, 2.0]), None, "too few");
        assert_eq!(boundary_of(&[1.0, 7.0, 0.0]), None, "no such limit");
        assert_eq!(boundary_of(&[1.0, 0.0]), None, "half a point");
    }

    #[test]
    fn each_kind_is_found_by_its_name() {
        for work in ALL {
            assert_eq!(Work::named(work.name()), Some(work), "its own");
        }
        assert_eq!(Work::named("tea"), None, "no such work");
    }
}
