//! One leg as a row of the table, and under it what can't be used of it.

use dewrun_drawing::html::{has_frost, has_sweat, leg_cells};
use dewrun_run::{Outcome, Tube};
use leptos::prelude::*;

use super::fault_note::fault_note;
use super::parts::{flag, words};
use super::pick_row::{Place, pick_row};
use super::text_field::text_field;
use crate::element::{El, el};
use crate::state::use_desk;
use dewrun_desk::{Field, Pick, leg_number, leg_way};

/// The leg at a position of a tube.
pub(super) fn leg_row(tube: Tube, at: usize) -> Vec<El> {
    let desk = use_desk();
    let number = words(move || {
        desk.with(|project| leg_number(project, tube, at))
            .to_string()
    });
    let is_chosen = flag(move || desk.selected() == Some((tube, at)));
    let way = words(move || desk.with(|project| leg_way(project, tube, at)).to_owned());
    let [length, fall, bore, outside, insulation, tracing] = leg_fields(tube, at)
        .map(|field| el("td").class("dw-number").child(text_field(field, true)));
    let row = el("tr")
        .class("dw-legs-table__row")
        .class_if("dw-legs-table__row--chosen", is_chosen)
        .on("focusin", move |_| desk.select(tube, at))
        .on("click", move |_| desk.select(tube, at))
        .child(
            el("th")
                .attr("scope", "row")
                .class("dw-legs-table__leg")
                .child(number),
        )
        .child(el("td").child(pick_row(Pick::Space(tube, at), Place::Table)))
        .child([length, fall])
        .child(el("td").class("dw-legs-table__runs").child(way))
        .child([bore, outside, insulation, tracing])
        .child(results(tube, at));
    let notes = leg_fields(tube, at)
        .into_iter()
        .fold(el("td").attr("colspan", "16"), |cell, field| {
            cell.child(fault_note(field))
        });
    vec![row, el("tr").class("dw-legs-table__note").child(notes)]
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
fn results(tube: Tube, at: usize) -> Vec<El> {
    let desk = use_desk();
    let settled = desk.settled();
    let cells = Memo::new(move |_| {
        let answered = settled.get();
        let view = answered
            .as_ref()
            .map(|answered| answered.view(tube, desk.style()));
        view.map(|view| leg_cells(&view, at)).unwrap_or_default()
    });
    let is_absent = move |is_there: fn(&Outcome) -> bool| {
        flag(move || {
            !settled
                .get()
                .is_some_and(|answered| is_there(&answered.outcome))
        })
    };
    let cell = |place: usize| {
        el("td")
            .class("dw-number dw-result")
            .html(words(move || cells.with(|cells| cells[place].clone())))
    };
    vec![
        cell(0),
        cell(1),
        cell(2),
        cell(3),
        cell(4).flag("hidden", is_absent(has_frost)),
        cell(5).flag("hidden", is_absent(has_sweat)),
        cell(6),
    ]
}
