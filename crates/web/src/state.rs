//! What the page knows: the project as entered, what can't be used of it, and its answer.

mod desk;
mod file_name;
mod keeping;
mod opened;

pub use desk::Desk;
pub(crate) use desk::use_desk;
pub(crate) use keeping::{Found, Keeping, SetAside, use_keeping};
pub(crate) use opened::{Opened, Step, Trail};
