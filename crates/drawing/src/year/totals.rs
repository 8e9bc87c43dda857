//! What some hours come to.

use super::{Step, Year};

/// Sums over hours.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Totals {
    /// All of them, h.
    pub(super) hours: f64,
    pub(super) wet_h: f64,
    pub(super) formed_g: f64,
    /// Most that formed in a step, g/h.
    pub(super) most_g_h: f64,
    pub(super) mist_h: f64,
    pub(super) frost_h: f64,
    pub(super) over_h: f64,
    pub(super) blind_h: f64,
    pub(super) closed_h: f64,
    pub(super) beyond_h: f64,
}

impl Totals {
    pub(super) fn of<'a>(steps: impl Iterator<Item = &'a Step>) -> Self {
        let mut sum = Self::default();
        for step in steps {
            sum.add(step);
        }
        sum
    }

    pub(super) fn add(&mut self, step: &Step) {
        let hours = step.seconds / 3600.0;
        let held = |holds: bool| if holds { hours } else { 0.0 };
        self.hours += hours;
        self.wet_h += held(step.is_wet);
        self.formed_g += step.formed_g;
        if 0.0 < hours {
            self.most_g_h = self.most_g_h.max(step.formed_g / hours);
        }
        self.mist_h += held(step.is_misty);
        self.frost_h += held(0.0 < step.ice_g);
        self.over_h += held(step.is_over);
        self.blind_h += hours * step.blind;
        self.closed_h += hours * step.closed;
        self.beyond_h += hours * step.beyond;
    }
}

impl Year {
    /// The step in which most forms in an hour; none where nothing does.
    pub(super) fn wettest(&self) -> Option<usize> {
        let rate = |step: &Step| step.formed_g / step.seconds;
        let wet = self
            .steps
            .iter()
            .enumerate()
            .filter(|(_, step)| step.is_wet);
        wet.fold(None, |most: Option<(usize, f64)>, (at, step)| match most {
            Some((_, known)) if rate(step) <= known => most,
            _ => Some((at, rate(step))),
        })
        .map(|(at, _)| at)
    }
}
