//! What the page knows: the project as entered, what can't be used of it, and its answer.

mod answered;
mod desk;
mod fault;
mod field;
mod history;
mod humidity;
mod kind;
mod legs;
mod opened;
mod shown;

pub(crate) use answered::Answered;
pub use desk::Desk;
pub(crate) use desk::use_desk;

pub(crate) use fault::Fault;
pub use field::{Field, TubeName};
pub(crate) use field::{leg_number, leg_way, route, route_mut};
pub(crate) use humidity::{HumidOf, HumidityKind};
pub(crate) use legs::{add_leg, delete_leg, split_leg};
pub(crate) use opened::{Opened, Step, Trail};
pub(crate) use shown::Shown;
