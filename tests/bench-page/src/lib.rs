//! What the benches compute, once for this machine's benches and for those in Chromium.

mod air_states;

pub use air_states::{AirState, air_states};
