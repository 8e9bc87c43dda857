//! Whether the page is being printed: paper has its own width, whatever the window's.

use leptos::prelude::*;

/// True from just before the page is laid out on paper until it is printed.
pub(crate) fn use_printing() -> ReadSignal<bool> {
    let (printing, set_printing) = signal(false);
    for (event, now) in [("beforeprint", true), ("afterprint", false)] {
        let listening = window_event_listener_untyped(event, move |_| set_printing.set(now));
        on_cleanup(move || listening.remove());
    }
    printing
}
