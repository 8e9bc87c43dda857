//! What became of a leg: the cells of a table row, the head of the table, and the card for a phone.

use core::cmp::Ordering;

use dewrun_quantity::format::{DOES_NOT_APPLY, fixed};
use dewrun_quantity::measure::{BORE, HEAT_TRACING, TUBE_LENGTH, WATER};
use dewrun_quantity::{Length, MassFlow, Style, Units};
use dewrun_run::figure::{Figure, Spot, value};
use dewrun_run::{Leg, LegOutcome, Outcome};

use super::{column_head, element, figure_row, opening};
use crate::view::View;
use crate::wording::{self, capital};

/// What is told of a leg, in the order of the table.
const FIGURES: [Figure; 7] = [
    Figure::AirAtEnd,
    Figure::LowestWall,
    Figure::DewPointAtEnd,
    Figure::LegWater,
    Figure::LegFrost,
    Figure::LegSweat,
    Figure::LegWetFrom,
];

/// What became of a leg, cell by cell of its row in the table, each a figure that opens; empty where the tube has no such leg.
#[must_use]
pub fn leg_cells(view: &View<'_>, at: usize) -> [String; 7] {
    FIGURES.map(|figure| {
        let Some(number) = number(view, at, figure) else {
            return String::new();
        };
        let opens = opening(figure, Spot::leg(view.tube, at), "", &number);
        match figure {
            Figure::LegWater => {
                let bar = bar_of(view, at);
                format!("<b>{opens}</b><span class=\"dw-legs-table__bar\">{bar}</span>")
            }
            _ => opens,
        }
    })
}

/// The number of a figure of a leg, without unit; none where the tube has no such leg.
fn number(view: &View<'_>, at: usize, figure: Figure) -> Option<String> {
    view.answer()?.legs.get(at)?;
    let found = value(view.run, view.outcome, figure, Spot::leg(view.tube, at));
    Some(found.map_or_else(
        || DOES_NOT_APPLY.to_owned(),
        |number| figure.kind().show(number, view.style).number,
    ))
}

/// A bar for the water of a leg against that of the wettest, as SVG.
fn bar_of(view: &View<'_>, at: usize) -> String {
    let legs = view.answer().map_or(&[][..], |answer| &answer.legs);
    let most = legs
        .iter()
        .map(|leg| leg.condensate)
        .fold(MassFlow::ZERO, MassFlow::max);
    legs.get(at).map(|leg| bar(leg, most)).unwrap_or_default()
}

/// A bar from an upright line.
fn bar(leg: &LegOutcome, most: MassFlow) -> String {
    let share = if most == MassFlow::ZERO {
        0.0
    } else {
        leg.condensate / most
    };
    let class = if leg.condensate < leg.frost * 2.0 {
        "dw-s-frost"
    } else {
        "dw-s-water"
    };
    let mut width = String::new();
    crate::path::push_number(&mut width, 54.0 * share);
    format!(
        "<svg class=\"dw-drawing dw-bar\" viewBox=\"0 0 56 10\" width=\"56\" height=\"10\" aria-hidden=\"true\"><path class=\"{class}\" d=\"M1 1h{width}v8h-{width}z\"/><path class=\"dw-d-measure\" d=\"M.6 0v10\"/></svg>"
    )
}

/// The head of the table of legs, frost and sweat only where there is any.
#[must_use]
pub fn legs_head(outcome: Option<&Outcome>, style: Style) -> String {
    let units = style.units;
    let bore = BORE.unit(units).name;
    let plain = |name: &str| element("th", " scope=\"col\"", name);
    let result = |figure: Figure| {
        let is_there = match figure {
            Figure::LegFrost => outcome.is_some_and(has_frost),
            Figure::LegSweat => outcome.is_some_and(has_sweat),
            _ => true,
        };
        if is_there {
            column_head(&capital(figure.name()), figure.kind().unit(style))
        } else {
            String::new()
        }
    };
    [
        "<tr>".to_owned(),
        plain("Leg"),
        plain("Space"),
        column_head("Length", TUBE_LENGTH.unit(units).name),
        column_head("Fall", ""),
        plain("Water runs"),
        column_head("Bore", bore),
        column_head("Outside", bore),
        column_head("Insulation", bore),
        column_head("Tracing", HEAT_TRACING.unit(units).name),
        FIGURES.map(result).concat(),
        "</tr>".to_owned(),
    ]
    .concat()
}

/// Whether there is frost in any leg.
#[must_use]
pub fn has_frost(outcome: &Outcome) -> bool {
    legs(outcome).any(|leg| leg.frost != MassFlow::ZERO)
}

/// Whether any leg sweats.
#[must_use]
pub fn has_sweat(outcome: &Outcome) -> bool {
    legs(outcome).any(|leg| leg.sweat != MassFlow::ZERO)
}

fn legs(outcome: &Outcome) -> impl Iterator<Item = &LegOutcome> {
    let tubes = core::iter::once(&outcome.intake).chain(outcome.exhaust.as_ref());
    tubes.flat_map(|tube| &tube.legs)
}

/// The head of a leg's card: number, space, length, fall, and what forms in it.
#[must_use]
pub fn leg_card_head(view: &View<'_>, at: usize) -> String {
    card_head(view, at, |leg| wording::fall(view, at, leg, true))
}

/// The same for whoever fits the tube with a level in hand: by how much the leg falls or rises from end to end.
#[must_use]
pub fn leg_fitted_head(view: &View<'_>, at: usize) -> String {
    card_head(view, at, |leg| {
        let rise = leg.rise;
        let way = match rise.partial_cmp(&Length::ZERO) {
            Some(Ordering::Less) => "falls",
            Some(Ordering::Greater) => "rises",
            _ => return "level".to_owned(),
        };
        let height = rise.max(-rise);
        let mark = view.style.mark;
        // No finer than a level shows it.
        let shown = match view.style.units {
            Units::Si => fixed(height.to_millimetres(), 0, mark) + "\u{a0}mm",
            Units::InchPound => fixed(height.to_inches(), 1, mark) + "\u{a0}in",
        };
        format!("{way} {shown}")
    })
}

fn card_head(view: &View<'_>, at: usize, fall: impl FnOnce(&Leg) -> String) -> String {
    let (Some(leg), Some(water)) = (view.legs().get(at), number(view, at, Figure::LegWater)) else {
        return String::new();
    };
    let length = TUBE_LENGTH.show_entered(leg.length, view.style);
    let what = format!("{}, {length}", view.space_name(leg.space));
    let fall = fall(leg);
    let unit = WATER.unit(view.style.units).name;
    [
        element(
            "b",
            " class=\"dw-leg-card__number\"",
            &view.leg_number(at).to_string(),
        ),
        "<span class=\"dw-leg-card__what\">".to_owned(),
        element("span", "", &what),
        element("span", " class=\"dw-leg-card__fall\"", &fall),
        "</span><span class=\"dw-leg-card__water\">".to_owned(),
        element("b", "", &water),
        format!("\u{a0}{unit}</span>"),
    ]
    .concat()
}

/// The other figures of a leg's card, as rows of a list.
#[must_use]
pub fn leg_card_figures(view: &View<'_>, at: usize) -> String {
    let row = |figure: Figure| {
        let is_there = match figure {
            Figure::LegFrost => has_frost(view.outcome),
            Figure::LegSweat => has_sweat(view.outcome),
            _ => true,
        };
        let number = number(view, at, figure).filter(|_| is_there)?;
        let unit = figure.kind().unit(view.style);
        let text = format!("{number}\u{a0}{unit}");
        let spot = Spot::leg(view.tube, at);
        Some(figure_row(&capital(figure.name()), figure, spot, &text))
    };
    FIGURES.into_iter().filter_map(row).collect()
}
