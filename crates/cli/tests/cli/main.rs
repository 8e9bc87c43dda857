//! The command line as people and scripts meet it: what it says, and how it ends.
//!
//! Snapshots in `tests/cli` guard wording and form; every number in them is masked, since figures are held elsewhere
//! against sources from outside.

mod assess;
mod diagram;
mod doubt;
mod lines;
mod link;
mod masked;
mod remedies;
mod running;
mod sheet;
mod sheet_calculation;
mod sheet_service;
mod troubles;
mod wording;
mod year;
