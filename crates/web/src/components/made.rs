//! What the second module makes of the open project, put on the desk as one step that can be undone.

use dewrun_desk::style_as_numbers;

use crate::hooks::workshop::{Told, Workshop};
use crate::state::Desk;
use leptos::prelude::untrack;

/// Has the project changed by a question; `about` names what is changed, of which several changes in a row are one step.
///
/// # Errors
/// Why it is not changed, as a sentence.
pub(super) fn make(
    (desk, workshop): (Desk, Workshop),
    kind: &str,
    more: &[f64],
    about: &str,
) -> Result<(), String> {
    untrack(|| {
        let answered = desk.answered();
        let answered = answered.filter(|one| desk.with_untracked(|now| *now == one.project));
        let Some(answered) = answered else {
            return Err("another entry can\u{2019}t be used: mend that first.".to_owned());
        };
        let mut numbers = style_as_numbers(desk.style()).to_vec();
        numbers.extend(more);
        match workshop.ask(kind, &answered, &numbers) {
            Some(Ok(Told::Text(text))) => desk.put(about, &text),
            Some(Err(sentence)) => Err(sentence),
            _ => Ok(()),
        }
    })
}
