//! Remedies compared: what is left with each, beside what there is now.

use dewrun_advice::Left;
use dewrun_drawing::{escaped, html};
use dewrun_quantity::Style;
use dewrun_run::figure::{Figure, Kind};

use super::Worked;
use super::flow::Piece;
use super::number::{count, number};
use super::table::{Column, Table};

/// What is told of each.
const FIGURES: [(&str, Figure); 5] = [
    ("water forms", Figure::TubeWater),
    ("stands", Figure::PoolStanding),
    ("sealed after", Figure::TimeToSeal),
    ("into the detector", Figure::RunsOut),
    ("into traps", Figure::TrapWater),
];

/// The table; nothing where no remedy is known.
pub(super) fn pieces(worked: &Worked<'_>, style: Style) -> Vec<Piece> {
    let Some(first) = worked.remedies.first() else {
        return Vec::new();
    };
    let mut columns = vec![Column::words("Remedy", 74.0)];
    columns.extend(FIGURES.map(|(name, figure)| {
        Column::number(&format!("{name}, {}", figure.kind().unit(style)), 18.0)
    }));
    columns.push(Column::number("legs that sag", 14.0));
    columns.push(Column::words("blind", 14.0));
    let mut table = Table::new(
        "Remedies compared",
        "the smallest of each kind that helps; what is left with it, steady",
        columns,
    );
    table.row(&row("As drawn", &first.before, style));
    for remedy in worked.remedies {
        let [what, _] = html::remedy_words(worked.told.run, remedy, style);
        table.row(&row(&what, &remedy.after, style));
    }
    vec![Piece::Table(table)]
}

fn row(what: &str, left: &Left, style: Style) -> Vec<String> {
    let values = [
        Some(left.forms.to_grams_per_hour()),
        Some(left.standing.to_grams()),
        left.sealed.map(dewrun_quantity::Time::to_hours),
        Some(left.into_detector.to_grams_per_hour()),
        Some(left.into_traps.to_grams_per_hour()),
    ];
    let mut cells = vec![escaped(what)];
    let numbers = FIGURES.iter().zip(values);
    cells.extend(numbers.map(|((_, figure), value)| {
        let kind: Kind = figure.kind();
        number(kind, value, style)
    }));
    cells.push(count(left.sagging));
    cells.push(if left.blind.is_some() { "may be" } else { "no" }.to_owned());
    cells
}
