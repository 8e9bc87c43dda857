//! The worked examples, each drawn small with the trouble it teaches, a click away; they say that they are examples.

use dewrun_drawing::{svg, worked_case};
use dewrun_run::Tube;
use leptos::prelude::*;

use super::parts::words;
use super::section_head::section_head;
use crate::element::{El, el};
use crate::state::use_desk;
use dewrun_desk::Answered;
use dewrun_desk::{EXAMPLES, Example};

/// Links to the worked examples, and what the open project says of itself; on the empty page (`first`) they are another way in.
pub(crate) fn worked_cases(first: bool) -> El {
    let desk = use_desk();
    let note = words(move || desk.with(|project| project.note.clone()));
    let answered = StoredValue::new(EXAMPLES.map(|example| {
        let project = example.project().ok()?;
        Answered::unranked(&project.into()).ok()
    }));
    let links = words(move || {
        let style = desk.style();
        answered.with_value(|answered| {
            let cases = EXAMPLES.iter().zip(answered);
            let item = |(example, answered): (&Example, &Option<Answered>)| {
                let view = answered.as_ref().map(|answered| answered.view(Tube::Intake, style));
                let picture = view.map(|view| svg(&worked_case(&view, example.name)));
                format!(
                    "<li><a class=\"dw-cases__link\" href=\"#example={}\">{}<span>{}</span></a><p>{}</p></li>",
                    example.name,
                    picture.unwrap_or_default(),
                    example.title,
                    example.teaches
                )
            };
            cases.map(item).collect()
        })
    });
    let name = if first {
        "Or open a worked case"
    } else {
        "Worked cases"
    };
    let drop = if first {
        "Drop or paste a project file anywhere on the page. Nothing leaves this device."
    } else {
        ""
    };
    let head = section_head(
        "cases",
        name,
        "Example, not your site; each opens as a copy that you may spoil",
        [el("span").child(drop).into()],
    );
    let mut told = el("p").class("dw-cases__note").child(note);
    if first {
        told = told.attr("hidden", "");
    }
    el("section")
        .class("dw-cases")
        .attr("aria-labelledby", "cases")
        .child(head)
        .child(told)
        .child(el("ul").class("dw-cases__list").html(links))
}
