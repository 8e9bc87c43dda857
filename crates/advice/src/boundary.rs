//! The dry boundary: how humid the duct air, how cold the spaces and how long the tube may be before a run gets wet.
//!
//! Each search changes one thing and evaluates the run anew; wet and dry mean what they mean everywhere ([`dewrun_run::Verdict`]).
//! Sweat on the outside is dry and does not count.

mod curve;
mod duct_air;
mod error;
mod probe;
mod search;
mod space;
mod tube;

use dewrun_quantity::Temperature;
use dewrun_run::{Outcome, Run};

pub use curve::{BoundaryPoint, dry_boundary};
pub use duct_air::most_humid_duct_air;
pub use error::BoundaryError;
pub use space::{SpaceLimit, coldest_space};
pub use tube::{TubeLimit, longest_tube};

/// How far something may go before a run gets wet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Limit<T> {
    /// Dry up to here, wet a little past it.
    At(T),
    /// Dry as far as it can go at all.
    Any,
    /// Wet however far it is taken back.
    Never,
}

impl<T> Limit<T> {
    /// The limit, where there is one.
    #[must_use]
    pub fn at(self) -> Option<T> {
        match self {
            Self::At(value) => Some(value),
            Self::Any | Self::Never => None,
        }
    }

    /// The same limit of something else.
    #[must_use]
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Limit<U> {
        match self {
            Self::At(value) => Limit::At(change(value)),
            Self::Any => Limit::Any,
            Self::Never => Limit::Never,
        }
    }
}

/// What a run would still take dry, by one change at a time.
#[derive(Debug, Clone, PartialEq)]
pub struct StayingDry {
    /// Temperature of the duct air, which stays as it is.
    pub duct_temperature: Temperature,
    /// Highest dew point of duct air of that temperature.
    pub duct_air: Limit<Temperature>,
    /// Lowest temperature of the spaces.
    pub space: SpaceLimit,
    /// Longest intake tube along the route as it is drawn.
    pub tube: TubeLimit,
}

/// What a run would still take dry: the most humid duct air, the coldest space, the longest tube, one change at a time.
///
/// `now` is what [`dewrun_run::evaluate`] answers for the run.
///
/// # Range
/// As [`dewrun_run::evaluate`].
///
/// # Accuracy
/// As [`most_humid_duct_air`], [`coldest_space`] and [`longest_tube`].
///
/// # Errors
/// [`BoundaryError`] where one of the runs on the way has no answer.
///
/// # Source
/// By search over the whole model; no relation of its own. The crate's first page has an example.
pub fn staying_dry(run: &Run, now: &Outcome) -> Result<StayingDry, BoundaryError> {
    Ok(StayingDry {
        duct_temperature: now.duct_air.temperature,
        duct_air: most_humid_duct_air(run, now, now.duct_air.temperature)?,
        space: coldest_space(run, now)?,
        tube: longest_tube(run, now)?,
    })
}
