//! In which quantity a humidity is said; changing it leaves the air as it is.

use dewrun_document::Project;
use leptos::prelude::*;

use crate::state::{HumidityKind, say_duct_humidity_as, say_space_humidity_as, use_desk};

/// The quantity in which the duct air's humidity is said.
#[component]
pub(crate) fn DuctHumidityChoice() -> impl IntoView {
    let desk = use_desk();
    let chosen = Memo::new(move |_| desk.with(HumidityKind::of_duct));
    // A pair without the temperature has no choice to offer.
    let choice = move || {
        chosen.get().map(|kind| {
            view! {
                <HumidityChoice
                    id="duct-humidity-kind".to_owned()
                    whose="of the duct air".to_owned()
                    chosen=kind
                    say=move |project: &mut Project, kind| say_duct_humidity_as(project, kind)
                />
            }
        })
    };
    view! { {choice} }
}

/// The quantity in which a space's humidity is said.
#[component]
pub(crate) fn SpaceHumidityChoice(
    /// The space's position.
    at: usize,
) -> impl IntoView {
    let desk = use_desk();
    let chosen = Memo::new(move |_| {
        desk.with(|project| {
            let space = project.spaces.get(at)?;
            Some((HumidityKind::of(&space.humidity), space.name.clone()))
        })
    });
    let choice = move || {
        chosen.get().map(|(kind, name)| {
            view! {
                <HumidityChoice
                    id=format!("space-{at}-humidity-kind")
                    whose=format!("of {name}")
                    chosen=kind
                    in_table=true
                    say=move |project: &mut Project, kind| say_space_humidity_as(project, at, kind)
                />
            }
        })
    };
    view! { {choice} }
}

#[component]
fn HumidityChoice(
    id: String,
    whose: String,
    chosen: HumidityKind,
    say: impl Fn(&mut Project, HumidityKind) -> Option<()> + Copy + 'static,
    #[prop(optional)] in_table: bool,
) -> impl IntoView {
    let desk = use_desk();
    let is_offered = HumidityKind::OFFERED.contains(&chosen);
    let kinds = HumidityKind::OFFERED
        .into_iter()
        .chain((!is_offered).then_some(chosen));
    let option = |kind: HumidityKind| {
        view! { <option value=kind.name() selected={kind == chosen}>{kind.name()}</option> }
    };
    let choose = move |event| {
        let name = event_target_value(&event);
        let kind = HumidityKind::OFFERED
            .into_iter()
            .find(|kind| kind.name() == name);
        if let Some(kind) = kind {
            desk.change("humidity", |project| {
                // Air that has no answer keeps the quantity in which it was entered.
                let _ = say(project, kind);
            });
        }
    };
    view! {
        <div class="dw-select">
            <label for=id.clone() class="dw-field__label" class=("dw-spoken", in_table)>
                "Humidity as"
                <span class="dw-spoken">", "{whose}</span>
            </label>
            <select id=id class="dw-select__box" on:change=choose>
                {kinds.map(option).collect_view()}
            </select>
        </div>
    }
}
