//! What the browser keeps under names: at once where there is little room, and a moment later for good.

use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen_futures::JsFuture;
use web_sys::js_sys::{Array, Promise};

#[wasm_bindgen(module = "/src/hooks/kept.js")]
extern "C" {
    fn quick() -> Array;
    #[wasm_bindgen(js_name = keepQuickly)]
    fn keep_quickly(name: &str, text: &JsValue, window: &str, seen: &str) -> JsValue;
    fn kept() -> Promise;
    fn keep(name: &str, text: &JsValue, window: &str, seen: &str) -> Promise;
}

/// Names and what is kept under each.
pub(crate) type Named = Vec<(String, String)>;

/// What became of keeping a text.
pub(crate) enum Put {
    /// It is kept.
    Kept,
    /// Another window has kept this meanwhile, which was left.
    Theirs(String),
    /// The browser refused.
    Refused,
}

/// The text that is to be kept under a name, none to forget it; and what is known of the text there: its time, and the own window.
pub(crate) struct Wanted<'a> {
    pub(crate) name: &'a str,
    pub(crate) text: Option<&'a str>,
    pub(crate) window: &'a str,
    pub(crate) seen: u64,
}

/// All that is kept at once.
pub(crate) fn all_at_once() -> Named {
    named(&quick())
}

/// All that is kept for good; none where the browser keeps nothing so.
pub(crate) async fn all_for_good() -> Option<Named> {
    let both = JsFuture::from(kept()).await.ok()?;
    Some(named(&Array::from(&both)))
}

/// Keeps a text at once.
pub(crate) fn put_at_once(wanted: &Wanted<'_>) -> Put {
    let Wanted { name, window, .. } = wanted;
    put(&keep_quickly(
        name,
        &wanted.js(),
        window,
        &wanted.seen.to_string(),
    ))
}

/// Keeps a text for good.
pub(crate) async fn put_for_good(wanted: &Wanted<'_>) -> Put {
    let Wanted { name, window, .. } = wanted;
    let kept = keep(name, &wanted.js(), window, &wanted.seen.to_string());
    put(&JsFuture::from(kept).await.unwrap_or(JsValue::FALSE))
}

impl Wanted<'_> {
    fn js(&self) -> JsValue {
        self.text.map_or(JsValue::UNDEFINED, JsValue::from_str)
    }
}

fn put(put: &JsValue) -> Put {
    match put.as_string() {
        Some(theirs) => Put::Theirs(theirs),
        None if put.is_truthy() => Put::Kept,
        None => Put::Refused,
    }
}

fn named(both: &Array) -> Named {
    let mut named = Named::new();
    let mut texts = both.iter();
    while let (Some(name), Some(text)) = (texts.next(), texts.next()) {
        // Nothing else is kept by this page.
        if let (Some(name), Some(text)) = (name.as_string(), text.as_string()) {
            named.push((name, text));
        }
    }
    named
}
