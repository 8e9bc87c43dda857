//! The likely causes of a trouble on the empty page, by a script of their own.

use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::Element;

#[wasm_bindgen(module = "/src/hooks/rooms.js")]
extern "C" {
    /// Ranks the causes of a project's troubles into a place; numbers begin with the style.
    pub(crate) fn rank(place: &Element, project: &str, numbers: &[f64]);
}
