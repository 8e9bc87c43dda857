//! The worked examples, a click away; they say that they are examples.

use leptos::prelude::*;

use super::parts::words;
use super::section_head::SectionHead;
use crate::examples::EXAMPLES;
use crate::state::use_desk;

/// Links to the worked examples, and what the open project says of itself.
#[component]
pub(crate) fn WorkedCases() -> impl IntoView {
    let desk = use_desk();
    let note = words(move || desk.with(|project| project.note.clone()));
    let links: String = EXAMPLES
        .iter()
        .map(|example| {
            format!(
                "<li><a class=\"dw-cases__link\" href=\"#example={}\">{}</a><p>{}</p></li>",
                example.name, example.title, example.teaches
            )
        })
        .collect();
    view! {
        <section class="dw-cases" aria-labelledby="cases">
            <SectionHead
                id="cases"
                name="Worked cases"
                question="Examples, not your site; each opens as a copy that you may spoil"
            />
            <p class="dw-cases__note">{note}</p>
            <ul class="dw-cases__list" inner_html=links />
        </section>
    }
}
