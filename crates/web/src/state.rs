//! What the page knows: the project as entered, what can't be used of it, and its answer.

mod desk;
mod file_name;
mod opened;

pub use desk::Desk;
pub(crate) use desk::use_desk;
pub(crate) use opened::{Opened, Step, Trail};
