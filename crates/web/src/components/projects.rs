//! The projects of one's own that were left, to go on with.

use leptos::prelude::*;

use super::parts::{button, flag, spoken};
use super::section_head::section_head;
use crate::element::{El, each, el, when};
use crate::hooks::clock::told;
use crate::state::use_desk;
use dewrun_desk::Kept;

/// One project as it is listed.
#[derive(Clone, PartialEq)]
struct Row {
    key: u64,
    name: String,
    beside: String,
}

/// The list of projects; nothing where there are none.
pub(super) fn projects() -> El {
    let desk = use_desk();
    let listed = Memo::new(move |_| desk.with_store(|store| rows(&store.projects_aside())));
    let list = when(
        flag(move || listed.with(|rows| !rows.is_empty())),
        move || {
            let head = section_head("projects", "Projects", "Go on with what was left", []);
            let rows = each(move || listed.get().into_iter().map(row).collect());
            let list = el("ul").class("dw-projects__list").child(rows);
            vec![
                el("section")
                    .class("dw-projects")
                    .attr("aria-labelledby", "projects")
                    .child([head, list]),
            ]
        },
    );
    el("div").child(list)
}

fn rows(projects: &[&Kept]) -> Vec<Row> {
    let row = |kept: &&Kept| {
        let project = &kept.project;
        let runs = match project.runs.len() {
            1 => String::new(),
            count => format!("{count} runs and variants, "),
        };
        Row {
            key: kept.key,
            name: project.name.clone(),
            beside: format!("{runs}{}", told(kept.changed)),
        }
    };
    projects.iter().map(row).collect()
}

fn row(row: Row) -> El {
    let desk = use_desk();
    let Row { key, name, beside } = row;
    let open = button("dw-projects__open", move || desk.go_on_with(key)).child(name.as_str());
    let delete = button("dw-act", move || desk.delete_project(key))
        .child("Delete")
        .child(spoken().child(format!(" {name}")));
    el("li")
        .class("dw-projects__row")
        .child(open)
        .child(el("span").class("dw-projects__when").child(beside))
        .child(delete)
}
