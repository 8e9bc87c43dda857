//! The sentence at a field whose text can't be used, with an offer to go back to the value that holds.

use leptos::prelude::*;

use super::parts::{When, flag, words};
use crate::state::{Fault, Field, use_desk};

/// The sentence at a field, if there is one.
#[component]
pub(super) fn FaultNote(
    /// The field.
    field: Field,
) -> impl IntoView {
    let desk = use_desk();
    let fault = move || desk.fault(field).filter(|fault| !fault.is_unfinished);
    let of = move |read: fn(Fault) -> String| words(move || fault().map(read).unwrap_or_default());
    let (name, sentence, held) = (
        of(|fault| format!("{}: ", fault.name)),
        of(|fault| format!("{} ", fault.sentence)),
        of(|fault| fault.held),
    );
    view! {
        <When holds=flag(move || fault().is_some())>
            <div class="dw-fault" id=field.note_id()>
                <FaultSign />
                <p>
                    <b>{name}</b>
                    {sentence}
                    <button type="button" class="dw-link" on:click=move |_| desk.give_back(field)>
                        "Use "{held}
                    </button>
                </p>
            </div>
        </When>
    }
}

/// The sign of a fault, beside words that say so.
#[component]
pub(super) fn FaultSign() -> impl IntoView {
    view! {
        <svg class="dw-fault__sign" viewBox="0 0 20 18" width="16" height="14.4" aria-hidden="true">
            <path d="M10 1.5 18.6 16.5H1.4z" />
            <path d="M10 6.6v5M10 13.2v1.7" />
        </svg>
    }
}
