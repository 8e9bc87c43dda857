//! The worked examples, a click away; they say that they are examples.

use leptos::prelude::*;

use super::section_head::SectionHead;
use crate::examples::EXAMPLES;
use crate::state::use_desk;

/// Links to the worked examples, and what the open project says of itself.
#[component]
pub(crate) fn WorkedCases() -> impl IntoView {
    let desk = use_desk();
    let note = move || desk.with(|project| project.note.clone());
    let links = EXAMPLES.into_iter().map(|example| {
        view! {
            <li class="dw-cases__case">
                <a class="dw-cases__link" href=format!("#example={}", example.name)>{example.title}</a>
                <p class="dw-cases__teaches">{example.teaches}</p>
            </li>
        }
    });
    view! {
        <section class="dw-cases" aria-labelledby="cases">
            <SectionHead
                id="cases"
                name="Worked cases"
                question="Examples, not your site; each opens as a copy that you may spoil"
            />
            <ul class="dw-cases__list">{links.collect_view()}</ul>
            <p class="dw-cases__note">{note}</p>
        </section>
    }
}
