//! How the origin of a value is drawn, shown once by example.

use leptos::prelude::*;

/// Typed, assumed, measured, computed.
#[component]
pub(super) fn Origins() -> impl IntoView {
    view! {
        <ul class="dw-origins" aria-label="How the origin of a value is drawn">
            <li class="dw-origins__one dw-origins__one--typed">"typed"</li>
            <li class="dw-origins__one dw-origins__one--assumed">"assumed"</li>
            <li class="dw-origins__one dw-origins__one--measured">"measured"</li>
            <li>"computed: no line, opens when pressed"</li>
        </ul>
    }
}
