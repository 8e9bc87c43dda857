//! Heat, vapour and the water that stays, hour by hour through a year.

mod hours;
mod march;
mod route;
mod sums;

pub use hours::{Around, Hour, Hours};
pub use march::{Grid, March, Steps};
pub use route::{Leg, Route};
pub use sums::{AirState, HourSum, LegSum};
