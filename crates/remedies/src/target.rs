//! What counts as dry enough: the target that a person sets.

use dewrun_quantity::Time;
use dewrun_run::Verdict;

use crate::left::{Left, YearLeft};

/// What counts as dry enough; all parts that are set have to hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Target {
    /// No water in this hour.
    pub dry_in: Option<DesignHour>,
    /// At most so many wet hours.
    pub wet_hours: Option<f64>,
    /// At most so much water forms, kg.
    pub formed_kg: Option<f64>,
    /// The air around the sensor stays below the device's rating by so much, 0 to 1; where no rating is known, below 1.
    pub chamber_margin: Option<f64>,
    /// No ice on a wall.
    pub no_frost: bool,
    /// At most so many hours in which the detector does not sample its duct.
    pub blind_hours: Option<f64>,
    /// No trap is emptied more often than every so many days.
    pub trap_days: Option<f64>,
}

/// An hour that a route is designed for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DesignHour {
    /// The conditions that are entered.
    Entered,
    /// The hour of which 0.4 % of all are wetter.
    Wettest04,
    /// The hour of which 1 % of all are wetter.
    Wettest1,
    /// The hour of which 2 % of all are wetter.
    Wettest2,
}

/// A part of a target that is missed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Miss {
    /// Water in the design hour.
    Design,
    /// Too many wet hours.
    WetHours,
    /// Too much water.
    Formed,
    /// Too humid around the sensor.
    Chamber,
    /// Ice.
    Frost,
    /// The detector does not sample its duct.
    Blind,
    /// A trap fills too soon.
    TrapDays,
}

impl DesignHour {
    /// All of them.
    pub const ALL: [Self; 4] = [
        Self::Entered,
        Self::Wettest04,
        Self::Wettest1,
        Self::Wettest2,
    ];

    /// Its place among the design hours of a year, and the share of the hours that may be wetter; none for what is entered.
    #[must_use]
    pub const fn rank(self) -> Option<(usize, f64)> {
        match self {
            Self::Entered => None,
            Self::Wettest04 => Some((0, 0.004)),
            Self::Wettest1 => Some((1, 0.01)),
            Self::Wettest2 => Some((2, 0.02)),
        }
    }
}

impl Default for Target {
    /// Dry in the conditions entered, never blind.
    fn default() -> Self {
        Self {
            dry_in: Some(DesignHour::Entered),
            wet_hours: None,
            formed_kg: None,
            chamber_margin: None,
            no_frost: false,
            blind_hours: Some(0.0),
            trap_days: None,
        }
    }
}

/// More than this deposits in a wet hour, g.
const WET_G_H: f64 = 0.01;
/// Less than this is the rounding of a sum of parts of hours, h.
const NO_HOURS: f64 = 1e-6;

impl Target {
    /// The parts of it that are missed, the year's only where there is one.
    ///
    /// `rating` is the highest relative humidity that the device bears, 0 to 1.
    #[must_use]
    pub fn missed(&self, left: &Left, rating: Option<f64>) -> Vec<Miss> {
        let mut missed = self.missed_as_entered(left);
        if let Some(year) = &left.year {
            missed.extend(self.missed_in_year(year, rating));
        } else if let Some(margin) = self.chamber_margin
            && bound(rating, margin) < left.entered.chamber.to_fraction()
        {
            missed.push(Miss::Chamber);
        }
        missed
    }

    /// Whether all of it holds.
    #[must_use]
    pub fn is_met(&self, left: &Left, rating: Option<f64>) -> bool {
        self.missed(left, rating).is_empty()
    }

    /// What is missed in the conditions that are entered; a target of the year is not looked at where there is a year.
    pub(crate) fn missed_as_entered(&self, left: &Left) -> Vec<Miss> {
        let entered = &left.entered;
        let has_year = left.year.is_some();
        let mut missed = Vec::new();
        let is_entered = self.dry_in == Some(DesignHour::Entered);
        if (is_entered || !has_year && self.dry_in.is_some()) && entered.verdict == Verdict::Wet {
            missed.push(Miss::Design);
        }
        if self.no_frost && entered.has_frost && (is_entered || !has_year) {
            missed.push(Miss::Frost);
        }
        // Blind as drawn is blind, whatever the weather of a year brings; hours are allowed of the year alone.
        let none = self.blind_hours.is_some_and(|most| most <= 0.0);
        if (none || self.blind_hours.is_some() && !has_year) && entered.is_blind() {
            missed.push(Miss::Blind);
        }
        let interval = entered
            .air
            .as_ref()
            .and_then(|air| air.water.drain_interval);
        if let (Some(days), Some(interval), false) = (self.trap_days, interval, has_year)
            && interval < Time::days(days)
        {
            missed.push(Miss::TrapDays);
        }
        missed
    }

    fn missed_in_year(&self, year: &YearLeft, rating: Option<f64>) -> Vec<Miss> {
        let rank = self.dry_in.and_then(DesignHour::rank);
        let design_g_h = rank.and_then(|(place, _)| year.design_g_h.get(place));
        let above = |value: Option<f64>, most: Option<f64>| match (value, most) {
            (Some(value), Some(most)) => most + NO_HOURS < value,
            _ => false,
        };
        let chamber = self.chamber_margin.map(|margin| bound(rating, margin));
        let too_soon = match (self.trap_days, year.trap_days) {
            (Some(least), Some(days)) => days < least,
            _ => false,
        };
        [
            (design_g_h.is_some_and(|g_h| WET_G_H < *g_h), Miss::Design),
            (above(Some(year.wet_hours), self.wet_hours), Miss::WetHours),
            (above(Some(year.formed_kg), self.formed_kg), Miss::Formed),
            (above(Some(year.most_humid_chamber), chamber), Miss::Chamber),
            (self.no_frost && 0.0 < year.frost_hours, Miss::Frost),
            (above(year.blind_hours, self.blind_hours), Miss::Blind),
            (too_soon, Miss::TrapDays),
        ]
        .into_iter()
        .filter_map(|(is_missed, miss)| is_missed.then_some(miss))
        .collect()
    }

    /// Whether it asks for anything that water in the hours of a year decides.
    pub(crate) fn is_about_year(&self) -> bool {
        self.dry_in.and_then(DesignHour::rank).is_some()
            || self.wet_hours.is_some()
            || self.formed_kg.is_some()
            || self.no_frost
    }

    /// So many hours of a year may be wet at most, as far as this is about such hours at all.
    pub(crate) fn hours_that_may_be_wet(&self, hours: f64) -> Option<f64> {
        let rank = self.dry_in.and_then(DesignHour::rank);
        let by_rank = rank.map(|(_, share)| share * hours);
        match (by_rank, self.wet_hours) {
            (Some(one), Some(other)) => Some(one.min(other)),
            (one, other) => one.or(other),
        }
    }
}

/// The highest relative humidity that is allowed around the sensor.
pub(crate) fn bound(rating: Option<f64>, margin: f64) -> f64 {
    rating.unwrap_or(1.0) - margin
}
