//! How wide the window is.

use leptos::ev;
use leptos::prelude::*;

/// Width of the window, CSS px.
pub(crate) fn use_window_width() -> ReadSignal<f64> {
    let read = || {
        let width = window().inner_width().ok().and_then(|width| width.as_f64());
        width.unwrap_or(1024.0)
    };
    let (width, set_width) = signal(read());
    let listening = window_event_listener(ev::resize, move |_| set_width.set(read()));
    on_cleanup(move || listening.remove());
    width
}
