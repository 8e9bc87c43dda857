//! What a person does in the section Sheets, by a script of its own.

use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::{Closure, wasm_bindgen};
use web_sys::Element;
use web_sys::js_sys::Float64Array;

#[wasm_bindgen(module = "/src/hooks/rooms.js")]
extern "C" {
    #[wasm_bindgen(js_name = put)]
    fn put_into(room: &Element, html: &str, ask: &JsValue, take: &JsValue, day: &str);
}

/// Where mark-up of the section is put, and whom it asks.
pub(crate) struct Room {
    place: Element,
    ask: JsValue,
    take: JsValue,
    day: String,
}

impl Room {
    /// A room that asks the second module by `ask` and hands over another project by `take`; `day` is today.
    pub(crate) fn new(
        place: &Element,
        ask: impl Fn(String, Float64Array) -> JsValue + 'static,
        take: impl Fn(String) + 'static,
        day: String,
    ) -> Self {
        let ask: Closure<dyn Fn(String, Float64Array) -> JsValue> = Closure::new(ask);
        let take: Closure<dyn Fn(String)> = Closure::new(take);
        Self {
            place: place.clone(),
            ask: ask.into_js_value(),
            take: take.into_js_value(),
            day,
        }
    }

    /// Puts mark-up there; what was typed into the one before stays.
    pub(crate) fn put(&self, html: &str) {
        put_into(&self.place, html, &self.ask, &self.take, &self.day);
    }
}
