//! Whether the page has been scrolled past an element.

use leptos::ev;
use leptos::html::Section;
use leptos::prelude::*;

/// True once the element's lower edge has left the window at the top.
pub(crate) fn use_scrolled_past(element: NodeRef<Section>) -> ReadSignal<bool> {
    let (past, set_past) = signal(false);
    let listening = window_event_listener(ev::scroll, move |_| {
        let bottom = element
            .get_untracked()
            .map(|element| element.get_bounding_client_rect().bottom());
        let now = bottom.is_some_and(|bottom| bottom < 0.0);
        if past.get_untracked() != now {
            set_past.set(now);
        }
    });
    on_cleanup(move || listening.remove());
    past
}
