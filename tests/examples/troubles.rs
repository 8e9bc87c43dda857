//! Proves how often the true cause of an invented log is found.
//!
//! `troubles PICTURE [RUNS [LOGS]]`: over 40 runs and 300 logs a cause, unless other numbers are said; once for sites that are as known, once for sites that differ, with the same ensembles.
//! Prints `figure NAME VALUE %` and writes how shares are met as an SVG.

use std::fs;

use dewrun_tests::ensembles::weather;
use dewrun_tests::troubles::OtherWorld;
use dewrun_tests::troubles_proof::{
    Case, Extent, MANY, by_cause, draw, found, ranked, reliability,
};

/// Bins of fewer shares are no measure.
const ENOUGH: usize = 30;
/// Members of each run's ensemble: as many as the page and the command line take.
const MEMBERS: u32 = 64;

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let mut arguments = std::env::args().skip(1);
    let picture = arguments.next().ok_or("a file is needed for the picture")?;
    let runs = arguments.next().map_or(Ok(40), |runs| runs.parse())?;
    let logs = arguments.next().map_or(Ok(300), |logs| logs.parse())?;
    let weather = weather(0..8760)?;
    let extent = Extent {
        runs,
        members: MEMBERS,
        truths: 2,
        seed: 500_001,
    };
    let drawn = draw(&weather, &extent)?;
    let known = ranked(&drawn, OtherWorld::No, logs)?;
    tell("troubles", &known);
    let other = ranked(&drawn, OtherWorld::Yes, logs)?;
    tell("troubles_other", &other);
    fs::write(picture, plot(&known, &other))?;
    Ok(())
}

fn tell(name: &str, cases: &[Case]) {
    for (cause, right, number, instead) in by_cause(cases, MANY) {
        println!(
            "{}: first in {:.0} % of {number}, else {instead:?}",
            cause.id(),
            100.0 * right
        );
    }
    for (said, so, number) in reliability(cases, MANY) {
        println!(
            "said {:.0} %, so in {:.0} % of {number}",
            100.0 * said,
            100.0 * so
        );
    }
    let far = reliability(cases, MANY)
        .into_iter()
        .filter(|(_, _, number)| ENOUGH <= *number)
        .map(|(said, so, _)| (said - so).abs());
    println!(
        "figure {name}_farthest {:.1} %",
        100.0 * far.fold(0.0, f64::max)
    );
    let (first, number) = found(cases, 1, MANY);
    let (two, _) = found(cases, 2, MANY);
    println!("figure {name}_first {:.1} %", 100.0 * first);
    println!("figure {name}_two {:.1} %", 100.0 * two);
    println!("figure {name}_logs {number}");
    let two_events: Vec<&Case> = cases.iter().filter(|case| case.troubles <= 2).collect();
    let few = two_events
        .iter()
        .filter(|case| case.ranking.too_few)
        .count();
    println!(
        "figure {name}_too_few {:.1} %",
        100.0 * few as f64 / two_events.len().max(1) as f64
    );
}

/// How often a cause was so that was said to be so with each share: the diagonal where shares are met.
fn plot(known: &[Case], other: &[Case]) -> String {
    const SIZE: f64 = 320.0;
    const EDGE: f64 = 40.0;
    let (low, high) = (EDGE, EDGE + SIZE);
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 400 400\" font-family=\"sans-serif\" font-size=\"11\">\n<title>How often a cause was so, by the share that was said</title>\n<rect width=\"400\" height=\"400\" fill=\"#fff\"/>\n<path d=\"M{low} {low}V{high}H{high}\" fill=\"none\" stroke=\"#14201d\"/>\n<path d=\"M{low} {high}L{high} {low}\" stroke=\"#7f8c88\" stroke-dasharray=\"4 3\"/>\n"
    );
    for (cases, colour) in [(known, "#0265ad"), (other, "#5f6e6a")] {
        let points = reliability(cases, MANY);
        let points = points.iter().map(|(said, so, _)| {
            format!("{:.1},{:.1}", EDGE + SIZE * said, EDGE + SIZE * (1.0 - so))
        });
        let points: Vec<String> = points.collect();
        svg += &format!(
            "<polyline points=\"{}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"2\"/>\n",
            points.join(" ")
        );
    }
    svg + "<text x=\"110\" y=\"385\">share that was said, 0 to 1</text>\n<text x=\"44\" y=\"30\">share of logs in which it was so; blue: sites as known, grey: sites that differ</text>\n</svg>\n"
}
