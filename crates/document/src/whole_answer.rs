//! From the engine's answer on water and air to the answer file's types, by hand.

mod air;
mod number;
mod water;

pub(crate) use air::{airflow, assumed, blind};
pub(crate) use water::water;
