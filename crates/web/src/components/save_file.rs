//! Saving the open project as a file.

use super::parts::button;
use crate::element::{El, el};
use crate::hooks::save::save;
use crate::state::use_desk;

/// The way to save the project.
pub(super) fn save_file() -> El {
    let desk = use_desk();
    let take = move || {
        if let Some(text) = desk.file_text()
            && save(&desk.file_name(), &text).is_err()
        {
            desk.refuse_to_save("The browser would not take the file.".to_owned());
        }
    };
    button("dw-act", take)
        .child("Save")
        .child(el("span").class("dw-open__what").child(" file"))
}
