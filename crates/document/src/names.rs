//! What people call the parts of a run, in the engine's order.

use crate::{Project, Route, Run};

/// What people call the parts of a run; positions are those of the engine's run.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Names {
    /// The run.
    pub run: String,
    /// The spaces.
    pub spaces: Vec<String>,
    /// Ids of the legs of the intake tube.
    pub intake: Vec<String>,
    /// Ids of the legs of the exhaust tube.
    pub exhaust: Vec<String>,
}

impl Names {
    pub(crate) fn of(project: &Project, run: &Run) -> Self {
        let ids = |route: &Route| route.legs.iter().map(|leg| leg.id.clone()).collect();
        Self {
            run: called(&run.name, &run.id),
            spaces: Self::spaces_of(project),
            intake: ids(&run.intake),
            exhaust: run.exhaust.as_ref().map(ids).unwrap_or_default(),
        }
    }

    pub(crate) fn spaces_of(project: &Project) -> Vec<String> {
        project
            .spaces
            .iter()
            .map(|space| called(&space.name, &space.id))
            .collect()
    }
}

/// The name, or the id where nobody gave one.
fn called(name: &str, id: &str) -> String {
    let named = if name.trim().is_empty() { id } else { name };
    named.to_owned()
}
