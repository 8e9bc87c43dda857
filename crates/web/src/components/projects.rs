//! The projects of one's own that were left, to go on with.

use super::parts::{button, flag, spoken};
use super::section_head::section_head;
use crate::element::{El, each, el, when};
use crate::hooks::clock::told;
use crate::state::use_desk;
use dewrun_desk::Kept;

/// The list of projects; nothing where there are none.
pub(super) fn projects() -> El {
    let desk = use_desk();
    let is_any = flag(move || desk.with_store(|store| !store.projects_aside().is_empty()));
    let list = when(is_any, move || {
        let head = section_head("projects", "Projects", "Go on with what was left", []);
        let rows = each(move || {
            desk.with_store(|store| store.projects_aside().into_iter().map(row).collect())
        });
        let list = el("ul").class("dw-projects__list").child(rows);
        vec![
            el("section")
                .class("dw-projects")
                .attr("aria-labelledby", "projects")
                .child([head, list]),
        ]
    });
    el("div").child(list)
}

fn row(kept: &Kept) -> El {
    let desk = use_desk();
    let (key, name) = (kept.key, kept.project.name.as_str());
    let name = if name.is_empty() {
        "without a name"
    } else {
        name
    };
    let runs = match kept.project.runs.len() {
        1 => String::new(),
        count => format!("{count} runs and variants, "),
    };
    let open = button("dw-projects__open", move || desk.go_on_with(key)).child(name);
    let delete = button("dw-act", move || desk.delete_project(key))
        .child("Delete")
        .child(spoken().child(format!(" {name}")));
    let beside = format!("{runs}{}", told(kept.changed));
    el("li")
        .class("dw-projects__row")
        .child(open)
        .child(el("span").class("dw-projects__when").child(beside))
        .child(delete)
}
