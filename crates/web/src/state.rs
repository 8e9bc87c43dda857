//! What the page knows: the project as entered, what can't be used of it, and its answer.

mod answered;
mod desk;
mod fault;
mod field;
mod file_name;
mod first_visit;
mod history;
mod humidity;
mod kind;
mod legs;
mod opened;
mod pick;
mod rows;
mod shown;
mod stage;

pub(crate) use answered::Answered;
pub use desk::Desk;
pub(crate) use desk::use_desk;

pub(crate) use fault::Fault;
pub use field::{Blank, Field, TubeName};
pub(crate) use field::{leg_number, leg_way, route};
pub(crate) use first_visit::{is_above, is_side_assumed, put_above};
pub(crate) use humidity::{HumidOf, HumidityKind};
pub(crate) use legs::{add_leg, delete_leg, split_leg};
pub(crate) use opened::{Opened, Step, Trail};
pub(crate) use pick::{Pick, same_tube_everywhere};
pub(crate) use shown::Shown;
pub(crate) use stage::Stage;
