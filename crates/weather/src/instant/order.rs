//! The order of day, month and year, decided for a whole column and never cell by cell.

use super::civil::day_of;
use super::parse::century;
use super::stamp::{DateForm, Stamp};

/// In which order a date's numbers stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DateOrder {
    /// Day, month, year.
    DayMonthYear,
    /// Month, day, year.
    MonthDayYear,
    /// Year, month, day.
    YearMonthDay,
}

impl DateOrder {
    const ALL: [Self; 3] = [Self::DayMonthYear, Self::MonthDayYear, Self::YearMonthDay];

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::DayMonthYear => "day-month-year",
            Self::MonthDayYear => "month-day-year",
            Self::YearMonthDay => "year-month-day",
        }
    }

    /// The order that a heading such as `MM/DD/YYYY` names.
    pub(crate) fn named(heading: &str) -> Option<Self> {
        let place = |letters: &str| heading.find(letters);
        let (month, day) = (
            place("mm/dd").or(place("mm-dd")).or(place("mm.dd")),
            place("dd/mm")
                .or(place("dd-mm"))
                .or(place("dd.mm"))
                .or(place("tt.mm")),
        );
        let year = place("yyyy").or(place("jjjj"));
        match (month, day, year) {
            (Some(at), None, Some(year)) if year < at => Some(Self::YearMonthDay),
            (Some(_), None, _) => Some(Self::MonthDayYear),
            (None, Some(_), _) => Some(Self::DayMonthYear),
            _ => None,
        }
    }

    /// Seconds since 1970 of a stamp read in this order; none where there is no such date.
    pub(crate) fn seconds(self, stamp: &Stamp) -> Option<i64> {
        let [first, second, third] = stamp.date;
        let [year, month, day] = match (stamp.form, self) {
            (DateForm::None, _) => return None,
            (DateForm::Fixed, _) => stamp.date,
            (DateForm::YearLast, Self::MonthDayYear) => [third, first, second],
            (DateForm::YearLast, Self::DayMonthYear) => [third, second, first],
            (DateForm::YearLast, Self::YearMonthDay) => return None,
            (DateForm::Short, Self::MonthDayYear) => [century(third, 2)?, first, second],
            (DateForm::Short, Self::DayMonthYear) => [century(third, 2)?, second, first],
            (DateForm::Short, Self::YearMonthDay) => [century(first, 2)?, second, third],
        };
        Some(day_of(year, month, day)? * 86_400 + stamp.seconds())
    }
}

/// Which order reads a column of stamps, and how sure that is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Decision {
    pub(crate) order: DateOrder,
    /// More than one order would have read every date.
    pub(crate) is_open: bool,
}

/// The one order that reads every stamp; of several, that with the fewest steps back, then the shortest period, then the likelier one.
///
/// # Errors
/// The place of a stamp that no order reads together with those before it.
pub(crate) fn decide(stamps: &[Stamp], named: Option<DateOrder>) -> Result<Decision, usize> {
    let fixed = Decision {
        order: DateOrder::YearMonthDay,
        is_open: false,
    };
    if stamps.iter().all(|stamp| stamp.form == DateForm::Fixed) {
        return Ok(fixed);
    }
    let mut left: Vec<Tally> = Vec::new();
    let mut furthest = 0;
    for order in DateOrder::ALL {
        match Tally::of(order, stamps) {
            Ok(tally) => left.push(tally),
            Err(at) => furthest = furthest.max(at),
        }
    }
    if let Some(named) = named.filter(|named| left.iter().any(|tally| tally.order == *named)) {
        return Ok(Decision {
            order: named,
            is_open: false,
        });
    }
    let likelier = likelier(stamps);
    let best = left
        .iter()
        .min_by_key(|tally| {
            (
                tally.back,
                tally.span_days,
                tally.order != likelier,
                tally.order == DateOrder::YearMonthDay,
            )
        })
        .ok_or(furthest)?;
    let rivals = left
        .iter()
        .filter(|tally| tally.back == best.back && tally.span_days == best.span_days);
    Ok(Decision {
        order: best.order,
        is_open: 1 < rivals.count(),
    })
}

/// Clocks of twice twelve hours and slashes are used where the month comes first, points where the day does.
fn likelier(stamps: &[Stamp]) -> DateOrder {
    let is_american = stamps
        .first()
        .is_some_and(|stamp| stamp.has_half && !stamp.has_points);
    if is_american {
        DateOrder::MonthDayYear
    } else {
        DateOrder::DayMonthYear
    }
}

struct Tally {
    order: DateOrder,
    back: usize,
    span_days: i64,
}

impl Tally {
    fn of(order: DateOrder, stamps: &[Stamp]) -> Result<Self, usize> {
        let (mut back, mut before) = (0, i64::MIN);
        let (mut least, mut most) = (i64::MAX, i64::MIN);
        for (at, stamp) in stamps.iter().enumerate() {
            let seconds = order.seconds(stamp).ok_or(at)?;
            back += usize::from(seconds < before);
            before = seconds;
            least = least.min(seconds);
            most = most.max(seconds);
        }
        Ok(Self {
            order,
            back,
            span_days: most.saturating_sub(least) / 86_400,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::super::civil;
    use super::super::parse::parse;
    use super::*;

    #[track_caller]
    fn check(texts: &[&str], order: DateOrder, is_open: bool, first: &str) {
        let stamps: Vec<Stamp> = texts
            .iter()
            .map(|text| parse(text.as_bytes()).expect("a stamp"))
            .collect();
        let decision = decide(&stamps, None).expect("one order reads all");
        assert_eq!(
            (decision.order, decision.is_open),
            (order, is_open),
            "{texts:?}"
        );
        let seconds = order.seconds(&stamps[0]).expect("a date");
        assert_eq!(civil::text(seconds), first, "{texts:?}");
    }

    #[test]
    fn a_column_has_one_order() {
        use DateOrder::{DayMonthYear, MonthDayYear, YearMonthDay};
        check(
            &["11-02-07", "11-03-07", "30-11-07"],
            DayMonthYear,
            false,
            "2007-02-11T00:00",
        );
        check(
            &["07/14/21 11:35", "07/15/21 00:30"],
            MonthDayYear,
            false,
            "2021-07-14T11:35",
        );
        check(
            &["01/02/2024", "02/02/2024", "03/02/2024"],
            DayMonthYear,
            false,
            "2024-02-01T00:00",
        );
        check(
            &["02/01/2024", "02/02/2024", "02/03/2024"],
            MonthDayYear,
            false,
            "2024-02-01T00:00",
        );
        check(
            &["24/01/31", "24/02/01"],
            YearMonthDay,
            false,
            "2024-01-31T00:00",
        );
        check(
            &["2024-01-31", "2024-02-01"],
            YearMonthDay,
            false,
            "2024-01-31T00:00",
        );
    }

    #[test]
    fn an_open_order_says_so() {
        use DateOrder::{DayMonthYear, MonthDayYear};
        check(
            &["03.04.2024 10:00"],
            DayMonthYear,
            true,
            "2024-04-03T10:00",
        );
        check(
            &["03/04/2024 10:00 AM"],
            MonthDayYear,
            true,
            "2024-03-04T10:00",
        );
    }

    #[test]
    fn dates_of_two_orders_are_refused_where_they_part() {
        let stamps: Vec<Stamp> = ["13/04/2024", "14/04/2024", "04/15/2024"]
            .iter()
            .map(|text| parse(text.as_bytes()).expect("a stamp"))
            .collect();
        assert_eq!(decide(&stamps, None), Err(2), "the third fits neither");
    }

    #[test]
    fn headings_name_an_order() {
        assert_eq!(
            DateOrder::named("date (mm/dd/yyyy)"),
            Some(DateOrder::MonthDayYear),
            "American"
        );
        assert_eq!(
            DateOrder::named("datum tt.mm.jjjj"),
            Some(DateOrder::DayMonthYear),
            "German"
        );
        assert_eq!(
            DateOrder::named("yyyy-mm-dd"),
            Some(DateOrder::YearMonthDay),
            "ISO"
        );
        assert_eq!(DateOrder::named("date"), None, "none");
    }
}
