//! Entries by the hour of the log's time that they lie in.

use crate::follows::{TURNS, is_left};
use crate::log::{DAY_S, EventKind, Log};
use crate::modelled::Hours;
use crate::shown::Reading;
use crate::weather_causes::levels;

/// An entry in its hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Placed {
    /// Its position in the log.
    pub(crate) entry: usize,
    /// The hour from the start of the log's time.
    pub(crate) hour: usize,
    /// Hour of the day on the wall.
    pub(crate) wall_hour: Option<u8>,
    /// Saturday or Sunday.
    pub(crate) weekend: bool,
    /// Only the day is known.
    pub(crate) day_only: bool,
    /// What.
    pub(crate) kind: EventKind,
    /// Water, g.
    pub(crate) grams: Option<f64>,
    /// What the panel showed of the airflow.
    pub(crate) shown: Option<Reading>,
    /// The turn that leaves it out, from 1 on; 0 of what is never left out.
    pub(crate) turn: usize,
}

#[cfg(test)]
impl Placed {
    /// Low airflow in the first hour.
    pub(crate) const EMPTY: Self = Self {
        entry: 0,
        hour: 0,
        wall_hour: Some(0),
        weekend: false,
        day_only: false,
        kind: EventKind::AirflowLow,
        grams: None,
        shown: None,
        turn: 0,
    };
}

/// All entries that lie within the hours.
pub(crate) fn placed(log: &Log, hours: &Hours) -> Vec<Placed> {
    let each = log.entries().iter().enumerate();
    each.filter_map(|(at, entry)| {
        Some(Placed {
            entry: at,
            hour: hours.place(entry.at_s)?,
            wall_hour: entry.wall_hour,
            weekend: is_weekend(entry.at_s),
            day_only: entry.is_day_only(),
            kind: entry.kind,
            grams: entry.grams,
            shown: (entry.shown_percent())
                .and_then(|percent| Reading::of(entry.kind, percent / 100.0)),
            turn: 0,
        })
    })
    .collect()
}

/// The same, of which each turn leaves out as many troubles as another.
pub(crate) fn in_turns(mut placed: Vec<Placed>) -> Vec<Placed> {
    let troubles = placed.iter_mut().filter(|one| one.kind.trouble().is_some());
    for (number, one) in troubles.enumerate() {
        one.turn = 1 + number % TURNS;
    }
    placed
}

impl Placed {
    /// Whether a turn leaves it in; turn 0 leaves all.
    pub(crate) const fn is_left(&self, turn: usize) -> bool {
        is_left(self.turn, turn)
    }
}

impl Hours {
    /// Water that came since somebody last let it out, hour by hour, g: where the log says that water was found or let out, it is gone after that hour.
    #[must_use]
    pub fn levels_g(&self, log: &Log) -> Vec<f64> {
        levels(&self.water_g, &placed(log, self))
    }
}

/// 1 January 1970 was a Thursday, the third day after Monday.
const fn is_weekend(at_s: i64) -> bool {
    5 <= (at_s.div_euclid(DAY_S) + 3).rem_euclid(7)
}
