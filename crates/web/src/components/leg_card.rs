//! A leg as a card, of which one is open at a time: for a phone, a ladder and gloves.

use dewrun_drawing::{View, html};
use leptos::prelude::*;

use super::leg_actions::LegActions;
use super::leg_made_of::LegMadeOf;
use super::leg_row::leg_fields;
use super::opened_figure::OpenedFigure;
use super::parts::{When, flag, words};
use super::pick_row::PickRow;
use super::text_field::TextField;
use crate::state::{Pick, TubeName, use_desk};

/// One leg.
#[component]
pub(super) fn LegCard(
    /// Its tube.
    tube: TubeName,
    /// Its position there.
    at: usize,
) -> impl IntoView {
    let desk = use_desk();
    let is_open = flag(move || desk.selected() == Some((tube, at)));
    let is_stale = flag(move || desk.is_stale());
    let told = move |tell: fn(&View<'_>, usize) -> String| {
        words(move || {
            let answered = desk.answered();
            let view = answered
                .as_ref()
                .map(|answered| answered.view(tube, desk.style()));
            view.map(|view| tell(&view, at)).unwrap_or_default()
        })
    };
    let head = told(html::leg_card_head);
    let figures = told(html::leg_card_figures);
    let turn = move |_| {
        if desk.selected_now() == Some((tube, at)) {
            desk.unselect();
        } else {
            desk.select(tube, at);
        }
    };
    view! {
        <li class="dw-leg-card" class=("dw-leg-card--open", is_open)>
            <button
                type="button"
                class="dw-leg-card__head"
                class=("dw-stale", is_stale)
                aria-expanded=words(move || is_open.get().to_string())
                on:click=turn
                inner_html=head
            />
            <When holds=is_open>
                <div class="dw-leg-card__fields">
                    <PickRow pick=Pick::Space(tube, at) untold=true />
                    {leg_fields(tube, at).map(|field| view! { <TextField field=field /> }.into_any()).into_iter().collect_view()}
                </div>
                <LegMadeOf tube=tube at=at />
                <dl class="dw-figures dw-leg-card__figures" class=("dw-stale", is_stale) inner_html=figures />
                <OpenedFigure section="legs" />
                <LegActions />
            </When>
        </li>
    }
}
