//! In which space a leg lies.

use leptos::prelude::*;

use super::choice::{Choice, ChoiceOption, Options};
use super::parts::words;
use crate::state::{TubeName, leg_number, route, route_mut, use_desk};

/// The choice of a leg's space.
#[component]
pub(super) fn SpaceOfLeg(
    /// The leg's tube.
    tube: TubeName,
    /// Its position there.
    at: usize,
    /// Stands in a table whose head names it.
    #[prop(optional)]
    in_table: bool,
) -> impl IntoView {
    let desk = use_desk();
    let chosen = words(move || {
        desk.with(|project| {
            let leg = route(project, tube).and_then(|route| route.legs.get(at));
            leg.map(|leg| leg.space.clone()).unwrap_or_default()
        })
    });
    let options = Signal::derive(move || {
        let spaces = |project: &dewrun_document::Project| -> Options {
            let spaces = project.spaces.iter();
            spaces
                .map(|space| ChoiceOption::new(space.id.clone(), space.name.clone()))
                .collect()
        };
        desk.with(spaces)
    });
    let choose = Callback::new(move |space: String| {
        desk.change("space", |project| {
            let leg = route_mut(project, tube).and_then(|route| route.legs.get_mut(at));
            if let Some(leg) = leg {
                leg.space = space;
            }
        });
    });
    let whose = words(move || {
        format!(
            " of leg {}",
            desk.with(|project| leg_number(project, tube, at))
        )
    });
    view! {
        <Choice
            id=format!("space-of-{tube:?}-{at}")
            name="Space"
            whose=whose
            options=options
            chosen=chosen
            choose=choose
            in_table=in_table
        />
    }
}
