//! Links that carry a project: the browser packs, unpacks and copies them.

use dewrun_document::{DocumentError, LINK_MARK, limits, link_letters};
use leptos::task::spawn_local;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::js_sys::{Number, Promise};

#[wasm_bindgen(module = "/src/hooks/link.js")]
extern "C" {
    fn copy(text: &str, mark: &str, most: usize) -> Promise;
    fn unpack(letters: &str, most: usize) -> Promise;
}

/// What became of a link.
pub(crate) enum Made {
    /// It lies in the clipboard.
    Copied,
    /// The browser does not let the page copy: here it is.
    Here(String),
    /// It can't be made, in words.
    Refused(String),
}

/// What is said where a browser has no streams that pack.
const TOO_OLD: &str =
    "This browser can\u{2019}t pack or unpack links; a current one can. Files work in any.";

/// Copies a link that carries a text, and tells what became of it.
pub(crate) fn copy_link(text: String, told: impl FnOnce(Made) + 'static) {
    let most = limits::LINK_LETTERS;
    settled(copy(&text, LINK_MARK, most), move |made| {
        told(match made {
            Ok(made) if made.is_null() => Made::Copied,
            Ok(made) => match (made.as_string(), made.dyn_ref::<Number>()) {
                (Some(link), _) => Made::Here(link),
                (None, Some(_)) => Made::Refused(
                    "The project is too large for a link; save it as a file.".to_owned(),
                ),
                (None, None) => Made::Refused(TOO_OLD.to_owned()),
            },
            Err(_) => Made::Refused(TOO_OLD.to_owned()),
        });
    });
}

/// Hands over the text that the link in some text carries, or says why there is none.
pub(crate) fn read_link(text: &str, take: impl FnOnce(Result<String, String>) + 'static) {
    let letters = match link_letters(text) {
        Ok(letters) => letters,
        Err(error) => return take(Err(in_words(&error))),
    };
    let max = limits::TEXT_BYTES;
    settled(unpack(letters, max), move |carried| {
        take(match carried {
            Ok(carried) if carried.is_null() => Err(in_words(&DocumentError::LinkTooLarge { max })),
            Ok(carried) => carried.as_string().ok_or_else(|| TOO_OLD.to_owned()),
            Err(_) => Err(in_words(&DocumentError::LinkDamaged)),
        });
    });
}

fn in_words(error: &DocumentError) -> String {
    format!("{}.", error.sentence())
}

fn settled(promise: Promise, then: impl FnOnce(Result<JsValue, JsValue>) + 'static) {
    spawn_local(async move { then(JsFuture::from(promise).await) });
}
