//! One of many: a space for a leg, a quantity for a humidity.

use dewrun_drawing::escaped;
use leptos::prelude::*;

use crate::element::{El, el, typed};
use crate::state::use_desk;

/// What can be chosen.
pub(super) type Options = Vec<ChoiceOption>;

/// One that can be chosen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct ChoiceOption {
    /// The head over it and its neighbours; empty for none.
    pub(super) group: String,
    pub(super) value: String,
    pub(super) name: String,
}

impl ChoiceOption {
    /// One without a head over it.
    pub(super) fn new(value: String, name: String) -> Self {
        Self {
            group: String::new(),
            value,
            name,
        }
    }
}

/// A choice of one of many.
pub(super) struct Choice {
    /// Id of the control.
    pub(super) id: String,
    /// What is chosen.
    pub(super) name: &'static str,
    /// Whose, spoken after the name.
    pub(super) whose: Signal<String>,
    /// What can be chosen.
    pub(super) options: Signal<Options>,
    /// The value that is chosen.
    pub(super) chosen: Signal<String>,
    /// Chooses another.
    pub(super) choose: Callback<String>,
    /// Stands in a table whose head names it.
    pub(super) in_table: bool,
}

impl Choice {
    /// The control.
    pub(super) fn control(self) -> El {
        let (options, choose, chosen) = (self.options, self.choose, self.chosen);
        let desk = use_desk();
        // A hand on the drawing chooses nothing.
        let resting = move |read: Box<dyn Fn() -> String + Send + Sync>| {
            Memo::new(move |before: Option<&String>| match before {
                Some(before) if desk.is_held() => before.clone(),
                _ => read(),
            })
        };
        let chosen = resting(Box::new(move || chosen.get()));
        let listed = resting(Box::new(move || listed(&options.get(), &chosen.get())));
        let label_class = if self.in_table {
            "dw-spoken"
        } else {
            "dw-field__label"
        };
        let label = el("label")
            .attr("for", &self.id)
            .class(label_class)
            .child(self.name)
            .child(el("span").class("dw-spoken").child(self.whose));
        let select = el("select")
            .attr("id", &self.id)
            .class("dw-choice__box")
            .html(listed.into())
            .value(chosen.into())
            .on("change", move |event| choose.run(typed(&event)));
        el("div").class("dw-choice").child(label).child(select)
    }
}

/// The options as mark-up, neighbours of one group under its head.
fn listed(options: &[ChoiceOption], chosen: &str) -> String {
    let mut out = String::new();
    for group in options.chunk_by(|a, b| a.group == b.group) {
        let head = group.first().map_or("", |one| &one.group);
        if !head.is_empty() {
            out += &format!("<optgroup label=\"{}\">", escaped(head));
        }
        for ChoiceOption { value, name, .. } in group {
            let selected = if value == chosen { " selected" } else { "" };
            let (value, name) = (escaped(value), escaped(name));
            out += &format!("<option value=\"{value}\"{selected}>{name}</option>");
        }
        if !head.is_empty() {
            out += "</optgroup>";
        }
    }
    out
}
