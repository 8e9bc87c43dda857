//! What becomes of each leg of both tubes.

use dewrun_drawing::escaped;
use dewrun_quantity::Style;
use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot, value};

use super::Worked;
use super::flow::Piece;
use super::number::number;
use super::relations::Relations;
use super::table::{Column, Table};

const FIGURES: [Figure; 9] = [
    Figure::LegFrom,
    Figure::LegTo,
    Figure::AirAtEnd,
    Figure::LowestWall,
    Figure::DewPointAtEnd,
    Figure::LegWater,
    Figure::LegFrost,
    Figure::LegSweat,
    Figure::HeatToSpace,
];

/// The table of legs, those of the exhaust after those of the intake.
pub(super) fn pieces(worked: &Worked<'_>, relations: &mut Relations, style: Style) -> Vec<Piece> {
    let mut columns = vec![Column::words("Leg", 8.0), Column::words("Space", 40.0)];
    columns.extend(FIGURES.map(|figure| {
        let name = match figure {
            Figure::LegFrom => "begins at",
            Figure::LegTo => "ends at",
            _ => figure.name(),
        };
        Column::number(&head(name, figure, relations, style), 16.0)
    }));
    let mut table = Table::new(
        "Legs, steady",
        "exhaust legs go on in number; in brackets the relation",
        columns,
    );
    let told = &worked.told;
    for (tube, legs, before) in [
        (Tube::Intake, &told.run.intake, 0),
        (Tube::Exhaust, &told.run.exhaust, told.run.intake.len()),
    ] {
        for (at, leg) in legs.iter().enumerate() {
            let space = told.names.spaces.get(leg.space);
            let mut cells = vec![
                (before + at + 1).to_string(),
                escaped(space.map_or("", String::as_str)),
            ];
            cells.extend(FIGURES.map(|figure| {
                let found = value(told.run, told.outcome, figure, Spot::leg(tube, at));
                number(figure.kind(), found, style)
            }));
            table.row(&cells);
        }
    }
    vec![Piece::Table(table)]
}

/// The head of a column: what, in which unit, by which relation.
pub(super) fn head(name: &str, figure: Figure, relations: &mut Relations, style: Style) -> String {
    let unit = figure.kind().unit(style);
    let comma = if unit.is_empty() { "" } else { ", " };
    let number = relations.cell(figure);
    let number = if number.is_empty() {
        number
    } else {
        format!(" ({number})")
    };
    format!("{}{comma}{}{number}", escaped(name), escaped(unit))
}
