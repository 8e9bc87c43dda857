//! A leg as a card, of which one is open at a time: for a phone, a ladder and gloves.

use dewrun_drawing::{View, html};
use leptos::prelude::*;

use super::leg_actions::leg_actions;
use super::leg_made_of::leg_made_of;
use super::leg_row::leg_fields;
use super::opened_figure::opened_figure;
use super::parts::{button, flag, words};
use super::phone_level::phone_level;
use super::pick_row::{Place, pick_row};
use super::text_field::text_field;
use crate::element::{El, el, when};
use crate::state::use_desk;
use dewrun_desk::{Field, Pick, TubeName};

/// The leg at a position of a tube.
pub(super) fn leg_card(tube: TubeName, at: usize) -> Vec<El> {
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
    let turn = move || {
        if desk.selected_now() == Some((tube, at)) {
            desk.unselect();
        } else {
            desk.select(tube, at);
        }
    };
    let head = button("dw-leg-card__head", turn)
        .class_if("dw-stale", is_stale)
        .live_attr("aria-expanded", words(move || is_open.get().to_string()))
        .html(head);
    let opened = when(is_open, move || {
        let fields = leg_fields(tube, at).into_iter().fold(
            el("div")
                .class("dw-leg-card__fields")
                .child(pick_row(Pick::Space(tube, at), Place::Untold)),
            |fields, field| {
                let fields = fields.child(text_field(field, false));
                match field {
                    Field::LegFall(..) => fields.child(phone_level(tube, at)),
                    _ => fields,
                }
            },
        );
        let figures = el("dl")
            .class("dw-figures dw-leg-card__figures")
            .class_if("dw-stale", is_stale)
            .html(told(html::leg_card_figures));
        let below = el("div").child(opened_figure("legs")).child(leg_actions());
        vec![fields, leg_made_of(tube, at), figures, below]
    });
    vec![
        el("li")
            .class("dw-leg-card")
            .class_if("dw-leg-card--open", is_open)
            .child(head)
            .child(opened),
    ]
}
