//! Whether the page has been scrolled past an element.

use leptos::ev;
use leptos::prelude::*;

use crate::element::El;

/// True once the element's lower edge has left the window at the top.
pub(crate) fn use_scrolled_past(element: &El) -> ReadSignal<bool> {
    let (past, set_past) = signal(false);
    let element = element.clone();
    let listening = window_event_listener(ev::scroll, move |_| {
        let now = element.dom().get_bounding_client_rect().bottom() < 0.0;
        if past.get_untracked() != now {
            set_past.set(now);
        }
    });
    on_cleanup(move || listening.remove());
    past
}
