//! Links on the desk: what one carries is opened, and the open project is put into one.

use dewrun_desk::Stage;
use dewrun_document::{link_text, read_keeping_years};
use leptos::prelude::*;

use super::Desk;
use super::files::in_words;
use crate::hooks::link::read_link;

impl Desk {
    /// Puts the project that a link carries on the desk, or says why the link can't be used.
    pub(crate) fn open_link(self, text: &str) {
        read_link(text, move |carried| {
            let project = carried.and_then(|text| {
                // Nobody sees the text, so that its lines and columns say nothing.
                read_keeping_years(&text).map_err(|error| format!("{}.", error.sentence()))
            });
            match project {
                Ok(project) => {
                    self.refused_file.set(None);
                    self.open(project.into(), Stage::Project);
                }
                Err(sentence) => {
                    let headline = "The link was not taken in. The open project is unchanged.";
                    self.refuse(headline.to_owned(), sentence);
                }
            }
        });
    }

    /// The open project as the text that a link carries; where it can't be one, the page says why.
    pub(crate) fn link_text(&self) -> Option<String> {
        let text = self.with_untracked(|project| link_text(project));
        match &text {
            Ok(_) => self.refused_file.set(None),
            Err(error) => self.refuse_link(in_words(error)),
        }
        text.ok()
    }

    /// Says why there is no link.
    pub(crate) fn refuse_link(&self, sentence: String) {
        let headline = "No link was made. The open project is unchanged.";
        self.refuse(headline.to_owned(), sentence);
    }
}
