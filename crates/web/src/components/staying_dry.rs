//! What would stay dry: the most humid duct air, the coldest space, the longest tube, one change at a time.

use std::sync::Arc;

use dewrun_advice::staying_dry;
use dewrun_drawing::{dry_limits, html};
use dewrun_run::Tube;
use leptos::prelude::*;

use super::parts::{When, flag, words};
use crate::state::{Answered, use_desk};

/// The limits of the route as it is drawn.
#[component]
pub(super) fn StayingDry(
    /// The answer, once there is time for it.
    answered: ReadSignal<Option<Arc<Answered>>>,
) -> impl IntoView {
    let desk = use_desk();
    let found = Memo::new(move |_| {
        let answered = answered.get()?;
        Some(staying_dry(&answered.run, &answered.outcome))
    });
    let table = words(move || match (answered.get(), found.get()) {
        (Some(answered), Some(Ok(found))) => {
            let view = answered.view(Tube::Intake, desk.style());
            html::staying_dry(&dry_limits(&view, &found))
        }
        _ => String::new(),
    });
    let failure = words(move || match found.get() {
        Some(Err(error)) => format!("Not found: {error}."),
        _ => String::new(),
    });
    let is_found = flag(move || matches!(found.get(), Some(Ok(_))));
    view! {
        <div role="group" aria-labelledby="staying-dry">
            <h3 id="staying-dry" class="dw-air__name">
                "What would stay dry "
                <span class="dw-air__which">"this route, one change at a time"</span>
            </h3>
            <When holds=is_found>
                <table class="dw-table dw-dry" class=("dw-stale", flag(move || desk.is_stale())) aria-labelledby="staying-dry">
                    <tbody inner_html=table />
                </table>
            </When>
            <p class="dw-air__note">{failure}</p>
        </div>
    }
    .into_any()
}
