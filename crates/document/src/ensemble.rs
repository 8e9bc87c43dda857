//! From a project to what its year's ensemble is made of: how far every number may lie off, and what was measured.

mod spans;
mod visits;

use dewrun_ensemble::{Inputs, SeasonInput, Usual};
use dewrun_run::Factors;

pub use visits::{day_of, measurements};

use crate::{
    DocumentError, FieldPath, Names, Project, YearSaid, givens, installed, to_run, to_season,
};

/// What the ensemble of a run's year is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct EnsembleSaid {
    /// As the engine takes it.
    pub usual: Usual,
    /// The field of each number of the year that is assumed.
    pub paths: Vec<(SeasonInput, FieldPath)>,
    /// What the project says of the year.
    pub said: YearSaid,
    /// What its parts are called.
    pub names: Names,
}

/// What the ensemble of a run's year is made of.
///
/// # Errors
/// As [`to_season`] and [`installed`].
///
/// ```
/// use dewrun_document::{Kept, SpaceYear, read, to_ensemble};
/// let text = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/gull-harbour-roof.json"));
/// let mut project = read(text)?;
/// assert!(to_ensemble(&project, 0)?.paths.is_empty());
/// // How warm the rooms beside the plant room are is not said any more: it is assumed.
/// let mut year = project.spaces[0].year.as_ref().unwrap().get()?;
/// year.room_c = None;
/// project.spaces[0].year = Some(Kept::<SpaceYear>::of(&year)?);
/// let ensemble = to_ensemble(&project, 0)?;
/// assert!(ensemble.paths.iter().any(|(_, path)| path.as_str() == "spaces[0].year.room_c"));
/// # Ok::<(), dewrun_document::DocumentError>(())
/// ```
pub fn to_ensemble(project: &Project, run_index: usize) -> Result<EnsembleSaid, DocumentError> {
    let (run, names) = to_run(project, run_index)?;
    let built = installed(project, run_index)?;
    let said = to_season(project, run_index)?;
    let mut spans = spans::Spans::default();
    spans.duct(project, run_index, &said)?;
    spans.spaces(project, &run, &said)?;
    let mut all = givens(project, run_index);
    all.extend(built.givens);
    let (season, paths) = spans.found.into_iter().unzip();
    let paths: Vec<FieldPath> = paths;
    let season: Vec<dewrun_ensemble::SeasonSpan> = season;
    Ok(EnsembleSaid {
        paths: season.iter().map(|span| span.input).zip(paths).collect(),
        usual: Usual {
            inputs: Inputs {
                run,
                installation: built.installation,
                season: said.season.clone(),
                factors: Factors::PUBLISHED,
            },
            givens: all,
            season,
            follows: spans.follows,
        },
        said,
        names,
    })
}
