//! What became of the water in an hour, and of the air over it.

/// Water and air of a run in one hour; amounts in kg, levels as they are at its end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaterHour {
    /// Its length, s.
    pub seconds: f64,
    /// Dry air that was taken to flow, kg/s; a trickle where none does.
    pub dry_air_kg_s: f64,
    /// What the airflow sensor reads, as a part of the reading as fitted.
    pub reading: f64,
    /// Share of the air at the sensor that came from the duct.
    pub share: f64,
    /// Where water went in it.
    pub went: WaterWent,
    /// Water and ice in pools and puddles at the end.
    pub standing_kg: f64,
    /// Ice in them at the end.
    pub ice_kg: f64,
    /// Water and ice in traps at the end, their seals included.
    pub trapped_kg: f64,
    /// Deepest pool, as a share of its bore; 1 is closed.
    pub deepest: f64,
    /// Parts of the hour, 0 to 1, in which each state holds.
    pub states: StateShares,
}

/// Where water went that had left the walls, kg.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WaterWent {
    /// What ran down from the walls.
    pub ran_down_kg: f64,
    /// What dried from pools and puddles.
    pub evaporated_kg: f64,
    /// What left over the seals of traps that drain themselves, and out of open stubs.
    pub drained_kg: f64,
    /// What ran back into the duct.
    pub into_duct_kg: f64,
    /// What ran into the detector.
    pub into_detector_kg: f64,
    /// What was let out at visits.
    pub let_out_kg: f64,
    /// What ran out of traps that had cracked.
    pub leaked_kg: f64,
    /// What dried off the seals of traps.
    pub off_seals_kg: f64,
    /// What passed traps that were full; it is counted again where it went.
    pub overflowed_kg: f64,
}

impl WaterWent {
    /// Nothing yet.
    pub(crate) const NONE: Self = Self {
        ran_down_kg: 0.0,
        evaporated_kg: 0.0,
        drained_kg: 0.0,
        into_duct_kg: 0.0,
        into_detector_kg: 0.0,
        let_out_kg: 0.0,
        leaked_kg: 0.0,
        off_seals_kg: 0.0,
        overflowed_kg: 0.0,
    };

    /// With what went at another time.
    pub(crate) fn plus(self, other: &Self) -> Self {
        Self {
            ran_down_kg: self.ran_down_kg + other.ran_down_kg,
            evaporated_kg: self.evaporated_kg + other.evaporated_kg,
            drained_kg: self.drained_kg + other.drained_kg,
            into_duct_kg: self.into_duct_kg + other.into_duct_kg,
            into_detector_kg: self.into_detector_kg + other.into_detector_kg,
            let_out_kg: self.let_out_kg + other.let_out_kg,
            leaked_kg: self.leaked_kg + other.leaked_kg,
            off_seals_kg: self.off_seals_kg + other.off_seals_kg,
            overflowed_kg: self.overflowed_kg + other.overflowed_kg,
        }
    }

    /// What has left pools, puddles and traps, other than by evaporating into the tube.
    #[must_use]
    pub fn gone_kg(&self) -> f64 {
        self.drained_kg
            + self.into_duct_kg
            + self.into_detector_kg
            + self.let_out_kg
            + self.leaked_kg
            + self.off_seals_kg
    }
}

/// Parts of an hour, 0 to 1, in which something is so.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct StateShares {
    /// The moving air throws slugs of standing water.
    pub slugs: f64,
    /// A low point is closed by water.
    pub sealed: f64,
    /// It is closed, but the fan draws air through in bubbles.
    pub bubbles: f64,
    /// Frost closes a bore, or ice does in a pool.
    pub iced: f64,
    /// Standing water is ice.
    pub frozen: f64,
    /// The air runs backwards.
    pub reversed: f64,
    /// The reading lies under the low limit.
    pub low: f64,
    /// The reading lies over the high limit.
    pub high: f64,
    /// The detector does not sample its duct: reversed, still, closed, or less than four fifths of its air comes from there.
    pub blind: f64,
    /// A trap is full.
    pub trap_full: f64,
    /// A seal has dried out, or a trap has cracked: air passes.
    pub trap_leaks: f64,
}

impl StateShares {
    /// With those of another so many times.
    pub(crate) fn plus(self, other: Self, times: f64) -> Self {
        self.mean(other, (1.0, times))
    }

    fn mean(self, other: Self, (before, after): (f64, f64)) -> Self {
        let mean = |of: fn(&Self) -> f64| before * of(&self) + after * of(&other);
        Self {
            slugs: mean(|s| s.slugs),
            sealed: mean(|s| s.sealed),
            bubbles: mean(|s| s.bubbles),
            iced: mean(|s| s.iced),
            frozen: mean(|s| s.frozen),
            reversed: mean(|s| s.reversed),
            low: mean(|s| s.low),
            high: mean(|s| s.high),
            blind: mean(|s| s.blind),
            trap_full: mean(|s| s.trap_full),
            trap_leaks: mean(|s| s.trap_leaks),
        }
    }
}

impl WaterHour {
    /// Nothing yet.
    pub(crate) const NONE: Self = Self {
        seconds: 0.0,
        dry_air_kg_s: 0.0,
        reading: 0.0,
        share: 0.0,
        went: WaterWent::NONE,
        standing_kg: 0.0,
        ice_kg: 0.0,
        trapped_kg: 0.0,
        deepest: 0.0,
        states: StateShares {
            slugs: 0.0,
            sealed: 0.0,
            bubbles: 0.0,
            iced: 0.0,
            frozen: 0.0,
            reversed: 0.0,
            low: 0.0,
            high: 0.0,
            blind: 0.0,
            trap_full: 0.0,
            trap_leaks: 0.0,
        },
    };

    /// Water in pools, puddles and traps at the end.
    #[must_use]
    pub fn held_kg(&self) -> f64 {
        self.standing_kg + self.trapped_kg
    }

    /// This part of the hour and the next.
    pub(crate) fn then(self, next: &Self) -> Self {
        let seconds = self.seconds + next.seconds;
        let shares = (self.seconds / seconds, next.seconds / seconds);
        let mean = |one: f64, other: f64| shares.0 * one + shares.1 * other;
        Self {
            seconds,
            dry_air_kg_s: mean(self.dry_air_kg_s, next.dry_air_kg_s),
            reading: mean(self.reading, next.reading),
            share: mean(self.share, next.share),
            went: self.went.plus(&next.went),
            standing_kg: next.standing_kg,
            ice_kg: next.ice_kg,
            trapped_kg: next.trapped_kg,
            deepest: next.deepest,
            states: self.states.mean(next.states, shares),
        }
    }
}
