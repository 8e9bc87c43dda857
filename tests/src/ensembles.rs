//! Ensembles of the worked examples in the invented weather, taken by as many threads as there are.

use std::fs;
use std::num::NonZero;
use std::ops::Range;
use std::path::Path;
use std::thread;

use dewrun_document::{EnsembleSaid, read, to_ensemble};
use dewrun_ensemble::{Climate, Gathered, Kept, MemberWork, Plan};
use dewrun_weather::{Reader, Series, Understanding};

/// A text of the worked examples.
fn demo(name: &str) -> Result<String, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../demo")
        .join(name);
    fs::read_to_string(path).map_err(|error| error.to_string())
}

/// What the ensemble of an example is made of.
///
/// # Errors
/// A sentence where it can't be read.
pub fn example(name: &str) -> Result<EnsembleSaid, String> {
    let project = read(&demo(&format!("{name}.json"))?).map_err(|error| error.sentence())?;
    to_ensemble(&project, 0).map_err(|error| error.sentence())
}

/// The invented weather: its head, and so many of its readings.
///
/// # Errors
/// A sentence where it can't be read.
pub fn weather(readings: Range<usize>) -> Result<Series, String> {
    let text = demo("gull-harbour.csv")?;
    let is_reading = |line: &&str| line.as_bytes().first().is_some_and(u8::is_ascii_digit);
    let head = text.lines().take_while(|line| !is_reading(line));
    let rows = text.lines().skip_while(|line| !is_reading(line));
    let rows = rows.skip(readings.start).take(readings.len());
    let kept: Vec<&str> = head.chain(rows).collect();
    let mut reader = Reader::new(Understanding::default());
    let said = |error: dewrun_weather::WeatherError| error.to_string();
    reader.push(kept.join("\n").as_bytes()).map_err(said)?;
    Ok(reader.finish().map_err(said)?.series)
}

/// Members of these numbers, shared by as many threads as there are.
#[must_use]
pub fn gathered(plan: &Plan, weather: &Series, members: Range<u32>) -> Gathered {
    let climate = Climate {
        weather,
        measured: None,
    };
    let count = usize::try_from(members.end).unwrap_or(usize::MAX);
    let rows_each = Kept::rows_each(weather.len(), count);
    let threads = thread::available_parallelism().map_or(1, NonZero::get);
    let mine = |first: usize| {
        let mut found = Gathered::default();
        for number in members.clone().skip(first).step_by(threads) {
            let work = MemberWork::of(plan, number, climate, rows_each);
            found.take(number, work.map(|work| work.finished(climate)));
        }
        found
    };
    let mut all = Gathered::default();
    thread::scope(|scope| {
        let hands: Vec<_> = (0..threads)
            .map(|first| scope.spawn(move || mine(first)))
            .collect();
        for hand in hands {
            // A thread that broke down took its members with it: they are missed where they are counted.
            if let Ok(found) = hand.join() {
                all.merge(found);
            }
        }
    });
    all
}
