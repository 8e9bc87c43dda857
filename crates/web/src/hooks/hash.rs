//! What stands after the `#` of the address, as it changes.

use leptos::ev;
use leptos::prelude::*;

/// What stands after the `#` of the address, the sign included.
pub(crate) fn use_hash() -> ReadSignal<String> {
    let read = || window().location().hash().unwrap_or_default();
    let (hash, set_hash) = signal(read());
    let listening = window_event_listener(ev::hashchange, move |_| set_hash.set(read()));
    on_cleanup(move || listening.remove());
    hash
}
