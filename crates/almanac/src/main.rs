//! The door between the almanac and the script of its worker.

use std::cell::RefCell;

use dewrun_almanac::{Almanac, Carried, Place, Told};
use dewrun_moist_air::Over;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::js_sys::{Array, Float64Array, Uint8Array};

/// The same as the page's.
#[global_allocator]
static MEMORY: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();

thread_local! {
    static ALMANAC: RefCell<Almanac> = RefCell::default();
}

/// Begins to read a file as a project says, or as it is found where the text is empty; a sentence where that can't be.
///
/// It is the weather of a run, or what was measured in its duct. `over` is 1 where humidities below freezing are over water, 2 over ice, 0 what is found, else what the project says.
#[wasm_bindgen]
pub fn read_begin(project: &str, run: usize, is_in_duct: bool, over: i32) -> Option<String> {
    let place = if is_in_duct {
        Place::InDuct
    } else {
        Place::Weather
    };
    let over = match over {
        0 => Some(None),
        1 => Some(Some(Over::Water)),
        2 => Some(Some(Over::Ice)),
        _ => None,
    };
    ALMANAC.with_borrow_mut(|almanac| almanac.begin_reading((project, run), place, over).err())
}

/// Hashes of the files that the year of a run goes by and that are not held as the project says: of the weather, and of what was measured in its duct; empty where nothing lacks.
#[wasm_bindgen]
pub fn lacks(project: &str, run: usize) -> Vec<String> {
    let lacks = ALMANAC.with_borrow(|almanac| almanac.lacks(project, run));
    // A project that can't be understood is told where its year is asked for.
    let lacks = lacks.unwrap_or_default();
    let of = |place| {
        let found = lacks.iter().find(|(lacking, _)| *lacking == place);
        found.map_or_else(String::new, |(_, hash)| hash.clone())
    };
    vec![of(Place::Weather), of(Place::InDuct)]
}

/// Takes a piece of it; a sentence where it can't be read.
#[wasm_bindgen]
pub fn read_piece(piece: &[u8]) -> Option<String> {
    ALMANAC.with_borrow_mut(|almanac| almanac.take_piece(piece).err())
}

/// The file is whole: its hash, or a sentence in a list why it can't be read.
#[wasm_bindgen]
pub fn read_end(name: &str) -> JsValue {
    ALMANAC.with_borrow_mut(|almanac| told(almanac.end_reading(name).map(JsValue::from)))
}

/// What was understood of the files that the year of a run goes by.
#[wasm_bindgen]
pub fn files_told(project: &str, run: usize, numbers: &[f64]) -> String {
    ALMANAC.with_borrow(|almanac| almanac.files_told(project, run, numbers))
}

/// The project with the held file as its weather, or a sentence in a list why there is none.
#[wasm_bindgen]
pub fn with_weather(project: &str) -> JsValue {
    ALMANAC.with_borrow(|almanac| told(almanac.with_weather(project).map(JsValue::from)))
}

/// The project with the file that was read last as what was measured in the duct of a run, or a sentence in a list why there is none.
#[wasm_bindgen]
pub fn with_air_in_duct(project: &str, run: usize) -> JsValue {
    let with = |almanac: &Almanac| almanac.with_air_in_duct(project, run);
    ALMANAC.with_borrow(|almanac| told(with(almanac).map(JsValue::from)))
}

/// Begins the year of a run: true where it is known already, or a sentence in a list why there is none.
#[wasm_bindgen]
pub fn year_begin(project: &str, run: usize) -> JsValue {
    ALMANAC.with_borrow_mut(|almanac| told(almanac.begin_year(project, run).map(JsValue::from)))
}

/// Goes on with it: how much is done, true when all of it.
#[wasm_bindgen]
pub fn year_turn() -> JsValue {
    ALMANAC.with_borrow_mut(|almanac| match almanac.turn() {
        Told::Going(share) => share.into(),
        Told::Done => true.into(),
    })
}

/// The project in one step of the year, or a sentence in a list why there is none.
#[wasm_bindgen]
pub fn project_at(at: usize) -> JsValue {
    ALMANAC.with_borrow(|almanac| told(almanac.project_at(at).map(JsValue::from)))
}

/// Begins to seek remedies: a sentence where there are none.
#[wasm_bindgen]
pub fn cures_begin() -> Option<String> {
    ALMANAC.with_borrow_mut(|almanac| almanac.begin_cures().err())
}

/// Goes on with that: how much is done, 1 when all is, then how many are known.
#[wasm_bindgen]
pub fn cures_turn() -> Vec<f64> {
    let (share, known) = ALMANAC.with_borrow_mut(Almanac::cure_turn);
    vec![share, u32::try_from(known).map_or(0.0, f64::from)]
}

/// The remedies that are known, as a table.
#[wasm_bindgen]
pub fn cures(numbers: &[f64]) -> String {
    ALMANAC.with_borrow(|almanac| almanac.cures_told(numbers))
}

/// The first of them as rows for the answer, by the same numbers; empty until all are known.
#[wasm_bindgen]
pub fn first_cures(numbers: &[f64]) -> String {
    ALMANAC.with_borrow(|almanac| almanac.first_cures(numbers))
}

/// The project with one of them made, or a sentence in a list why there is none.
#[wasm_bindgen]
pub fn cured(number: usize) -> JsValue {
    ALMANAC.with_borrow(|almanac| told(almanac.cured(number).map(JsValue::from)))
}

/// A part of the year as text.
#[wasm_bindgen]
pub fn shown(part: &str, numbers: &[f64]) -> String {
    ALMANAC.with_borrow_mut(|almanac| almanac.shown(part, numbers))
}

/// What a calculation sheet says of the year, as text.
#[wasm_bindgen]
pub fn sheet(numbers: &[f64]) -> String {
    ALMANAC.with_borrow_mut(|almanac| almanac.sheet(numbers))
}

/// The hours of the year in the dew square.
#[wasm_bindgen]
pub fn square() -> Vec<f64> {
    ALMANAC.with_borrow(Almanac::square)
}

/// The number of a step.
#[wasm_bindgen]
pub fn step(numbers: &[f64]) -> usize {
    ALMANAC.with_borrow(|almanac| almanac.step(numbers))
}

/// Begins a member of the ensemble, by its number, below zero the year as it is entered: whether it has an answer, or a sentence in a list why there is no ensemble.
#[wasm_bindgen]
pub fn member_begin(project: &str, run: usize, number: i32) -> JsValue {
    let number = u32::try_from(number).ok();
    let begun = |almanac: &mut Almanac| almanac.begin_member(project, run, number);
    ALMANAC.with_borrow_mut(|almanac| told(begun(almanac).map(JsValue::from)))
}

/// Goes on with it: true when all of it is done.
#[wasm_bindgen]
pub fn member_turn() -> bool {
    ALMANAC.with_borrow_mut(Almanac::member_turn)
}

/// What it came to, as a list of its numbers and its hours.
#[wasm_bindgen]
pub fn member_end() -> JsValue {
    carried(ALMANAC.with_borrow_mut(Almanac::member))
}

/// What the year as it is entered came to, as there; nothing where that is not the year that was found.
#[wasm_bindgen]
pub fn member_entered(project: &str, run: usize) -> JsValue {
    let member = ALMANAC.with_borrow_mut(|almanac| almanac.entered_member(project, run));
    member.map_or(JsValue::UNDEFINED, carried)
}

fn carried((numbers, hours): (Vec<f64>, Vec<u8>)) -> JsValue {
    let (numbers, hours) = (Float64Array::from(&*numbers), Uint8Array::from(&*hours));
    Array::of2(&numbers.into(), &hours.into()).into()
}

/// How sure the year is, as HTML, or a sentence in a list why that can't be told; `lengths` says how many numbers each member has, the year as it is entered first.
#[wasm_bindgen]
pub fn doubt(
    project: &str,
    run: usize,
    numbers: &[f64],
    members: &[f64],
    lengths: &[u32],
) -> JsValue {
    let parts = parted(members, lengths);
    let asked = |almanac: &mut Almanac| almanac.doubt(project, run, numbers, &parts);
    ALMANAC.with_borrow_mut(|almanac| told(asked(almanac).map(JsValue::from)))
}

/// Whether the members of that name are summed up for troubles.
#[wasm_bindgen]
pub fn troubles_know(key: &str) -> bool {
    ALMANAC.with_borrow(|almanac| almanac.knows_members(key))
}

/// Sums up members by that name, with how many numbers and bytes each has; a sentence where that can't be.
#[wasm_bindgen]
pub fn troubles_take(
    key: &str,
    project: &str,
    run: usize,
    numbers: &[f64],
    lengths: &[u32],
    hours: &[u8],
    hour_lengths: &[u32],
) -> Option<String> {
    let numbers = parted(numbers, lengths);
    let hours = parted(hours, hour_lengths);
    let members: Vec<Carried<'_>> = numbers
        .into_iter()
        .zip(hours)
        .map(|(numbers, hours)| Carried { numbers, hours })
        .collect();
    let taken = |almanac: &mut Almanac| almanac.take_members(key, project, run, &members);
    ALMANAC.with_borrow_mut(|almanac| taken(almanac).err())
}

/// Ranks the causes of a run's troubles by the members of that name, with a log where there is one; a sentence where it can't be read.
#[wasm_bindgen]
pub fn troubles_rank(key: &str, project: &str, run: usize, log: Option<Vec<u8>>) -> Option<String> {
    let ranked = |almanac: &mut Almanac| almanac.rank_troubles(key, project, run, log.as_deref());
    ALMANAC.with_borrow_mut(|almanac| ranked(almanac).err())
}

/// A part of what was found, as HTML.
#[wasm_bindgen]
pub fn troubles_shown(part: &str, numbers: &[f64]) -> String {
    ALMANAC.with_borrow(|almanac| almanac.troubles_shown(part, numbers))
}

/// The project with one thing about troubles entered, or a sentence in a list why not.
#[wasm_bindgen]
pub fn troubles_entered(project: &str, run: usize, what: &str, log: Option<Vec<u8>>) -> JsValue {
    let entered = |almanac: &Almanac| almanac.troubles_entered(project, run, what, log.as_deref());
    ALMANAC.with_borrow(|almanac| told(entered(almanac).map(JsValue::from)))
}

/// Consecutive parts of the lengths that are given.
fn parted<'a, T>(all: &'a [T], lengths: &[u32]) -> Vec<&'a [T]> {
    let mut rest = all;
    let mut parts = Vec::new();
    for length in lengths {
        let length = usize::try_from(*length).unwrap_or(usize::MAX);
        let Some((part, behind)) = rest.split_at_checked(length) else {
            break;
        };
        parts.push(part);
        rest = behind;
    }
    parts
}

fn told(found: Result<JsValue, String>) -> JsValue {
    found.unwrap_or_else(|sentence| Array::of1(&sentence.into()).into())
}

fn main() {}
