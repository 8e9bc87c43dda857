//! The year of the open run, marched by a script of its own.

use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::{Closure, wasm_bindgen};

#[wasm_bindgen(module = "/src/hooks/rooms.js")]
extern "C" {
    #[wasm_bindgen(js_name = follow)]
    fn follow_year(told: &str, take: &JsValue);
}

/// What the year follows; it hands over another project by `take`.
pub(crate) struct Follower(JsValue);

impl Follower {
    pub(crate) fn new(take: impl Fn(String) + 'static) -> Self {
        let take: Closure<dyn Fn(String)> = Closure::new(take);
        Self(take.into_js_value())
    }

    /// The open run is what the second module says of it.
    pub(crate) fn follow(&self, told: &str) {
        follow_year(told, &self.0);
    }
}
