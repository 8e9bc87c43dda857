//! Answer files about a project, with the answers of its runs: how each is begun, fails and is written.

use serde::Serialize;

use crate::DocumentError;

/// An answer file as JSON.
///
/// # Errors
/// [`DocumentError::NotFinite`] where a figure is no number; nothing is written then.
pub(crate) fn pretty(file: &impl Serialize) -> Result<String, DocumentError> {
    serde_json::to_string_pretty(file).map_err(|_| DocumentError::NotFinite)
}

/// The functions of an answer file that holds the answers of a project's runs: its type, its format and the type of a run's answer.
macro_rules! file_of_runs {
    ($file:ident, $format:expr, $run:ty) => {
        impl $file {
            /// The answers of a project's runs.
            #[must_use]
            pub fn new(project: &str, runs: Vec<$run>) -> Self {
                Self {
                    project: Some(project.to_owned()),
                    runs,
                    ..Self::empty()
                }
            }

            /// Why a project could not be read.
            #[must_use]
            pub fn failed(error: &DocumentError) -> Self {
                Self {
                    error: Some(ErrorOutput::from(error)),
                    ..Self::empty()
                }
            }

            /// As JSON.
            ///
            /// # Errors
            /// [`DocumentError::NotFinite`] where a figure is no number; nothing is written then.
            pub fn to_json(&self) -> Result<String, DocumentError> {
                $crate::answer_file::pretty(self)
            }

            fn empty() -> Self {
                Self {
                    format: $format.to_owned(),
                    version: 1,
                    revision: 1,
                    file: None,
                    project: None,
                    runs: Vec::new(),
                    error: None,
                }
            }
        }
    };
}

pub(crate) use file_of_runs;
