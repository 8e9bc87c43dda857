//! In which space a leg lies.

use leptos::prelude::*;

use crate::state::{TubeName, leg_number, route, route_mut, use_desk};

/// The choice of a leg's space.
#[component]
pub(crate) fn SpaceChoice(
    /// The leg's tube.
    tube: TubeName,
    /// Its position there.
    at: usize,
    /// Stands in a table whose head names it.
    #[prop(optional)]
    in_table: bool,
) -> impl IntoView {
    let desk = use_desk();
    let id = format!("space-of-{tube:?}-{at}");
    let chosen = Memo::new(move |_| {
        desk.with(|project| {
            route(project, tube)?
                .legs
                .get(at)
                .map(|leg| leg.space.clone())
        })
    });
    let number = move || desk.with(|project| leg_number(project, tube, at));
    let options = move || {
        let spaces = desk.with(|project| project.spaces.clone());
        let option = |space: dewrun_document::Space| {
            let is_chosen = chosen.get().as_ref() == Some(&space.id);
            view! { <option value=space.id selected=is_chosen>{space.name}</option> }
        };
        spaces.into_iter().map(option).collect_view()
    };
    let choose = move |event| {
        let space = event_target_value(&event);
        desk.change("space", |project| {
            let leg = route_mut(project, tube).and_then(|route| route.legs.get_mut(at));
            if let Some(leg) = leg {
                leg.space = space;
            }
        });
    };
    view! {
        <div class="dw-select" class=("dw-select--in-table", in_table)>
            <label for=id.clone() class="dw-field__label" class=("dw-spoken", in_table)>
                "Space"
                <span class="dw-spoken">" of leg "{number}</span>
            </label>
            <select
                id=id
                class="dw-select__box"
                prop:value=move || chosen.get().unwrap_or_default()
                on:change=choose
            >
                {options}
            </select>
        </div>
    }
}
