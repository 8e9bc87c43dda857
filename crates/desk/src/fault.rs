//! What a person typed that can't be used, and what still holds in its place.

use super::Field;

/// A text that could not be taken into the project.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The field.
    pub field: Field,
    /// The field's name where nothing around says whose it is.
    pub name: String,
    /// What stays in the field.
    pub text: String,
    /// What, and what would be right.
    pub sentence: String,
    /// The value that the project still has.
    pub held: String,
    /// Not shown as long as the field is being typed in.
    pub is_unfinished: bool,
}
