//! The legs of a tube as a table.

use dewrun_drawing::fall_number;
use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{Fall, FallForm, Style, format};
use dewrun_run::figure::{Figure, Spot, value};
use dewrun_run::{Leg, Tube};

use crate::columns::{columns, head};
use crate::evaluate::Answered;

/// How many columns at the left hold words.
const WORDS: usize = 2;

/// What stands right of the words; a number without an entry has no place here.
const FIGURES: [Figure; 9] = [
    Figure::Length,
    Figure::Rise,
    Figure::AirAtEnd,
    Figure::LowestWall,
    Figure::DewPointAtEnd,
    Figure::LegWater,
    Figure::LegFrost,
    Figure::LegSweat,
    Figure::LegWetFrom,
];

/// The legs of a tube: where they lie, and what air, wall and water do in them; a line each, without trailing spaces.
pub(crate) fn legs(answered: &Answered, tube: Tube, style: Style) -> String {
    let Answered { run, names, .. } = answered;
    let (legs, ids, falls) = match tube {
        Tube::Intake => (&run.intake, &names.intake, &names.intake_falls),
        Tube::Exhaust => (&run.exhaust, &names.exhaust, &names.exhaust_falls),
    };
    let rows = legs.iter().zip(ids).zip(falls).enumerate();
    let rows = rows.map(|(at, ((leg, id), form))| {
        let space = names.spaces.get(leg.space).map_or("", String::as_str);
        let mut cells = vec![id.clone(), space.to_owned()];
        let spot = Spot::leg(tube, at);
        cells.extend(numbers(answered, spot, leg, *form, style));
        cells
    });
    columns(heads(style), rows, WORDS)
}

/// The heads of the columns, each with its unit.
fn heads(style: Style) -> Vec<String> {
    let words = ["leg", "space"].map(str::to_owned);
    let figures = FIGURES.map(|figure| match figure {
        // A rise is told as the fall that people set.
        Figure::Rise => "fall".to_owned(),
        _ => head(figure, style),
    });
    words.into_iter().chain(figures).collect()
}

/// What stands right of the words.
fn numbers(
    answered: &Answered,
    spot: Spot,
    leg: &Leg,
    form: FallForm,
    style: Style,
) -> [String; 9] {
    FIGURES.map(|figure| match figure {
        Figure::Length => TUBE_LENGTH.show(leg.length, style).number,
        Figure::Rise => fall(leg, form, style),
        _ => number(answered, figure, spot, style),
    })
}

/// The number of a figure, without unit.
fn number(answered: &Answered, figure: Figure, spot: Spot, style: Style) -> String {
    let found = value(&answered.run, &answered.outcome.value, figure, spot);
    found.map_or_else(
        || format::DOES_NOT_APPLY.to_owned(),
        |found| figure.kind().show(found, style).number,
    )
}

/// The fall of a leg in the form it was typed, or the word for a steep one.
fn fall(leg: &Leg, form: FallForm, style: Style) -> String {
    let typed = Fall::of(leg.length, leg.rise, form).filter(|_| !leg.is_steep());
    let steep = if leg.rise.to_metres() < 0.0 {
        "drop"
    } else {
        "riser"
    };
    typed.map_or_else(
        || steep.to_owned(),
        |fall| fall_number(fall.number, fall, style),
    )
}
