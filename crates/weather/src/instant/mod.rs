//! Dates and times: what a cell says, in which order the whole column says it, and seconds from it.

pub(crate) mod civil;
pub(crate) mod order;
pub(crate) mod parse;
pub(crate) mod stamp;
pub(crate) mod words;

pub use civil::{Civil, MONTH_NAMES};
pub use order::DateOrder;
