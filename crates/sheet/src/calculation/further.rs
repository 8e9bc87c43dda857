//! What a sheet says of a year, made where the year is at hand and carried as text to where the sheet is made.

use dewrun_document::output::{EnsembleOutput, RemediesOutput, YearOutput};
use dewrun_drawing::year::Year;
use dewrun_quantity::Style;
use dewrun_quantity::decimal::{nearest, shortest};

use super::flow::Piece;
use super::table::Table;
use super::year;

/// Between pieces, and between the parts of one.
const PIECE: char = '\u{1c}';
const PART: char = '\u{1d}';
const TABLE: &str = "table";
const BLOCK: &str = "block";
const FIGURE: &str = "figure";

/// A year as it is worked out.
#[derive(Debug, Clone, Copy)]
pub struct YearWorked<'a> {
    /// Its answer.
    pub output: &'a YearOutput,
    /// As it is drawn; none without the weather file.
    pub drawn: Option<&'a Year>,
    /// What would cure it through the year, where that was sought.
    pub remedies: Option<&'a RemediesOutput>,
    /// How sure it is, where its ensemble was run.
    pub doubt: Option<&'a EnsembleOutput>,
}

/// What a sheet says of a year.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Further(Vec<Piece>);

/// What a sheet says of a year.
#[must_use]
pub fn further(worked: &YearWorked<'_>, style: Style) -> Further {
    Further(year::pieces(worked, style))
}

impl Further {
    pub(super) fn pieces(&self) -> &[Piece] {
        &self.0
    }

    /// As text, for [`Further::of_text`].
    #[must_use]
    pub fn as_text(&self) -> String {
        let told = self.0.iter().map(|piece| match piece {
            Piece::Block(html, mm) => [BLOCK, &shortest(*mm), html].join(&PART.to_string()),
            Piece::Figure(html, mm) => [FIGURE, &shortest(*mm), html].join(&PART.to_string()),
            Piece::Table(table) => {
                let mut parts = vec![TABLE.to_owned()];
                parts.extend(table.as_parts());
                parts.join(&PART.to_string())
            }
        });
        told.collect::<Vec<_>>().join(&PIECE.to_string())
    }

    /// What a text tells; what it does not tell is left out.
    #[must_use]
    pub fn of_text(text: &str) -> Self {
        let piece = |told: &str| {
            let mut parts = told.split(PART);
            match parts.next()? {
                TABLE => Table::of_parts(&mut parts).map(Piece::Table),
                kind @ (BLOCK | FIGURE) => {
                    let mm = nearest(parts.next()?)?;
                    let html = parts.next()?.to_owned();
                    Some(if kind == BLOCK {
                        Piece::Block(html, mm)
                    } else {
                        Piece::Figure(html, mm)
                    })
                }
                _ => None,
            }
        };
        Self(text.split(PIECE).filter_map(piece).collect())
    }
}

#[cfg(test)]
mod tests {
    use super::super::table::Column;
    use super::*;

    #[test]
    fn what_is_told_as_text_comes_back() {
        let columns = vec![Column::words("a", 1.5), Column::number("b", 2.0)];
        let mut table = Table::new("Months", "by month", columns);
        table.row(&[
            "January".to_owned(),
            "<data value=\"1\">1</data>".to_owned(),
        ]);
        table.row(&["February".to_owned(), String::new()]);
        let further = Further(vec![
            Piece::Block("<p>words</p>".to_owned(), 12.25),
            Piece::Figure("<svg></svg>".to_owned(), 99.5),
            Piece::Table(table),
        ]);
        assert_eq!(Further::of_text(&further.as_text()), further, "all of it");
        assert_eq!(
            Further::of_text(""),
            Further::default(),
            "nothing is nothing"
        );
    }
}
