//! A change that a person made in a field.

use crate::Field;

/// A change of one field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Edit {
    /// What was changed, in words.
    pub name: String,
    /// The value before.
    pub before: String,
    /// The field.
    pub field: Field,
}
