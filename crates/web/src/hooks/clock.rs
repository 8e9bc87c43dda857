//! The time, and numbers that nobody else draws.

use wasm_bindgen::JsValue;
use web_sys::js_sys::{Date, Math};

/// Now, ms since 1970.
pub(crate) fn now() -> u64 {
    whole(Date::now())
}

/// A number that no other window draws.
pub(crate) fn new_key() -> u64 {
    whole(Math::random() * 9e15)
}

/// A time in words, as people write it where the browser is.
pub(crate) fn told(time: u64) -> String {
    let ms = u32::try_from(time / 1000).map_or(0.0, |seconds| f64::from(seconds) * 1e3);
    let date = Date::new(&JsValue::from_f64(ms));
    String::from(date.to_locale_string("default", &JsValue::UNDEFINED))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "both are positive and below the largest whole number of a browser"
)]
fn whole(number: f64) -> u64 {
    number as u64
}
