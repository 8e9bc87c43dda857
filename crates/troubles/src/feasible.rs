//! Whether a run can have a cause at all: what its members are modelled to do in a year.

use crate::cause::Cause;
use crate::modelled::Modelled;
use crate::signs::FaultSigns;

/// What is hardly modelled at all may be so for once: the relations are not that good.
const HARDLY: f64 = 0.05;
/// So much water a year makes no trouble, and so much surely can, g.
const WATER_G: (f64, f64) = (5.0, 60.0);
/// As many hours a year.
const HOURS: (f64, f64) = (0.0, 10.0);

/// What the members of a run do in a year, on the mean.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Feasible {
    water_g: f64,
    misty_h: f64,
    icy_h: f64,
    dry_h: f64,
    leaks_h: f64,
    has_trap: bool,
    signs: FaultSigns,
}

impl Feasible {
    pub(crate) fn of(modelled: &Modelled) -> Self {
        Self::of_hours(modelled, &|_| true)
    }

    /// Of some hours of the year only.
    pub(crate) fn of_hours(modelled: &Modelled, is_within: &dyn Fn(i64) -> bool) -> Self {
        let mut all = Self {
            water_g: 0.0,
            misty_h: 0.0,
            icy_h: 0.0,
            dry_h: 0.0,
            leaks_h: 0.0,
            has_trap: modelled.has_trap,
            signs: modelled.signs,
        };
        for (_, sum) in modelled.year().filter(|(start_s, _)| is_within(*start_s)) {
            all.water_g += sum.water_g;
            all.misty_h += sum.mist[1];
            all.icy_h += sum.icy;
            all.dry_h += sum.dry;
            all.leaks_h += sum.leaks;
        }
        all
    }

    /// How far the run can have a cause, from hardly to surely.
    pub(crate) fn of_cause(&self, cause: Cause) -> f64 {
        let over = |value: f64, (none, sure): (f64, f64)| {
            HARDLY + (1.0 - HARDLY) * ((value - none) / (sure - none)).clamp(0.0, 1.0)
        };
        let shows = |sign: crate::signs::Sign| HARDLY + (1.0 - HARDLY) * (sign.low + sign.high);
        match cause {
            Cause::LowPointWater => over(self.water_g, WATER_G),
            Cause::Mist => over(self.misty_h, HOURS),
            Cause::Frost => over(self.icy_h, HOURS),
            Cause::DryTrap if self.has_trap => shows(self.signs.dry_trap),
            Cause::DryTrap => 0.2 * HARDLY,
            Cause::PartedTube => shows(self.signs.parted),
            Cause::FilterMissing => shows(self.signs.no_filter),
            _ => 1.0,
        }
    }

    /// What its modelled hazard goes by, for causes that follow the weather.
    pub(crate) const fn hazard(&self, cause: Cause) -> Option<f64> {
        match cause {
            Cause::LowPointWater => Some(self.water_g),
            Cause::Mist => Some(self.misty_h),
            Cause::Frost => Some(self.icy_h),
            Cause::DryTrap => Some(self.leaks_h + 0.01 * self.dry_h),
            _ => None,
        }
    }
}
