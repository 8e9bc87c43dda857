//! Proves how far 256 members settle the doubt of a year: the ends of each spread against those of 4096 members, on three years.
//!
//! Prints a line for each number of each year, and `figure doubt_settles VALUE %`: the largest distance of an end, as a part of the width of the spread of 4096.
//! That nothing of this is the luck of one sequence, `doubt_scatter` is the distance of the ends in the quadratic mean over further sequences of 256.

use std::ops::RangeInclusive;
use std::time::Instant;

use dewrun_ensemble::{EnsembleTold, Plan, QuantityTold, told};
use dewrun_tests::ensembles::{example, gathered, weather};
use dewrun_weather::Series;

/// Each in a year of the invented weather.
const CASES: [&str; 3] = ["gull-harbour-roof", "make-up-air", "pool-hall-exhaust"];
const FEW: u32 = 256;
const MANY: u32 = 4096;
/// The sequence of a project.
const SEED: u64 = 1;
/// Sequences whose first members are held against the many of the first.
const FURTHER: RangeInclusive<u64> = 2..=9;
/// What an end may be off, as a part of the width.
const NEAR: f64 = 0.1;
/// A spread narrower than this, in hours, times or kilograms, is none.
const NO_WIDTH: f64 = 1e-9;

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let weather = weather(0..8760)?;
    let mut most: f64 = 0.0;
    for name in CASES {
        most = settled(name, &weather)?.into_iter().fold(most, f64::max);
    }
    println!("figure doubt_settles {:.2} %", 100.0 * most);
    if NEAR < most {
        return Err(format!("an end of a spread is off by {most:.3} of its width").into());
    }
    Ok(())
}

/// How far the few of a project's own sequence are off, number by number.
fn settled(name: &str, weather: &Series) -> Result<Vec<f64>, Failure> {
    let plan = Plan::new(example(name)?.usual, SEED);
    let start = Instant::now();
    let few = gathered(&plan, weather, 0..FEW);
    println!(
        "{name}: {FEW} members in {:.1} s",
        start.elapsed().as_secs_f64()
    );
    let mut all = gathered(&plan, weather, FEW..MANY);
    let some = told(&plan, &few, None).ok_or("no member has an answer")?;
    all.merge(few);
    let many = told(&plan, &all, None).ok_or("no member has an answer")?;
    println!(
        "{name}: {} of {MANY} members have an answer, wet {:.4} and {:.4}",
        many.members, some.wet, many.wet
    );
    let found = distances(&some, &many);
    let scatter = scattered(name, weather, &many)?;
    let spreads = some.quantities.iter().zip(&many.quantities);
    for ((few, many), (part, scatter)) in spreads.zip(found.iter().zip(scatter)) {
        println!(
            "{name} {}: {:.4} to {:.4}, of {MANY} {:.4} to {:.4}: off by {:.2} %, doubt_scatter {:.2} %",
            many.quantity.id(),
            few.spread.p10,
            few.spread.p90,
            many.spread.p10,
            many.spread.p90,
            100.0 * part,
            100.0 * scatter
        );
    }
    Ok(found)
}

/// How far the few of further sequences are off in the quadratic mean, number by number.
fn scattered(name: &str, weather: &Series, many: &EnsembleTold) -> Result<Vec<f64>, Failure> {
    let mut squares = vec![0.0; many.quantities.len()];
    for seed in FURTHER {
        let plan = Plan::new(example(name)?.usual, seed);
        let few = gathered(&plan, weather, 0..FEW);
        let few = told(&plan, &few, None).ok_or("no member has an answer")?;
        for (sum, part) in squares.iter_mut().zip(distances(&few, many)) {
            *sum += part * part;
        }
    }
    let sequences = FURTHER.count() as f64;
    let means = squares.into_iter().map(|sum: f64| (sum / sequences).sqrt());
    Ok(means.collect())
}

/// The larger distance of the two ends of each spread, as a part of its width.
fn distances(few: &EnsembleTold, many: &EnsembleTold) -> Vec<f64> {
    let pairs = few.quantities.iter().zip(&many.quantities);
    let of_pair = |(one, other): (&QuantityTold, &QuantityTold)| {
        let (some, all) = (one.spread, other.spread);
        let width = all.p90 - all.p10;
        let off = (some.p10 - all.p10).abs().max((some.p90 - all.p90).abs());
        if NO_WIDTH < width { off / width } else { off }
    };
    pairs.map(of_pair).collect()
}
