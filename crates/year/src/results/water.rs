//! What the water that stands comes to in a year: where it went, hours of each trouble, traps and visits, the first critical week.

use super::HOUR_S;
use crate::march::March;
use crate::sums::HourSum;
use crate::water::{StateShares, WaterHour, WaterWent};

/// Hours of a week.
const WEEK_H: f64 = 168.0;

/// Water that stood in a year, or any row of hours, in a few numbers.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WaterSum {
    /// Where it went.
    pub went: WaterWent,
    /// Most that stood in pools and puddles, kg.
    pub most_standing_kg: f64,
    /// Hours of each state.
    pub hours: StateShares,
    /// Times that a trap became full.
    pub fillings: u32,
    /// Visits that found something to let out.
    pub emptyings: u32,
    /// Times that the last ice in pools and puddles thawed.
    pub thaws: u32,
    /// The first week, counted from the start in whole weeks, that makes trouble.
    pub first_critical: Option<CriticalWeek>,
}

/// A week that makes trouble.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CriticalWeek {
    /// The first hour that does, by its position.
    pub hour: usize,
    /// The week that it lies in, counted from 0 at the start.
    pub week: u32,
    /// What trouble.
    pub trouble: WaterTrouble,
}

/// Troubles, the gravest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WaterTrouble {
    /// Frost closes a bore, or ice does in a pool.
    Iced,
    /// Water closes a low point.
    Sealed,
    /// The detector does not sample its duct, for another reason.
    Blind,
    /// The airflow lies under its low limit.
    LowFlow,
    /// The airflow lies over its high limit.
    HighFlow,
    /// The air throws slugs.
    Slugs,
    /// A trap is full.
    TrapFull,
}

impl WaterTrouble {
    /// The gravest of an hour.
    #[must_use]
    pub fn of(hour: &WaterHour) -> Option<Self> {
        let states = &hour.states;
        [
            (states.iced, Self::Iced),
            (states.sealed, Self::Sealed),
            (states.blind, Self::Blind),
            (states.low, Self::LowFlow),
            (states.high, Self::HighFlow),
            (states.slugs, Self::Slugs),
            (states.trap_full, Self::TrapFull),
        ]
        .into_iter()
        .find_map(|(share, trouble)| (0.0 < share).then_some(trouble))
    }
}

/// Where all water of a row of hours went, kg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaterBalance {
    /// Came in with the duct's air, and stood in seals at the start.
    pub entered_kg: f64,
    /// Left with the air as vapour.
    pub vapour_kg: f64,
    /// Left with the air as mist.
    pub mist_kg: f64,
    /// Lies on the walls at the end, ice included.
    pub on_walls_kg: f64,
    /// Stands in pools and puddles at the end, ice included.
    pub standing_kg: f64,
    /// Stands in traps at the end, their seals included.
    pub trapped_kg: f64,
    /// Where what left the walls went; without water that stands, drained is all that ran off them.
    pub went: WaterWent,
    /// What is missing from all these: the rounding.
    pub off_kg: f64,
}

/// Sums up the water of hours that were marched.
#[must_use]
pub fn water_sum(hours: &[WaterHour]) -> WaterSum {
    let mut sum = WaterSum::default();
    let mut elapsed_h = 0.0;
    let (mut was_full, mut was_frozen) = (false, false);
    for (at, hour) in hours.iter().enumerate() {
        let length_h = hour.seconds / HOUR_S;
        sum.went = sum.went.plus(&hour.went);
        sum.most_standing_kg = sum.most_standing_kg.max(hour.standing_kg);
        sum.hours = sum.hours.plus(hour.states, length_h);
        let (is_full, is_frozen) = (0.0 < hour.states.trap_full, 0.0 < hour.ice_kg);
        sum.fillings += u32::from(is_full && !was_full);
        sum.emptyings += u32::from(0.0 < hour.went.let_out_kg);
        sum.thaws += u32::from(was_frozen && !is_frozen);
        (was_full, was_frozen) = (is_full, is_frozen);
        if let (None, Some(trouble)) = (sum.first_critical, WaterTrouble::of(hour)) {
            let week = week_of(elapsed_h);
            sum.first_critical = Some(CriticalWeek {
                hour: at,
                week,
                trouble,
            });
        }
        elapsed_h += length_h;
    }
    sum
}

fn week_of(elapsed_h: f64) -> u32 {
    let mut week = 0;
    while f64::from(week + 1) * WEEK_H <= elapsed_h {
        week += 1;
    }
    week
}

/// Where all water of the hours that are done went.
#[must_use]
pub fn water_balance(march: &March) -> WaterBalance {
    let (hours, water) = (march.hours(), march.water_hours());
    let total = |of: &dyn Fn(&HourSum) -> f64| hours.iter().map(of).sum::<f64>();
    let sum = water_sum(water);
    let last = water.last().copied().unwrap_or(WaterHour::NONE);
    let mut went = sum.went;
    if water.is_empty() {
        went.drained_kg = total(&|hour| hour.drained_kg);
    }
    let start_kg = march.water().map_or(0.0, |water| water.at_start_kg());
    let mut balance = WaterBalance {
        entered_kg: start_kg + total(&|hour| hour.water_in_kg),
        vapour_kg: total(&|hour| hour.dry_air_kg * hour.outlet.w),
        mist_kg: total(&|hour| hour.dry_air_kg * hour.outlet.mist),
        on_walls_kg: hours.last().map_or(0.0, HourSum::on_walls_kg),
        standing_kg: last.standing_kg,
        trapped_kg: last.trapped_kg,
        went,
        off_kg: 0.0,
    };
    balance.off_kg = total(&|hour| hour.water_in_kg - hour.water_out_kg) + start_kg
        - balance.on_walls_kg
        - last.held_kg()
        - went.gone_kg();
    balance
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hour(states: StateShares) -> WaterHour {
        WaterHour {
            seconds: HOUR_S,
            states,
            ..WaterHour::NONE
        }
    }

    /// 400 hours: a trap is full in hours 100 to 119 and again from 300 to 309, an hour of slugs at 180, sealed at 181.
    #[test]
    fn weeks_and_fillings_by_hand() {
        let mut hours = vec![hour(StateShares::default()); 400];
        let full = StateShares {
            trap_full: 1.0,
            ..StateShares::default()
        };
        for at in (100..120).chain(300..310) {
            hours[at] = hour(full);
        }
        hours[180] = hour(StateShares {
            slugs: 1.0,
            ..StateShares::default()
        });
        hours[181] = hour(StateShares {
            slugs: 1.0,
            sealed: 1.0,
            blind: 1.0,
            ..StateShares::default()
        });
        let sum = water_sum(&hours);
        assert_eq!((sum.fillings, sum.hours.trap_full), (2, 30.0), "{sum:?}");
        assert_eq!((sum.hours.slugs, sum.hours.blind), (2.0, 1.0), "{sum:?}");
        let first = sum.first_critical.expect("a week");
        assert_eq!((first.hour, first.week), (100, 0), "{first:?}");
        assert_eq!(first.trouble, WaterTrouble::TrapFull, "{first:?}");
        let later = water_sum(&hours[120..]).first_critical.expect("a week");
        assert_eq!(
            (later.hour, later.trouble),
            (60, WaterTrouble::Slugs),
            "{later:?}"
        );
        assert_eq!(
            WaterTrouble::of(&hours[181]),
            Some(WaterTrouble::Sealed),
            "the gravest"
        );
    }

    /// Ice that thaws and freezes again is two thaws.
    #[test]
    fn thaws_are_counted() {
        let ice = |ice_kg| WaterHour {
            ice_kg,
            ..hour(StateShares::default())
        };
        let hours = [0.0, 0.1, 0.2, 0.0, 0.0, 0.1, 0.0].map(ice);
        assert_eq!(water_sum(&hours).thaws, 2, "twice");
    }
}
