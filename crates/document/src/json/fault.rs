//! What is wrong with a text, and where in it.

use super::{Content, Node};
use crate::field_path::Here;
use crate::{DocumentError, FieldPath};

/// What is wrong with a text, and where in it; in a box, for it is carried past every field.
#[derive(Debug)]
pub(crate) struct Fault(Box<Told>);

#[derive(Debug)]
struct Told {
    /// The field; none where the text is not even JSON.
    path: Option<FieldPath>,
    message: String,
    /// Bytes of the text before the place.
    before: usize,
}

impl Fault {
    /// The text is not JSON.
    pub(crate) fn syntax(message: &str, before: usize) -> Self {
        Self(Box::new(Told {
            path: None,
            message: message.to_owned(),
            before,
        }))
    }

    /// What stands there is JSON, but not what belongs there.
    pub(crate) fn shape(path: FieldPath, message: String, before: usize) -> Self {
        Self(Box::new(Told {
            path: Some(path),
            message,
            before,
        }))
    }

    /// What stands there is of the wrong kind.
    pub(crate) fn wrong(node: &Node<'_>, at: &Here<'_>, expected: &str) -> Self {
        let message = format!("invalid type: {}, expected {expected}", node.described());
        let before = match node.content {
            Content::List(_) | Content::Object(_) => node.start,
            _ => node.end(),
        };
        Self::shape(at.path(), message, before)
    }

    /// The error to tell, with the line and column in the text.
    pub(crate) fn told(self, text: &str) -> DocumentError {
        // The place may lie within a sign of several bytes.
        let before = text.as_bytes().get(..self.0.before).unwrap_or_default();
        let line = 1 + before.iter().filter(|sign| **sign == b'\n').count();
        let column = before
            .iter()
            .rev()
            .take_while(|sign| **sign != b'\n')
            .count();
        let message = self.0.message;
        match self.0.path {
            Some(path) => DocumentError::Shape {
                path,
                message,
                line,
                column,
            },
            None => DocumentError::Syntax {
                message,
                line,
                column,
            },
        }
    }
}
