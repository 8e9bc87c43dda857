//! A run, its weather and its schedules brought together: the hours of its year, and what the year comes to.
//!
//! No physics of its own: processes and spaces are those of `duct-air`, rows those of `weather`, the march that of `year`.

mod design;
mod error;
pub mod figure;
mod harder;
mod hourly;
mod in_duct;
mod outdoors;
mod run_at;
mod season;
mod source;
mod trouble;
mod year;

pub use design::{DesignBy, DesignState, design_states};
pub use error::SeasonError;
pub use harder::Harder;
pub use hourly::{Hourly, harder_hours_of, hours_of};
pub use in_duct::air_in_duct;
pub use outdoors::{moment, outdoors};
pub use run_at::run_at;
pub use season::{Change, Room, Season, Source, Step, Surroundings};
pub use year::{LegYear, WaterYear, YearOutcome, YearWork, year_of};

/// What the crates below call things, for those who make a season or tell a year.
pub mod told {
    pub use crate::trouble::trouble_name;
    pub use dewrun_duct_air::FogAir;
    pub use dewrun_duct_air::process::{Coil, Humidifier};
    pub use dewrun_duct_air::schedule::{Moment, Rule, Schedule};
    pub use dewrun_duct_air::space::{Outdoors, Space};
    pub use dewrun_weather::MONTH_NAMES;
    pub use dewrun_year::{
        CriticalWeek, HourSum, Hours, Month, RouteDesign, StateShares, StoreKind, StorePlace,
        WaterBalance, WaterHour, WaterSum, WaterTrouble, YearSum, chamber_humidity, is_wet,
    };
}
