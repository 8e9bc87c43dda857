//! In which order remedies are told: openly, by what is left and then by the work, or by another column.

use core::cmp::Ordering;

use crate::kind::{Kind, Work};
use crate::left::YearLeft;
use crate::search::Tried;

/// What remedies are ranked by; equals by the work that they are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RankBy {
    /// What is left: hours that are blind, wet hours, then water.
    #[default]
    Left,
    /// The work that it is.
    Work,
    /// What it takes of power.
    Energy,
    /// How long the smoke takes.
    Transport,
}

impl RankBy {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Left, Self::Work, Self::Energy, Self::Transport];

    /// The order of two remedies.
    #[must_use]
    pub fn compare(self, one: &Tried, next: &Tried) -> Ordering {
        let by = match self {
            Self::Left => left(one, next),
            Self::Work => work(one).cmp(&work(next)),
            Self::Energy => power_w(one).total_cmp(&power_w(next)),
            Self::Transport => transport_s(one).total_cmp(&transport_s(next)),
        };
        let otherwise = match self {
            Self::Work => left(one, next),
            _ => Ordering::Equal,
        };
        by.then(otherwise)
            .then_with(|| work(one).cmp(&work(next)))
            .then_with(|| one.kinds.len().cmp(&next.kinds.len()))
    }
}

/// Cures first, each part in the order that is wanted; pairs that do not do either are no advice and left out.
pub fn rank(tried: &mut Vec<Tried>, by: RankBy) {
    tried.retain(|one| one.is_cure || one.kinds.len() == 1);
    tried.sort_by(|one, next| {
        (!one.is_cure)
            .cmp(&!next.is_cure)
            .then_with(|| by.compare(one, next))
    });
}

/// The heaviest work of it, and all of it.
fn work(tried: &Tried) -> (Option<Work>, usize) {
    let works = tried.kinds.iter().copied().map(Kind::work);
    (works.max(), tried.kinds.len())
}

fn power_w(tried: &Tried) -> f64 {
    let powered = tried.powered.as_ref();
    powered.map_or(0.0, |powered| powered.power.to_watts())
}

fn transport_s(tried: &Tried) -> f64 {
    let air = tried.left.entered.air.as_ref();
    let transport = air.and_then(|air| air.transport);
    transport.map_or(f64::INFINITY, |[_, ninety]| ninety.to_seconds())
}

/// Hours in percent of all there are, and no finer: what is left of a cure is nothing that one would choose by.
fn left(one: &Tried, next: &Tried) -> Ordering {
    let percent = |tried: &Tried, of: fn(&YearLeft) -> f64| {
        let year = tried.left.year.as_ref();
        year.map_or(0.0, |year| (100.0 * of(year) / year.hours).round())
    };
    let blind = |tried: &Tried| percent(tried, |year| year.blind_hours.unwrap_or(0.0));
    let wet = |tried: &Tried| percent(tried, |year| year.wet_hours);
    let forms = |tried: &Tried| tried.left.entered.forms.to_grams_per_hour().round();
    blind(one)
        .total_cmp(&blind(next))
        .then(wet(one).total_cmp(&wet(next)))
        .then(forms(one).total_cmp(&forms(next)))
}
