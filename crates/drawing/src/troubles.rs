//! A log of troubles: its causes with their shares, what to look at next, and its entries over what was modelled of their time.

mod axis;
mod causes;
mod checks;
mod entries;
mod lanes;
mod listed;
mod timeline;

use dewrun_quantity::Style;
use dewrun_run::Tube;
use dewrun_troubles::{Cause, Hours, Log, LowPoint, NextCheck, Ranking};

use crate::wording::metres;

pub use causes::{causes, in_words, sentence};
pub use checks::next_check;
pub use listed::listed;
pub use timeline::timeline;

/// What was found of a run's troubles.
#[derive(Debug, Clone, Copy)]
pub struct Found<'a> {
    /// The log; none where answers alone are told.
    pub log: Option<&'a Log>,
    /// The causes.
    pub ranking: &'a Ranking,
    /// Between which the share of each lies, in the order of the causes' list; empty where nothing is known of that.
    pub spans: &'a [(f64, f64)],
    /// The checks, the best first.
    pub checks: &'a [NextCheck],
    /// The low point that the least water closes.
    pub low_point: Option<LowPoint>,
    /// How numbers are shown.
    pub style: Style,
}

/// What was modelled of the time of a log.
#[derive(Debug, Clone, Copy)]
pub struct Modelled<'a> {
    /// Hour by hour.
    pub hours: &'a Hours,
    /// Dew point of the duct's air in each of them, °C; no number where it is not known.
    pub dew_point_c: &'a [f64],
    /// Low and high limit of the airflow, % of as-fitted.
    pub limits: Option<[f64; 2]>,
    /// How numbers are shown.
    pub style: Style,
}

impl Found<'_> {
    /// What a cause is, and where, as far as that is known.
    fn name(&self, cause: Cause) -> String {
        match self.low_point.filter(|_| cause == Cause::LowPointWater) {
            None => cause.name().to_owned(),
            Some(low_point) => {
                let at = metres(low_point.at_m, self.style);
                match low_point.tube {
                    Tube::Intake => format!("Water in the low point at {at}"),
                    Tube::Exhaust => format!("Water in the low point of the exhaust at {at}"),
                }
            }
        }
    }

    /// Between which the share of a cause lies, as parts of a hundred.
    fn span(&self, place: usize, share: f64) -> (f64, f64) {
        let (least, most) = self.spans.get(place).copied().unwrap_or((share, share));
        (100.0 * least, 100.0 * most)
    }
}
