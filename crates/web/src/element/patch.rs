//! Mark-up in place of mark-up, of which only what differs is touched.

use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::Element;

#[wasm_bindgen(module = "/src/element/patch.js")]
extern "C" {
    /// Makes what stands in an element what a mark-up says; what is alike stays as it is.
    pub(crate) fn patch(element: &Element, html: &str);
}
