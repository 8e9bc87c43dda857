//! In which quantity a humidity is said; changing it leaves the air as it is.

use leptos::prelude::*;

use super::choice::{Choice, ChoiceOption, Options};
use super::parts::words;
use crate::element::El;
use crate::state::use_desk;
use dewrun_desk::{HumidOf, HumidityKind};

/// The choice of the quantity in which a humidity is said; `in_table` where the head of a table names it.
pub(super) fn humidity_kind(of: HumidOf, in_table: bool) -> El {
    let desk = use_desk();
    let kind = move || desk.with(|project| of.kind(project));
    let chosen = words(move || kind().map_or_else(String::new, |kind| kind.name().to_owned()));
    let options = Signal::derive(move || -> Options {
        let shown = kind();
        let mut kinds = HumidityKind::OFFERED.to_vec();
        // A file may say it in a quantity that is not offered.
        kinds.extend(shown.filter(|kind| !HumidityKind::OFFERED.contains(kind)));
        kinds
            .iter()
            .map(|kind| ChoiceOption::new(kind.name().to_owned(), kind.name().to_owned()))
            .collect()
    });
    let choose = Callback::new(move |name: String| {
        let kind = HumidityKind::OFFERED
            .into_iter()
            .find(|kind| kind.name() == name);
        if let Some(kind) = kind {
            desk.change("humidity", |project| {
                // Air that has no answer keeps the quantity in which it was entered.
                let _ = of.say_as(project, kind);
            });
        }
    });
    let whose = words(move || desk.with(|project| of.whose(project)));
    Choice {
        id: of.id(),
        name: "Humidity as",
        whose,
        options,
        chosen,
        choose,
        in_table,
    }
    .control()
}
