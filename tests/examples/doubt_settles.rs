//! Proves how far 256 members settle the doubt of a year: the ends of each spread against those of 4096 members, on three years.
//!
//! Prints a line for each number of each year, and `figure doubt_settles VALUE %`: the largest distance of an end, as a part of the width of the spread of 4096.

use std::time::Instant;

use dewrun_ensemble::{EnsembleTold, Plan, told};
use dewrun_tests::ensembles::{example, gathered, weather};

/// Each in a year of the invented weather.
const CASES: [&str; 3] = ["gull-harbour-roof", "make-up-air", "pool-hall-exhaust"];
const FEW: u32 = 256;
const MANY: u32 = 4096;
/// What an end may be off, as a part of the width.
const NEAR: f64 = 0.1;
/// A spread narrower than this, in hours, times or kilograms, is none.
const NO_WIDTH: f64 = 1e-9;

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let weather = weather(0..8760)?;
    let mut most: f64 = 0.0;
    for name in CASES {
        let plan = Plan::new(example(name)?.usual, 1);
        let start = Instant::now();
        let few = gathered(&plan, &weather, 0..FEW);
        println!(
            "{name}: {FEW} members in {:.1} s",
            start.elapsed().as_secs_f64()
        );
        let mut all = gathered(&plan, &weather, FEW..MANY);
        let some = told(&plan, &few, None).ok_or("no member has an answer")?;
        all.merge(few);
        let many = told(&plan, &all, None).ok_or("no member has an answer")?;
        println!(
            "{name}: {} of {MANY} members have an answer, wet {:.4} and {:.4}",
            many.members, some.wet, many.wet
        );
        most = most.max(compared(name, &some, &many));
    }
    println!("figure doubt_settles {:.2} %", 100.0 * most);
    if NEAR < most {
        return Err(format!("an end of a spread is off by {most:.3} of its width").into());
    }
    Ok(())
}

/// The largest distance of an end of any spread.
fn compared(name: &str, few: &EnsembleTold, many: &EnsembleTold) -> f64 {
    let mut most: f64 = 0.0;
    for (one, other) in few.quantities.iter().zip(&many.quantities) {
        let (some, all) = (one.spread, other.spread);
        let width = all.p90 - all.p10;
        let off = (some.p10 - all.p10).abs().max((some.p90 - all.p90).abs());
        let part = if NO_WIDTH < width { off / width } else { off };
        println!(
            "{name} {}: {:.4} to {:.4}, of {MANY} {:.4} to {:.4}: off by {:.2} %",
            one.quantity.id(),
            some.p10,
            some.p90,
            all.p10,
            all.p90,
            100.0 * part
        );
        most = most.max(part);
    }
    most
}
