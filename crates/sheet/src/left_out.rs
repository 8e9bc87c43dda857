//! What a printed code leaves out of a project where it would be too dense, one thing after another.

use std::collections::BTreeSet;

use dewrun_document::{
    DocumentError, Kept, Project, Run, TroublesKept, link_text, read_keeping_years,
};

/// What a printed code may leave out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LeftOut {
    /// The notes of the project and of its visits.
    Notes,
    /// The visits.
    Visits,
    /// The other runs, and the spaces that they alone pass.
    OtherRuns,
    /// The weather and the log that the project names: whoever scans the code has neither.
    Files,
    /// Where values come from: rows of the library with their spans, days and persons of measurements.
    Origins,
    /// The names of project, run, duct and spaces.
    Names,
}

/// In this order: what the person at the tube can do without comes first.
pub(crate) const ORDER: [LeftOut; 6] = [
    LeftOut::Notes,
    LeftOut::Visits,
    LeftOut::OtherRuns,
    LeftOut::Files,
    LeftOut::Names,
    LeftOut::Origins,
];

/// How an origin begins, in a project's text without spaces, that is more than one word.
const TOLD_ORIGIN: &str = "\"origin\":{";
const TYPED: &str = "\"origin\":\"typed\"";

impl LeftOut {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Notes => "notes",
            Self::Visits => "visits",
            Self::OtherRuns => "other runs",
            Self::Files => "which weather and log it goes by",
            Self::Origins => "where values come from",
            Self::Names => "names",
        }
    }

    /// The project without it; the run keeps its place among those that are left.
    ///
    /// # Errors
    /// [`DocumentError`] where the project leaves one of its limits.
    pub(crate) fn taken_out(
        self,
        mut project: Project,
        run_index: usize,
    ) -> Result<Project, DocumentError> {
        match self {
            Self::Notes => {
                project.note.clear();
                let visits = project.runs.iter_mut().flat_map(|run| &mut run.visits);
                visits.for_each(|visit| visit.note.clear());
            }
            Self::Visits => project.runs.iter_mut().for_each(|run| run.visits.clear()),
            Self::OtherRuns => keep_run(&mut project, run_index),
            Self::Files => {
                project.weather = None;
                for run in &mut project.runs {
                    if let Some(kept) = &run.troubles {
                        run.troubles = without_log(kept.get()?)?;
                    }
                }
            }
            Self::Origins => return read_keeping_years(&typed(&link_text(&project)?)),
            Self::Names => {
                project.name.clear();
                let spaces = project.spaces.iter_mut();
                spaces.for_each(|space| space.name.clear());
                for run in &mut project.runs {
                    run.name.clear();
                    run.duct.name.clear();
                    run.intake.entry.place.clear();
                    if let Some(exhaust) = &mut run.exhaust {
                        exhaust.entry.place.clear();
                    }
                }
            }
        }
        Ok(project)
    }
}

/// What is noted of troubles besides their log.
fn without_log(troubles: TroublesKept) -> Result<Option<Kept<TroublesKept>>, DocumentError> {
    if troubles.seen.is_empty() {
        return Ok(None);
    }
    let troubles = TroublesKept {
        log: None,
        ..troubles
    };
    Kept::<TroublesKept>::of(&troubles).map(Some)
}

fn keep_run(project: &mut Project, run_index: usize) {
    let mut place = 0..;
    project
        .runs
        .retain(|_| place.next().is_some_and(|place: usize| place == run_index));
    let runs = project.runs.iter_mut();
    runs.for_each(|run| run.variant_of = None);
    let passed: BTreeSet<String> = project.runs.iter().flat_map(spaces).collect();
    project.spaces.retain(|space| passed.contains(&space.id));
}

/// The spaces that a run passes.
fn spaces(run: &Run) -> Vec<String> {
    let exhaust = run.exhaust.iter().flat_map(|route| &route.legs);
    let legs = run.intake.legs.iter().chain(exhaust);
    legs.map(|leg| leg.space.clone()).collect()
}

/// The text of a project with every value typed; texts within it hold no bare quote, so that no origin begins in them.
fn typed(text: &str) -> String {
    let mut rest = text;
    let mut out = String::with_capacity(text.len());
    while let Some((before, origin)) = rest.split_once(TOLD_ORIGIN) {
        out.push_str(before);
        out.push_str(TYPED);
        rest = after_brace(origin);
    }
    out.push_str(rest);
    out
}

/// What follows the brace that closes the one before the text.
fn after_brace(text: &str) -> &str {
    let (mut depth, mut in_text, mut escaped) = (1, false, false);
    for (at, sign) in text.char_indices() {
        match sign {
            _ if escaped => escaped = false,
            '\\' if in_text => escaped = true,
            '"' => in_text = !in_text,
            '{' if !in_text => depth += 1,
            '}' if !in_text => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            return text.get(at + 1..).unwrap_or_default();
        }
    }
    ""
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn origins_go_and_texts_stay() {
        let text = r#"{"note":"a \"origin\":{ in words","x":{"value":1.0,"origin":{"assumed":{"row":"}\"","low":0.0,"high":2.0}}},"y":{"value":2.0,"origin":{"measured":{"on":"2026-05-12","by":"{"}}},"z":{"value":3.0,"origin":"typed"}}"#;
        let expected = r#"{"note":"a \"origin\":{ in words","x":{"value":1.0,"origin":"typed"},"y":{"value":2.0,"origin":"typed"},"z":{"value":3.0,"origin":"typed"}}"#;
        assert_eq!(typed(text), expected, "every value is typed");
    }
}
