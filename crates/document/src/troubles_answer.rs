//! What is said of a log of troubles, from the engine's types.

use dewrun_troubles::{
    Entry, Log, NextCheck, Ranked, Ranking, cannot_tell, contradiction, evidence,
};
use dewrun_weather::Civil;

use crate::DocumentError;
use crate::answer_file::pretty;
use crate::output::{
    ErrorOutput, Figure, TROUBLES_FORMAT, TroubleCauseOutput, TroubleCheckOutput,
    TroubleEntryOutput, TroubleOutcomeOutput, TroublesFile, TroublesOutput,
};

/// What is said of a log.
#[derive(Debug, Clone, Copy)]
pub struct TroublesTelling<'a> {
    /// Id of the run.
    pub run: &'a str,
    /// Name of the weather file.
    pub weather_file: &'a str,
    /// Members that have an answer.
    pub members: usize,
    /// How the log was read.
    pub read: &'a [String],
    /// The log; none where answers alone are told.
    pub log: Option<&'a Log>,
    /// Its entries as they were read, each with its line.
    pub entries: &'a [(Entry, usize)],
    /// The causes.
    pub ranking: &'a Ranking,
    /// Between which the shares lie, in the order of the causes' list.
    pub spans: &'a [(f64, f64)],
    /// The checks.
    pub checks: &'a [NextCheck],
}

/// What is said of a log of troubles.
#[must_use]
pub fn troubles_answer(telling: TroublesTelling<'_>) -> TroublesOutput {
    let ranking = telling.ranking;
    TroublesOutput {
        run: telling.run.to_owned(),
        weather_file: telling.weather_file.to_owned(),
        is_climate: ranking.is_climate,
        members: number(telling.members),
        read: telling.read.to_vec(),
        entries: telling.entries.iter().map(entry).collect(),
        troubles: number(ranking.troubles),
        too_few: ranking.too_few,
        contradiction: contradiction(ranking),
        cannot_tell: cannot_tell(ranking),
        causes: ranking
            .causes
            .iter()
            .map(|one| cause(telling, one))
            .collect(),
        next_checks: telling.checks.iter().map(check).collect(),
    }
}

fn number(count: usize) -> u64 {
    u64::try_from(count).unwrap_or(u64::MAX)
}

/// Of a hundred.
const fn hundredths(share: f64) -> Figure {
    Figure(100.0 * share)
}

fn entry((entry, line): &(Entry, usize)) -> TroubleEntryOutput {
    TroubleEntryOutput {
        line: number(*line),
        at: Civil::of(entry.at_s).map_or_else(String::new, |civil| civil.to_string()),
        day_only: entry.is_day_only(),
        kind: entry.kind.id().to_owned(),
        water_g: entry.grams.map(Figure),
        airflow_percent: entry.percent.map(Figure),
    }
}

fn cause(telling: TroublesTelling<'_>, one: &Ranked) -> TroubleCauseOutput {
    let told = telling
        .log
        .map(|log| evidence(log, telling.ranking, one))
        .unwrap_or_default();
    let span = telling.spans.get(one.cause.place());
    let (least, most) = span.copied().unwrap_or((one.share, one.share));
    TroubleCauseOutput {
        id: one.cause.id().to_owned(),
        name: one.cause.name().to_owned(),
        share: hundredths(one.share),
        share_least: hundredths(least),
        share_most: hundredths(most),
        by_answers: hundredths(one.by_answers),
        by_log: hundredths(one.by_log),
        for_it: told.for_it,
        against: told.against,
    }
}

fn check(one: &NextCheck) -> TroubleCheckOutput {
    let outcomes = one.outcomes.iter().map(|outcome| TroubleOutcomeOutput {
        name: outcome.name.to_owned(),
        expected: hundredths(outcome.expected),
        then: outcome.then.0.id().to_owned(),
        then_share: hundredths(outcome.then.1),
    });
    TroubleCheckOutput {
        id: one.check.id().to_owned(),
        name: one.check.name().to_owned(),
        takes: one.check.takes().to_owned(),
        settles: Figure(one.settles),
        outcomes: outcomes.collect(),
    }
}

impl TroublesFile {
    /// The answer to a project.
    #[must_use]
    pub fn new(project: &str, troubles: TroublesOutput) -> Self {
        Self {
            project: Some(project.to_owned()),
            troubles: Some(troubles),
            ..Self::empty()
        }
    }

    /// Why there is no answer.
    #[must_use]
    pub fn failed(error: &DocumentError) -> Self {
        Self {
            error: Some(ErrorOutput::from(error)),
            ..Self::empty()
        }
    }

    /// As JSON.
    ///
    /// # Errors
    /// [`DocumentError::NotFinite`] where a figure is no number; nothing is written then.
    pub fn to_json(&self) -> Result<String, DocumentError> {
        pretty(self)
    }

    fn empty() -> Self {
        Self {
            format: TROUBLES_FORMAT.to_owned(),
            version: 1,
            revision: 2,
            log: None,
            project: None,
            troubles: None,
            error: None,
        }
    }
}
