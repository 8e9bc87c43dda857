//! The text of a file that a person has chosen, dropped or pasted.

use dewrun_document::is_link;
use leptos::ev;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::js_sys::Promise;
use web_sys::{Event, File, FileList, HtmlInputElement};

#[wasm_bindgen(module = "/src/hooks/rooms.js")]
extern "C" {
    /// The text of a file; nothing of one with weather, which the section of the year takes.
    fn offer(file: &File) -> Promise;
}

/// What a text from the clipboard is called.
const PASTED: &str = "What was pasted";

/// Reads the file chosen in an input and hands over its name and text, none where the browser can't read it; one with weather goes to the section of the year.
pub(crate) fn read_chosen(event: &Event, take: impl FnOnce(String, Option<String>) + 'static) {
    let input = event
        .target()
        .and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
    let Some(input) = input else { return };
    let Some(file) = first(input.files()) else {
        return;
    };
    // The same file may be chosen again after it was mended.
    input.set_value("");
    read(file, take);
}

/// Hands over what is dropped anywhere on the page, but weather, and a project that is pasted.
pub(crate) fn on_given(take: impl Fn(String, Option<String>) + Copy + 'static) {
    let over = window_event_listener(ev::dragover, |event| event.prevent_default());
    let dropped = window_event_listener(ev::drop, move |event| {
        event.prevent_default();
        let files = event.data_transfer().and_then(|data| data.files());
        if let Some(file) = first(files) {
            read(file, take);
        }
    });
    let pasted = window_event_listener(ev::paste, move |event| {
        let data = event.clipboard_data();
        let text = data.and_then(|data| data.get_data("text").ok());
        // A number goes where it is pasted; a project and a link that carries one belong in no field.
        let is_project = |text: &String| text.trim_start().starts_with('{') || is_link(text);
        if let Some(text) = text.filter(is_project) {
            event.prevent_default();
            take(PASTED.to_owned(), Some(text));
        }
    });
    on_cleanup(move || {
        over.remove();
        dropped.remove();
        pasted.remove();
    });
}

fn first(files: Option<FileList>) -> Option<File> {
    files.and_then(|files| files.get(0))
}

fn read(file: File, take: impl FnOnce(String, Option<String>) + 'static) {
    spawn_local(async move {
        let text = JsFuture::from(offer(&file)).await.ok();
        if !text.as_ref().is_some_and(JsValue::is_undefined) {
            take(file.name(), text.and_then(|text| text.as_string()));
        }
    });
}
