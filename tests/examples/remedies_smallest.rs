//! Proves over a hundred random routes that each remedy is the smallest of its kind, and that what it claims is so.

use std::num::NonZero;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;

use dewrun_ensemble::Climate;
use dewrun_tests::ensembles::weather;
use dewrun_tests::remedies::{Counted, counted};

type Failure = Box<dyn std::error::Error>;

/// So many routes that miss their target as drawn.
const ROUTES: usize = 100;

fn main() -> Result<(), Failure> {
    let series = weather(4400..5100)?;
    let climate = Climate {
        weather: &series,
        measured: None,
    };
    let next = AtomicU64::new(0);
    let found = Mutex::new(Ok(Counted::default()));
    let threads = thread::available_parallelism().map_or(1, NonZero::get);
    thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                loop {
                    let seed = next.fetch_add(1, Ordering::Relaxed);
                    let one = counted(seed, climate);
                    let Ok(mut found) = found.lock() else { return };
                    let plus =
                        |found: &Counted| found.plus(*one.as_ref().unwrap_or(&Counted::default()));
                    match (&one, found.as_ref()) {
                        (Ok(_), Ok(before)) if before.routes < ROUTES => *found = Ok(plus(before)),
                        (Err(sentence), Ok(_)) => *found = Err(sentence.clone()),
                        _ => return,
                    }
                }
            });
        }
    });
    let found = found.into_inner().map_err(|_| "a thread broke down")??;
    println!(
        "{} routes, {} remedies tried: {} cure, {} of these have a smaller size, and none of those does",
        found.routes, found.tried, found.cures, found.smaller
    );
    Ok(())
}
