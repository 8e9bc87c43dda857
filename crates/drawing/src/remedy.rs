//! Remedies over a year in words and as a table: what each does, what else comes of it, and the target that they are sought for.

mod effects;
mod first;
mod table;
mod target;
mod what;
mod words;

pub use effects::{failed, side_effects};
pub use first::first;
pub use table::{Shown, table};
pub use target::target_sentence;
pub use what::what;
pub use words::{sentences, worded};
