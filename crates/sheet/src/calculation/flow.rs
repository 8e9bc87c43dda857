//! Pieces of a sheet one after another, parted into pages so that nothing runs over an edge.

use super::table::Table;
use crate::paper::Paper;

/// Rows that stay together at the head of a table and at its end.
const TOGETHER: usize = 3;
/// Head of a page, title block, and what is left free for what rounding makes of heights, mm.
const HEAD: f64 = 7.4;
const TITLE: f64 = 12.6;
const FREE: f64 = 4.0;

/// A piece of a sheet.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Piece {
    /// Kept together: mark-up and its height, mm.
    Block(String, f64),
    /// A drawing, kept together: where it has no room what comes after it goes first.
    Figure(String, f64),
    /// Parted between rows where need be.
    Table(Table),
}

/// The content of each page.
pub(super) fn pages(pieces: Vec<Piece>, paper: Paper) -> Vec<String> {
    let mut pages = Pages {
        room_mm: paper.height_mm() - HEAD - TITLE - FREE,
        used_mm: 0.0,
        done: Vec::new(),
        page: String::new(),
        waiting: Vec::new(),
    };
    for piece in pieces {
        match piece {
            Piece::Block(html, mm) => pages.block(&html, mm),
            Piece::Figure(html, mm) => pages.figure(html, mm),
            Piece::Table(table) => pages.table(&table),
        }
    }
    pages.turn();
    while !pages.page.is_empty() {
        pages.turn();
    }
    pages.done
}

struct Pages {
    room_mm: f64,
    used_mm: f64,
    done: Vec<String>,
    page: String,
    /// Drawings that had no room yet.
    waiting: Vec<(String, f64)>,
}

impl Pages {
    /// Begins a page, with the drawings that wait for one as far as it has room.
    fn turn(&mut self) {
        if !self.page.is_empty() {
            self.done.push(core::mem::take(&mut self.page));
        }
        self.used_mm = 0.0;
        while let Some((_, mm)) = self.waiting.first() {
            if 0.0 < self.used_mm && self.room_mm < self.used_mm + mm {
                break;
            }
            let (html, mm) = self.waiting.remove(0);
            self.page.push_str(&html);
            self.used_mm += mm;
        }
    }

    fn figure(&mut self, html: String, mm: f64) {
        if self.waiting.is_empty() && self.used_mm + mm <= self.room_mm {
            self.page.push_str(&html);
            self.used_mm += mm;
        } else {
            self.waiting.push((html, mm));
        }
    }

    fn block(&mut self, html: &str, mm: f64) {
        if self.room_mm < self.used_mm + mm {
            self.turn();
        }
        self.page.push_str(html);
        self.used_mm += mm;
    }

    fn table(&mut self, table: &Table) {
        let count = table.rows();
        let mut from = 0;
        while from < count {
            let left = self.room_mm - self.used_mm;
            let fits = rows_within(table, from, left);
            let wanted = (count - from).min(TOGETHER);
            // On an empty page something must be put, else nothing ever is.
            if fits < wanted && 0.0 < self.used_mm {
                self.turn();
                continue;
            }
            let fits = fits.max(1).min(count - from);
            let rest = count - from - fits;
            // The last rows of a table do not stand alone on the next page.
            let fits = if 0 < rest && rest < TOGETHER && TOGETHER < fits {
                fits + rest - TOGETHER
            } else {
                fits
            };
            let to = from + fits;
            let rows: f64 = (from..to).map(|at| table.row_mm(at)).sum();
            self.page.push_str(&table.html(from, to));
            self.used_mm += table.head_mm() + rows;
            from = to;
            if from < count {
                self.turn();
            }
        }
    }
}

/// How many rows from one on, with their head, fit in a height.
fn rows_within(table: &Table, from: usize, room_mm: f64) -> usize {
    let mut left = room_mm - table.head_mm();
    let mut rows = 0;
    while from + rows < table.rows() {
        left -= table.row_mm(from + rows);
        if left < 0.0 {
            break;
        }
        rows += 1;
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::super::table::Column;
    use super::*;

    fn table(rows: usize) -> Piece {
        let mut table = Table::new("Rows", "", vec![Column::words("row", 1.0)]);
        (0..rows).for_each(|at| table.row(&[format!("row {at}.")]));
        Piece::Table(table)
    }

    #[test]
    fn every_row_stands_once_and_in_order() {
        for (rows, lead) in [(1, 0.0), (40, 200.0), (55, 250.0), (200, 30.0)] {
            let pieces = vec![Piece::Block("<p></p>".to_owned(), lead), table(rows)];
            let pages = pages(pieces, Paper::A4);
            let all = pages.concat();
            let mut from = 0;
            for at in 0..rows {
                let found = all[from..].find(&format!("row {at}."));
                from +=
                    found.unwrap_or_else(|| panic!("row {at} of {rows} is there, in its place"));
            }
            for page in &pages {
                let count = page.matches("<tr><td").count();
                assert!(
                    count < 62,
                    "{count} rows of 4.5 mm fit on no page of 257 mm"
                );
                assert!(
                    rows < 3 || count == 0 || 2 < count,
                    "{count} rows stand alone"
                );
            }
        }
    }

    #[test]
    fn a_drawing_without_room_lets_what_follows_go_first() {
        let figure = |name: &str| Piece::Figure(format!("<figure>{name}</figure>"), 150.0);
        let pieces = vec![figure("one"), figure("two"), figure("three"), table(4)];
        let pages = pages(pieces, Paper::A4);
        assert_eq!(pages.len(), 3, "a drawing a page");
        assert!(
            pages[0].contains("one") && pages[0].contains("row 3."),
            "rows fill the first"
        );
        assert!(pages[2].contains("three"), "in their order");
    }

    #[test]
    fn what_is_too_high_for_any_page_has_its_own() {
        let pieces = vec![
            Piece::Block("a".to_owned(), 10.0),
            Piece::Block("b".to_owned(), 900.0),
        ];
        assert_eq!(pages(pieces, Paper::Letter), ["a", "b"], "a page each");
    }
}
