//! The legs of a tube as a table.

use comfy_table::{CellAlignment, ContentArrangement, Table, presets};
use dewrun_quantity::measure::{TEMPERATURE, TUBE_LENGTH, WATER};
use dewrun_quantity::{Fall, FallForm, Style, format};
use dewrun_run::{Leg, LegOutcome, Tube};

use crate::evaluate::Answered;

/// How many columns at the left hold words.
const WORDS: usize = 2;

/// The legs of a tube: where they lie, and what air, wall and water do in them; a line each, without trailing spaces.
pub(crate) fn legs(answered: &Answered, tube: Tube, style: Style) -> String {
    let Answered {
        run,
        names,
        outcome,
        ..
    } = answered;
    let outcome = &outcome.value;
    let (legs, answer, ids, falls) = match tube {
        Tube::Intake => (
            &run.intake,
            Some(&outcome.intake),
            &names.intake,
            &names.intake_falls,
        ),
        Tube::Exhaust => (
            &run.exhaust,
            outcome.exhaust.as_ref(),
            &names.exhaust,
            &names.exhaust_falls,
        ),
    };
    let mut table = Table::new();
    table.load_style(presets::NOTHING);
    table.set_content_arrangement(ContentArrangement::Disabled);
    table.set_header(heads(style));
    let outcomes = answer.map_or(&[][..], |answer| &answer.legs);
    for (((leg, outcome), id), form) in legs.iter().zip(outcomes).zip(ids).zip(falls) {
        let space = names.spaces.get(leg.space).map_or("", String::as_str);
        let mut cells = vec![id.clone(), space.to_owned()];
        cells.extend(numbers(leg, outcome, *form, style));
        table.add_row(cells);
    }
    for column in table.column_iter_mut().skip(WORDS) {
        column.set_cell_alignment(CellAlignment::Right);
    }
    let lines = table.lines();
    lines.map(|line| format!("{}\n", line.trim_end())).collect()
}

/// The heads of the columns, each with its unit.
fn heads(style: Style) -> Vec<String> {
    let (metres, degrees, water) = (
        TUBE_LENGTH.unit(style.units).name,
        TEMPERATURE.unit(style.units).name,
        WATER.unit(style.units).name,
    );
    [
        ("leg", ""),
        ("space", ""),
        ("length", metres),
        ("fall", ""),
        ("air at end", degrees),
        ("coldest wall", degrees),
        ("dew point at end", degrees),
        ("condensate", water),
        ("of it frost", water),
        ("sweat outside", water),
        ("first wet at", metres),
    ]
    .iter()
    .map(|(name, unit)| match *unit {
        "" => (*name).to_owned(),
        unit => format!("{name}\n{unit}"),
    })
    .collect()
}

/// What stands right of the words.
fn numbers(leg: &Leg, outcome: &LegOutcome, form: FallForm, style: Style) -> [String; 9] {
    let does_not_apply = || format::DOES_NOT_APPLY.to_owned();
    let air = &outcome.air_at_end;
    [
        TUBE_LENGTH.show(leg.length, style).number,
        fall(leg, form, style),
        TEMPERATURE.show(air.temperature, style).number,
        TEMPERATURE.show(outcome.lowest_wall, style).number,
        air.dew_point.map_or_else(does_not_apply, |point| {
            TEMPERATURE.show(point, style).number
        }),
        WATER.show(outcome.condensate, style).number,
        WATER.show(outcome.frost, style).number,
        WATER.show(outcome.sweat, style).number,
        outcome.first_wet.map_or_else(does_not_apply, |first| {
            TUBE_LENGTH.show(first, style).number
        }),
    ]
}

/// The fall of a leg in the form it was typed, or the word for a steep one.
fn fall(leg: &Leg, form: FallForm, style: Style) -> String {
    let typed = Fall::of(leg.length, leg.rise, form).filter(|_| !leg.is_steep());
    let steep = if leg.rise.to_metres() < 0.0 {
        "drop"
    } else {
        "riser"
    };
    typed.map_or_else(|| steep.to_owned(), |fall| fall.show(style.mark))
}
