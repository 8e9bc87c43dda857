//! A part that a row of the library may stand for, picked by name, with what is assumed of it and from where.

use leptos::prelude::*;

use super::choice::{Choice, ChoiceOption, Options};
use super::parts::words;
use crate::state::{Pick, use_desk};

/// The choice of a row.
#[component]
pub(super) fn PickRow(
    /// What it stands for.
    pick: Pick,
    /// Stands in a table whose head names it.
    #[prop(optional)]
    in_table: bool,
    /// What is assumed is told elsewhere.
    #[prop(optional)]
    untold: bool,
) -> impl IntoView {
    let desk = use_desk();
    let picked = words(move || desk.with(|project| pick.picked(project)));
    let options = Signal::derive(move || -> Options {
        let options = desk.with(|project| pick.options(project)).into_iter();
        options
            .map(|option| ChoiceOption {
                group: option.group,
                value: option.value,
                name: option.name,
            })
            .collect()
    });
    let choose = Callback::new(move |value: String| {
        desk.change(pick.name(), |project| {
            // Own values are no row: nothing is to be written.
            let _ = pick.take(project, &value);
        });
    });
    let told = move || {
        let told = words(move || {
            let style = desk.style();
            desk.with(|project| pick.told(project, style))
        });
        view! { <p class="dw-pick__told">{told}</p> }
    };
    view! {
        <div class="dw-pick">
            <Choice
                id=pick.id()
                name=pick.name()
                whose=words(move || desk.with(|project| pick.whose(project)))
                options=options
                chosen=picked
                choose=choose
                in_table=in_table
            />
            {(!untold).then(told)}
        </div>
    }
}
