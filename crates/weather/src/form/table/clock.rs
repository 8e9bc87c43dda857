//! How the time of a row is put together: from one cell, from two, or from year, month, day and hour apart.

use dewrun_quantity::DecimalMark;

use super::heading::Heading;
use super::sniff;
use crate::column::Role;
use crate::instant::civil::{date_of, day_of};
use crate::instant::parse::{parse, time_alone};
use crate::instant::stamp::Stamp;
use crate::number::number;
use crate::text::cells::Cells;

/// Where the time of a row stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Clock {
    /// A date, with the time in it, in a cell of its own, or none.
    Cells {
        date: usize,
        time: Option<usize>,
        is_counted: bool,
    },
    /// Year, month, day or day of the year, hour, minute in cells of their own.
    Parts(Parts),
}

/// Places of the parts of a time.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Parts {
    year: usize,
    month: Option<usize>,
    day: Option<usize>,
    day_of_year: Option<usize>,
    hour: Option<usize>,
    minute: Option<usize>,
}

impl Clock {
    /// Places of cells that belong to the time.
    pub(super) fn places(&self) -> Vec<usize> {
        match self {
            Self::Cells { date, time, .. } => [Some(*date), *time].into_iter().flatten().collect(),
            Self::Parts(parts) => [
                Some(parts.year),
                parts.month,
                parts.day,
                parts.day_of_year,
                parts.hour,
                parts.minute,
            ]
            .into_iter()
            .flatten()
            .collect(),
        }
    }

    /// What the cell at a place holds of the time.
    pub(super) fn role(&self, place: usize) -> Role {
        match self {
            Self::Cells { date, .. } if *date == place => Role::Date,
            Self::Cells { .. } => Role::Time,
            Self::Parts(parts) => {
                let of = [
                    (Some(parts.year), Role::Year),
                    (parts.month, Role::Month),
                    (parts.day, Role::Day),
                    (parts.day_of_year, Role::DayOfYear),
                    (parts.hour, Role::Hour),
                ];
                of.iter()
                    .find(|(at, _)| *at == Some(place))
                    .map_or(Role::Minute, |(_, role)| *role)
            }
        }
    }

    /// The stamp of a row; none where it is no reading.
    pub(super) fn stamp(&self, cells: &Cells<'_>, mark: DecimalMark) -> Option<Stamp> {
        match self {
            Self::Cells {
                date,
                time,
                is_counted,
            } => {
                let stamp = sniff::stamp(cells.get(*date), *is_counted, mark)?;
                match time {
                    Some(time) if !stamp.has_time() => {
                        Some(stamp.with_time_of(&time_alone(cells.get(*time))?))
                    }
                    _ => Some(stamp),
                }
            }
            Self::Parts(parts) => parts.stamp(cells),
        }
    }
}

impl Parts {
    /// The parts that headings, or a person, name; none without a year and a day.
    pub(super) fn of(role_at: impl Fn(Role) -> Option<usize>) -> Option<Self> {
        let parts = Self {
            year: role_at(Role::Year)?,
            month: role_at(Role::Month),
            day: role_at(Role::Day),
            day_of_year: role_at(Role::DayOfYear),
            hour: role_at(Role::Hour),
            minute: role_at(Role::Minute),
        };
        let has_day = parts.day_of_year.is_some() || (parts.month.is_some() && parts.day.is_some());
        has_day.then_some(parts)
    }

    fn stamp(&self, cells: &Cells<'_>) -> Option<Stamp> {
        let whole = |place: usize| {
            let value = number(cells.get(place), DecimalMark::Point)?;
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "within 0 to 9999"
            )]
            let whole = (0.0..=9999.0).contains(&value).then_some(value as u16);
            whole
        };
        let optional = |place: Option<usize>| place.map_or(Some(0), whole);
        let year = whole(self.year).filter(|year| (1800..2300).contains(year))?;
        let date = match (self.day_of_year, self.month, self.day) {
            (Some(day), _, _) => {
                let day = whole(day).filter(|day| (1..=366).contains(day))?;
                date_of(day_of(year, 1, 1)? + i64::from(day) - 1)?
            }
            (None, Some(month), Some(day)) => [year, whole(month)?, whole(day)?],
            _ => return None,
        };
        day_of(date[0], date[1], date[2])?;
        let (hour, minute) = (optional(self.hour)?, optional(self.minute)?);
        // 100 to 2400 is an hour with its minutes.
        let (hour, minute) = if 24 < hour && hour % 100 < 60 {
            (hour / 100, hour % 100)
        } else {
            (hour, minute)
        };
        let seconds = i32::from(hour) * 3600 + i32::from(minute) * 60;
        (hour <= 24 && minute <= 60).then(|| Stamp::fixed(date, seconds))
    }
}

/// Where the time of rows stands whose dates hold none: in a cell that its heading names, or that has a colon.
pub(super) fn time_beside(
    sample: &[Vec<Vec<u8>>],
    date: usize,
    headings: &[Heading],
) -> Option<usize> {
    let cell = |row: &Vec<Vec<u8>>, at: usize| row.get(at).cloned().unwrap_or_default();
    let has_time =
        |row: &Vec<Vec<u8>>| parse(&cell(row, date)).is_some_and(|stamp| stamp.has_time());
    if sample.iter().any(has_time) {
        return None;
    }
    let width = sample.iter().map(Vec::len).max()?;
    let all = |at: usize, is: &dyn Fn(&[u8]) -> bool| {
        !sample.is_empty() && sample.iter().all(|row| is(&cell(row, at)))
    };
    let is_marked = |text: &[u8]| text.contains(&b':') && time_alone(text).is_some();
    let is_named = |at: usize| {
        headings
            .get(at)
            .and_then(|heading| heading.role)
            .is_some_and(|role| matches!(role, Role::Time | Role::Hour))
    };
    // Nearest to the date first.
    let mut places: Vec<usize> = (0..width).filter(|at| *at != date).collect();
    places.sort_by_key(|at| at.abs_diff(date));
    places
        .iter()
        .find(|at| all(**at, &is_marked))
        .or_else(|| {
            places
                .iter()
                .find(|at| is_named(**at) && all(**at, &|text| time_alone(text).is_some()))
        })
        .copied()
}
