//! What an opened figure is computed from, as a table.

use dewrun_advice::Resting;
use dewrun_run::figure::{Figure, Spot};

use super::super::formula::formula;
use super::{Origins, number, opens, origin, written};
use crate::answer::assumed_name;
use crate::svg::escaped;
use crate::view::View;
use crate::wording::capital;

/// So many deciding values head the table.
const DECIDING: usize = 3;

/// The inputs that apply to this run, those first that decide the answer.
pub(super) fn table(view: &View<'_>, origins: Origins<'_>, figure: Figure, spot: Spot) -> String {
    let here = spot.looked_into(figure, view.run, view.outcome);
    let entered = |input| as_entered(view, origins, input, here);
    let mut inputs: Vec<(Figure, Spot)> = figure
        .inputs()
        .map(|input| (entered(input), here))
        .collect();
    if is_of_answer(figure) {
        let deciding = origins.ranked.iter().filter(|one| one.decides);
        for one in deciding
            .take(DECIDING)
            .collect::<Vec<_>>()
            .into_iter()
            .rev()
        {
            lead(view, one, &mut inputs);
        }
    }
    inputs.retain(|&(input, spot)| is_there(view, origins, input, spot));
    let rows: String = inputs
        .iter()
        .map(|&(input, spot)| row(view, origins, input, spot))
        .collect();
    let head = [
        "<span class=\"dw-spoken\">Symbol</span>",
        "Input",
        "Value",
        "Origin",
        "Range, low to high",
        "Source",
    ]
    .map(|name| format!("<th scope=\"col\" role=\"columnheader\">{name}</th>"))
    .concat();
    format!(
        "<table role=\"table\" class=\"dw-table dw-opened__inputs\" aria-label=\"Inputs of the figure\"><thead role=\"rowgroup\"><tr role=\"row\">{head}</tr></thead><tbody role=\"rowgroup\">{rows}</tbody></table><p class=\"dw-opened__note\">Each value opens in the same way.</p>"
    )
}

/// The state of the duct air by the very quantity that was entered, where it is one.
fn as_entered(view: &View<'_>, origins: Origins<'_>, input: Figure, spot: Spot) -> Figure {
    let entered = match input {
        Figure::InletTemperature => Figure::DuctTemperature,
        Figure::InletDewPoint => Figure::DuctDewPoint,
        _ => return input,
    };
    if origin::given(view, origins, entered, spot).is_some() {
        entered
    } else {
        input
    }
}

/// Figures that an answer is told by: what decides it is shown with them, whatever else they follow from.
fn is_of_answer(figure: Figure) -> bool {
    use Figure as F;
    matches!(
        figure,
        F::TubeWater
            | F::TubeFrost
            | F::TubeSweat
            | F::WetFrom
            | F::WetTo
            | F::FrostFrom
            | F::LegWater
            | F::SensorMist
    )
}

/// Puts a deciding value first.
fn lead(view: &View<'_>, one: &Resting, inputs: &mut Vec<(Figure, Spot)>) {
    let place = one.assumed.places.first().copied();
    let Some(spot) = place.and_then(|place| Spot::of_place(place, view.run)) else {
        return;
    };
    let is_it = |&(input, at): &(Figure, Spot)| {
        input == one.assumed.figure
            && at
                .place(input, view.run)
                .is_some_and(|at| one.assumed.places.contains(&at))
    };
    let known = inputs.iter().position(is_it).map(|at| inputs.remove(at));
    inputs.insert(0, known.unwrap_or((one.assumed.figure, spot)));
}

/// An input that the run has, or a figure that has a value here.
fn is_there(view: &View<'_>, origins: Origins<'_>, input: Figure, spot: Spot) -> bool {
    if input.is_given() {
        return origin::given(view, origins, input, spot).is_some();
    }
    number(view, origins, input, spot).is_some() || 0 < input.inputs().count()
}

fn row(view: &View<'_>, origins: Origins<'_>, input: Figure, spot: Spot) -> String {
    let (number, unit) = written(view, origins, input, spot);
    let symbol = formula(input.symbol());
    let name = capital(&assumed_name(
        &view.names.spaces,
        input,
        spot.place(input, view.run),
    ));
    let name = escaped(&name);
    let source = origin::source(view, origins, input, spot);
    let button = opens(input, spot, &number);
    let cells = [
        format!("<td role=\"cell\"><i class=\"dw-formula\">{symbol}</i></td>"),
        format!("<th scope=\"row\" role=\"rowheader\">{name}</th>"),
        format!(
            "<td role=\"cell\" class=\"dw-number\"><span class=\"dw-origin dw-origin--{}\">{button}</span>\u{a0}<span class=\"dw-unit\">{unit}</span></td>",
            source.origin
        ),
        format!("<td role=\"cell\">{}</td>", source.origin),
        format!("<td role=\"cell\">{}</td>", escaped(&source.range)),
        format!("<td role=\"cell\">{}</td>", escaped(&source.text)),
    ]
    .concat();
    let Some(how) = decides(view, origins, input, spot) else {
        return format!("<tr role=\"row\">{cells}</tr>");
    };
    format!(
        "<tr role=\"row\" class=\"dw-opened__deciding\">{cells}</tr><tr role=\"row\" class=\"dw-opened__deciding dw-opened__how\"><td role=\"cell\"></td><td role=\"cell\" colspan=\"5\">Decides the answer. {how}</td></tr>"
    )
}

/// How a value that decides the answer is measured; none for any other.
fn decides(
    view: &View<'_>,
    origins: Origins<'_>,
    input: Figure,
    spot: Spot,
) -> Option<&'static str> {
    let place = spot.place(input, view.run)?;
    let found = origins.ranked.iter().find(|one| {
        one.decides && one.assumed.figure == input && one.assumed.places.contains(&place)
    });
    found.map(|one| one.assumed.figure.how_to_measure())
}
