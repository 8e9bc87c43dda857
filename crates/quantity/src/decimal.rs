//! Numbers to decimal text and back, exactly, by whole numbers of any length.
//!
//! The standard library does the same with tables that no compression makes smaller, more than 15 kB of them,
//! which a page that is loaded over a network should not pay for texts of a few digits.

mod digits;
mod read;
mod whole;

pub(crate) use digits::Digits;
pub use digits::shortest;
pub use read::nearest;
