//! The words that an answer about remedies says: its sentences, and of each remedy what it does and what else comes of it.

use dewrun_quantity::Style;
use dewrun_remedies::{Subject, Tried};

use super::{failed, side_effects, target_sentence, what};

/// What a remedy does, with its size, and what else comes of it, the failure of its power included; the spaces of its run are called so.
#[must_use]
pub fn worded(
    subject: &Subject,
    spaces: &[String],
    tried: &Tried,
    style: Style,
) -> (String, Vec<String>) {
    let mut side_effects = side_effects(&subject.left, tried, style);
    if let Some(powered) = &tried.powered {
        side_effects.push(format!("its power failed: {}", failed(powered, style)));
    }
    let run = &subject.inputs.run;
    (what(run, spaces, &tried.alterations, style), side_effects)
}

/// The target, whether the run meets it, and how many remedies of those ranked do.
#[must_use]
pub fn sentences(
    subject: &Subject,
    spaces: &[String],
    tried: &[Tried],
    style: Style,
) -> Vec<String> {
    let mut told = vec![target_sentence(&subject.target, style)];
    if subject.is_met() {
        told.push("The run as drawn meets it: nothing has to be done.".to_owned());
        return told;
    }
    let cures = tried.iter().filter(|one| one.is_cure).count();
    told.push(match (cures, tried.first()) {
        (0, _) => "The run as drawn misses it, and no remedy that was tried meets it.".to_owned(),
        (count, Some(first)) => {
            let (first, _) = worded(subject, spaces, first, style);
            let all = match count {
                1 => "one remedy meets it".to_owned(),
                more => format!("{more} remedies meet it"),
            };
            format!("The run as drawn misses it; {all}. First: {first}.")
        }
        (_, None) => String::new(),
    });
    if subject.left.year.is_none() {
        told.push("There is no weather file: the conditions entered alone count.".to_owned());
    }
    told
}
