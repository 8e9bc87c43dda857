//! Hourly runs with water carried over on the wall: the cases of `year.json`.

mod endless;
mod hold;
mod input;
mod whole;

use std::path::Path;

use dewrun_year::{Grid, March, Steps};
use serde_json::Value;

use super::report::FileReport;
use super::solved;

/// Cells of the march that is held against the cases, m: hourly values near a drying front ask for short ones.
///
/// The laws hold the product's own cells against these.
const CELLS: Grid = Grid::Even(0.05);

/// Holds every case of a file; weather lies in a folder beside it.
#[must_use]
pub fn hold(name: &str, folder: &Path, cases: &[Value]) -> FileReport {
    solved::hold_each(name, cases, |case| {
        let input = input::of(case, folder)?;
        let marched = |steps| {
            let mut march = March::new(&input.route, &input.hours, CELLS, steps);
            march.advance(&input.hours, usize::MAX);
            march
        };
        hold::answer(
            case,
            &input.hours,
            &marched(Steps::Whole),
            &marched(Steps::Quarters),
        )
    })
}

/// Holds the yearly condensate that the cases of weather files tell, in so far as the files are there.
#[must_use]
pub fn hold_endless(name: &str, folder: &Path, cases: &[Value]) -> FileReport {
    let asked = there(folder, cases, endless::asks);
    solved::hold_each(name, &asked, |case| endless::answer(case, folder))
}

/// Holds what `dewrun year` makes of real weather files, in so far as they are there.
#[must_use]
pub fn hold_whole(name: &str, folder: &Path, cases: &[Value]) -> FileReport {
    let asked = there(folder, cases, whole::asks);
    solved::hold_each(name, &asked, |case| whole::answer(case, folder))
}

/// The cases that ask for something and whose file is there.
fn there(folder: &Path, cases: &[Value], asks: impl Fn(&Value) -> bool) -> Vec<Value> {
    let is_there = |case: &&Value| {
        let file = case["fixture"][0].as_str();
        asks(case) && file.is_some_and(|file| folder.join(file).exists())
    };
    cases.iter().filter(is_there).cloned().collect()
}
