//! Proves what readings make of an ensemble: a hundred times a member beyond the ensemble is taken for the truth, measured with errors, and sought.
//!
//! `reweighting PICTURE`: writes how often the truth lies within spans of every width as an SVG, and prints
//! `figure reweighting_covered VALUE %`, how often it lies between P10 and P90 of inputs that readings say something of, and
//! `figure reweighting_width VALUE %`, what is left of their spreads.

use std::fs;

use dewrun_ensemble::{
    Gathered, Measured, Measurement, Member, Plan, reweighted, told, usual_error,
};
use dewrun_numeric::quantile::normal;
use dewrun_run::figure::{Figure, Origin};
use dewrun_tests::ensembles::{example, gathered, weather};
use dewrun_tests::routes::Draw;

const MEMBERS: u32 = 256;
const TRIES: u32 = 100;
/// The truth lies within P10 and P90 of an input in so many of a hundred tries at least.
const COVERED: f64 = 0.75;
/// Readings say something of an input whose spread they narrow to this, on the mean of all tries.
const NARROWED: f64 = 0.9;
/// First and last day of the water that is weighed, counted from 1970: 1 June and 1 October 2001.
const SUMMER: (i64, i64) = (11_474, 11_596);

type Failure = Box<dyn std::error::Error>;

/// What became of an input in all tries.
#[derive(Clone, Default)]
struct Input {
    covered: u32,
    width: f64,
    /// Below how much of the weight the truth lies, try by try.
    ranks: Vec<f64>,
}

fn main() -> Result<(), Failure> {
    let picture = std::env::args()
        .nth(1)
        .ok_or("a file is needed for the picture")?;
    let mut said = example("gull-harbour-roof")?;
    for given in &mut said.usual.givens {
        // As on a site where nobody has measured the flow yet.
        if given.figure == Figure::Flow {
            given.origin = Origin::Assumed {
                row: "not-measured".to_owned(),
                low: 20.0,
                high: 40.0,
            };
        }
    }
    let weather = weather(0..8760)?;
    let plan = Plan::new(said.usual, 1);
    let all = gathered(&plan, &weather, 0..MEMBERS);
    let truths = gathered(&plan, &weather, MEMBERS..MEMBERS + TRIES);
    let mut inputs = vec![Input::default(); plan.spans().len()];
    let (mut worth, mut water) = (0.0, 0.0);
    let mut random = Draw::new(11);
    for truth in truths.members() {
        let by = reweighted(&all, &readings(truth, &mut random));
        let after = told(&plan, &all, Some(&by.weights)).ok_or("no weight is left")?;
        let before = told(&plan, &all, None).ok_or("no member has an answer")?;
        worth += by.worth;
        let width = |told: &dewrun_ensemble::EnsembleTold| {
            let spread = told.quantities.first().map(|one| one.spread);
            spread.map_or(0.0, |spread| spread.p90 - spread.p10)
        };
        water += width(&after) / width(&before);
        for (span, (input, told)) in inputs.iter_mut().zip(&after.inputs).enumerate() {
            let value = truth.values[span];
            let spread = told.after;
            input.covered += u32::from(spread.p10 <= value && value <= spread.p90);
            input.width += (spread.p90 - spread.p10) / (told.before.p90 - told.before.p10);
            input.ranks.push(rank(&all, &by.weights, span, value));
        }
    }
    let tries = f64::from(u32::try_from(truths.count())?);
    println!(
        "members worth {:.1} of {MEMBERS}, the spread of water {:.1} % of what it was",
        worth / tries,
        100.0 * water / tries
    );
    let told: Vec<&Input> = inputs
        .iter()
        .filter(|input| input.width / tries < NARROWED)
        .collect();
    for (span, input) in plan.spans().iter().zip(&inputs) {
        println!(
            "{:?}: covered in {} of {tries}, width {:.1} %",
            span.varied,
            input.covered,
            100.0 * input.width / tries
        );
    }
    let mean = |of: &dyn Fn(&Input) -> f64, inputs: &[&Input]| {
        inputs.iter().map(|input| of(input)).sum::<f64>() / (tries * inputs.len() as f64)
    };
    let everything: Vec<&Input> = inputs.iter().collect();
    let covered = mean(&|input| f64::from(input.covered), &told);
    let all_covered = mean(&|input| f64::from(input.covered), &everything);
    let width = mean(&|input| input.width, &told);
    let least = told.iter().map(|input| input.covered).min().unwrap_or(0);
    println!("figure reweighting_covered {:.1} %", 100.0 * covered);
    println!("figure reweighting_covered_least {least} %");
    println!(
        "figure reweighting_covered_all {:.1} %",
        100.0 * all_covered
    );
    println!("figure reweighting_width {:.1} %", 100.0 * width);
    fs::write(picture, plot(&told, &everything))?;
    if told.is_empty() || covered < COVERED || 1.0 <= width {
        return Err("readings don't say what they should".into());
    }
    Ok(())
}

/// Readings of a member, each off by a normal error of the size that is said of it.
fn readings(truth: &Member, random: &mut Draw) -> Vec<Measurement> {
    let (since, until) = SUMMER;
    let all = [
        Measured::Airflow,
        Measured::FirstSmoke,
        Measured::NinetyPercent,
        Measured::Suction { at: None },
        Measured::Drained {
            since: Some(since),
            until,
        },
    ];
    all.into_iter()
        .filter_map(|what| {
            let value = truth.on_site.expects(what)?;
            let error = usual_error(what, value, false);
            let value = value + error * normal(random.between(1e-6, 1.0 - 1e-6));
            Some(Measurement { what, value, error })
        })
        .collect()
}

/// Below how much of the weight a value lies.
fn rank(all: &Gathered, weights: &[f64], span: usize, value: f64) -> f64 {
    let total: f64 = weights.iter().sum();
    let below = all
        .members()
        .zip(weights)
        .filter(|(one, _)| one.values[span] < value);
    below.map(|(_, weight)| weight).sum::<f64>() / total
}

/// How often the truth lies within the middle part of the weight, for every width of that part: the diagonal where doubt is told as it is.
fn plot(told: &[&Input], all: &[&Input]) -> String {
    const SIZE: f64 = 320.0;
    const EDGE: f64 = 40.0;
    let curve = |inputs: &[&Input]| {
        let ranks: Vec<f64> = inputs
            .iter()
            .flat_map(|input| input.ranks.clone())
            .collect();
        let points = (0..=20).map(|step| {
            let width = f64::from(step) / 20.0;
            let within = ranks
                .iter()
                .filter(|rank| 2.0 * (*rank - 0.5).abs() <= width);
            let share = within.count() as f64 / ranks.len().max(1) as f64;
            format!(
                "{:.1},{:.1}",
                EDGE + SIZE * width,
                EDGE + SIZE * (1.0 - share)
            )
        });
        points.collect::<Vec<_>>().join(" ")
    };
    let (low, high) = (EDGE, EDGE + SIZE);
    let text = |x: f64, y: f64, words: &str| format!("<text x=\"{x}\" y=\"{y}\">{words}</text>\n");
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 400 400\" font-family=\"sans-serif\" font-size=\"11\">\n<title>How often the truth lies within the middle part of the weight</title>\n<rect width=\"400\" height=\"400\" fill=\"#fff\"/>\n<path d=\"M{low} {low}V{high}H{high}\" fill=\"none\" stroke=\"#14201d\"/>\n<path d=\"M{low} {high}L{high} {low}\" stroke=\"#7f8c88\" stroke-dasharray=\"4 3\"/>\n"
    );
    svg += &format!(
        "<polyline points=\"{}\" fill=\"none\" stroke=\"#0265ad\" stroke-width=\"2\"/>\n",
        curve(told)
    );
    svg += &format!(
        "<polyline points=\"{}\" fill=\"none\" stroke=\"#5f6e6a\"/>\n",
        curve(all)
    );
    svg += &text(110.0, 385.0, "middle part of the weight, 0 to 1");
    svg += &text(
        44.0,
        30.0,
        "share of tries whose truth lies in it, 0 to 1; blue: inputs that readings narrow, grey: all",
    );
    svg + "</svg>\n"
}
