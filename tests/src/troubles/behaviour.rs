//! How each cause makes trouble in the hours of a year, and what people do about it.

use dewrun_numeric::elementary::ln;

use super::{Kind, TrueCause, Truth};
use crate::routes::Draw;

/// Hours of a day.
const DAY: f64 = 24.0;
/// What a sampled flow must differ by before anybody can see it.
const SEEN: f64 = 0.04;

/// Something that happened.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Happening {
    /// When, h from the start of the year.
    pub at_h: f64,
    /// What.
    pub kind: Kind,
    /// Water found, g.
    pub grams: Option<f64>,
    /// What the panel would show of the airflow, as a part of that as fitted.
    pub shown: Option<f64>,
}

/// What a cause does in the hours `from..until` of a year, in order of time; nothing where it can't make trouble at this site.
#[must_use]
pub fn happenings(
    truth: &Truth,
    cause: TrueCause,
    (from, until): (usize, usize),
    draw: &mut Draw,
) -> Vec<Happening> {
    let until = until.min(truth.start_s.len());
    let mut year = Year {
        truth,
        from,
        until,
        // Drawn apart: what happens is the same, whether somebody reads the panel or not.
        shows: Draw::new(draw.clone().bits() ^ 0x5ead_1465),
        draw,
        found: Vec::new(),
    };
    match cause {
        TrueCause::LowPoint => year.low_point(),
        TrueCause::Mist => year.mist(),
        TrueCause::Frost => year.frost(),
        TrueCause::FilterLoads => year.loads(true),
        TrueCause::FilterMissing => year.filter_missing(),
        TrueCause::Parted => year.parted(),
        TrueCause::TrapDry => year.trap_dry(),
        TrueCause::HolesFouled => year.loads(false),
        TrueCause::DuctSwitches => year.switches(),
        TrueCause::FanWeak => year.fan_weak(),
        TrueCause::Limits => year.limits(),
        TrueCause::Nothing => year.nothing(),
    }
    let mut found = year.found;
    found.sort_by(|one, other| one.at_h.total_cmp(&other.at_h));
    found
}

/// What water or ice leaves of the airflow.
#[derive(Debug, Clone, Copy)]
struct Narrows {
    /// What is left as it trips.
    limit: f64,
    bend: f64,
}

impl Narrows {
    /// Of so much, as a part of that which trips it.
    fn leaves(self, filled: f64) -> f64 {
        let lost = (1.0 - self.limit) * dewrun_numeric::elementary::pow(filled, self.bend);
        1.0 - lost.min(1.0)
    }
}

struct Year<'a> {
    truth: &'a Truth,
    from: usize,
    until: usize,
    draw: &'a mut Draw,
    shows: Draw,
    found: Vec<Happening>,
}

fn hours(at: usize) -> f64 {
    f64::from(u32::try_from(at).unwrap_or(u32::MAX))
}

/// What a reading that is off looks like.
const fn which_way(reading: f64) -> Kind {
    if 1.0 < reading {
        Kind::FlowHigh
    } else {
        Kind::FlowLow
    }
}

/// What a panel may show where it has nothing to do with any cause: anything beyond the usual limits.
pub(super) fn any_reading(kind: Kind, draw: &mut Draw) -> f64 {
    if kind == Kind::FlowHigh {
        draw.between(1.03, 1.7)
    } else {
        draw.between(0.3, 0.97)
    }
}

impl Year<'_> {
    fn at(&mut self, at_h: f64, kind: Kind) {
        self.take(at_h, kind, None, None);
    }

    fn with_grams(&mut self, at_h: f64, kind: Kind, grams: Option<f64>) {
        self.take(at_h, kind, grams, None);
    }

    fn showing(&mut self, at_h: f64, kind: Kind, shown: f64) {
        self.take(at_h, kind, None, Some(shown));
    }

    fn take(&mut self, at_h: f64, kind: Kind, grams: Option<f64>, shown: Option<f64>) {
        if hours(self.from) <= at_h && at_h < hours(self.until) {
            self.found.push(Happening {
                at_h,
                kind,
                grams,
                shown,
            });
        }
    }

    /// The reading of the sound line.
    fn sound(&self, hour: usize) -> f64 {
        self.truth.reading.get(hour).copied().unwrap_or(1.0)
    }

    /// A wait of this mean, h.
    fn wait(&mut self, mean_h: f64) -> f64 {
        -mean_h * ln(1.0 - 0.999_999 * self.draw.unit())
    }

    /// A pool grows until the airflow trips or the air throws slugs; somebody comes, and most times empties it.
    fn low_point(&mut self) {
        let Some(full_g) = self.truth.full_g else {
            return;
        };
        let trips_g = full_g * self.draw.between(0.15, 0.9);
        let (patience_h, empties) = (self.draw.between(12.0, 90.0), self.draw.between(0.6, 1.0));
        let dries_g_h = full_g * self.draw.between(0.0, 2e-4);
        let narrows = self.narrows();
        let mut pool_g = 0.0;
        let mut comes_h = f64::INFINITY;
        // Water was there before the log began.
        for hour in self.from.saturating_sub(1000)..self.until {
            let runs_g = self.truth.runs_down_g.get(hour).copied().unwrap_or(0.0);
            let before_g = pool_g;
            pool_g = (pool_g + runs_g - dries_g_h).max(0.0);
            let now_h = hours(hour) + self.draw.unit();
            if before_g < trips_g && trips_g <= pool_g {
                let shown = self.over_pool(hour, (pool_g, trips_g), narrows);
                self.showing(now_h, Kind::FlowLow, shown);
                comes_h = now_h + 2.0 + self.wait(patience_h);
            }
            if comes_h <= hours(hour) {
                comes_h = f64::INFINITY;
                if self.draw.chance(empties) {
                    self.emptied(now_h, pool_g);
                    pool_g = 0.0;
                } else {
                    // Reset and left as it was: it comes back.
                    let again_h = self.wait(3.0 * DAY);
                    let shown = self.over_pool(hour, (pool_g, trips_g), narrows);
                    self.showing(now_h + again_h, Kind::FlowLow, shown);
                    comes_h = now_h + again_h + self.wait(patience_h);
                }
            }
        }
    }

    /// What narrows the bore trips at this limit of the panel, and beyond it the airflow falls by so steep a law.
    fn narrows(&mut self) -> Narrows {
        Narrows {
            limit: self.shows.between(0.75, 0.93),
            bend: self.shows.between(0.6, 2.0),
        }
    }

    /// What is left of the airflow as somebody looks at the panel, over so much water, where so much trips it: by then more has run down.
    fn over_pool(&mut self, hour: usize, (pool_g, trips_g): (f64, f64), narrows: Narrows) -> f64 {
        let later = hour + 1 + self.shows.below(10);
        let runs_g: f64 = (hour + 1..later)
            .filter_map(|hour| self.truth.runs_down_g.get(hour))
            .sum();
        self.sound(hour) * narrows.leaves((pool_g + runs_g) / trips_g)
    }

    fn emptied(&mut self, now_h: f64, pool_g: f64) {
        let seen_g = pool_g * self.draw.between(0.75, 1.1);
        match self.draw.below(4) {
            0 => self.at(now_h, Kind::Emptied),
            1 => self.at(now_h, Kind::Water),
            2 => self.with_grams(now_h, Kind::Water, Some(seen_g)),
            _ => self.with_grams(now_h, Kind::Emptied, Some(seen_g)),
        }
    }

    /// The more mist or damp around the sensor, the sooner an alarm; then the panel stays in alarm for some hours.
    fn mist(&mut self) {
        let often = self.draw.between(0.03, 0.3);
        let half = self.draw.between(2e-5, 3e-4);
        let from_humidity = self.draw.between(0.9, 0.96);
        let mut deaf_until_h = 0.0;
        for hour in self.from..self.until {
            let of = |values: &[f64]| values.get(hour).copied().unwrap_or(0.0);
            let (mist, humidity) = (of(&self.truth.mist), of(&self.truth.chamber));
            let damp = ((humidity - from_humidity) / (1.0 - from_humidity)).clamp(0.0, 1.0);
            let chance = often * (mist / (mist + half)).max(damp * damp);
            let now_h = hours(hour) + self.draw.unit();
            if deaf_until_h <= now_h && self.draw.chance(chance) {
                self.at(now_h, Kind::Alarm);
                deaf_until_h = now_h + self.wait(6.0);
            }
        }
    }

    /// Frost narrows the bore; what thaws comes down at once.
    fn frost(&mut self) {
        let most_g = (self.from..self.until)
            .filter_map(|hour| self.truth.frost_g.get(hour).copied())
            .fold(0.0, f64::max);
        if most_g < 0.5 {
            return;
        }
        let trips_g = most_g * self.draw.between(0.1, 0.6);
        let at_thaw = self.draw.between(0.2, 0.8);
        let narrows = self.narrows();
        let (mut was_low, mut was_thaw) = (false, false);
        for hour in self.from..self.until {
            let frost_g = self.truth.frost_g.get(hour).copied().unwrap_or(0.0);
            let is_low = trips_g <= frost_g;
            let now_h = hours(hour) + self.draw.unit();
            if is_low && (!was_low || self.draw.chance(0.02)) {
                let shown = self.sound(hour) * narrows.leaves(frost_g / trips_g);
                self.showing(now_h, Kind::FlowLow, shown);
            }
            let is_thaw = 0.05 * most_g < self.truth.slug_g.get(hour).copied().unwrap_or(0.0);
            if is_thaw && !was_thaw && self.draw.chance(at_thaw) {
                let kind = [Kind::Alarm, Kind::FlowLow, Kind::Water][self.draw.below(3)];
                let later_h = self.wait(3.0);
                // Slush stands anywhere in the bore.
                let shown = self.shows.between(0.0, 0.9);
                self.showing(now_h + later_h, kind, shown);
            }
            (was_low, was_thaw) = (is_low, is_thaw);
        }
    }

    /// Dust narrows the filter, or the holes: the airflow falls until it trips, again and again until what is loaded is cleaned. Of the holes nobody thinks first.
    fn loads(&mut self, is_filter: bool) {
        let a_year = self.draw.between(0.25, 0.9);
        let bend = self.draw.between(0.8, 1.4);
        // A limit that a clean line does not trip.
        let usual = self.truth.reading.iter().copied().fold(1.0, f64::min);
        let limit = usual * self.draw.between(0.75, 0.92);
        let sways = self.draw.between(0.005, 0.02);
        let (soon, late) = if is_filter {
            (4.0, 30.0)
        } else {
            (40.0, 120.0)
        };
        let patience_h = self.draw.between(soon, late) * DAY;
        let resets_h = self.draw.between(1.0, 5.0) * DAY;
        let mut cleaned_h = hours(self.from) - self.draw.between(0.0, 300.0) * DAY;
        let (mut quiet_until_h, mut cleans_h) = (0.0, f64::INFINITY);
        for hour in self.from..self.until {
            let now_h = hours(hour) + self.draw.unit();
            let years = (now_h - cleaned_h) / (365.0 * DAY);
            let lost = a_year * dewrun_numeric::elementary::pow(years.max(0.0), bend);
            let base = self.truth.reading.get(hour).copied().unwrap_or(1.0);
            let reading = base * (1.0 - lost) + sways * self.draw.between(-1.0, 1.0);
            if reading < limit && quiet_until_h <= now_h {
                self.showing(now_h, Kind::FlowLow, reading);
                quiet_until_h = now_h + 1.0 + self.wait(resets_h);
                if cleans_h.is_infinite() {
                    cleans_h = now_h + self.wait(patience_h);
                }
                if !is_filter && self.draw.chance(0.12) {
                    let tried_h = now_h + self.draw.between(2.0, 60.0);
                    self.at(tried_h, Kind::Filter);
                }
            }
            if cleans_h <= now_h {
                let kind = if is_filter { Kind::Filter } else { Kind::Other };
                self.at(now_h, kind);
                (cleaned_h, cleans_h) = (now_h, f64::INFINITY);
            }
        }
    }

    /// From a day on the reading is off, and the panel says so again after every reset, until somebody mends it.
    fn lasting(&mut self, reading: f64, (begins_h, ends_h): (f64, f64), mean_h: f64) {
        if (reading - 1.0).abs() < SEEN {
            return;
        }
        let limit = 1.0 + (reading - 1.0) * self.draw.between(0.3, 0.9);
        let mut quiet_until_h = begins_h;
        for hour in self.from..self.until {
            let now_h = hours(hour) + self.draw.unit();
            if now_h < begins_h || ends_h <= now_h || now_h < quiet_until_h {
                continue;
            }
            let base = self.truth.reading.get(hour).copied().unwrap_or(1.0);
            let now = base * reading + 0.01 * self.draw.between(-1.0, 1.0);
            if (1.0 < reading && limit < now) || (reading < 1.0 && now < limit) {
                self.showing(now_h, which_way(reading), now);
                quiet_until_h = now_h + 1.0 + self.wait(mean_h);
            }
        }
    }

    fn begins(&mut self) -> f64 {
        hours(self.from) + (hours(self.until) - hours(self.from)) * self.draw.between(0.0, 0.5)
    }

    fn filter_missing(&mut self) {
        let modelled = self.truth.no_filter.unwrap_or(1.2);
        let reading = 1.0 + (modelled - 1.0) * self.draw.between(0.5, 1.0);
        let begins_h = self.begins();
        let ends_h = begins_h + self.draw.between(30.0, 250.0) * DAY;
        self.at(begins_h, Kind::Filter);
        self.at(ends_h, Kind::Filter);
        let mean_h = self.draw.between(3.0, 12.0) * DAY;
        self.lasting(reading, (begins_h, ends_h), mean_h);
    }

    fn parted(&mut self) {
        let far: Vec<f64> = self
            .truth
            .parted
            .iter()
            .copied()
            .filter(|one| SEEN < (one - 1.0).abs())
            .collect();
        if far.is_empty() {
            return;
        }
        let reading = far[self.draw.below(far.len())];
        let begins_h = self.begins();
        let ends_h = begins_h + self.draw.between(40.0, 400.0) * DAY;
        self.at(ends_h, Kind::Other);
        let mean_h = self.draw.between(3.0, 12.0) * DAY;
        if self.draw.chance(0.3) {
            let tried_h = begins_h + self.wait(20.0 * DAY);
            let tried = [Kind::Filter, Kind::Replaced][self.draw.below(2)];
            self.at(tried_h, tried);
        }
        self.lasting(reading, (begins_h, ends_h), mean_h);
    }

    /// The seal dries while nothing runs down, and is there again with the next water.
    fn trap_dry(&mut self) {
        let Some(reading) = self.truth.dry.filter(|one| SEEN < (one - 1.0).abs()) else {
            return;
        };
        let (lasts_h, wets_g) = (
            self.draw.between(10.0, 50.0) * DAY,
            self.draw.between(5.0, 40.0),
        );
        let again_h = self.draw.between(2.0, 8.0) * DAY;
        let (mut dry_h, mut lately_g, mut quiet_until_h) = (0.0, 0.0, 0.0);
        for hour in self.from..self.until {
            let now_h = hours(hour) + self.draw.unit();
            lately_g = 0.98 * lately_g + self.truth.runs_down_g.get(hour).copied().unwrap_or(0.0);
            dry_h = if wets_g < lately_g { 0.0 } else { dry_h + 1.0 };
            if lasts_h < dry_h && quiet_until_h <= now_h {
                let shown = self.sound(hour) * reading;
                self.showing(now_h, which_way(reading), shown);
                quiet_until_h = now_h + 1.0 + self.wait(again_h);
                if self.draw.chance(0.1) {
                    // Filled by hand.
                    let filled_h = now_h + self.draw.between(5.0, 90.0);
                    self.at(filled_h, Kind::Other);
                    (dry_h, quiet_until_h) = (0.0, filled_h);
                }
            }
        }
    }

    /// At the same hours of working days.
    fn switches(&mut self) {
        let on_h = 4.0 + hours(self.draw.below(6));
        let off_h = 16.0 + hours(self.draw.below(7));
        let (at_on, at_off) = (self.draw.between(0.01, 0.12), self.draw.between(0.0, 0.12));
        let rises = self.draw.chance(0.5);
        // A jump up and one down, each the same on every day.
        let (up, down) = (
            1.0 + self.shows.between(0.08, 0.6),
            1.0 - self.shows.between(0.08, 0.6),
        );
        for hour in self.from..self.until {
            let Some(start_s) = self.truth.start_s.get(hour) else {
                continue;
            };
            let day = start_s.div_euclid(86_400);
            // 1 January 1970 was a Thursday.
            let is_weekend = 5 <= (day + 3).rem_euclid(7);
            let of_day = start_s.rem_euclid(86_400) as f64 / 3600.0;
            let late_h = self.draw.between(0.0, 0.4);
            if is_weekend {
                continue;
            }
            if of_day == on_h && self.draw.chance(at_on) {
                let (kind, jump) = if rises {
                    (Kind::FlowHigh, up)
                } else {
                    (Kind::FlowLow, down)
                };
                let shown = self.sound(hour) * jump;
                self.showing(hours(hour) + late_h, kind, shown);
            }
            if of_day == off_h && self.draw.chance(at_off) {
                let (kind, jump) = if rises {
                    (Kind::FlowLow, down)
                } else {
                    (Kind::FlowHigh, up)
                };
                let shown = self.sound(hour) * jump;
                self.showing(hours(hour) + late_h, kind, shown);
            }
        }
    }

    /// The fan loses speed, at once or in weeks; other filters do not help, another detector does.
    fn fan_weak(&mut self) {
        let modelled = self.truth.weak.unwrap_or(0.8);
        let reading = 1.0 + (modelled - 1.0) * self.draw.between(0.6, 1.3);
        let begins_h = self.begins();
        let ends_h = begins_h + self.draw.between(30.0, 300.0) * DAY;
        let mean_h = self.draw.between(1.0, 7.0) * DAY;
        self.at(ends_h, Kind::Replaced);
        if self.draw.chance(0.6) {
            let tried_h = begins_h + self.wait(15.0 * DAY);
            self.at(tried_h, Kind::Filter);
        }
        self.lasting(reading, (begins_h, ends_h), mean_h);
    }

    /// Limits that even the usual sway of the reading leaves.
    fn limits(&mut self) {
        let in_log = self.truth.reading.get(self.from..self.until);
        let mut usual = in_log.unwrap_or_default().to_vec();
        usual.sort_by(f64::total_cmp);
        let (low_share, high_share) = (
            self.draw.between(0.005, 0.06),
            self.draw.between(0.94, 0.995),
        );
        let below = |share: f64| {
            let mut ranked = usual.iter().enumerate();
            let found = ranked.find(|(at, _)| share * hours(usual.len()) <= hours(*at));
            found.map(|(_, reading)| *reading)
        };
        let (Some(low), Some(high)) = (below(low_share), below(high_share)) else {
            return;
        };
        if high - low < 0.01 {
            return;
        }
        let (trips_low, trips_high) = (self.draw.chance(0.7), self.draw.chance(0.7));
        let seen = self.draw.between(0.1, 0.5);
        let mut quiet_until_h = 0.0;
        for hour in self.from..self.until {
            let now_h = hours(hour) + self.draw.unit();
            let reading = self.truth.reading.get(hour).copied().unwrap_or(1.0)
                + 0.002 * self.draw.between(-1.0, 1.0);
            let is_out = (trips_low && reading < low) || (trips_high && high < reading);
            if is_out && quiet_until_h <= now_h && self.draw.chance(seen) {
                let kind = if reading < low {
                    Kind::FlowLow
                } else {
                    Kind::FlowHigh
                };
                self.showing(now_h, kind, reading);
                quiet_until_h = now_h + self.wait(30.0);
            }
        }
    }

    fn nothing(&mut self) {
        let mean_h = self.draw.between(5.0, 30.0) * DAY;
        let mut now_h = hours(self.from);
        loop {
            now_h += self.wait(mean_h);
            if hours(self.until) <= now_h {
                return;
            }
            let kind = [
                Kind::FlowLow,
                Kind::FlowHigh,
                Kind::Alarm,
                Kind::Alarm,
                Kind::Other,
            ][self.draw.below(5)];
            let shown = any_reading(kind, &mut self.shows);
            self.showing(now_h, kind, shown);
        }
    }
}
