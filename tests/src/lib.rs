//! What tests that cross crates share: solved cases and random routes.

pub mod ensembles;
pub mod fingerprint;
pub mod hours;
pub mod installations;
pub mod invented_weather;
pub mod lines;
pub mod projects;
pub mod reference;
pub mod remedies;
pub mod routes;
pub mod troubles;
pub mod troubles_proof;
