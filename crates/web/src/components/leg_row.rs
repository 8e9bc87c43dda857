//! One leg as a row of the table, and under it what can't be used of it.

use dewrun_drawing::html::{has_frost, has_sweat, leg_cells};
use dewrun_run::{Outcome, Tube};
use leptos::prelude::*;

use super::fault_note::FaultNote;
use super::parts::{flag, words};
use super::pick_row::PickRow;
use super::text_field::TextField;
use crate::state::{Field, Pick, leg_number, leg_way, use_desk};

/// One leg.
#[component]
pub(super) fn LegRow(
    /// Its tube.
    tube: Tube,
    /// Its position there.
    at: usize,
) -> impl IntoView {
    let desk = use_desk();
    let number = words(move || {
        desk.with(|project| leg_number(project, tube, at))
            .to_string()
    });
    let is_chosen = flag(move || desk.selected() == Some((tube, at)));
    let way = words(move || desk.with(|project| leg_way(project, tube, at)).to_owned());
    let [length, fall, bore, outside, insulation, tracing] = leg_fields(tube, at)
        .map(|field| view! { <td class="dw-number"><TextField field=field in_table=true /></td> });
    let notes = leg_fields(tube, at).map(|field| view! { <FaultNote field=field /> }.into_any());
    view! {
        <tr
            class="dw-legs-table__row"
            class=("dw-legs-table__row--chosen", is_chosen)
            on:focusin=move |_| desk.select(tube, at)
            on:click=move |_| desk.select(tube, at)
        >
            <th scope="row" class="dw-legs-table__leg">{number}</th>
            <td><PickRow pick=Pick::Space(tube, at) in_table=true untold=true /></td>
            {length}
            {fall}
            <td class="dw-legs-table__runs">{way}</td>
            {bore}
            {outside}
            {insulation}
            {tracing}
            <Results tube=tube at=at />
        </tr>
        <tr class="dw-legs-table__note">
            <td colspan="16">{notes.into_iter().collect_view()}</td>
        </tr>
    }
}

/// All fields of a leg.
pub(super) fn leg_fields(tube: Tube, at: usize) -> [Field; 6] {
    [
        Field::LegLength(tube, at),
        Field::LegFall(tube, at),
        Field::LegBore(tube, at),
        Field::LegOutside(tube, at),
        Field::LegInsulation(tube, at),
        Field::LegTracing(tube, at),
    ]
}

/// The cells of what became of the leg.
#[component]
fn Results(tube: Tube, at: usize) -> impl IntoView {
    let desk = use_desk();
    let cells = Memo::new(move |_| {
        let answered = desk.answered();
        let view = answered
            .as_ref()
            .map(|answered| answered.view(tube, desk.style()));
        view.map(|view| leg_cells(&view, at)).unwrap_or_default()
    });
    let is_absent = move |is_there: fn(&Outcome) -> bool| {
        flag(move || {
            !desk
                .answered()
                .is_some_and(|answered| is_there(&answered.outcome))
        })
    };
    let cell = |(place, is_absent): (usize, Signal<bool>)| {
        let text = words(move || cells.with(|cells| cells[place].clone()));
        view! { <td class="dw-number dw-result" hidden=is_absent inner_html=text /> }.into_any()
    };
    let here = || flag(|| false);
    [
        here(),
        here(),
        here(),
        here(),
        is_absent(has_frost),
        is_absent(has_sweat),
        here(),
    ]
    .into_iter()
    .enumerate()
    .map(cell)
    .collect_view()
}
