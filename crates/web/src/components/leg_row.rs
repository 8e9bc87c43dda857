//! One leg as a row of the table, and under it what can't be used of it.

use dewrun_run::Tube;
use leptos::prelude::*;

use super::fault_note::FaultNote;
use super::leg_results::{use_leg_results, use_other_forms};
use super::space_choice::SpaceChoice;
use super::text_field::TextField;
use crate::state::{Field, leg_number, route, use_desk};

/// One leg.
#[component]
pub(crate) fn LegRow(
    /// Its tube.
    tube: Tube,
    /// Its position there.
    at: usize,
) -> impl IntoView {
    let desk = use_desk();
    let number = move || desk.with(|project| leg_number(project, tube, at));
    let is_chosen = move || desk.selected() == Some((tube, at));
    let field =
        |field: Field| view! { <td class="dw-number"><TextField field=field in_table=true /></td> };
    view! {
        <tr
            class="dw-legs-table__row"
            class=("dw-legs-table__row--chosen", is_chosen)
            on:focusin=move |_| desk.select(tube, at)
            on:click=move |_| desk.select(tube, at)
        >
            <th scope="row" class="dw-legs-table__leg">{number}</th>
            <td><SpaceChoice tube=tube at=at in_table=true /></td>
            {field(Field::LegLength(tube, at))}
            {field(Field::LegFall(tube, at))}
            <td class="dw-legs-table__runs">{use_way(tube, at)}</td>
            {field(Field::LegBore(tube, at))}
            {field(Field::LegOutside(tube, at))}
            {field(Field::LegInsulation(tube, at))}
            {field(Field::LegTracing(tube, at))}
            {results(tube, at)}
        </tr>
        <tr class="dw-legs-table__note">
            <td colspan="16">
                {leg_fields(tube, at).map(|field| view! { <FaultNote field=field /> }).into_iter().collect_view()}
            </td>
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

/// Which way water runs in a leg, in words.
pub(super) fn use_way(tube: Tube, at: usize) -> Memo<&'static str> {
    let desk = use_desk();
    Memo::new(move |_| {
        let rise = desk.with(|project| Some(route(project, tube)?.legs.get(at)?.rise_m.value));
        match rise {
            Some(rise) if rise < 0.0 => "with the air",
            Some(rise) if 0.0 < rise => "against the air",
            _ => "nowhere",
        }
    })
}

fn results(tube: Tube, at: usize) -> impl IntoView {
    let desk = use_desk();
    let found = use_leg_results(tube, at);
    let forms = use_other_forms();
    move || {
        let (frost, sweat) = forms.get();
        let cell = |number: String| view! { <td class="dw-number">{number}</td> };
        found.get().map(|leg| {
            view! {
                {cell(leg.air_at_end)}
                {cell(leg.lowest_wall)}
                {cell(leg.dew_point_at_end)}
                <td class="dw-number" class=("dw-stale", move || desk.is_stale())>
                    <span class="dw-legs-table__water">{leg.water}</span>
                    <span class="dw-bar" aria-hidden="true">
                        <span
                            class="dw-bar__part"
                            class=("dw-bar__part--frost", leg.is_frozen)
                            style=("--share", leg.share.to_string())
                        />
                    </span>
                </td>
                {frost.then(|| cell(leg.frost))}
                {sweat.then(|| cell(leg.sweat))}
                {cell(leg.wet_from)}
            }
        })
    }
}
