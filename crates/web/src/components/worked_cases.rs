//! The worked examples, each drawn small with the trouble it teaches, a click away; they say that they are examples.

use dewrun_drawing::{svg, worked_case};
use dewrun_run::Tube;
use leptos::prelude::*;

use super::parts::{When, flag, words};
use super::section_head::SectionHead;
use crate::examples::{EXAMPLES, Example};
use crate::state::{Answered, use_desk};

/// Links to the worked examples, and what the open project says of itself.
#[component]
pub(crate) fn WorkedCases(
    /// On the empty page, where they are another way in.
    #[prop(optional)]
    first: bool,
) -> impl IntoView {
    let desk = use_desk();
    let note = words(move || desk.with(|project| project.note.clone()));
    let answered = StoredValue::new(EXAMPLES.map(|example| {
        let project = example.project().ok()?;
        Answered::unranked(&project).ok()
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
    view! {
        <section class="dw-cases" aria-labelledby="cases">
            <SectionHead
                id="cases"
                name=name
                question="Example, not your site; each opens as a copy that you may spoil"
            >
                <When holds=flag(move || first)>
                    <span>"Drop or paste a project file anywhere on the page. Nothing leaves this device."</span>
                </When>
            </SectionHead>
            <p class="dw-cases__note" hidden=first>{note}</p>
            <ul class="dw-cases__list" inner_html=links />
        </section>
    }
    .into_any()
}
