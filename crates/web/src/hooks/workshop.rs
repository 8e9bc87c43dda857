//! The page's second module: loaded once the first answer is painted, then asked at once, in each frame if need be.

use core::time::Duration;
use std::sync::Arc;

use dewrun_desk::{Answered, project_text};
use leptos::prelude::*;
use wasm_bindgen::prelude::{Closure, wasm_bindgen};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::js_sys::{Array, Float64Array};

#[wasm_bindgen(module = "/src/hooks/workshop.js")]
extern "C" {
    fn stand(then: &Closure<dyn Fn(bool)>);
    fn ask(kind: &str, project: &str, run: usize, numbers: &[f64]) -> JsValue;
}

/// What the module said.
#[derive(Clone)]
pub(crate) enum Told {
    Numbers(Vec<f64>),
    Text(String),
}

/// The module, whether it is there yet or not; free to copy.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Workshop {
    /// Nothing while it is not known.
    stands: RwSignal<Option<bool>>,
    /// The project of the last question, as it is given.
    project: StoredValue<Option<(Arc<Answered>, String)>>,
}

/// The module of the page; once for all of it.
pub(crate) fn provide_workshop() {
    provide_context(Workshop {
        stands: RwSignal::new(None),
        project: StoredValue::new(None),
    });
}

/// The module of the page.
///
/// # Panics
/// Outside a page that was given one.
pub(crate) fn use_workshop() -> Workshop {
    expect_context()
}

impl Workshop {
    /// Begins to load it, unless it stands, when the frame that is being made has been painted.
    pub(crate) fn load_after_paint(self) {
        if self.stands.get_untracked() == Some(true) {
            return;
        }
        let then = move || {
            let stands = Closure::new(move |stands| self.stands.set(Some(stands)));
            stand(&stands);
            stands.forget();
        };
        request_animation_frame(move || set_timeout(then, Duration::ZERO));
    }

    /// It was looked for and is not to be had.
    pub(crate) fn lacks(self) -> bool {
        self.stands.get() == Some(false)
    }

    /// Its answer to a question about a run as it is answered, or why there is none; nothing as long as it does not stand.
    ///
    /// Followed as a signal: it is asked again once it stands.
    pub(crate) fn ask(
        self,
        kind: &str,
        about: &Arc<Answered>,
        numbers: &[f64],
    ) -> Option<Result<Told, String>> {
        if self.stands.get() != Some(true) {
            return None;
        }
        let project = &self.project;
        let is_last = |last: &Option<(Arc<Answered>, String)>| {
            last.as_ref()
                .is_some_and(|(last, _)| Arc::ptr_eq(last, about))
        };
        if !project.with_value(is_last) {
            match project_text(&about.project) {
                Ok(text) => project.set_value(Some((Arc::clone(about), text))),
                Err(sentence) => return Some(Err(sentence)),
            }
        }
        let run = about.project.run;
        let answer = project.with_value(|last| {
            let text = last.as_ref().map_or("", |(_, text)| text);
            ask(kind, text, run, numbers)
        });
        (!answer.is_undefined()).then(|| told(answer))
    }

    /// The same where a text is the answer.
    pub(crate) fn text(self, kind: &str, about: &Arc<Answered>, numbers: &[f64]) -> Option<String> {
        match self.ask(kind, about, numbers)? {
            Ok(Told::Text(text)) => Some(text),
            _ => None,
        }
    }

    /// The same where numbers are.
    pub(crate) fn numbers(
        self,
        kind: &str,
        about: &Arc<Answered>,
        numbers: &[f64],
    ) -> Option<Vec<f64>> {
        match self.ask(kind, about, numbers)? {
            Ok(Told::Numbers(numbers)) => Some(numbers),
            _ => None,
        }
    }
}

/// An answer of the module, whichever way it came.
pub(super) fn told(answer: JsValue) -> Result<Told, String> {
    if let Some(text) = answer.as_string() {
        return Ok(Told::Text(text));
    }
    if Array::is_array(&answer) {
        let sentence = Array::from(&answer).get(0).as_string();
        return Err(sentence.unwrap_or_default());
    }
    Ok(Told::Numbers(
        Float64Array::unchecked_from_js(answer).to_vec(),
    ))
}
