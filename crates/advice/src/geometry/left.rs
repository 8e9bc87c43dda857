//! What is left of the trouble that water makes in a run.

use core::cmp::Ordering;

use dewrun_quantity::{Mass, MassFlow, Time};
use dewrun_run::told::Trouble;
use dewrun_run::{Blind, Outcome, TubeWater, WET_TUBE_G_H, Whole};

/// What water does to a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Left {
    /// Water that forms in both tubes.
    pub forms: MassFlow,
    /// What stands at low points when traps are next emptied.
    pub standing: Mass,
    /// When the first low point is sealed.
    pub sealed: Option<Time>,
    /// What runs into the detector.
    pub into_detector: MassFlow,
    /// What comes to traps.
    pub into_traps: MassFlow,
    /// Legs whose hangers let them sag so far that they hold water.
    pub sagging: usize,
    /// How long traps may wait; none where no trouble comes.
    pub drain_interval: Option<Time>,
    /// Why the detector may not be sampling its duct.
    pub blind: Option<Blind>,
}

impl Left {
    /// What is left in an answer.
    #[must_use]
    pub fn of(outcome: &Outcome, whole: &Whole) -> Self {
        let tubes = || {
            [Some(&whole.intake), whole.exhaust.as_ref()]
                .into_iter()
                .flatten()
        };
        let exhaust = outcome.exhaust.as_ref();
        let from_exhaust = whole.exhaust.as_ref();
        Self {
            forms: outcome.intake.condensate
                + exhaust.map_or(MassFlow::ZERO, |tube| tube.condensate),
            standing: tubes().map(standing).sum(),
            sealed: tubes().filter_map(sealed).min_by(by_time),
            into_detector: whole.intake.out_at_end
                + from_exhaust.map_or(MassFlow::ZERO, |tube| tube.out_at_start),
            into_traps: tubes()
                .flat_map(|tube| &tube.traps)
                .map(|trap| trap.rate)
                .sum(),
            sagging: tubes()
                .flat_map(|tube| &tube.legs)
                .filter(|leg| leg.hangers.sags())
                .count(),
            drain_interval: tubes()
                .filter_map(|tube| tube.drain_interval)
                .min_by(by_time),
            blind: whole.blind,
        }
    }

    /// Less trouble of one kind and no more of another.
    pub(super) fn is_better_than(&self, before: &Self) -> bool {
        let none_worse = self.blind.is_none() || before.blind.is_some();
        let g = |mass: Mass| mass.to_grams();
        let g_h = |flow: MassFlow| flow.to_grams_per_hour();
        let not_more_into_detector =
            g_h(self.into_detector) <= g_h(before.into_detector) + WET_TUBE_G_H;
        let not_more_standing = g(self.standing) <= g(before.standing) + 1.0;
        let less = self.blind.is_none() && before.blind.is_some()
            || g(self.standing) < 0.9 * g(before.standing) - 1.0
            || g_h(self.into_detector) < 0.9 * g_h(before.into_detector) - WET_TUBE_G_H
            || self.sagging < before.sagging;
        none_worse
            && not_more_into_detector
            && not_more_standing
            && self.sagging <= before.sagging
            && less
    }

    /// The one that leaves less trouble first: a blind detector weighs most, then water that stands or runs into the detector.
    pub(super) fn weighed(&self, other: &Self) -> Ordering {
        let key = |left: &Self| {
            (
                left.blind.is_some(),
                WET_TUBE_G_H < left.into_detector.to_grams_per_hour(),
            )
        };
        let rounded = |left: &Self| left.standing.to_grams().round();
        key(self)
            .cmp(&key(other))
            .then(rounded(self).total_cmp(&rounded(other)))
            .then(self.sagging.cmp(&other.sagging))
    }
}

fn by_time(one: &Time, next: &Time) -> Ordering {
    one.to_seconds().total_cmp(&next.to_seconds())
}

fn standing(tube: &TubeWater) -> Mass {
    tube.low_points.iter().map(|low| low.amount).sum()
}

fn sealed(tube: &TubeWater) -> Option<Time> {
    let troubles = tube.troubles.iter();
    let sealed = troubles.filter(|one| one.trouble == Trouble::Sealed);
    sealed.map(|one| one.after).min_by(by_time)
}
