//! The door between the workshop and the scripts of the page and of its worker.

use std::cell::RefCell;

use dewrun_workshop::{Answer, Turn, Workshop};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::js_sys::{Array, Float64Array};

/// The same as the page's.
#[global_allocator]
static MEMORY: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();

thread_local! {
    static WORKSHOP: RefCell<Workshop> = RefCell::default();
}

/// Answers at once: numbers, a text, or a sentence in a list why there is no answer.
#[wasm_bindgen]
pub fn ask(kind: &str, project: &str, run: usize, numbers: &[f64]) -> JsValue {
    WORKSHOP.with_borrow_mut(|workshop| answered(workshop.ask(kind, project, run, numbers)))
}

/// Begins long work: the answer, or a number that says how much of it is done.
#[wasm_bindgen]
pub fn begin(kind: &str, project: &str, run: usize, numbers: &[f64]) -> JsValue {
    WORKSHOP.with_borrow_mut(|workshop| turned(workshop.begin(kind, project, run, numbers)))
}

/// Goes on with it; undefined where nothing was begun.
#[wasm_bindgen]
pub fn turn() -> JsValue {
    let turn = WORKSHOP.with_borrow_mut(Workshop::turn);
    turn.map_or(JsValue::UNDEFINED, turned)
}

fn turned(turn: Turn) -> JsValue {
    match turn {
        Turn::Going(share) => share.into(),
        Turn::Done(answer) => answered(answer),
    }
}

fn answered(answer: Answer) -> JsValue {
    match answer {
        Answer::Numbers(numbers) => Float64Array::from(numbers.as_slice()).into(),
        Answer::Text(text) => text.into(),
        Answer::Sentence(sentence) => Array::of1(&sentence.into()).into(),
    }
}

fn main() {}
