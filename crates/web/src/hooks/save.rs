//! Handing a file to the browser to be saved.

use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::js_sys::Array;
use web_sys::{Blob, HtmlElement, Url};

/// Offers a text as a file of that name, as the browser offers a download.
///
/// # Errors
/// What the browser refused.
pub(crate) fn save(name: &str, text: &str) -> Result<(), JsValue> {
    let blob = Blob::new_with_str_sequence(&Array::of1(&JsValue::from_str(text)))?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlElement = document().create_element("a")?.unchecked_into();
    link.set_attribute("href", &address)?;
    link.set_attribute("download", name)?;
    link.click();
    Url::revoke_object_url(&address)
}
