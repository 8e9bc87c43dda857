//! Remedies over a year in words: what each does, what else comes of it, and the target that they are sought for.

mod effects;
mod target;
mod what;

pub use effects::{failed, side_effects};
pub use target::target_sentence;
pub use what::what;
