//! A table of a sheet: its columns with their widths, its rows with their heights.

use dewrun_drawing::escaped;
use dewrun_quantity::decimal::{nearest, shortest};
use dewrun_quantity::format::machine;

use crate::markup::{element, heading};
use crate::text_lines::{lines, words_of};

/// Width of what stands on a page, mm.
pub(super) const WIDTH_MM: f64 = 190.0;
/// Type of cells and of heads, px.
const CELL_PX: f64 = 8.0 / 0.75;
const HEAD_PX: f64 = 7.5 / 0.75;
/// Height of a line of cells and of heads, mm, and what a row takes besides.
const CELL_LINE: f64 = 3.4;
const HEAD_LINE: f64 = 3.18;
const ROW: f64 = 0.94;
/// Between two columns, mm.
const GAP: f64 = 2.0;
/// A heading with its rule, mm.
pub(super) const HEADING: f64 = 7.7;

/// How a table is told as texts: kinds of column, and what stands before the rows.
const NUMBERS: &str = "numbers";
const WORDS: &str = "words";
const ROWS: &str = "rows";

/// A column.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Column {
    name: String,
    share: f64,
    is_number: bool,
}

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Table {
    name: String,
    beside: String,
    columns: Vec<Column>,
    rows: Vec<(String, f64)>,
}

impl Column {
    /// A column of words; `share` of the page is what it takes, over the sum of all.
    pub(super) fn words(name: &str, share: f64) -> Self {
        Self {
            name: name.to_owned(),
            share,
            is_number: false,
        }
    }

    /// A column of numbers.
    pub(super) fn number(name: &str, share: f64) -> Self {
        Self {
            is_number: true,
            ..Self::words(name, share)
        }
    }

    const fn class(&self) -> &'static str {
        if self.is_number { "dw-calc__n" } else { "" }
    }
}

impl Table {
    /// An empty table under its name.
    pub(super) fn new(name: &str, beside: &str, columns: Vec<Column>) -> Self {
        Self {
            name: name.to_owned(),
            beside: beside.to_owned(),
            columns,
            rows: Vec::new(),
        }
    }

    /// A row of cells, each mark-up.
    pub(super) fn row(&mut self, cells: &[String]) {
        let all: f64 = self.columns.iter().map(|column| column.share).sum();
        let mut most = 1.0_f64;
        let mut html = String::new();
        for (column, cell) in self.columns.iter().zip(cells) {
            let wide = WIDTH_MM * column.share / all - GAP;
            most = most.max(lines(&words_of(cell), CELL_PX, wide));
            html.push_str(&element("td", column.class(), cell));
        }
        let html = element("tr", "", &html);
        self.rows.push((html, CELL_LINE * most + ROW));
    }

    pub(super) const fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    pub(super) fn rows(&self) -> usize {
        self.rows.len()
    }

    /// Height of heading and head, mm.
    pub(super) fn head_mm(&self) -> f64 {
        let all: f64 = self.columns.iter().map(|column| column.share).sum();
        let most = self.columns.iter().fold(1.0, |most: f64, column| {
            let wide = WIDTH_MM * column.share / all - GAP;
            most.max(lines(&words_of(&column.name), HEAD_PX, wide))
        });
        HEADING + HEAD_LINE * most + 1.0
    }

    /// Height of the row at a place, mm.
    pub(super) fn row_mm(&self, at: usize) -> f64 {
        self.rows.get(at).map_or(0.0, |(_, height)| *height)
    }

    /// As texts, for [`Table::of_parts`].
    pub(super) fn as_parts(&self) -> Vec<String> {
        let mut parts = vec![self.name.clone(), self.beside.clone()];
        for column in &self.columns {
            let kind = if column.is_number { NUMBERS } else { WORDS };
            parts.extend([kind.to_owned(), shortest(column.share), column.name.clone()]);
        }
        parts.push(ROWS.to_owned());
        for (html, height) in &self.rows {
            parts.extend([shortest(*height), html.clone()]);
        }
        parts
    }

    /// The table that texts tell; none where they tell none.
    pub(super) fn of_parts<'a>(parts: &mut impl Iterator<Item = &'a str>) -> Option<Self> {
        let mut table = Self::new(parts.next()?, parts.next()?, Vec::new());
        loop {
            let is_number = match parts.next()? {
                NUMBERS => true,
                WORDS => false,
                _ => break,
            };
            let share = nearest(parts.next()?)?;
            let name = parts.next()?.to_owned();
            table.columns.push(Column {
                name,
                share,
                is_number,
            });
        }
        while let Some(height) = parts.next() {
            let height = nearest(height)?;
            table.rows.push((parts.next()?.to_owned(), height));
        }
        Some(table)
    }

    /// The part of it from one row to before another.
    pub(super) fn html(&self, from: usize, to: usize) -> String {
        let all: f64 = self.columns.iter().map(|column| column.share).sum();
        let mut columns = String::new();
        let mut head = String::new();
        for column in &self.columns {
            let percent = machine(100.0 * column.share / all, 2);
            columns.push_str(&format!("<col width=\"{percent}%\">"));
            let class = if column.is_number {
                " class=\"dw-calc__n\""
            } else {
                ""
            };
            head.push_str(&format!("<th scope=\"col\"{class}>{}</th>", column.name));
        }
        let rows: String = self
            .rows
            .iter()
            .take(to)
            .skip(from)
            .map(|(row, _)| row.as_str())
            .collect();
        let beside = if from == 0 { &self.beside } else { "continued" };
        format!(
            "{}<table class=\"dw-card__table dw-calc__table\" aria-label=\"{}\"><colgroup>{columns}</colgroup><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>",
            heading(&self.name, beside),
            escaped(&self.name),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_is_as_high_as_its_longest_cell() {
        let columns = vec![Column::words("a", 1.0), Column::words("b", 1.0)];
        let mut table = Table::new("t", "", columns);
        table.row(&["one".to_owned(), "two".to_owned()]);
        table.row(&["word ".repeat(40), "two".to_owned()]);
        assert!(
            2.0 * table.row_mm(0) < table.row_mm(1),
            "forty words take lines"
        );
        assert_eq!(table.row_mm(2), 0.0, "there is no third");
    }
}
