//! How sure the year is: between what four of five plausible years lie, what makes that, and what decides.

use dewrun_document::output::EnsembleOutput;
use dewrun_drawing::escaped;
use dewrun_quantity::Style;

use dewrun_run::figure::Kind;

use super::super::flow::Piece;
use super::super::number::entered;
use super::super::proof::paragraphs;
use super::super::table::{Column, Table};
use super::shown;

/// What its quantities are called, and their units.
const QUANTITIES: [(&str, &str, &str); 9] = [
    ("water_kg", "Water formed in the tubes", "kg"),
    ("ran_off_kg", "Ran off the walls", "kg"),
    ("wet_hours", "Wet hours", "h"),
    ("mist_hours", "Hours with mist at the sensor", "h"),
    ("frost_hours", "Hours with ice on a wall", "h"),
    ("blind_hours", "Blind hours", "h"),
    ("limit_hours", "Hours beyond an airflow limit", "h"),
    ("humid_hours", "Hours above the humidity rating", "h"),
    ("trap_fillings", "Times that a trap became full", ""),
];

/// Its sentences and tables, in SI as the answer file has them.
pub(super) fn pieces(doubt: &EnsembleOutput) -> Vec<Piece> {
    let told: Vec<String> = doubt.sentences.iter().map(|one| escaped(one)).collect();
    let members = format!("{} plausible years", doubt.members);
    let mut pieces = vec![
        paragraphs("Doubt of the year", &members, &told),
        Piece::Table(spreads(doubt)),
        Piece::Table(spans(doubt)),
    ];
    if !doubt.deciding.is_empty() {
        let how: Vec<String> = doubt
            .deciding
            .iter()
            .filter_map(|one| {
                let at = usize::try_from(one.span).ok()?;
                let span = doubt.spans.get(at)?;
                let (name, field) = (escaped(&span.name), field(&span.paths));
                Some(format!(
                    "<b>{name}</b>, {field}: {}",
                    escaped(&one.how_to_measure)
                ))
            })
            .collect();
        pieces.push(paragraphs(
            "What decides the year, and how to measure it",
            "",
            &how,
        ));
    }
    pieces
}

fn spreads(doubt: &EnsembleOutput) -> Table {
    let mut table = Table::new(
        "Between what the years lie",
        "moved: by how much an end lies from that of half of the years, of the width",
        vec![
            Column::words("Quantity", 60.0),
            Column::number("as entered", 22.0),
            Column::number("one of ten under", 24.0),
            Column::number("half under", 22.0),
            Column::number("nine of ten under", 24.0),
            Column::words("", 12.0),
            Column::number("moved, %", 20.0),
        ],
    );
    let style = Style::default();
    for one in &doubt.quantities {
        let known = QUANTITIES.iter().find(|(id, ..)| *id == one.id);
        let (name, unit) = known.map_or((one.id.as_str(), ""), |(_, name, unit)| (name, unit));
        let dash = || dewrun_quantity::format::DOES_NOT_APPLY.to_owned();
        table.row(&[
            escaped(name),
            one.as_entered
                .map_or_else(dash, |value| shown(value.0, style)),
            shown(one.spread.p10.0, style),
            format!("<b>{}</b>", shown(one.spread.p50.0, style)),
            shown(one.spread.p90.0, style),
            unit.to_owned(),
            one.moved_percent
                .map_or_else(dash, |value| shown(value.0, style)),
        ]);
    }
    table
}

fn spans(doubt: &EnsembleOutput) -> Table {
    let mut table = Table::new(
        "What varies from year to year of the ensemble",
        "parts of the spread of the water formed, under 1 % left out; in the unit of the figure",
        vec![
            Column::words("Input", 60.0),
            Column::words("Field of the project", 62.0),
            Column::number("low", 16.0),
            Column::number("usual", 16.0),
            Column::number("high", 16.0),
            Column::number("part, %", 16.0),
        ],
    );
    let style = Style::default();
    let shares = doubt.quantities.iter().find(|one| one.id == "water_kg");
    for (at, span) in doubt.spans.iter().enumerate() {
        let share = shares.and_then(|one| {
            let is_it = |share: &&dewrun_document::output::SpanShareOutput| {
                usize::try_from(share.span).is_ok_and(|span| span == at)
            };
            one.shares.iter().find(is_it)
        });
        let share = share.map_or_else(String::new, |one| shown(one.share_percent.0, style));
        let value = |value: f64| {
            // How far a relation is off was computed, and has as many digits as it will.
            if span.paths.is_empty() {
                shown(value, style)
            } else {
                entered(Kind::Number, value, style)
            }
        };
        table.row(&[
            escaped(&span.name),
            field(&span.paths),
            value(span.low.0),
            value(span.usual.0),
            value(span.high.0),
            share,
        ]);
    }
    table
}

/// The first field that holds it, and how many do besides.
fn field(paths: &[String]) -> String {
    let Some((first, others)) = paths.split_first() else {
        return String::new();
    };
    // A line may break behind a point.
    let first = escaped(first).replace('.', ".\u{200b}");
    match others.len() {
        0 => first,
        more => format!("{first} and {more} more"),
    }
}
