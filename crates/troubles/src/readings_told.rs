//! What readings off the panel say for or against a cause, in a sentence.

use dewrun_quantity::format::{DecimalMark, fixed};

use crate::cause::Cause;
use crate::log::{Entry, Log};
use crate::rank::{Ranked, Ranking};

/// So many readings are worth a sentence.
const ENOUGH: usize = 3;
/// They tell where they make a cause so many times as likely, or as unlikely, as a logarithm: three times.
const TELLS: f64 = 1.1;
/// A reading is of a cause from this chance on.
const IS_OF: f64 = 0.6;

/// What readings say for a cause, where they tell.
pub(crate) fn readings_for(log: &Log, ranking: &Ranking, ranked: &Ranked) -> Option<String> {
    if ranked.by_readings < TELLS {
        return None;
    }
    let gives = gives(ranked.cause)?;
    let chances = ranking.entries.iter().zip(&ranked.explained);
    let of_it = chances.filter(|(_, chance)| IS_OF <= **chance);
    let (number, least, most) = span(log, of_it.map(|(at, _)| *at), 0)?;
    Some(format!(
        "{number} readings lie at {}, which is what {gives} gives.",
        percents(least, most)
    ))
}

/// What readings say against a cause, where they tell.
pub(crate) fn readings_against(log: &Log, ranking: &Ranking, ranked: &Ranked) -> Option<String> {
    if -TELLS < ranked.by_readings {
        return None;
    }
    let gives = gives(ranked.cause)?;
    let (number, least, most) = span(log, ranking.entries.iter().copied(), 4)?;
    Some(format!(
        "Half of {number} readings lie at {}, which is not what {gives} gives.",
        percents(least, most)
    ))
}

const fn gives(cause: Cause) -> Option<&'static str> {
    match cause {
        Cause::LowPointWater => Some("water in the bore"),
        Cause::Frost => Some("frost in the bore"),
        Cause::FilterLoading => Some("a filter that loads up to a limit"),
        Cause::FilterMissing => Some("a missing or coarser filter"),
        Cause::PartedTube => Some("a parted joint"),
        Cause::DryTrap => Some("a dry trap"),
        Cause::HolesFouled => Some("dirt that narrows the holes up to a limit"),
        Cause::DuctSwitching => Some("one and the same jump"),
        Cause::FanWeak => Some("a weak fan"),
        Cause::LimitsBad => Some("a clean line"),
        Cause::Mist | Cause::None => None,
    }
}

/// How many readings there are, and the least and the most of them, %; without the outermost ones, one of so many at either end, if any.
fn span(
    log: &Log,
    entries: impl Iterator<Item = usize>,
    one_of: usize,
) -> Option<(usize, f64, f64)> {
    let shown = entries.filter_map(|at| log.entries().get(at).and_then(Entry::shown_percent));
    let mut shown: Vec<f64> = shown.collect();
    shown.sort_unstable_by(f64::total_cmp);
    let number = shown.len();
    let left_out = number.checked_div(one_of).unwrap_or(0);
    let inner = shown.get(left_out..number.checked_sub(left_out)?)?;
    let (least, most) = inner.first().zip(inner.last())?;
    (ENOUGH <= number).then_some((number, *least, *most))
}

fn percents(least: f64, most: f64) -> String {
    let whole = |percent: f64| fixed(percent, 0, DecimalMark::Point);
    let (least, most) = (whole(least), whole(most));
    if least == most {
        format!("{least} %")
    } else {
        format!("{least} to {most} %")
    }
}
