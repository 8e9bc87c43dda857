//! From bytes to lines and cells of text.

pub(crate) mod cells;
pub(crate) mod encoding;
pub(crate) mod lines;
