//! What holds when: hours of the day, days of the week, months.

/// A moment of local standard time, as far as schedules ask.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moment {
    /// Month, 1 to 12.
    pub month: u8,
    /// Day of the week, 0 for Monday to 6 for Sunday.
    pub weekday: u8,
    /// Hour that runs, 0 to 23.
    pub hour: u8,
}

/// A value that holds at some hours.
#[derive(Debug, Clone, PartialEq)]
pub struct Rule {
    /// From the start of this hour, 0 to 23, to the start of the other; over midnight where the second is not later.
    pub hours: (u8, u8),
    /// On these days of the week, Monday first.
    pub weekdays: [bool; 7],
    /// In these months, January first.
    pub months: [bool; 12],
    /// What holds then.
    pub value: f64,
}

impl Rule {
    /// All hours of all days and months.
    #[must_use]
    pub const fn always(value: f64) -> Self {
        Self {
            hours: (0, 0),
            weekdays: [true; 7],
            months: [true; 12],
            value,
        }
    }

    /// Whether it holds.
    #[must_use]
    pub fn holds(&self, moment: Moment) -> bool {
        let named = |list: &[bool], at: u8| list.get(usize::from(at)).copied().unwrap_or(false);
        let (from, to) = self.hours;
        let hour = if from < to {
            from <= moment.hour && moment.hour < to
        } else {
            from <= moment.hour || moment.hour < to
        };
        hour && named(&self.weekdays, moment.weekday)
            && named(&self.months, moment.month.saturating_sub(1))
    }
}

/// Rules in order; the first that holds counts, and where none does the value behind them.
///
/// ```
/// use dewrun_duct_air::schedule::{Moment, Rule, Schedule};
/// let night = Rule { hours: (20, 6), ..Rule::always(16.0) };
/// let heating = Schedule { rules: vec![night], otherwise: 21.0 };
/// let at = |hour| heating.at(Moment { month: 1, weekday: 2, hour });
/// assert_eq!((at(23), at(5), at(6)), (16.0, 16.0, 21.0));
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Schedule {
    /// The rules.
    pub rules: Vec<Rule>,
    /// What holds where none of them does.
    pub otherwise: f64,
}

impl Schedule {
    /// The same value at all times.
    #[must_use]
    pub const fn fixed(value: f64) -> Self {
        Self {
            rules: Vec::new(),
            otherwise: value,
        }
    }

    /// What holds at a moment.
    #[must_use]
    pub fn at(&self, moment: Moment) -> f64 {
        let rule = self.rules.iter().find(|rule| rule.holds(moment));
        rule.map_or(self.otherwise, |rule| rule.value)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_days_and_months_all_have_to_hold() {
        let mut weekdays = [true; 7];
        weekdays[6] = false;
        let mut months = [false; 12];
        months[6] = true;
        let rule = Rule {
            hours: (8, 18),
            weekdays,
            months,
            value: 1.0,
        };
        let held = |month, weekday, hour| {
            rule.holds(Moment {
                month,
                weekday,
                hour,
            })
        };
        assert!(held(7, 0, 8) && held(7, 5, 17), "a working day in July");
        assert!(!held(7, 0, 18), "in the evening");
        assert!(!held(7, 6, 9), "on a Sunday");
        assert!(!held(8, 0, 9), "in August");
    }
}
