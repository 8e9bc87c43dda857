//! A figure opened: its value, how it follows from its inputs and who found that; each input opens the same way.

mod inputs;
mod origin;

use dewrun_advice::{Resting, coldest_space, longest_tube, most_humid_duct_air};
use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_quantity::{Length, Temperature};
use dewrun_run::Whole;
use dewrun_run::figure::{Figure, Given, Kind, Scope, Spot, value, whole_value};

use super::formula::formula;
use super::{element, opening};
use crate::view::View;
use crate::wording::capital;

pub use origin::row_source;

/// Where the inputs of a run came from, and which of them the answer rests on.
#[derive(Debug, Clone, Copy)]
pub struct Origins<'a> {
    /// Every input with its origin.
    pub givens: &'a [Given],
    /// The assumed ones, the one that changes the answer most first.
    pub ranked: &'a [Resting],
    /// Water and air of the run, where they are answered.
    pub whole: Option<&'a Whole>,
}

/// The opened figure; `before` is the one that led to it, where it was opened from within another.
///
/// The button that closes it carries `data-close`, the one that goes back `data-back`, its head `tabindex="-1"`.
#[must_use]
pub fn opened(
    view: &View<'_>,
    origins: Origins<'_>,
    (figure, spot): (Figure, Spot),
    before: Option<Figure>,
) -> String {
    let view = &View {
        tube: spot.tube,
        ..*view
    };
    let spot = spot.in_leg(view.run);
    let back = before.map_or_else(String::new, |before| {
        let text = format!("Back to {}", before.name());
        element(
            "button",
            " type=\"button\" class=\"dw-link\" data-back",
            &text,
        )
    });
    let close = element(
        "button",
        " type=\"button\" class=\"dw-button\" data-close",
        "Close",
    );
    let body = if figure.is_given() {
        origin::told(view, origins, figure, spot)
    } else {
        inputs::table(view, origins, figure, spot)
    };
    [
        "<div class=\"dw-opened__head\">".to_owned(),
        head(view, origins, figure, spot),
        "</div><div class=\"dw-opened__body\">".to_owned(),
        body,
        format!("<p class=\"dw-opened__acts\">{back}{close}</p></div>"),
    ]
    .concat()
}

/// Value, name and place, then relation and range.
fn head(view: &View<'_>, origins: Origins<'_>, figure: Figure, spot: Spot) -> String {
    let (number, unit) = written(view, origins, figure, spot);
    let unit = element("span", " class=\"dw-unit\"", &unit);
    let ink = ink(figure);
    let mut html = format!(
        "<p class=\"dw-opened__value\" tabindex=\"-1\"><b class=\"dw-figure--{ink}\">{number}</b>\u{a0}{unit}</p>"
    );
    let name = capital(figure.name());
    let place = where_read(view, origins, figure, spot);
    let name = if place.is_empty() {
        name
    } else {
        format!("{name}, {place}")
    };
    html.push_str(&element("p", "", &name));
    let part = |name: &str, text: &str| {
        if text.is_empty() {
            return String::new();
        }
        part_name(name) + text
    };
    let relation = figure.relation();
    if !relation.is_empty() {
        let set = format!("<p class=\"dw-formula\">{}</p>", formula(relation));
        html.push_str(&part("Relation", &set));
        let holds = [figure.holds(), figure.spread()];
        let holds = holds.into_iter().filter(|text| !text.is_empty());
        let holds = holds.collect::<Vec<_>>().join("; ");
        if !holds.is_empty() {
            html.push_str(&part("Holds for", &element("p", "", &holds)));
        }
        html.push_str(&part("Source", &element("p", "", figure.source())));
    }
    html
}

/// The ink of its number: that of the water it counts.
fn ink(figure: Figure) -> &'static str {
    match figure {
        Figure::TubeFrost | Figure::LegFrost | Figure::LegRime => "frost",
        Figure::TubeSweat | Figure::LegSweat | Figure::SweatAlong => "sweat",
        _ => match figure.kind() {
            Kind::Water | Kind::WaterPerLength => "water",
            Kind::Mist => "mist",
            _ => "plain",
        },
    }
}

/// The number of a figure and its unit, escaped; a dash where it has none here.
fn written(view: &View<'_>, origins: Origins<'_>, figure: Figure, spot: Spot) -> (String, String) {
    let shown = match origin::given(view, origins, figure, spot) {
        Some(given) => Some(figure.kind().show_entered(given.value, view.style)),
        None => number(view, origins, figure, spot)
            .or_else(|| boundary(view, figure))
            .map(|number| figure.kind().show(number, view.style)),
    };
    match shown {
        Some(shown) => (shown.number, shown.unit.to_owned()),
        None => (DOES_NOT_APPLY.to_owned(), String::new()),
    }
}

/// The value of a computed figure, of water and air too.
fn number(view: &View<'_>, origins: Origins<'_>, figure: Figure, spot: Spot) -> Option<f64> {
    let steady = value(view.run, view.outcome, figure, spot);
    steady.or_else(|| whole_value(origins.whole?, figure, spot))
}

/// A limit up to which the run stays dry, searched for anew; none where there is none.
fn boundary(view: &View<'_>, figure: Figure) -> Option<f64> {
    let (run, now) = (view.run, view.outcome);
    match figure {
        Figure::BoundaryDewPoint => most_humid_duct_air(run, now, now.duct_air.temperature)
            .ok()?
            .at()
            .map(Temperature::to_celsius),
        Figure::BoundarySpace => coldest_space(run, now)
            .ok()?
            .temperature
            .at()
            .map(Temperature::to_celsius),
        Figure::BoundaryLength => longest_tube(run, now)
            .ok()?
            .length
            .at()
            .map(Length::to_metres),
        _ => None,
    }
}

/// Where a figure is read, in words; empty where its name says it.
fn where_read(view: &View<'_>, origins: Origins<'_>, figure: Figure, spot: Spot) -> String {
    let tube = match spot.tube {
        dewrun_run::Tube::Intake => "intake tube",
        dewrun_run::Tube::Exhaust => "exhaust tube",
    };
    let leg = |at: usize| {
        let space = view
            .legs()
            .get(at)
            .map_or("", |leg| view.space_name(leg.space));
        format!("leg {}, {space}", view.leg_number(at))
    };
    if let Some(dewrun_run::Place::Space(at)) = spot.place(figure, view.run) {
        return view.space_name(at).to_owned();
    }
    let is_of_water = origins
        .whole
        .is_some_and(|whole| whole_value(whole, figure, spot).is_some());
    if let Some(at_m) = spot.at_m.filter(|_| is_of_water) {
        return format!("{tube} at {}", crate::wording::metres(at_m, view.style));
    }
    match figure.scope() {
        Scope::Run => String::new(),
        Scope::Tube => tube.to_owned(),
        Scope::Leg => spot.leg.map_or_else(|| tube.to_owned(), leg),
        Scope::Point => {
            let spot = spot.looked_into(figure, view.run, view.outcome);
            let at = spot
                .at_m
                .map(|at_m| crate::wording::metres(at_m, view.style));
            format!("{tube} at {}", at.unwrap_or_default())
        }
    }
}

/// The name of a part of the panel; no heading, since a panel opens under sections of every level.
fn part_name(name: &str) -> String {
    element("p", " class=\"dw-opened__part\"", name)
}

/// A figure of the panel as a button.
fn opens(figure: Figure, spot: Spot, text: &str) -> String {
    opening(figure, spot, "", text)
}
