//! The sign of the page: a tube with a low point in which water stands.

use leptos::prelude::*;

/// The sign alone, for those who see it.
#[component]
pub(crate) fn Wordmark() -> impl IntoView {
    view! {
        <svg class="dw-wordmark" viewBox="0 0 56 30" width="28" height="15" aria-hidden="true">
            <path class="dw-wordmark__water" d="M21 18.5 28 23l7-4.5z" />
            <path class="dw-wordmark__tube" d="M2 2l26 17 26-12M2 11l26 17 26-12" />
        </svg>
    }
}
