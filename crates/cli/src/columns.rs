//! Words and numbers in columns, as every text answer lays them out.

use comfy_table::{CellAlignment, ContentArrangement, Table, presets};
use dewrun_quantity::Style;
use dewrun_run::figure::Figure;

/// Rows under their heads, a line each without trailing spaces: so many columns of words at the left, numbers at the right of them.
pub(crate) fn columns(
    heads: impl IntoIterator<Item = String>,
    rows: impl IntoIterator<Item = Vec<String>>,
    words: usize,
) -> String {
    let mut table = Table::new();
    table.load_style(presets::NOTHING);
    table.set_content_arrangement(ContentArrangement::Disabled);
    table.set_header(heads);
    table.add_rows(rows);
    for column in table.column_iter_mut().skip(words) {
        column.set_cell_alignment(CellAlignment::Right);
    }
    let lines = table.lines();
    lines.map(|line| format!("{}\n", line.trim_end())).collect()
}

/// The head of a column of a figure: its name and, where it has one, its unit.
pub(crate) fn head(figure: Figure, style: Style) -> String {
    match figure.kind().unit(style) {
        "" => figure.name().to_owned(),
        unit => format!("{}\n{unit}", figure.name()),
    }
}
