//! What every reader of a result must know: this is a life-safety device.

use leptos::prelude::*;

/// The foot of the page.
#[component]
pub(crate) fn Cautions() -> impl IntoView {
    view! { <footer class="dw-cautions" aria-label="Cautions" inner_html=include_str!("cautions.html") /> }
}
