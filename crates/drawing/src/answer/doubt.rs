//! How sure an answer is, in words.

use dewrun_advice::{Spread, SteadyDoubt};
use dewrun_quantity::measure::WATER;
use dewrun_quantity::{MassFlow, Style};
use dewrun_run::figure::{Figure, Spot};
use dewrun_run::{Grade, Outcome, Tube, Verdict, WET_TUBE_G_H};

use super::part::{Emphasis, Part};
use super::sentence::CONDITIONS;
use super::{Answer, asides};

/// Where so many of a hundred cases agree with the answer, the model has no doubt of it.
const AGREE: f64 = 0.90;

impl Answer {
    /// The same answer with how sure it is, once that is computed.
    ///
    /// "By model" says so of an answer that nine of ten plausible cases agree with; "by model, with doubt" of all others.
    #[must_use]
    pub fn with_doubt(mut self, outcome: &Outcome, doubt: &SteadyDoubt, style: Style) -> Self {
        if let Some(at) = self
            .sentence
            .iter()
            .position(|part| part.text == CONDITIONS)
        {
            self.sentence.splice(at..=at, conditions(doubt));
        }
        let proof = asides::proof(outcome.grade);
        if let Some(at) = self.asides.iter().position(|aside| *aside == proof) {
            let spread = spread(doubt, style).into_iter();
            if outcome.grade == Grade::ByModel && agreeing(outcome, doubt) < AGREE {
                let doubtful = Part::words("By model, with doubt.");
                self.asides
                    .splice(at..=at, [vec![doubtful]].into_iter().chain(spread));
            } else {
                self.asides.splice(at + 1..=at, spread);
            }
        }
        self
    }
}

/// The part of all cases that end as the answer does.
fn agreeing(outcome: &Outcome, doubt: &SteadyDoubt) -> f64 {
    let wet = wet_share(doubt);
    match outcome.verdict {
        Verdict::Wet => wet,
        Verdict::Dry => 1.0 - wet,
    }
}

fn wet_share(doubt: &SteadyDoubt) -> f64 {
    f64::from(doubt.wet) / f64::from(doubt.cases.max(1))
}

fn conditions(doubt: &SteadyDoubt) -> Vec<Part> {
    let count = Part::figure(
        of_hundred(doubt),
        Emphasis::Strong,
        Figure::DoubtWet,
        Spot::tube(Tube::Intake),
    );
    vec![
        Part::words(" in the conditions entered; "),
        count,
        Part::words(" plausible cases are wet."),
    ]
}

/// How many cases of a hundred are wet; all and none are told apart from nearly all and hardly any.
fn of_hundred(doubt: &SteadyDoubt) -> String {
    let rounded = (100.0 * wet_share(doubt)).round();
    if 0 < doubt.wet && rounded < 1.0 {
        return "under 1 of 100".to_owned();
    }
    if doubt.wet < doubt.cases && 99.0 < rounded {
        return "over 99 of 100".to_owned();
    }
    format!(
        "{} of 100",
        Figure::DoubtWet.kind().show(rounded, Style::default())
    )
}

/// Between what the water of the intake, or of the exhaust where that alone is wet, lies in four of five cases.
fn spread(doubt: &SteadyDoubt, style: Style) -> Option<Vec<Part>> {
    let exhaust = doubt
        .exhaust
        .as_ref()
        .map(|tube| (Tube::Exhaust, tube.water_g_h));
    let tubes = [Some((Tube::Intake, doubt.intake.water_g_h)), exhaust];
    let is_wet = |(_, water): &(Tube, Spread)| WET_TUBE_G_H < water.p90;
    let (tube, water) = tubes.into_iter().flatten().find(is_wet)?;
    let show = |grams| WATER.show(MassFlow::grams_per_hour(grams), style);
    let figure = |text, figure| Part::figure(text, Emphasis::Water, figure, Spot::tube(tube));
    let name = match tube {
        Tube::Intake => "intake",
        Tube::Exhaust => "exhaust",
    };
    Some(vec![
        Part::words("In four of five cases "),
        figure(show(water.p10).number, Figure::DoubtLow),
        Part::words(" to "),
        figure(show(water.p90).to_string(), Figure::DoubtHigh),
        Part::words(format!(" form in the {name} tube.")),
    ])
}
