//! What became of a leg: the cells of a table row, the head of the table, and the card for a phone.

use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_quantity::measure::{BORE, HEAT_TRACING, TEMPERATURE, TUBE_LENGTH, WATER};
use dewrun_quantity::{MassFlow, Style};
use dewrun_run::{LegOutcome, Outcome};

use super::{column_head, element, figure_row};
use crate::view::View;
use crate::wording;

/// What became of a leg, ready to be shown.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LegFigures {
    /// Air at its end, lowest wall, dew point at its end, without units.
    pub temperatures: [String; 3],
    /// Water that forms in it, without unit.
    pub water: String,
    /// The part of it that freezes.
    pub frost: String,
    /// Water on its outside.
    pub sweat: String,
    /// Where it is wet first.
    pub wet_from: String,
    /// A bar for its water against that of the wettest leg, as SVG.
    pub bar: String,
}

/// The figures of a leg of the tube; none where it has no such leg.
#[must_use]
pub fn leg_figures(view: &View<'_>, at: usize) -> Option<LegFigures> {
    let legs = &view.answer()?.legs;
    let most = legs
        .iter()
        .map(|leg| leg.condensate)
        .fold(MassFlow::ZERO, MassFlow::max);
    Some(figures(legs.get(at)?, most, view.style))
}

fn figures(leg: &LegOutcome, most: MassFlow, style: Style) -> LegFigures {
    let water = |flow| WATER.show(flow, style).number;
    let celsius = |t| TEMPERATURE.show(t, style).number;
    let none = || DOES_NOT_APPLY.to_owned();
    let place = leg.first_wet.map(|x| TUBE_LENGTH.show(x, style).number);
    LegFigures {
        temperatures: [
            celsius(leg.air_at_end.temperature),
            celsius(leg.lowest_wall),
            leg.air_at_end.dew_point.map_or_else(none, celsius),
        ],
        water: water(leg.condensate),
        frost: water(leg.frost),
        sweat: water(leg.sweat),
        wet_from: place.unwrap_or_else(none),
        bar: bar(leg, most),
    }
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
    let (bore, celsius) = (BORE.unit(units).name, TEMPERATURE.unit(units).name);
    let (metres, water) = (TUBE_LENGTH.unit(units).name, WATER.unit(units).name);
    let plain = |name: &str| element("th", " scope=\"col\"", name);
    let only = |is_there: bool, name: &str| {
        if is_there {
            column_head(name, water)
        } else {
            String::new()
        }
    };
    [
        "<tr>".to_owned(),
        plain("Leg"),
        plain("Space"),
        column_head("Length", metres),
        column_head("Fall", ""),
        plain("Water runs"),
        column_head("Bore", bore),
        column_head("Outside", bore),
        column_head("Insulation", bore),
        column_head("Tracing", HEAT_TRACING.unit(units).name),
        column_head("Air at end", celsius),
        column_head("Lowest wall", celsius),
        column_head("Dew point at end", celsius),
        column_head("Water", water),
        only(outcome.is_some_and(has_frost), "as frost"),
        only(outcome.is_some_and(has_sweat), "Sweat"),
        column_head("Wet from", metres),
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
    let (Some(leg), Some(found)) = (view.legs().get(at), leg_figures(view, at)) else {
        return String::new();
    };
    let length = TUBE_LENGTH.show_entered(leg.length, view.style);
    let what = format!("{}, {length}", view.space_name(leg.space));
    let fall = wording::fall(view, at, leg, true);
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
        element("b", "", &found.water),
        format!("\u{a0}{unit}</span>"),
    ]
    .concat()
}

/// The other figures of a leg's card, as rows of a list.
#[must_use]
pub fn leg_card_figures(view: &View<'_>, at: usize) -> String {
    let Some(found) = leg_figures(view, at) else {
        return String::new();
    };
    let units = view.style.units;
    let with = |number: &str, unit: &str| format!("{number}\u{a0}{unit}");
    let celsius = TEMPERATURE.unit(units).name;
    let water = WATER.unit(units).name;
    let [air, wall, dew_point] = &found.temperatures;
    let only = |is_there: bool, name: &str, number: &str| {
        if is_there {
            figure_row(name, &with(number, water))
        } else {
            String::new()
        }
    };
    [
        figure_row("Air at end", &with(air, celsius)),
        figure_row("Lowest wall", &with(wall, celsius)),
        figure_row("Dew point at end", &with(dew_point, celsius)),
        figure_row(
            "Wet from",
            &with(&found.wet_from, TUBE_LENGTH.unit(units).name),
        ),
        only(has_frost(view.outcome), "as frost", &found.frost),
        only(has_sweat(view.outcome), "Sweat", &found.sweat),
    ]
    .concat()
}
