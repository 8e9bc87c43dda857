//! The relations that results follow from, numbered as they are met, down to what was entered.

use dewrun_drawing::escaped;
use dewrun_drawing::html::formula;
use dewrun_run::figure::Figure;

use super::flow::Piece;
use super::table::{Column, Table};

/// Relations in the order of their numbers; figures that follow in the same way share one.
#[derive(Debug, Default)]
pub(super) struct Relations(Vec<Vec<Figure>>);

impl Relations {
    /// The number of the relation of a figure; none of an input.
    pub(super) fn number(&mut self, figure: Figure) -> Option<usize> {
        if figure.relation().is_empty() {
            return None;
        }
        let is_it = |known: &Vec<Figure>| known.first().is_some_and(|one| is_same(*one, figure));
        let at = match self.0.iter().position(is_it) {
            Some(at) => at,
            None => {
                self.0.push(Vec::new());
                self.0.len() - 1
            }
        };
        let sharing = self.0.get_mut(at)?;
        if !sharing.contains(&figure) {
            sharing.push(figure);
        }
        Some(at + 1)
    }

    /// The same as it stands in a cell.
    pub(super) fn cell(&mut self, figure: Figure) -> String {
        self.number(figure)
            .map_or_else(String::new, |number| number.to_string())
    }

    /// All of them with those that they follow from, to the inputs.
    pub(super) fn piece(mut self) -> Piece {
        let mut at = 0;
        while let Some(figures) = self.0.get(at) {
            let inputs: Vec<Figure> = figures.iter().flat_map(|one| one.inputs()).collect();
            for input in inputs {
                self.number(input);
            }
            at += 1;
        }
        let mut table = Table::new(
            "Relations",
            "as the results above refer to them; in brackets the number of the relation by which a quantity follows",
            vec![
                Column::words("No.", 8.0),
                Column::words("Quantity", 44.0),
                Column::words("How it follows", 70.0),
                Column::words("Holds for, known spread", 36.0),
                Column::words("Source", 32.0),
            ],
        );
        for at in 0..self.0.len() {
            if let Some(cells) = self.row(at) {
                table.row(&cells);
            }
        }
        Piece::Table(table)
    }

    fn row(&mut self, at: usize) -> Option<[String; 5]> {
        let figures = self.0.get(at)?.clone();
        let first = figures.first()?;
        let names = figures.iter().map(|one| {
            let symbol = formula(one.symbol());
            format!("{} <i>{symbol}</i>", escaped(one.name()))
        });
        let mut from: Vec<String> = Vec::new();
        for input in first.inputs() {
            let symbol = formula(input.symbol());
            from.push(match self.number(input) {
                Some(number) => format!("<i>{symbol}</i>\u{a0}({number})"),
                None => format!("<i>{symbol}</i>\u{a0}{}", escaped(input.name())),
            });
        }
        let from = if from.is_empty() {
            String::new()
        } else {
            format!("; from {}", from.join(", "))
        };
        let holds = [first.holds(), first.spread()];
        let holds = holds.into_iter().filter(|words| !words.is_empty());
        Some([
            format!("<b>{}</b>", at + 1),
            names.collect::<Vec<_>>().join("; "),
            format!("{}{from}", formula(first.relation())),
            escaped(&holds.collect::<Vec<_>>().join("; ")),
            escaped(first.source()),
        ])
    }
}

fn is_same(one: Figure, other: Figure) -> bool {
    one == other
        || (one.relation() == other.relation()
            && one.source() == other.source()
            && 12 < one.relation().len())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_count_from_one_and_what_follows_alike_shares_one() {
        let mut relations = Relations::default();
        assert_eq!(relations.number(Figure::LegWater), Some(1), "the first");
        assert_eq!(relations.number(Figure::HumidityAtEnd), Some(2), "the next");
        assert_eq!(
            relations.number(Figure::LegWater),
            Some(1),
            "the same again"
        );
        assert_eq!(relations.number(Figure::Bore), None, "an input has none");
    }
}
