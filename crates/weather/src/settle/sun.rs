//! Whether the clock of the stamps is the one that the file names: the sun stands highest at noon.

use dewrun_quantity::DecimalMark;
use dewrun_quantity::format::fixed;

use crate::instant::civil::DAY_S;
use crate::note::{Note, Topic};
use crate::place::Place;
use crate::series::Series;

/// Fewer days of sun than this may be lopsided by clouds, h.
const LEAST_HOURS: f64 = 90.0 * 24.0;
/// Clouds of the afternoon move the middle of the sun by less, h.
const CLOUDS_H: f64 = 0.6;

/// A note where the middle of the sun, over all days, is far from noon on the clock that the file names.
pub(super) fn check(series: &Series, place: &Place) -> Option<Note> {
    let (longitude, offset_h) = (place.longitude_deg?, series.timing.utc_offset_h?);
    let sun = series.global_w_m2.as_ref()?;
    if series.covered_hours() < LEAST_HOURS || DAY_S / 8 < series.timing.step_s {
        return None;
    }
    let (mut weighted, mut all) = (0.0, 0.0);
    for (start, global) in series.start_s.iter().zip(sun) {
        if 0.0 < *global {
            let middle = start.rem_euclid(DAY_S) + series.timing.step_s / 2;
            #[allow(clippy::cast_precision_loss, reason = "seconds of a day")]
            let seconds = middle as f64;
            // Hours from noon on the sun's own clock, so that no day is cut in two.
            let hours = seconds / 3600.0 - 12.0 + longitude / 15.0 - offset_h;
            let hours = hours - 24.0 * (hours / 24.0).round();
            weighted += global * hours;
            all += global;
        }
    }
    let off_h = weighted / all;
    if off_h.is_nan() || off_h.abs() < CLOUDS_H {
        return None;
    }
    let likely = (offset_h + off_h).round();
    let hours = |value: f64| {
        let sign = if value < 0.0 { "" } else { "+" };
        format!("{sign}{}", fixed(value, 1, DecimalMark::Point))
    };
    Some(Note::of_file(
        Topic::Time,
        format!(
            "the sun stands highest {} h from noon if stamps are UTC{}: they look like UTC{}; they are left as they are, say so if that matters",
            hours(off_h),
            hours(offset_h),
            hours(likely)
        ),
    ))
}
