//! Heat, vapour and the water that stays, hour by hour through a year.
//!
//! ```
//! use dewrun_year::{Around, Grid, Hour, Hours, Leg, March, Route, Steps, year_sum};
//! let leg = Leg {
//!     length_m: 6.0, bore_m: 0.019, tube_outside_m: 0.022, tube_w_mk: 0.19,
//!     insulation_m: 0.0, insulation_w_mk: 0.036, emissivity: 0.9, tracing_w_m: 0.0,
//!     riser_m: None, space: 0, retained_kg_m2: 0.05,
//! };
//! let route = Route { intake: vec![leg], detector_w: 0.0, exhaust: vec![] };
//! let mut hours = Hours::of_spaces(1);
//! for _ in 0..168 {
//!     let hour = Hour { seconds: 3600.0, air_c: 30.0, w: 0.021_451, p_pa: 101_325.0, dry_air_kg_s: 3.753_5e-4 };
//!     hours.push(hour, [Around { air_c: 18.0, w: 0.0064, radiant_c: 18.0, wind_m_s: 0.0 }]);
//! }
//! let mut march = March::new(&route, &hours, Grid::PRODUCT, Steps::QuartersWhereDrying);
//! // In slices, so that somebody else may do something between them.
//! let mut until = 24;
//! while !march.advance(&hours, until) {
//!     until += 24;
//! }
//! let week = year_sum(&hours, march.hours(), Some(0.95));
//! assert!((week.condensed_kg - 1.5985).abs() < 0.016 && week.wet_hours == 168.0);
//! ```

mod hours;
mod march;
mod results;
mod route;
mod sums;
mod water;

pub use hours::{Around, Hour, Hours};
pub use march::{Done, Grid, March, Steps};
pub use results::{
    COLDER_BY_K, CriticalWeek, Month, RouteDesign, WaterBalance, WaterSum, WaterTrouble, YearSum,
    chamber_humidity, dry_by_bound, is_wet, months, route_design, water_balance, water_sum,
    year_sum,
};
pub use route::{Leg, Route};
pub use sums::{AirState, HourSum, LegSum};
pub use water::{StateShares, StoreKind, StorePlace, Visits, Water, WaterHour, WaterWent};
