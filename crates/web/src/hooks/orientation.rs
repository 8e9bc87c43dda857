//! How the device lies, and the day it does so.

use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen_futures::JsFuture;
use web_sys::js_sys::{Float64Array, Promise};

/// How long a phone is let come to rest after the press, ms.
const SETTLE_MS: u32 = 700;
/// How long it is read, ms.
const DURING_MS: u32 = 1500;

#[wasm_bindgen(module = "/src/hooks/orientation.js")]
extern "C" {
    fn allowed() -> Promise;
    fn lying(settle: u32, during: u32) -> Promise;
    /// Today, by the clock of the device, as 2026-08-30.
    pub(crate) fn today() -> String;
}

/// Asks whether the page may read how the device lies; must be called at a press.
pub(crate) fn ask(then: impl FnOnce(bool) + 'static) {
    let asked = allowed();
    spawn_local(async move {
        let granted = JsFuture::from(asked).await;
        then(granted.is_ok_and(|granted| granted.is_truthy()));
    });
}

/// Hands over how the device lies: heading, pitch and roll in degrees, moment by moment; nothing without a sensor.
pub(crate) fn read(take: impl FnOnce(Vec<f64>) + 'static) {
    let lying = lying(SETTLE_MS, DURING_MS);
    spawn_local(async move {
        let said = JsFuture::from(lying).await.ok();
        let said = said.and_then(|said| said.dyn_into::<Float64Array>().ok());
        take(said.map(|said| said.to_vec()).unwrap_or_default());
    });
}
