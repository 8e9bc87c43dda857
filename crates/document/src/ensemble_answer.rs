//! From an ensemble to the types of its answer, by hand.

use dewrun_advice::Spread;
use dewrun_ensemble::{
    EnsembleTold, InputTold, Measured, Member, Origin, Plan, QuantityTold, Reweighted, SpanShare,
    Varied,
};

use crate::answer_file::file_of_runs;
use crate::output::{
    DOUBT_FORMAT, DecidingOutput, DoubtFile, DoubtRunOutput, EnsembleOutput, ErrorOutput, Figure,
    MeasuredOutput, QuantityOutput, ReadingOutput, RevisedOutput, SpanOutput, SpanShareOutput,
    SpreadOutput, WetAlongOutput,
};
use crate::{DocumentError, EnsembleSaid, WeatherReference, given_path};

/// Smaller parts of a spread are noise.
const LEAST_SHARE: f64 = 0.01;

/// What an answer is told from.
#[derive(Debug, Clone, Copy)]
pub struct EnsembleTelling<'a> {
    /// Its sentences.
    pub sentences: &'a [String],
    /// Position of the run in the project.
    pub run_index: usize,
    /// What the ensemble is made of.
    pub said: &'a EnsembleSaid,
    /// Its plan.
    pub plan: &'a Plan,
    /// The weather file.
    pub weather: &'a WeatherReference,
    /// Bytes in which the hours are kept.
    pub bytes: usize,
    /// The year with all values as they stand.
    pub usual: Option<&'a Member>,
    /// Of all members alike.
    pub told: &'a EnsembleTold,
    /// What readings make of it.
    pub measured: Option<(&'a Reweighted, &'a EnsembleTold)>,
}

/// The answer about the doubt of a run's year.
#[must_use]
pub fn ensemble_answer(telling: EnsembleTelling<'_>) -> EnsembleOutput {
    let EnsembleTelling { told, plan, .. } = telling;
    EnsembleOutput {
        sentences: telling.sentences.to_vec(),
        weather_file: telling.weather.file.clone(),
        weather_sha256: telling.weather.sha256.clone(),
        members: count(told.members),
        unanswered: count(told.unanswered),
        bytes: count(telling.bytes),
        wet_of_100: of_100(told.wet),
        blind_of_100: told.blind.map(of_100),
        quantities: quantities(told, telling.usual),
        spans: (0..plan.spans().len())
            .filter_map(|span| span_output(&telling, span))
            .collect(),
        as_published: Vec::new(),
        deciding: told
            .deciding(plan)
            .iter()
            .filter_map(|one| deciding(plan, one))
            .collect(),
        wet_along: along(told),
        measured: telling.measured.map(|(by, after)| MeasuredOutput {
            worth: Figure(by.worth),
            trust_percent: of_100(by.trust),
            readings: by.readings.iter().map(reading).collect(),
            wet_of_100: of_100(after.wet),
            quantities: quantities(after, telling.usual),
            spans: after.inputs.iter().map(revised).collect(),
        }),
    }
}

fn count(number: usize) -> u64 {
    u64::try_from(number).unwrap_or(u64::MAX)
}

fn of_100(share: f64) -> Figure {
    Figure(100.0 * share)
}

const fn spread(spread: Spread) -> SpreadOutput {
    SpreadOutput {
        p10: Figure(spread.p10),
        p50: Figure(spread.p50),
        p90: Figure(spread.p90),
    }
}

fn quantities(told: &EnsembleTold, usual: Option<&Member>) -> Vec<QuantityOutput> {
    let one = |one: &QuantityTold| QuantityOutput {
        id: one.quantity.id().to_owned(),
        as_entered: usual.and_then(|usual| usual.totals.get(one.quantity).map(Figure)),
        spread: spread(one.spread),
        moved_percent: one.moved.map(of_100),
        shares: (one.shares.iter())
            .filter(|share| LEAST_SHARE <= share.share)
            .map(|share| SpanShareOutput {
                span: count(share.span),
                share_percent: of_100(share.share),
            })
            .collect(),
    };
    told.quantities.iter().map(one).collect()
}

fn span_output(telling: &EnsembleTelling<'_>, at: usize) -> Option<SpanOutput> {
    let span = telling.plan.spans().get(at)?;
    let run = &telling.plan.usual().run;
    let (id, name, paths) = match &span.varied {
        Varied::Input { figure, places } => {
            let paths = places.iter();
            let paths = paths.map(|place| given_path(telling.run_index, run, *figure, *place));
            (figure.id(), figure.name(), paths.collect::<Vec<_>>())
        }
        Varied::Season(input) => {
            let known = telling.said.paths.iter().filter(|(one, _)| one == input);
            let paths = known.map(|(_, path)| path.clone()).collect();
            (input.id(), input.name(), paths)
        }
        Varied::Relation(relation) => (relation.id(), relation.name(), Vec::new()),
    };
    Some(SpanOutput {
        id: id.to_owned(),
        name: name.to_owned(),
        paths: paths.iter().map(|path| path.as_str().to_owned()).collect(),
        row: match &span.origin {
            Origin::Assumed { row } => Some(row.clone()),
            Origin::Measured | Origin::Known => None,
        },
        low: Figure(span.low),
        usual: Figure(span.usual),
        high: Figure(span.high),
    })
}

fn deciding(plan: &Plan, one: &SpanShare) -> Option<DecidingOutput> {
    let how = match &plan.spans().get(one.span)?.varied {
        Varied::Input { figure, .. } => figure.how_to_measure(),
        Varied::Season(input) => input.how_to_measure(),
        Varied::Relation(_) => return None,
    };
    Some(DecidingOutput {
        span: count(one.span),
        share_percent: of_100(one.share),
        how_to_measure: how.to_owned(),
    })
}

fn along(told: &EnsembleTold) -> WetAlongOutput {
    let [intake, exhaust] = &told.wet_along;
    let of = |places: &[f64]| places.iter().copied().map(of_100).collect();
    WetAlongOutput {
        intake_of_100: of(intake),
        exhaust_of_100: of(exhaust),
    }
}

fn reading(one: &dewrun_ensemble::MeasurementTold) -> ReadingOutput {
    let what = match one.measurement.what {
        Measured::Airflow => "airflow_l_min",
        Measured::FirstSmoke => "first_smoke_s",
        Measured::NinetyPercent => "ninety_percent_s",
        Measured::Suction { .. } => "suction_pa",
        Measured::Drained { .. } => "drained_g",
    };
    ReadingOutput {
        what: what.to_owned(),
        value: Figure(one.measurement.value),
        error: Figure(one.measurement.error),
        before: one.before.map(spread),
        after: one.after.map(spread),
        contradicts: one.contradicts.map(Figure),
    }
}

const fn revised(one: &InputTold) -> RevisedOutput {
    RevisedOutput {
        before: spread(one.before),
        after: spread(one.after),
    }
}

file_of_runs!(DoubtFile, DOUBT_FORMAT, DoubtRunOutput);
