//! Pieces that components are made of, each of one type only, so that the page stays small.

use std::sync::Arc;

use leptos::prelude::*;

/// Words that follow from the state of the page.
pub(super) fn words(words: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Signal::derive(words)
}

/// Whether something holds.
pub(super) fn flag(holds: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    Signal::derive(holds)
}

/// Shows something as long as a condition holds.
#[component]
pub(super) fn When(
    /// The condition.
    holds: Signal<bool>,
    /// What is shown.
    children: ChildrenFn,
) -> impl IntoView {
    let holds = Memo::new(move |_| holds.get());
    move || holds.get().then(|| children())
}

/// A row of a table or list, made of its position.
pub(super) type Row = Arc<dyn Fn(usize) -> AnyView + Send + Sync>;

/// Rows that are told apart by their position.
#[component]
pub(super) fn Rows(
    /// How many.
    count: Signal<usize>,
    /// Makes one.
    row: Row,
) -> impl IntoView {
    view! { <For each=move || 0..count.get() key=|at| *at children=move |at| row(at) /> }
}
