//! Times all remedies of the worked example over its year, on as many threads as there are. Prints `figure remedies_all VALUE s`.

use std::num::NonZero;
use std::sync::Mutex;
use std::thread;
use std::time::Instant;

use dewrun_ensemble::Climate;
use dewrun_remedies::{Search, Subject, Target, Tried, pairs, searches};
use dewrun_tests::ensembles::{example, weather};

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let series = weather(0..8760)?;
    let inputs = example("gull-harbour-roof")?.usual.inputs;
    let climate = Climate {
        weather: &series,
        measured: None,
    };
    let start = Instant::now();
    let subject = Subject::new(inputs, Target::default(), Some(climate))?;
    let mut tried = finished(&subject, climate, searches(&subject));
    tried.extend(finished(&subject, climate, pairs(&tried)));
    if !tried.iter().any(|one| one.is_cure) {
        return Err("nothing cures the example".into());
    }
    println!("figure remedies_all {:.2} s", start.elapsed().as_secs_f64());
    Ok(())
}

/// Searches shared by the threads there are.
fn finished(subject: &Subject, climate: Climate<'_>, searches: Vec<Search>) -> Vec<Tried> {
    let threads = thread::available_parallelism().map_or(1, NonZero::get);
    let left = Mutex::new(searches);
    let found = Mutex::new(Vec::new());
    thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                loop {
                    let Some(search) = left.lock().ok().and_then(|mut left| left.pop()) else {
                        return;
                    };
                    let one = search.finished(subject, Some(climate));
                    if let (Some(one), Ok(mut found)) = (one, found.lock()) {
                        found.push(one);
                    }
                }
            });
        }
    });
    found.into_inner().unwrap_or_default()
}
