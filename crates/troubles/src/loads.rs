//! How long a filter, or the holes, have loaded as entries come: what the panel shows falls day by day.

use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::poisson::count;

/// A load that has not tripped for so long was cleaned, h; sooner where the log says that somebody did.
const QUIET_H: usize = 40 * 24;
const CLEANED_H: usize = 12 * 24;
/// A load has begun as one trouble is followed by another so soon, h.
const FOLLOWED_H: usize = 20 * 24;
/// Where it has begun so soon, the log may start in the midst of it, h.
const BEGUN_H: usize = 25 * 24;

/// How long something has loaded as entries come.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Loads {
    days: Vec<(f64, bool)>,
    begun: bool,
}

impl Loads {
    /// It begins anew where nothing has tripped for long, or for less if it was cleaned meanwhile; a single trouble tells nothing.
    pub(crate) fn of(placed: &[Placed], cleaned_by: EventKind) -> Self {
        let entries = placed.iter().map(|one| one.entry + 1).max();
        let mut found = Self {
            days: vec![(0.0, false); entries.unwrap_or(0)],
            begun: false,
        };
        let (mut began_h, mut last_h, mut first) = (None, 0, true);
        let mut was_cleaned = false;
        for (at, one) in placed.iter().enumerate() {
            was_cleaned |= one.kind == cleaned_by;
            if one.kind != EventKind::AirflowLow {
                continue;
            }
            let quiet_h = one.hour.saturating_sub(last_h);
            if began_h.is_some() && (QUIET_H < quiet_h || was_cleaned && CLEANED_H < quiet_h) {
                (began_h, first) = (None, false);
            }
            (last_h, was_cleaned) = (one.hour, false);
            let next = placed.get(at + 1..).unwrap_or_default().iter();
            let mut soon = next.take_while(|next| next.hour.saturating_sub(one.hour) < FOLLOWED_H);
            let is_followed = soon.any(|next| next.kind == EventKind::AirflowLow);
            if began_h.is_none() && is_followed {
                began_h = Some(one.hour);
                found.begun |= first && one.hour < BEGUN_H;
            }
            let began = began_h.unwrap_or(one.hour);
            if let Some(days) = found.days.get_mut(one.entry) {
                *days = (
                    count(one.hour.saturating_sub(began)) / 24.0,
                    first && began_h.is_some(),
                );
            }
        }
        found
    }

    /// Days from the first trouble of its load to an entry, and whether it is the first load of the log; by the place of an entry in the log.
    pub(crate) fn days(&self, entry: usize) -> (f64, bool) {
        self.days.get(entry).copied().unwrap_or_default()
    }

    /// Whether the log may begin in the midst of a load.
    pub(crate) const fn has_begun(&self) -> bool {
        self.begun
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(day: usize, entry: usize, kind: EventKind) -> Placed {
        Placed {
            entry,
            hour: 24 * day,
            kind,
            ..Placed::EMPTY
        }
    }

    /// Low on days 60, 63 and 90; the filter is changed on day 91; low again on days 110 and 112: days are counted from 60 and from 110.
    #[test]
    fn days_are_counted_from_the_first_trouble_of_each_load() {
        let low = EventKind::AirflowLow;
        let of = |changed: EventKind| {
            let days = [60, 63, 90].into_iter().enumerate();
            let mut placed: Vec<Placed> = days.map(|(at, day)| on(day, at, low)).collect();
            placed.push(on(91, 3, changed));
            placed.extend([on(110, 4, low), on(112, 5, low)]);
            Loads::of(&placed, EventKind::FilterChanged)
        };
        let all = |loads: &Loads| [0, 1, 2, 4, 5].map(|entry| loads.days(entry));
        let changed = of(EventKind::FilterChanged);
        let first = [(0.0, true), (3.0, true), (30.0, true)];
        assert_eq!(all(&changed)[..3], first);
        assert_eq!(all(&changed)[3..], [(0.0, false), (2.0, false)]);
        assert!(!changed.has_begun(), "sixty days without a trouble");
        // Nobody says that anything was cleaned: twenty days are not long enough.
        let same = of(EventKind::Other);
        assert_eq!(all(&same)[3..], [(50.0, true), (52.0, true)]);
    }

    #[test]
    fn a_log_may_begin_in_the_midst_of_a_load() {
        let low = EventKind::AirflowLow;
        let placed = [on(3, 0, low), on(9, 1, low), on(60, 2, low)];
        let loads = Loads::of(&placed, EventKind::FilterChanged);
        assert!(loads.has_begun(), "{loads:?}");
        assert_eq!(loads.days(1), (6.0, true));
        assert_eq!(loads.days(2), (0.0, false), "alone");
    }
}
