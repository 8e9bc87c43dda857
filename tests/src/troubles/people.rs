//! What people write down: not all of it, not at the minute, and much that has nothing to do with the cause.

use super::behaviour::{Happening, any_reading, happenings};
use super::{Entry, Kind, TrueCause, Truth};
use crate::routes::Draw;

/// Hours of a day.
const DAY: usize = 24;
/// What happened is left out of the log so often.
const MISSING: f64 = 0.3;
/// Entries for each happening that is written down, that have nothing to do with the cause: three of ten of the log.
const NOISE: f64 = 0.3 / 0.7;
/// Of airflow troubles so many are written down with what the panel showed.
const SHOWN: f64 = 0.5;
/// Nobody's log is longer.
const MOST: usize = 40;

/// A log of which the true cause is known.
#[derive(Debug, Clone)]
pub struct Log {
    /// In order of time.
    pub entries: Vec<Entry>,
    /// Troubles of the true cause among them: airflow, alarms and water, not what people did.
    pub of_cause: usize,
    /// First and last hour of the year that it speaks of.
    pub period: (usize, usize),
}

impl Log {
    /// Entries that are troubles, whatever caused them.
    #[must_use]
    pub fn troubles(&self) -> usize {
        self.entries
            .iter()
            .filter(|entry| is_trouble(entry.kind))
            .count()
    }
}

const fn is_trouble(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::FlowLow | Kind::FlowHigh | Kind::Alarm | Kind::Water
    )
}

/// What is written down of a cause at a site, over four months to a year.
#[expect(clippy::cast_precision_loss, reason = "far below 2^52 entries")]
#[must_use]
pub fn log_of(truth: &Truth, cause: TrueCause, seed: u64) -> Log {
    let mut draw = Draw::new(seed ^ 0x0010_6000);
    // Readings are drawn apart: all else is the same without them.
    let mut reads = Draw::new(seed ^ 0x5ead_0000);
    let count = truth.start_s.len();
    let length = (120 + draw.below(246)) * DAY;
    let from = draw.below(count.saturating_sub(length).max(1));
    let whole = (from, (from + length).min(count));
    let mut found = happenings(truth, cause, whole, &mut draw);
    found.retain(|_| !draw.chance(MISSING));
    // A log that is full speaks of no later time.
    let full_at = found.get(MOST).map(|next| next.at_h);
    found.truncate(MOST);
    let period = full_at.map_or(whole, |next_h| (whole.0, hour_after(next_h).min(whole.1)));
    let of_cause = found.iter().filter(|one| is_trouble(one.kind)).count();
    let kept = found.len();
    while ((found.len() - kept) as f64) < NOISE * kept as f64 {
        let mut noise = noise_in(period, &mut draw);
        noise.shown = Some(any_reading(noise.kind, &mut reads));
        found.push(noise);
    }
    found.sort_by(|one, other| one.at_h.total_cmp(&other.at_h));
    let entries = found
        .iter()
        .filter_map(|one| written(truth, one, (&mut draw, &mut reads)));
    let mut entries: Vec<Entry> = entries.collect();
    entries.sort_by_key(|entry| entry.at_s);
    Log {
        entries,
        of_cause,
        period,
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "an hour of a year"
)]
const fn hour_after(at_h: f64) -> usize {
    at_h as usize + 1
}

#[expect(clippy::cast_precision_loss, reason = "far below 2^52 hours")]
fn noise_in((from, until): (usize, usize), draw: &mut Draw) -> Happening {
    let kinds = [
        Kind::FlowLow,
        Kind::FlowLow,
        Kind::FlowHigh,
        Kind::Alarm,
        Kind::Alarm,
        Kind::Other,
        Kind::Other,
        Kind::Filter,
    ];
    Happening {
        at_h: draw.between(from as f64, until as f64),
        kind: kinds[draw.below(kinds.len())],
        grams: None,
        shown: None,
    }
}

/// Some look at the clock, some at the calendar.
#[expect(clippy::cast_possible_truncation, reason = "a year of seconds")]
fn written(truth: &Truth, one: &Happening, (draw, reads): (&mut Draw, &mut Draw)) -> Option<Entry> {
    let start_s = *truth.start_s.first()?;
    let late_h = if draw.chance(0.3) {
        draw.between(-0.5, 3.0)
    } else {
        draw.between(-0.1, 0.2)
    };
    let at_s = start_s + truth.clock_off_s + ((one.at_h + late_h) * 3600.0).round() as i64;
    let day_only = draw.chance(0.15);
    Some(Entry {
        at_s: if day_only {
            at_s.div_euclid(86_400) * 86_400
        } else {
            at_s
        },
        day_only,
        kind: one.kind,
        grams: one.grams,
        percent: percent(truth, one, reads),
    })
}

/// What somebody read off the panel, to the whole percent.
fn percent(truth: &Truth, one: &Happening, draw: &mut Draw) -> Option<f64> {
    let off = draw.between(-truth.shows_within, truth.shows_within);
    let is_written = draw.chance(SHOWN) && matches!(one.kind, Kind::FlowLow | Kind::FlowHigh);
    let shown = one.shown.filter(|_| is_written)?;
    Some((100.0 * shown * truth.shows * (1.0 + off)).round().max(0.0))
}
