//! Files on the desk: opened, refused in words, and written.

use dewrun_desk::Stage;
use dewrun_document::{DocumentError, is_link, read_keeping_years, write};
use leptos::prelude::*;

use super::Desk;
use crate::state::file_name;

/// A file that was not taken in or could not be made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct RefusedFile {
    /// What did not happen.
    pub(crate) headline: String,
    /// What is wrong with it, where, and what would be right.
    pub(crate) sentence: String,
}

impl Desk {
    /// Puts the project of a file on the desk, or says why the file can't be used.
    pub(crate) fn open_text(&self, name: &str, text: Option<&str>) {
        if let Some(link) = text.filter(|text| is_link(text)) {
            return self.open_link(link);
        }
        let project = text.map_or_else(
            || Err("The browser can\u{2019}t read it as text.".to_owned()),
            |text| read_keeping_years(text).map_err(|error| in_words(&error)),
        );
        match project {
            Ok(project) => {
                self.refused_file.set(None);
                self.open(project.into(), Stage::Project);
            }
            Err(sentence) => self.refuse(
                format!("{name} was not taken in. The open project is unchanged."),
                sentence,
            ),
        }
    }

    /// The open project as the text of a file; where it can't be one, the page says why.
    pub(crate) fn file_text(&self) -> Option<String> {
        let written = self.with_untracked(|project| write(project));
        match &written {
            Ok(_) => self.refused_file.set(None),
            Err(error) => self.refuse_to_save(in_words(error)),
        }
        written.ok()
    }

    /// What a file of the open project is called.
    pub(crate) fn file_name(&self) -> String {
        self.with_untracked(|project| file_name::of(project))
    }

    /// Says why the project could not be saved.
    pub(crate) fn refuse_to_save(&self, sentence: String) {
        let headline = "The file was not saved. The open project is unchanged.";
        self.refuse(headline.to_owned(), sentence);
    }

    pub(super) fn refuse(&self, headline: String, sentence: String) {
        let refused = RefusedFile { headline, sentence };
        self.refused_file.set(Some(refused));
    }

    /// The file that was not taken in, until it is left.
    pub(crate) fn refused_file(&self) -> Option<RefusedFile> {
        self.refused_file.get()
    }

    pub(crate) fn forget_refused_file(&self) {
        self.refused_file.set(None);
    }
}

/// What is wrong with a file, with line and column where the text itself is wrong.
pub(super) fn in_words(error: &DocumentError) -> String {
    let sentence = error.sentence();
    match error.line_column() {
        Some((line, column)) => format!("Line {line}, column {column}: {sentence}."),
        None => format!("{sentence}."),
    }
}
