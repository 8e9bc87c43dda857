//! Long work away from the page: a component asks and gets an answer later, and does not know who did it.

use std::sync::Arc;

use dewrun_desk::{Answered, Work, project_text};
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::{Closure, wasm_bindgen};

use super::workshop::{Told, told};

#[wasm_bindgen(module = "/src/hooks/work.js")]
extern "C" {
    fn open(take: &Closure<dyn Fn(u32, JsValue)>) -> u32;
    fn ask(channel: u32, kind: &str, project: &str, run: usize, numbers: &[f64]) -> u32;
}

/// A question: about which answer, and the numbers that belong to it.
pub(crate) type Asked = (Arc<Answered>, Vec<f64>);
/// What was found, and about which answer.
pub(crate) type Found = (Arc<Answered>, Result<Told, String>);

/// Has work done whenever the question changes; until there is another answer the last one stays.
pub(crate) fn use_work(work: Work, asked: Signal<Option<Asked>>) -> ReadSignal<Option<Found>> {
    let (found, set_found) = signal(None);
    // The number of the last job and about what it is: older ones are dropped.
    let last = StoredValue::new(None::<(u32, Arc<Answered>)>);
    let take = Closure::new(move |job: u32, answer: JsValue| {
        let question = last.try_get_value().flatten();
        if let Some((_, about)) = question.filter(|(own, _)| *own == job) {
            set_found.set(Some((about, told(answer))));
        }
    });
    let channel = open(&take);
    take.forget();
    Effect::new(move |_| {
        let Some((about, numbers)) = asked.get() else {
            return;
        };
        match project_text(&about.project) {
            Ok(text) => {
                let job = ask(channel, work.name(), &text, about.project.run, &numbers);
                last.set_value(Some((job, about)));
            }
            Err(sentence) => set_found.set(Some((about, Err(sentence)))),
        }
    });
    found
}
