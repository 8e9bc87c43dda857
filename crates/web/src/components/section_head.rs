//! The head of a section: its name, the question that it answers, and its options.

use leptos::prelude::*;

/// A ruled line, a name and a question.
#[component]
pub(super) fn SectionHead(
    /// The id by which the section is named.
    id: &'static str,
    /// Its name.
    name: &'static str,
    /// The question that it answers.
    question: &'static str,
    /// What can be chosen in it.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <div class="dw-section-head">
            <h2 id=id class="dw-section-head__name">{name}</h2>
            <p class="dw-section-head__question">{question}</p>
            <div class="dw-section-head__options">{children.map(|children| children())}</div>
        </div>
    }
}
