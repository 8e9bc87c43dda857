//! The legs as a table: inputs at the left, what becomes of each leg at the right.

use dewrun_drawing::html;
use dewrun_run::Tube;
use leptos::prelude::*;

use super::legs::{has_no_legs, rows};
use super::parts::{flag, words};
use crate::state::use_desk;

/// The legs of both tubes.
#[component]
pub(super) fn LegsTable() -> impl IntoView {
    let desk = use_desk();
    let head = words(move || {
        let answered = desk.answered();
        html::legs_head(
            answered.as_ref().map(|answered| &answered.outcome),
            desk.style(),
        )
    });
    view! {
        <div class="dw-scroll">
            <table
                class="dw-table dw-legs-table"
                class=("dw-legs-table--stale", flag(move || desk.is_stale()))
                aria-label="The legs of both tubes in the direction of the air"
            >
                <thead inner_html=head />
                <tbody>
                    <tr>
                        <th scope="rowgroup" colspan="16" class="dw-legs-table__tube">
                            "Intake tube, from the duct to the detector"
                        </th>
                    </tr>
                    {rows(Tube::Intake)}
                </tbody>
                <tbody hidden=has_no_legs(Tube::Exhaust)>
                    <tr>
                        <th scope="rowgroup" colspan="16" class="dw-legs-table__tube">
                            "Exhaust tube, from the detector to the duct"
                        </th>
                    </tr>
                    {rows(Tube::Exhaust)}
                </tbody>
            </table>
        </div>
    }
}
