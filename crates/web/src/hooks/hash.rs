//! What stands after the `#` of the address: read as it changes, and written.

use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

fn read() -> String {
    window().location().hash().unwrap_or_default()
}

/// What stands after the `#` of the address, the sign included.
pub(crate) fn use_hash() -> ReadSignal<String> {
    let (hash, set_hash) = signal(read());
    let listening = window_event_listener(ev::hashchange, move |_| set_hash.set(read()));
    on_cleanup(move || listening.remove());
    hash
}

/// Puts another end in the place of that of the address, sign included; the browser does not go back to what stood there.
pub(crate) fn put(hash: &str) {
    let history = window().history();
    // A browser that keeps no history still shows the page.
    let _ = history.and_then(|history| {
        history.replace_state_with_url(&JsValue::NULL, "", Some(&address(hash)))
    });
}

/// Writes another end of the address, sign included, as a step that the browser can go back from.
pub(crate) fn write(hash: &str) {
    if read() == hash {
        return;
    }
    let history = window().history();
    // As above.
    let _ = history
        .and_then(|history| history.push_state_with_url(&JsValue::NULL, "", Some(&address(hash))));
}

/// The address of the page with this end.
fn address(hash: &str) -> String {
    if !hash.is_empty() {
        return hash.to_owned();
    }
    let location = window().location();
    location.pathname().unwrap_or_default() + &location.search().unwrap_or_default()
}
