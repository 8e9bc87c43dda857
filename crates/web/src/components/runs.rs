//! The runs of a project and the variants of each: which is open, which is compared with it, and what can be done with them.

use leptos::prelude::*;

use super::parts::{button, flag, section, words};
use crate::element::{El, el, rows, typed};
use crate::state::{Desk, use_desk};
use dewrun_desk::{
    OpenProject, add_run, add_variant, delete_run, layouts, rename_project, rename_run, runs,
};

/// One of several: its position in the project, none for none of them, and its name.
type Named = (Option<usize>, String);

/// A choice of one of several, where there are several.
struct Choice {
    /// What is chosen.
    name: &'static str,
    options: fn(&OpenProject) -> Vec<Named>,
    chosen: fn(Desk) -> Option<usize>,
    choose: fn(Desk, Option<usize>),
}

/// The words for runs and variants, and under them names and acts.
pub(crate) fn runs_bar() -> El {
    let desk = use_desk();
    let show = |desk: Desk, at: Option<usize>| desk.show_run(at.unwrap_or(0));
    let run = Choice {
        name: "Run",
        options: |project| named(project, runs(project)),
        chosen: |desk| desk.with(|project| layouts(project).first().copied()),
        choose: show,
    };
    let variant = Choice {
        name: "Variant",
        options: |project| named(project, layouts(project)),
        chosen: |desk| desk.with(|project| Some(project.run)),
        choose: show,
    };
    let compared = Choice {
        name: "Compare with",
        options: |project| {
            let mut others = layouts(project);
            others.retain(|at| *at != project.run);
            let none = (None, "none".to_owned());
            [none].into_iter().chain(named(project, others)).collect()
        },
        chosen: |desk| desk.compared(),
        choose: |desk, at| desk.compare(at),
    };
    section("dw-runs", "runs", "runs")
        .child([run, variant, compared].map(|choice| choice.control(desk)))
        .child(acts(desk))
}

fn named(project: &OpenProject, at: Vec<usize>) -> Vec<Named> {
    let name = |at: usize| {
        let name = project.runs.get(at).map_or("", |run| run.name.trim());
        let name = if name.is_empty() {
            "without a name"
        } else {
            name
        };
        (Some(at), name.to_owned())
    };
    at.into_iter().map(name).collect()
}

impl Choice {
    fn control(self, desk: Desk) -> El {
        let Self {
            name,
            options,
            chosen,
            choose,
        } = self;
        // Where there is only one, there is nothing to choose.
        let several = |count: usize| if count < 2 { 0 } else { count };
        let count = Signal::derive(move || several(desk.with(|project| options(project).len())));
        let option = move |place: usize| {
            desk.with(|project| options(project).into_iter().nth(place))
                .unwrap_or_default()
        };
        let word = move |place: usize| {
            let is_chosen = words(move || (chosen(desk) == option(place).0).to_string());
            let word = button("dw-toggle__word", move || {
                choose(desk, untrack(|| option(place).0))
            })
            .live_attr("aria-pressed", is_chosen)
            .child(words(move || option(place).1));
            vec![word]
        };
        let label = el("span")
            .class("dw-toggle__name")
            .attr("aria-hidden", "true")
            .child(name);
        el("div")
            .class("dw-toggle dw-toggle--words dw-runs__words")
            .attr("role", "group")
            .attr("aria-label", name)
            .flag("hidden", flag(move || count.get() == 0))
            .child(label)
            .child(rows(count, word))
    }
}

fn acts(desk: Desk) -> El {
    let act = move |word: &'static str, act: fn(&mut OpenProject)| {
        button("dw-button", move || desk.change_runs(word, act)).child(word)
    };
    let is_only = flag(move || desk.with(|project| project.runs.len() < 2));
    let of_project = name_field(
        desk,
        "Name of the project",
        |project| project.name.clone(),
        rename_project,
    );
    let of_run = name_field(
        desk,
        "Name of the open run",
        |project| {
            project
                .open_run()
                .map_or_else(String::new, |run| run.name.clone())
        },
        rename_run,
    );
    let room = el("div")
        .class("dw-runs__room")
        .child([of_project, of_run])
        .child(act("Copy as a variant", add_variant))
        .child(act("Add a run", add_run))
        .child(act("Delete the open run", delete_run).flag("disabled", is_only));
    el("details")
        .class("dw-table-behind dw-runs__acts")
        .child(el("summary").attr("id", "runs").child("Runs and variants"))
        .child(room)
}

/// A text field that names something.
fn name_field(
    desk: Desk,
    label: &'static str,
    read: fn(&OpenProject) -> String,
    write: fn(&mut OpenProject, &str),
) -> El {
    let input = el("input")
        .class("dw-runs__name")
        .attr("maxlength", "200")
        .attr("autocomplete", "off")
        .value(words(move || desk.with(read)))
        .on("input", move |event| {
            desk.name(label, |project| write(project, &typed(&event)));
        })
        .on("change", move |_| desk.part());
    el("label")
        .class("dw-runs__label")
        .child(el("span").child(label))
        .child(input)
}
