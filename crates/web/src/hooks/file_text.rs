//! The text of a file that a person has chosen.

use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, HtmlInputElement};

/// Reads the file chosen in an input and hands over its name and text; none where the browser can't read it.
pub(crate) fn read_chosen(event: &Event, take: impl FnOnce(String, Option<String>) + 'static) {
    let input = event
        .target()
        .and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
    let Some(input) = input else { return };
    let Some(file) = input.files().and_then(|files| files.get(0)) else {
        return;
    };
    spawn_local(async move {
        let text = JsFuture::from(file.text()).await.ok();
        take(file.name(), text.and_then(|text| text.as_string()));
        // The same file may be chosen again after it was mended.
        input.set_value("");
    });
}
