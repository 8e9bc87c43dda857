//! Remedies of the year: the target, what is left with each smallest size, and what else comes of it.

use dewrun_document::output::{LeftOutput, RemediesOutput, RemedyOutput};
use dewrun_drawing::escaped;
use dewrun_quantity::Style;
use dewrun_run::figure::Kind;

use super::super::flow::Piece;
use super::super::number::{number, with_value};
use super::super::proof::paragraphs;
use super::super::table::{Column, Table};
use super::YearRelations;

/// Grams of a kilogram.
const GRAMS: f64 = 1e3;
/// Under the table.
const SOUGHT: &str = "Sought on the worst 200 hours, each found one confirmed by the whole year; one size smaller misses the target. After any change: measure the airflow, set the limits again, test with smoke at the duct end.";

/// The target and both tables; of a run that meets its target the sentence alone.
pub(super) fn pieces(
    told: &RemediesOutput,
    relations: &mut YearRelations,
    style: Style,
) -> Vec<Piece> {
    let mut words: Vec<String> = told.sentences.iter().map(|one| escaped(one)).collect();
    if !told.is_met {
        words.push(escaped(SOUGHT));
    }
    let relation = relations.cell("year-troubles");
    let mut pieces = vec![
        paragraphs("Remedies through the year", "", &words),
        Piece::Table(compared(told, &relation, style)),
    ];
    if !told.remedies.is_empty() {
        pieces.push(Piece::Table(beside(told)));
    }
    pieces
}

/// What is left as drawn and with each.
fn compared(told: &RemediesOutput, relation: &str, style: Style) -> Table {
    let head = |name: &str, kind: Kind, wide| {
        Column::number(&format!("{name}, {}", kind.unit(style)), wide)
    };
    let mut table = Table::new(
        "What is left through the year",
        &format!(
            "hours by relation {relation} of the year; the smallest size of each kind, or the largest where none does"
        ),
        vec![
            Column::words("No.", 8.0),
            Column::words("Remedy", 62.0),
            Column::words("target", 15.0),
            head("wet", Kind::Hours, 14.0),
            head("formed", Kind::Mass, 17.0),
            head("frost", Kind::Hours, 14.0),
            head("blind", Kind::Hours, 14.0),
            head("chamber", Kind::Relative, 16.0),
            head("trap fills in", Kind::Days, 16.0),
            Column::number("energy, kWh", 14.0),
        ],
    );
    table.row(&row(
        ["", "As drawn", if told.is_met { "met" } else { "missed" }],
        &told.before,
        None,
        style,
    ));
    for (one, place) in told.remedies.iter().zip(1_u32..) {
        let target = if one.meets_target { "met" } else { "missed" };
        let energy = one.power.as_ref().and_then(|power| power.energy_kwh);
        let name = [place.to_string(), escaped(&one.what)];
        table.row(&row(
            [&name[0], &name[1], target],
            &one.left,
            energy.map(|energy| energy.0),
            style,
        ));
    }
    table
}

fn row(words: [&str; 3], left: &LeftOutput, energy_kwh: Option<f64>, style: Style) -> Vec<String> {
    let year = left.year.as_ref();
    let chamber = year.map_or(left.entered.chamber_percent.0, |year| {
        year.most_humid_chamber_percent.0
    });
    let hours = |value: Option<f64>| number(Kind::Hours, value, style);
    let mut cells: Vec<String> = words.iter().map(|&one| one.to_owned()).collect();
    cells.extend([
        hours(year.map(|year| year.wet_hours.0)),
        with_value(year.map(|year| year.water_kg.0), |kg| {
            Kind::Mass.show(GRAMS * kg, style).number
        }),
        hours(year.map(|year| year.frost_hours.0)),
        hours(year.and_then(|year| year.blind_hours).map(|one| one.0)),
        number(Kind::Relative, Some(chamber), style),
        number(
            Kind::Days,
            year.and_then(|year| year.trap_days).map(|one| one.0),
            style,
        ),
        number(Kind::Number, energy_kwh, style),
    ]);
    cells
}

/// What work each is, and what else comes of it.
fn beside(told: &RemediesOutput) -> Table {
    let mut table = Table::new(
        "Work and side effects of the remedies",
        "numbered as above",
        vec![
            Column::words("No.", 8.0),
            Column::words("Kind of work", 62.0),
            Column::words("Reached", 34.0),
            Column::words("What else comes of it", 86.0),
        ],
    );
    for (one, place) in told.remedies.iter().zip(1_u32..) {
        let one: &RemedyOutput = one;
        table.row(&[
            place.to_string(),
            escaped(&one.work),
            escaped(&one.access),
            escaped(&one.side_effects.join("; ")),
        ]);
    }
    table
}
