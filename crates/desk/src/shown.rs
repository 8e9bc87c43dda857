//! What is shown: the last answer there was, and why there is none for what is entered now.

use std::sync::Arc;

use dewrun_document::DocumentError;

use super::Answered;
use super::{Edit, OpenProject};

/// The last answer, and what keeps it from being the answer to what is entered now.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// The last answer there was.
    pub answered: Option<Arc<Answered>>,
    /// Why there is none now.
    pub failure: Option<Failure>,
}

/// Why there is no answer for what is entered.
#[derive(Debug, Clone, PartialEq)]
pub struct Failure {
    /// The part of the project, as its errors write it.
    pub path: String,
    /// What is wrong and what would be right.
    pub sentence: String,
    /// The change that brought it about.
    pub edit: Option<Edit>,
}

impl Shown {
    /// The answer to a project, or the one before it where it has none.
    pub fn next(before: Option<&Self>, project: &OpenProject, edit: Option<Edit>) -> Self {
        match Answered::unranked(project) {
            Ok(answered) => Self {
                answered: Some(Arc::new(answered)),
                failure: None,
            },
            Err(error) => Self {
                answered: before.and_then(|before| before.answered.clone()),
                failure: Some(failure(before, &error, edit)),
            },
        }
    }
}

/// The first change after which there was no answer stays the one to name.
fn failure(before: Option<&Shown>, error: &DocumentError, edit: Option<Edit>) -> Failure {
    let earlier = before.and_then(|before| before.failure.as_ref());
    let path = error.path().map_or("", |path| path.as_str());
    Failure {
        path: path.to_owned(),
        sentence: error.to_string(),
        edit: earlier.map_or(edit, |earlier| earlier.edit.clone()),
    }
}
