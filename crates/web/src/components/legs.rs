//! The legs of both tubes: a table where there is room, cards on a phone.

use std::sync::Arc;

use dewrun_run::Tube;
use leptos::prelude::*;

use super::leg_actions::LegActions;
use super::leg_card::LegCard;
use super::leg_made_of::LegMadeOf;
use super::leg_row::LegRow;
use super::legs_table::LegsTable;
use super::opened_figure::OpenedFigure;
use super::origins::Origins;
use super::parts::{Row, Rows, When, flag, words};
use super::section_head::SectionHead;
use crate::hooks::printing::use_printing;
use crate::state::{leg_number, route, use_desk};

/// Narrower windows show cards, px.
const TABLE_FROM: f64 = 1080.0;

/// The section of the legs.
#[component]
pub(crate) fn Legs(
    /// Width of the window, px.
    window_width: ReadSignal<f64>,
) -> impl IntoView {
    let is_printing = use_printing();
    let is_wide = flag(move || TABLE_FROM <= window_width.get() || is_printing.get());
    view! {
        <section class="dw-legs" aria-labelledby="legs" data-opens="legs">
            <SectionHead id="legs" name="Legs" question="What is the tube made of, and what happens in each leg?">
                <Origins />
                <When holds=is_wide>
                    <LegActions />
                </When>
            </SectionHead>
            <When holds=is_wide>
                <LegsTable />
                <OpenedFigure section="legs" />
                <ChosenLeg />
            </When>
            <When holds=flag(move || !is_wide.get())>
                <h3 class="dw-legs__tube">"Intake tube, from the duct to the detector"</h3>
                <ul class="dw-legs__cards">{cards(Tube::Intake)}</ul>
                <div hidden=has_no_legs(Tube::Exhaust)>
                    <h3 class="dw-legs__tube">"Exhaust tube, from the detector to the duct"</h3>
                    <ul class="dw-legs__cards">{cards(Tube::Exhaust)}</ul>
                </div>
            </When>
        </section>
    }
}

/// What the chosen leg is made of; the first one as long as none is chosen.
#[component]
fn ChosenLeg() -> impl IntoView {
    let desk = use_desk();
    let chosen = Memo::new(move |_| desk.selected().unwrap_or((Tube::Intake, 0)));
    move || {
        let (tube, at) = chosen.get();
        let number = words(move || {
            let number = desk.with(|project| leg_number(project, tube, at));
            format!("What leg {number} is made of")
        });
        view! {
            <h3 class="dw-legs__tube">{number}</h3>
            <LegMadeOf tube=tube at=at />
        }
        .into_any()
    }
}

/// The legs of a tube as rows of the table.
pub(super) fn rows(tube: Tube) -> AnyView {
    let row: Row = Arc::new(move |at| view! { <LegRow tube=tube at=at /> }.into_any());
    view! { <Rows count=count(tube) row=row /> }.into_any()
}

fn cards(tube: Tube) -> AnyView {
    let row: Row = Arc::new(move |at| view! { <LegCard tube=tube at=at /> }.into_any());
    view! { <Rows count=count(tube) row=row /> }.into_any()
}

/// Whether a tube is not drawn.
pub(super) fn has_no_legs(tube: Tube) -> Signal<bool> {
    let count = count(tube);
    flag(move || count.get() == 0)
}

fn count(tube: Tube) -> Signal<usize> {
    let desk = use_desk();
    Signal::derive(move || {
        desk.with(|project| route(project, tube).map_or(0, |route| route.legs.len()))
    })
}
