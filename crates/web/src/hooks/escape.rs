//! The Escape key, wherever it is pressed.

use leptos::ev;
use leptos::prelude::*;

/// Runs something when Escape is pressed.
pub(crate) fn on_escape(act: impl Fn() + 'static) {
    let listening = window_event_listener(ev::keydown, move |event| {
        if event.key() == "Escape" {
            act();
        }
    });
    on_cleanup(move || listening.remove());
}
