//! The profile as a table: every place at which a leg begins or ends, and some between.

use dewrun_quantity::measure::{TEMPERATURE, TUBE_LENGTH, WATER_PER_LENGTH};
use dewrun_run::{ProfilePoint, Tube};
use leptos::prelude::*;

use crate::state::use_desk;

/// Rows of a table that still reads as one.
const ROWS: usize = 24;

/// Temperatures and water along a tube.
#[component]
pub(crate) fn ProfileTable(
    /// The tube.
    tube: Memo<Tube>,
) -> impl IntoView {
    let desk = use_desk();
    let head = move |name: &'static str, unit: &'static str| {
        view! { <th scope="col" class="dw-number">{name}<br /><span class="dw-unit">{unit}</span></th> }
    };
    let rows = move || {
        let answered = desk.answered()?;
        let style = desk.style();
        let answer = answered.view(tube.get(), style).answer()?;
        let rows = few(&answer.profile).map(|point| {
            let celsius = |t| TEMPERATURE.show(t, style).number;
            let dew_point = point.dew_point.map_or_else(|| "–".to_owned(), celsius);
            view! {
                <tr>
                    <th scope="row" class="dw-number">{TUBE_LENGTH.show(point.x, style).number}</th>
                    <td class="dw-number">{celsius(point.air)}</td>
                    <td class="dw-number">{celsius(point.inner_wall)}</td>
                    <td class="dw-number">{dew_point}</td>
                    <td class="dw-number">{WATER_PER_LENGTH.show(point.deposit, style).number}</td>
                </tr>
            }
        });
        Some(rows.collect_view())
    };
    let temperature = move || TEMPERATURE.unit(desk.style().units).name;
    view! {
        <div class="dw-scroll" role="region" aria-label="The profile as a table" tabindex="0">
            <table class="dw-table">
                <caption class="dw-spoken">"Temperatures and water formed along the tube"</caption>
                <thead>
                    <tr>
                        {move || head("Along the tube", TUBE_LENGTH.unit(desk.style().units).name)}
                        {move || head("Air", temperature())}
                        {move || head("Inner wall", temperature())}
                        {move || head("Dew point", temperature())}
                        {move || head("Water formed", WATER_PER_LENGTH.unit(desk.style().units).name)}
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

/// Ends of legs, and every so manieth point between.
fn few(profile: &[ProfilePoint]) -> impl Iterator<Item = &ProfilePoint> {
    let every = profile.len().div_ceil(ROWS).max(1);
    profile
        .iter()
        .enumerate()
        .filter_map(move |(place, point)| {
            let next = profile.get(place + 1);
            let before = place.checked_sub(1).and_then(|before| profile.get(before));
            let is_end = next.is_none_or(|next| next.leg != point.leg)
                || before.is_none_or(|before| before.leg != point.leg);
            (is_end || place % every == 0).then_some(point)
        })
}
