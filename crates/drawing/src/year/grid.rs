//! The hours of a year as days across and hours down.

use super::map::Map;
use super::stamp::{DAY_S, HOUR_S};
use super::{Step, Year};

/// Hours of a day.
pub(super) const HOURS: usize = 24;
/// More days than these share columns.
const MOST_COLUMNS: usize = 400;

/// What an hour of a day holds.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Cell {
    /// The value that is drawn.
    pub(super) value: Option<f64>,
    pub(super) is_misty: bool,
    pub(super) is_frosty: bool,
    pub(super) is_over: bool,
    /// There is a step in it.
    pub(super) is_known: bool,
}

/// All cells, column by column.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Grid {
    /// The first day, counted from 1 January 1970.
    pub(super) first_day: i64,
    pub(super) columns: usize,
    /// Days in a column.
    pub(super) days: i64,
    cells: Vec<Cell>,
}

impl Grid {
    /// The cells of a year.
    pub(super) fn of(year: &Year, map: Map) -> Self {
        let (first_day, days) = span(year);
        let count = usize::try_from(days).unwrap_or(0).max(1);
        let shared = count.div_ceil(MOST_COLUMNS);
        let columns = count.div_ceil(shared);
        let mut grid = Self {
            first_day,
            columns,
            days: i64::try_from(shared).unwrap_or(1),
            cells: vec![Cell::default(); columns * HOURS],
        };
        for step in &year.steps {
            grid.enter(step, map);
        }
        grid
    }

    /// The cell of a column and an hour.
    pub(super) fn cell(&self, column: usize, hour: usize) -> Cell {
        let place = column * HOURS + hour;
        self.cells.get(place).copied().unwrap_or_default()
    }

    /// The column and the hour of a time; none before the first.
    pub(super) fn place(&self, seconds: i64) -> Option<(usize, usize)> {
        let days = seconds.div_euclid(DAY_S) - self.first_day;
        let column = usize::try_from(days / self.days).ok()?;
        let hour = usize::try_from(seconds.rem_euclid(DAY_S) / HOUR_S).ok()?;
        (0 <= days && column < self.columns).then_some((column, hour))
    }

    /// Enters a step in every hour that it begins in or fills; of several the worst is kept.
    fn enter(&mut self, step: &Step, map: Map) {
        let value = map.value(step);
        let mut from = step.start_s;
        loop {
            if let Some((column, hour)) = self.place(from)
                && let Some(cell) = self.cells.get_mut(column * HOURS + hour)
            {
                cell.is_known = true;
                cell.value = match (cell.value, value) {
                    (Some(one), Some(next)) => Some(one.max(next)),
                    (one, next) => one.or(next),
                };
                cell.is_misty |= step.is_misty;
                cell.is_frosty |= 0.0 < step.ice_g;
                cell.is_over |= step.is_over;
            }
            from += HOUR_S;
            if step.start_s + whole(step.seconds) <= from {
                return;
            }
        }
    }
}

/// The first day and how many there are.
fn span(year: &Year) -> (i64, i64) {
    let (Some(first), Some(last)) = (year.steps.first(), year.steps.last()) else {
        return (0, 0);
    };
    let first_day = first.start_s.div_euclid(DAY_S);
    (first_day, last.start_s.div_euclid(DAY_S) - first_day + 1)
}

/// Whole seconds of a length; a step of more than two days is no step of a year.
#[expect(
    clippy::cast_possible_truncation,
    reason = "at most two days, and the cast saturates"
)]
fn whole(seconds: f64) -> i64 {
    seconds.min(2.0 * 86_400.0) as i64
}

#[cfg(test)]
mod tests {
    use super::*;

    fn year(count: i64, step_s: i64) -> Year {
        let step = |at: i64| Step {
            start_s: 20_000 * DAY_S + at * step_s,
            seconds: 3600.0 * step_s as f64 / 3600.0,
            formed_g: at as f64,
            is_wet: 0 < at,
            ..Step::default()
        };
        Year {
            steps: (0..count).map(step).collect(),
            ..Year::default()
        }
    }

    #[test]
    fn hours_lie_in_their_day() {
        let grid = Grid::of(&year(48, HOUR_S), Map::Water);
        assert_eq!((grid.columns, grid.days), (2, 1), "two days");
        assert_eq!(grid.cell(0, 0).value, None, "a dry hour is empty");
        assert_eq!(grid.cell(1, 2).value, Some(26.0), "the 27th hour");
    }

    #[test]
    fn coarse_steps_fill_their_hours_and_fine_ones_share_one() {
        let coarse = Grid::of(&year(8, 3 * HOUR_S), Map::Water);
        assert_eq!(coarse.columns, 1, "a day");
        assert_eq!(
            [3, 4, 5].map(|hour| coarse.cell(0, hour).value),
            [Some(1.0 / 3.0); 3],
            "the second step, a gram in three hours"
        );
        let fine = Grid::of(&year(12, 600), Map::Water);
        assert_eq!(fine.cell(0, 0).value, Some(30.0), "5 g in 10 minutes");
    }

    #[test]
    fn many_years_share_columns() {
        let grid = Grid::of(&year(3653, DAY_S), Map::Water);
        assert_eq!((grid.columns, grid.days), (366, 10), "ten days a column");
    }
}
