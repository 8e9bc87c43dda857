//! Invented trouble logs of which the true cause is known, from the modelled hours of runs that are drawn.
//!
//! What reads logs and ranks causes has no part in this: nothing here is shared with it but the run, its season and its year.
//! Its kinds and causes are therefore its own, and so is how each cause makes trouble.

mod behaviour;
mod duct;
mod people;
mod site;
mod truth;

pub use behaviour::{Happening, happenings};
pub use people::{Log, log_of};
pub use site::{Site, site};
pub use truth::{OtherWorld, Truth, truth};

/// What an entry of a log is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// The airflow was low.
    FlowLow,
    /// The airflow was high.
    FlowHigh,
    /// An alarm without smoke.
    Alarm,
    /// Water was found.
    Water,
    /// A trap or a low point was emptied.
    Emptied,
    /// The filter was changed.
    Filter,
    /// The detector was replaced.
    Replaced,
    /// Something else.
    Other,
}

/// What truly causes the trouble.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TrueCause {
    /// Water gathers in a low point.
    LowPoint,
    /// Mist reaches the sensor.
    Mist,
    /// Frost grows and comes down.
    Frost,
    /// Dust loads the filter.
    FilterLoads,
    /// The filter was left out, or is a coarser one.
    FilterMissing,
    /// A joint came apart.
    Parted,
    /// A trap ran dry.
    TrapDry,
    /// Dirt narrows the sampling holes.
    HolesFouled,
    /// The duct's fan or a damper goes on and off by the clock.
    DuctSwitches,
    /// The detector's fan is weak, or its supply low.
    FanWeak,
    /// The airflow limits are tighter than what is usual.
    Limits,
    /// Something that has nothing to do with any of it.
    Nothing,
}

impl TrueCause {
    /// All of them.
    pub const ALL: [Self; 12] = [
        Self::LowPoint,
        Self::Mist,
        Self::Frost,
        Self::FilterLoads,
        Self::FilterMissing,
        Self::Parted,
        Self::TrapDry,
        Self::HolesFouled,
        Self::DuctSwitches,
        Self::FanWeak,
        Self::Limits,
        Self::Nothing,
    ];
}

/// An entry of a log.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// When, s since 1970 on the clock of the weather.
    pub at_s: i64,
    /// Only the day was written down.
    pub day_only: bool,
    /// What.
    pub kind: Kind,
    /// How much water, g, where it was written down.
    pub grams: Option<f64>,
    /// What the panel showed of the airflow, % of that as fitted, where it was written down.
    pub percent: Option<f64>,
}
