//! Long work away from the page: a component asks and gets an answer later, and does not know who did it.

use std::sync::Arc;

use dewrun_desk::{Answered, Work, project_text};
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::{Closure, wasm_bindgen};
use web_sys::js_sys::Float64Array;

#[wasm_bindgen(module = "/src/hooks/work.js")]
extern "C" {
    #[wasm_bindgen(js_name = isWorker)]
    fn is_worker() -> bool;
    fn open(take: &Closure<dyn Fn(u32, JsValue)>) -> u32;
    fn ask(channel: u32, kind: &str, project: &str, run: usize, numbers: &[f64]) -> u32;
    fn serve(work: &Closure<dyn Fn(String, String, usize, Vec<f64>) -> JsValue>);
}

/// A question: about which answer, and the numbers that belong to it.
pub(crate) type Asked = (Arc<Answered>, Vec<f64>);
/// What was found, and about which answer.
pub(crate) type Found = (Arc<Answered>, Result<Vec<f64>, String>);

/// Takes up the work of a worker where this is one, and says so.
pub(crate) fn work_here() -> bool {
    if !is_worker() {
        return false;
    }
    let work = Closure::new(|kind: String, project: String, run, numbers: Vec<f64>| {
        let Some(work) = Work::named(&kind) else {
            return JsValue::NULL;
        };
        match work.done(&project, run, &numbers) {
            Ok(found) => Float64Array::from(found.as_slice()).into(),
            Err(sentence) => sentence.into(),
        }
    });
    serve(&work);
    work.forget();
    true
}

/// Has work done whenever the question changes; until there is another answer the last one stays.
pub(crate) fn use_work(work: Work, asked: Signal<Option<Asked>>) -> ReadSignal<Option<Found>> {
    let (found, set_found) = signal(None);
    // The number of the last job and its question: older ones are dropped.
    let last = StoredValue::new(None::<(u32, Asked)>);
    let take = Closure::new(move |job: u32, answer: JsValue| {
        let question = last.try_get_value().flatten();
        if let Some((_, asked)) = question.filter(|(own, _)| *own == job) {
            let numbers = match answer.as_string() {
                Some(sentence) => Err(sentence),
                None if answer.is_null() => done_here(work, &asked),
                None => Ok(Float64Array::from(answer).to_vec()),
            };
            set_found.set(Some((asked.0, numbers)));
        }
    });
    let channel = open(&take);
    take.forget();
    Effect::new(move |_| {
        let Some(asked) = asked.get() else { return };
        let project = &asked.0.project;
        let job = match project_text(project) {
            Ok(text) => ask(channel, work.name(), &text, project.run, &asked.1),
            Err(_) => 0,
        };
        if job == 0 {
            let numbers = done_here(work, &asked);
            set_found.set(Some((asked.0, numbers)));
        } else {
            last.set_value(Some((job, asked)));
        }
    });
    found
}

/// Without a worker the page does it.
fn done_here(work: Work, (answered, numbers): &Asked) -> Result<Vec<f64>, String> {
    work.done_for(answered, numbers)
}
