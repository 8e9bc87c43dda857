//! What the benches compute, once for this machine's benches and for those in Chromium.

mod air_states;
mod full_route;
mod steady_route;
mod year_route;

pub use air_states::{AirState, air_states};
pub use full_route::full_route;
pub use steady_route::steady_route;
pub use year_route::{year_full_route, year_route};
