//! Periods and settings of a project as rules and schedules of the engine.

use dewrun_season::told::{Rule, Schedule};

use crate::{Input, MonthName, Period, Setting, Weekday};

/// The rule that a value holds in a period.
pub(super) fn rule(period: &Period, value: f64) -> Rule {
    let hour = |hour: Option<f64>| {
        let named = |known: &u8| hour.is_some_and(|hour| f64::from(*known) == hour);
        // Left out, and at 24, it is midnight.
        (0..24).find(named).unwrap_or(0)
    };
    let days = period.days.as_ref();
    let months = period.months.as_ref();
    Rule {
        hours: (hour(period.from_h), hour(period.until_h)),
        weekdays: Weekday::ALL.map(|day| days.is_none_or(|days| days.contains(&day))),
        months: MonthName::ALL.map(|month| months.is_none_or(|months| months.contains(&month))),
        value,
    }
}

/// What a quantity is by the settings of a room, and otherwise.
pub(super) fn schedule(
    settings: &[Setting],
    of: impl Fn(&Setting) -> Option<&Input<f64>>,
    scale: f64,
    otherwise: f64,
) -> Schedule {
    let rules = settings.iter().filter_map(|setting| {
        let value = scale * of(setting)?.value;
        Some(rule(&setting.when, value))
    });
    Schedule {
        rules: rules.collect(),
        otherwise,
    }
}

/// Seconds as a number.
#[expect(clippy::cast_precision_loss, reason = "a step is far below 2^52 s")]
pub(super) const fn seconds(whole: i64) -> f64 {
    whole as f64
}
