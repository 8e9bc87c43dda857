//! The hours of a member, kept small: what troubles are told by.

use dewrun_run::WET_SENSOR_MIST;
use dewrun_season::YearOutcome;
use dewrun_season::told::{HourSum, WaterHour, chamber_humidity, is_wet};

/// Ten thousandths: readings, depths and humidities are kept to so much.
const FINE: f64 = 1e4;
/// Mist is kept to half a thousandth of a gram per kg: a twentieth of what wets a sensor.
const MIST: f64 = 2e6;
/// Bytes of an hour.
const BYTES: usize = size_of::<HourTold>();
/// Bytes that the hours of a whole ensemble may take; with more, hours that follow each other are kept as one.
const MOST_BYTES: usize = 68 << 20;

/// What was so in an hour, or in one of several that are kept as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct StateFlags(u16);

impl StateFlags {
    /// More than 0.01 g/h deposits.
    pub const WET: Self = Self(1);
    /// Mist reaches the sensor.
    pub const MIST: Self = Self(1 << 1);
    /// Ice lies on a wall.
    pub const FROST: Self = Self(1 << 2);
    /// The chamber is more humid than its rating.
    pub const HUMID: Self = Self(1 << 3);
    /// The air throws slugs.
    pub const SLUGS: Self = Self(1 << 4);
    /// A low point is closed by water.
    pub const SEALED: Self = Self(1 << 5);
    /// Frost closes a bore, or ice does in a pool.
    pub const ICED: Self = Self(1 << 6);
    /// Standing water is ice.
    pub const FROZEN: Self = Self(1 << 7);
    /// The air runs backwards.
    pub const REVERSED: Self = Self(1 << 8);
    /// The reading lies under the low limit.
    pub const LOW: Self = Self(1 << 9);
    /// The reading lies over the high limit.
    pub const HIGH: Self = Self(1 << 10);
    /// The detector does not sample its duct.
    pub const BLIND: Self = Self(1 << 11);
    /// A trap is full.
    pub const TRAP_FULL: Self = Self(1 << 12);
    /// A seal has dried out or a trap has cracked.
    pub const TRAP_LEAKS: Self = Self(1 << 13);
    /// Somebody came and emptied the traps.
    pub const VISIT: Self = Self(1 << 14);
    /// Ice came down as water.
    pub const THAW: Self = Self(1 << 15);

    /// Whether all of the other's are so.
    #[must_use]
    pub const fn has(self, other: Self) -> bool {
        self.0 & other.0 == other.0
    }

    /// With the other's.
    #[must_use]
    pub const fn with(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    fn when(self, holds: bool) -> Self {
        if holds { self } else { Self::default() }
    }
}

/// An hour of a member, or several that are kept as one: 20 bytes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HourTold {
    condensed_g: f32,
    mist: u16,
    humidity: u16,
    low: u16,
    high: u16,
    deepest: u16,
    drained: u16,
    frost: u16,
    /// What was so.
    pub states: StateFlags,
}

/// The hours of a member.
#[derive(Debug, Clone, PartialEq)]
pub struct Kept {
    /// So many rows of the weather are kept as one.
    pub rows_each: usize,
    /// One after the other.
    pub hours: Vec<HourTold>,
}

impl HourTold {
    /// What deposited, g.
    #[must_use]
    pub fn condensed_g(&self) -> f64 {
        f64::from(self.condensed_g)
    }

    /// What ran down from the walls, g, within half a percent.
    #[must_use]
    pub fn drained_g(&self) -> f64 {
        grams(self.drained)
    }

    /// Frost that lies on the walls, g, within half a percent.
    #[must_use]
    pub fn frost_g(&self) -> f64 {
        grams(self.frost)
    }

    /// Most mist at the sensor, kg per kg of dry air.
    #[must_use]
    pub fn mist_kg_kg(&self) -> f64 {
        f64::from(self.mist) / MIST
    }

    /// Most humid air around the sensor, 0 to 1.
    #[must_use]
    pub fn humidity(&self) -> f64 {
        f64::from(self.humidity) / FINE
    }

    /// Lowest and highest reading of the airflow sensor, as parts of that as fitted.
    #[must_use]
    pub fn reading(&self) -> [f64; 2] {
        [self.low, self.high].map(|part| f64::from(part) / FINE)
    }

    /// Deepest pool, as a share of its bore.
    #[must_use]
    pub fn deepest(&self) -> f64 {
        f64::from(self.deepest) / FINE
    }

    #[expect(
        clippy::cast_possible_truncation,
        reason = "single precision is what is kept"
    )]
    fn of(hour: &HourSum, water: Option<&WaterHour>, humidity: f64, rating: Option<f64>) -> Self {
        let is_humid = rating.is_some_and(|rating| rating < humidity);
        let states = [
            StateFlags::WET.when(is_wet(hour)),
            StateFlags::MIST.when(WET_SENSOR_MIST < hour.chamber.mist),
            StateFlags::FROST.when(0.0 < hour.frost_kg),
            StateFlags::HUMID.when(is_humid),
            StateFlags::THAW.when(0.0 < hour.slug_kg),
            water.map_or(StateFlags::default(), of_water),
        ];
        let reading = fine(water.map_or(1.0, |water| water.reading));
        Self {
            condensed_g: (1e3 * hour.condensed_kg) as f32,
            mist: whole(MIST * hour.chamber.mist),
            humidity: fine(humidity),
            low: reading,
            high: reading,
            deepest: fine(water.map_or(0.0, |water| water.deepest)),
            drained: of_grams(1e3 * hour.drained_kg),
            frost: of_grams(1e3 * hour.frost_kg),
            states: states
                .into_iter()
                .fold(StateFlags::default(), StateFlags::with),
        }
    }

    fn and(self, next: &Self) -> Self {
        Self {
            condensed_g: self.condensed_g + next.condensed_g,
            mist: self.mist.max(next.mist),
            humidity: self.humidity.max(next.humidity),
            low: self.low.min(next.low),
            high: self.high.max(next.high),
            deepest: self.deepest.max(next.deepest),
            drained: of_grams(self.drained_g() + next.drained_g()),
            frost: self.frost.max(next.frost),
            states: self.states.with(next.states),
        }
    }
}

fn of_water(hour: &WaterHour) -> StateFlags {
    let states = &hour.states;
    [
        (states.slugs, StateFlags::SLUGS),
        (states.sealed, StateFlags::SEALED),
        (states.iced, StateFlags::ICED),
        (states.frozen, StateFlags::FROZEN),
        (states.reversed, StateFlags::REVERSED),
        (states.low, StateFlags::LOW),
        (states.high, StateFlags::HIGH),
        (states.blind, StateFlags::BLIND),
        (states.trap_full, StateFlags::TRAP_FULL),
        (states.trap_leaks, StateFlags::TRAP_LEAKS),
        (hour.went.let_out_kg, StateFlags::VISIT),
    ]
    .into_iter()
    .fold(StateFlags::default(), |all, (part, flag)| {
        all.with(flag.when(0.0 < part))
    })
}

/// Ten thousandths, from none to six and a half.
fn fine(part: f64) -> u16 {
    whole(FINE * part)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "bounded before"
)]
fn whole(number: f64) -> u16 {
    number.round().max(0.0).min(f64::from(u16::MAX)) as u16
}

/// Grams as the upper half of their single precision: two to three figures, and their order is that of the grams.
#[expect(
    clippy::cast_possible_truncation,
    reason = "single precision is more than is kept"
)]
fn of_grams(grams: f64) -> u16 {
    let bits = (grams.max(0.0) as f32).to_bits();
    u16::try_from(bits.saturating_add(1 << 15) >> 16).unwrap_or(u16::MAX)
}

fn grams(kept: u16) -> f64 {
    f64::from(f32::from_bits(u32::from(kept) << 16))
}

impl Kept {
    /// How many rows are kept as one, so that so many members of so many rows take no more than 71 MB.
    #[must_use]
    pub fn rows_each(rows: usize, members: usize) -> usize {
        let all = rows.saturating_mul(members).saturating_mul(BYTES);
        all.div_ceil(MOST_BYTES).max(1)
    }

    /// The hours as bytes, to be carried; for [`Kept::carried`].
    #[must_use]
    pub fn as_bytes(&self) -> Vec<u8> {
        let mut bytes = Vec::with_capacity(self.hours.len() * BYTES);
        for hour in &self.hours {
            bytes.extend(hour.condensed_g.to_le_bytes());
            let others = [
                hour.mist,
                hour.humidity,
                hour.low,
                hour.high,
                hour.deepest,
                hour.drained,
                hour.frost,
                hour.states.0,
            ];
            bytes.extend(others.iter().flat_map(|other| other.to_le_bytes()));
        }
        bytes
    }

    /// Hours that were carried as bytes, so many rows of the weather as one; none where they are no whole number of hours.
    ///
    /// ```
    /// use dewrun_ensemble::Kept;
    /// let none = Kept { rows_each: 2, hours: Vec::new() };
    /// assert_eq!(Kept::carried(2, &none.as_bytes()), Some(none));
    /// assert_eq!(Kept::carried(2, &[0; 3]), None);
    /// ```
    #[must_use]
    pub fn carried(rows_each: usize, bytes: &[u8]) -> Option<Self> {
        let (hours, rest) = bytes.as_chunks::<BYTES>();
        let hour = |bytes: &[u8; BYTES]| {
            let [a, b, c, d, others @ ..] = bytes;
            let (others, _) = others.as_chunks::<2>();
            let mut others = others.iter().copied().map(u16::from_le_bytes);
            let mut next = || others.next().unwrap_or_default();
            HourTold {
                condensed_g: f32::from_le_bytes([*a, *b, *c, *d]),
                mist: next(),
                humidity: next(),
                low: next(),
                high: next(),
                deepest: next(),
                drained: next(),
                frost: next(),
                states: StateFlags(next()),
            }
        };
        rest.is_empty().then(|| Self {
            rows_each,
            hours: hours.iter().map(hour).collect(),
        })
    }

    /// Bytes that so many members of so many rows take.
    #[must_use]
    pub fn bytes(rows: usize, members: usize) -> usize {
        rows.div_ceil(Self::rows_each(rows, members)) * members * BYTES
    }

    pub(crate) fn of(year: &YearOutcome, rating: Option<f64>, rows_each: usize) -> Self {
        let standing = year.water.as_ref().map_or(&[][..], |water| &water.hours);
        let hours: Vec<HourTold> = (year.sums.iter().enumerate())
            .map(|(at, hour)| {
                let humidity = chamber_humidity(&year.hourly.hours, at, hour);
                HourTold::of(hour, standing.get(at), humidity, rating)
            })
            .collect();
        let together = |hours: &[HourTold]| {
            let (first, rest) = hours.split_first()?;
            Some(rest.iter().fold(*first, |all, hour| all.and(hour)))
        };
        Self {
            rows_each,
            hours: hours
                .chunks(rows_each.max(1))
                .filter_map(together)
                .collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 20 bytes an hour: 256 years of hours are 45 MB; of ten-minute rows 269 MB, so four are kept as one.
    #[test]
    fn memory_is_bounded() {
        assert_eq!(BYTES, 20, "an hour");
        assert_eq!(Kept::rows_each(8760, 256), 1, "a year of hours");
        assert_eq!(Kept::bytes(8760, 256), 8760 * 256 * 20, "45 MB");
        assert_eq!(Kept::rows_each(52_560, 256), 4, "a year of ten minutes");
        assert!(Kept::bytes(52_560, 256) <= MOST_BYTES, "never more");
    }

    #[test]
    fn hours_kept_as_one_hold_the_worst_of_each() {
        let hour = |low, high, states| HourTold {
            condensed_g: 1.0,
            mist: 0,
            humidity: 0,
            low,
            high,
            deepest: 0,
            drained: of_grams(3.0),
            frost: of_grams(0.3),
            states,
        };
        let both = hour(9000, 9900, StateFlags::WET).and(&hour(8000, 9000, StateFlags::LOW));
        assert_eq!(both.reading(), [0.8, 0.99], "lowest and highest");
        assert_eq!(both.condensed_g(), 2.0, "all water");
        assert_eq!(both.drained_g(), 6.0, "all that ran down");
        assert!((both.frost_g() / 0.3 - 1.0).abs() < 0.004, "{both:?}");
        assert!(
            both.states.has(StateFlags::WET.with(StateFlags::LOW)),
            "{both:?}"
        );
        assert!(!both.states.has(StateFlags::BLIND), "{both:?}");
    }
}
