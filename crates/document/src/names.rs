//! What people call the parts of a run, in the engine's order.

use dewrun_quantity::FallForm;

use crate::{Project, Route, Run};

/// What people call the parts of a run; positions are those of the engine's run.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Names {
    /// The run.
    pub run: String,
    /// The duct.
    pub duct: String,
    /// The spaces.
    pub spaces: Vec<String>,
    /// Ids of the legs of the intake tube.
    pub intake: Vec<String>,
    /// Ids of the legs of the exhaust tube.
    pub exhaust: Vec<String>,
    /// How the fall of each intake leg is written.
    pub intake_falls: Vec<FallForm>,
    /// How the fall of each exhaust leg is written.
    pub exhaust_falls: Vec<FallForm>,
}

impl Names {
    pub(crate) fn of(project: &Project, run: &Run) -> Self {
        let exhaust = run.exhaust.as_ref();
        Self {
            run: called(&run.name, &run.id),
            duct: run.duct.name.clone(),
            spaces: project
                .spaces
                .iter()
                .map(|space| called(&space.name, &space.id))
                .collect(),
            intake: ids(&run.intake),
            exhaust: exhaust.map(ids).unwrap_or_default(),
            intake_falls: falls(&run.intake),
            exhaust_falls: exhaust.map(falls).unwrap_or_default(),
        }
    }
}

fn ids(route: &Route) -> Vec<String> {
    route.legs.iter().map(|leg| leg.id.clone()).collect()
}

fn falls(route: &Route) -> Vec<FallForm> {
    route.legs.iter().map(|leg| leg.fall_as.into()).collect()
}

/// The name, or the id where nobody gave one.
#[must_use]
pub fn called(name: &str, id: &str) -> String {
    let named = if name.trim().is_empty() { id } else { name };
    named.to_owned()
}
