//! What the page knows: the project as entered, what can't be used of it, and its answer.

mod answered;
mod desk;
mod fault;
mod field;
mod history;
mod humidity;
mod kind;
mod legs;
mod shown;

pub(crate) use answered::Answered;
pub use desk::Desk;
pub(crate) use desk::use_desk;

pub use field::{Field, TubeName};
pub(crate) use field::{leg_number, route, route_mut};
pub(crate) use humidity::{HumidityKind, say_duct_humidity_as, say_space_humidity_as};
pub(crate) use legs::{add_leg, delete_leg, split_leg};
pub(crate) use shown::Shown;
