//! The runs of a project and the variants of each: which is open, and what can be done with them.

use leptos::prelude::*;

use super::parts::{button, flag, section, spoken, words};
use crate::element::{El, each, el, typed};
use crate::state::{Desk, use_desk};
use dewrun_desk::{
    OpenProject, add_run, add_variant, delete_run, layouts, rename_project, rename_run, runs,
};

/// One that can be opened.
#[derive(Clone, PartialEq)]
struct Choice {
    at: usize,
    name: String,
    is_open: bool,
}

/// The words for runs and variants, and under them names and acts.
pub(crate) fn runs_bar() -> El {
    let desk = use_desk();
    let of_runs = Memo::new(move |_| desk.with(choices_of_runs));
    let of_variants = Memo::new(move |_| desk.with(choices_of_variants));
    section("dw-runs", "runs", "runs")
        .child(
            el("h2")
                .attr("id", "runs")
                .class("dw-spoken")
                .child("Runs and variants"),
        )
        .child(choice("Run", of_runs))
        .child(choice("Variant", of_variants))
        .child(acts(desk))
}

fn choices_of_runs(project: &OpenProject) -> Vec<Choice> {
    let first = layouts(project).first().copied();
    let named = |at: usize| Choice {
        at,
        name: name_of(project, at),
        is_open: Some(at) == first,
    };
    runs(project).into_iter().map(named).collect()
}

fn choices_of_variants(project: &OpenProject) -> Vec<Choice> {
    let named = |(place, at): (usize, usize)| Choice {
        at,
        name: match place {
            0 => "as drawn".to_owned(),
            _ => name_of(project, at),
        },
        is_open: at == project.run,
    };
    layouts(project)
        .into_iter()
        .enumerate()
        .map(named)
        .collect()
}

fn name_of(project: &OpenProject, at: usize) -> String {
    let name = project.runs.get(at).map(|run| run.name.trim());
    match name {
        Some("") | None => format!("Run {}", at + 1),
        Some(name) => name.to_owned(),
    }
}

/// A choice of one of several; where there is only one nothing is to be chosen.
fn choice(name: &'static str, choices: Memo<Vec<Choice>>) -> El {
    let words = each(move || {
        let choices = choices.get();
        if choices.len() < 2 {
            return Vec::new();
        }
        let label = el("span")
            .class("dw-toggle__name")
            .attr("aria-hidden", "true")
            .child(name);
        let group = el("div")
            .class("dw-toggle dw-toggle--words dw-runs__words")
            .attr("role", "group")
            .attr("aria-label", name)
            .child(label);
        vec![
            choices
                .into_iter()
                .fold(group, |group, one| group.child(word(name, one))),
        ]
    });
    el("div").child(words)
}

fn word(name: &str, choice: Choice) -> El {
    let desk = use_desk();
    button("dw-toggle__word", move || desk.show_run(choice.at))
        .attr(
            "aria-pressed",
            if choice.is_open { "true" } else { "false" },
        )
        .child(spoken().child(format!("{name} ")))
        .child(choice.name)
}

fn acts(desk: Desk) -> El {
    let act = move |word: &'static str, act: fn(&mut OpenProject)| {
        button("dw-button", move || desk.change(word, act)).child(word)
    };
    let is_only = flag(move || desk.with(|project| project.runs.len() < 2));
    let room = el("div")
        .class("dw-runs__room")
        .child(name_field(
            desk,
            "Name of the project",
            |project| project.name.clone(),
            rename_project,
        ))
        .child(name_field(
            desk,
            "Name of the open run",
            |project| {
                project
                    .open_run()
                    .map(|run| run.name.clone())
                    .unwrap_or_default()
            },
            rename_run,
        ))
        .child(act("Copy as a variant", add_variant))
        .child(act("Add a run", add_run))
        .child(act("Delete the open run", delete_run).flag("disabled", is_only));
    el("details")
        .class("dw-table-behind dw-runs__acts")
        .child(el("summary").child("Names, variants and runs"))
        .child(room)
}

/// A text field that names something.
fn name_field(
    desk: Desk,
    label: &'static str,
    read: fn(&OpenProject) -> String,
    write: fn(&mut OpenProject, &str),
) -> El {
    let name = words(move || desk.with(read));
    let input = el("input")
        .class("dw-field dw-runs__name")
        .attr("type", "text")
        .attr("maxlength", "200")
        .attr("autocomplete", "off")
        .value(name)
        .on("input", move |event| {
            desk.name(label, |project| write(project, &typed(&event)))
        })
        .on("change", move |_| desk.part());
    el("label")
        .class("dw-runs__label")
        .child(el("span").child(label))
        .child(input)
}
