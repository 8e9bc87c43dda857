//! Which of several sections is being read.

use leptos::ev;
use leptos::prelude::*;

/// A section is read from when its head has come up to this share of the window's height.
const READ_FROM: f64 = 0.4;

/// Position of the section that is being read among those with these ids.
pub(crate) fn use_section_in_view(ids: &'static [&'static str]) -> ReadSignal<usize> {
    let read = move || {
        let height = window().inner_height().ok();
        let height = height.and_then(|height| height.as_f64()).unwrap_or(0.0);
        let has_come = |id: &&str| {
            let head = document().get_element_by_id(id);
            head.is_some_and(|head| head.get_bounding_client_rect().top() <= READ_FROM * height)
        };
        ids.iter().rposition(has_come).unwrap_or_default()
    };
    let (at, set_at) = signal(0);
    let listening = window_event_listener(ev::scroll, move |_| {
        let now = read();
        if at.get_untracked() != now {
            set_at.set(now);
        }
    });
    on_cleanup(move || listening.remove());
    at
}
