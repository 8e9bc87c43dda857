//! Times the ensemble of a year: 256 members of the worked example, on as many threads as there are. Prints `figure ensemble_year VALUE s`.

use std::time::Instant;

use dewrun_ensemble::{Plan, told};
use dewrun_tests::ensembles::{example, gathered, weather};

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let weather = weather(0..8760)?;
    let plan = Plan::new(example("gull-harbour-roof")?.usual, 1);
    let start = Instant::now();
    let all = gathered(&plan, &weather, 0..256);
    told(&plan, &all, None).ok_or("no member has an answer")?;
    println!(
        "figure ensemble_year {:.2} s",
        start.elapsed().as_secs_f64()
    );
    Ok(())
}
