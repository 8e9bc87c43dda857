//! A question as it is asked.

use std::rc::Rc;

use crate::open::Open;

/// A question about an open run.
pub(crate) struct Asked<'a> {
    /// The run and its answer.
    pub(crate) open: Rc<Open>,
    /// What stands after the name of the kind.
    pub(crate) words: &'a str,
    /// The numbers that belong to the question.
    pub(crate) numbers: &'a [f64],
}
