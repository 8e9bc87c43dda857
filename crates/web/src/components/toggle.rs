//! One of a few words, the chosen one set off.

use leptos::prelude::*;

use super::parts::flag;

/// One word that can be chosen.
#[derive(Clone, Copy)]
pub(super) struct Choosable {
    pub(super) word: &'static str,
    /// What is spoken after it.
    pub(super) spoken: &'static str,
}

/// A choice of one of a few words.
#[component]
pub(super) fn Toggle(
    /// What is chosen, for those who listen.
    label: &'static str,
    /// The same in a word for those who see, empty where the options say enough.
    name: &'static str,
    /// How it is drawn: `dw-toggle--box` or `dw-toggle--words`.
    kind: &'static str,
    /// The words.
    options: &'static [Choosable],
    /// Which one is chosen.
    chosen: Signal<usize>,
    /// Chooses one.
    choose: Callback<usize>,
) -> impl IntoView {
    let option = move |(at, choosable): (usize, &'static Choosable)| {
        let Choosable { word, spoken } = *choosable;
        let is_chosen = flag(move || chosen.get() == at);
        view! {
            <button
                type="button"
                class="dw-toggle__word"
                aria-pressed=Signal::derive(move || is_chosen.get().to_string())
                on:click=move |_| choose.run(at)
            >
                {word}
                <span class="dw-spoken">{spoken}</span>
            </button>
        }
    };
    view! {
        <div class=format!("dw-toggle {kind}") role="group" aria-label=label>
            <span class="dw-toggle__name" aria-hidden="true">{name}</span>
            {options.iter().enumerate().map(option).collect_view()}
        </div>
    }
}
