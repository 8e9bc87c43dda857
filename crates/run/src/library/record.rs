//! One line of a list, its cells found by the name of their column.

use dewrun_quantity::decimal::nearest;

use super::{Entry, LibraryError, Read, Sources, Span};

/// One line of a list, the figures that were read from it, and the first fault that was met.
///
/// What can't be read gives nothing or no number, and the line is refused as a whole afterwards:
/// so each row is read straight through, which takes far less room than asking after every cell.
#[derive(Debug, Clone)]
pub(super) struct Record<'a> {
    file: &'static str,
    line: usize,
    cells: Vec<(&'static str, &'static str)>,
    sources: &'a Sources,
    entries: Vec<Entry>,
    fault: Option<Box<LibraryError>>,
}

impl<'a> Record<'a> {
    /// A line of a file, each cell with its column.
    pub(super) const fn new(
        file: &'static str,
        line: usize,
        cells: Vec<(&'static str, &'static str)>,
        sources: &'a Sources,
    ) -> Self {
        Self {
            file,
            line,
            cells,
            sources,
            entries: Vec::new(),
            fault: None,
        }
    }

    /// A line without a cell, which stands for one that was not found.
    pub(super) const fn blank(&self) -> Self {
        Self::new(self.file, self.line, Vec::new(), self.sources)
    }

    /// The first fault, if any.
    pub(super) fn check(&mut self) -> Read<()> {
        self.fault.take().map_or(Ok(()), Err)
    }

    /// Refuses the line, unless it is refused already.
    pub(super) fn refuse(&mut self, fault: Box<LibraryError>) {
        self.fault.get_or_insert(fault);
    }

    /// Refuses the line for the fault of another that it needs.
    pub(super) fn refuse_with(&mut self, other: &mut Self) {
        if let Some(fault) = other.fault.take() {
            self.refuse(fault);
        }
    }

    /// The figures read since they were taken last, as they are written.
    pub(super) fn take_entries(&mut self) -> Vec<Entry> {
        core::mem::take(&mut self.entries)
    }

    /// The cells in order.
    #[cfg(test)]
    pub(super) fn texts(&self) -> impl Iterator<Item = &'static str> {
        self.cells.iter().map(|(_, cell)| *cell)
    }

    /// Whether a cell holds just that.
    pub(super) fn holds(&self, column: &str, text: &str) -> bool {
        self.cells.contains(&(column, text))
    }

    /// The text of a cell that must not be empty.
    // Called for each figure of each list: written out in each place they would be most of the program.
    #[inline(never)]
    pub(super) fn text(&mut self, column: &str) -> &'static str {
        self.part(column, "")
    }

    /// What the word in a cell stands for.
    pub(super) fn choice<T: Copy, const N: usize>(
        &mut self,
        column: &str,
        first: (&str, T),
        others: [(&str, T); N],
    ) -> T {
        let found = self.text(column);
        let words = || core::iter::once(&first).chain(&others);
        if let Some((_, meaning)) = words().find(|(word, _)| *word == found) {
            return *meaning;
        }
        let known: Vec<&str> = words().map(|(word, _)| *word).collect();
        self.refuse_word(column, found, known.join(" or "));
        first.1
    }

    /// A list of numbers, parted by semicolons.
    #[inline(never)]
    pub(super) fn numbers(&mut self, column: &str) -> Vec<f64> {
        let cell = self.text(column);
        cell.split(';')
            .map(|found| self.number(column, "", found))
            .collect()
    }

    /// Low, usual and high of a quantity, whose name ends in its unit.
    ///
    /// Its source stands in a column of its own, or else in that of the whole row.
    pub(super) fn span(&mut self, quantity: &'static str) -> Span<f64> {
        self.span_as(quantity, quantity)
    }

    /// As [`Record::span`], for a quantity that project files call otherwise.
    #[inline(never)]
    pub(super) fn span_as(&mut self, quantity: &'static str, field: &'static str) -> Span<f64> {
        let mut value = |part| {
            let found = self.part(quantity, part);
            self.number(quantity, part, found)
        };
        let (low, usual, high) = (value("_low"), value("_usual"), value("_high"));
        let source = self.source(quantity);
        if !(low <= usual && usual <= high) {
            self.refuse(Box::new(LibraryError::Order {
                file: self.file,
                line: self.line,
                quantity,
                low,
                usual,
                high,
            }));
        }
        let span = Span {
            low,
            usual,
            high,
            source,
        };
        self.entries.push(Entry { field, span });
        span
    }

    /// As [`Record::span`]; none where all its cells are empty.
    #[inline(never)]
    pub(super) fn optional_span(&mut self, quantity: &'static str) -> Option<Span<f64>> {
        let parts = ["_low", "_usual", "_high"];
        let is_empty = |part: &&str| self.cell(quantity, part) == Some("");
        if parts.iter().all(is_empty) {
            return None;
        }
        Some(self.span(quantity))
    }

    /// Refuses a word that its column does not know.
    #[inline(never)]
    pub(super) fn refuse_word(&mut self, column: &str, found: &'static str, known: String) {
        let fault = LibraryError::Unknown {
            file: self.file,
            line: self.line,
            column: column.to_owned(),
            found,
            known,
        };
        self.refuse(Box::new(fault));
    }

    fn source(&mut self, quantity: &str) -> &'static str {
        let own = format!("{quantity}_source");
        let has_own = self.cells.iter().any(|(column, _)| *column == own);
        let column = if has_own { &own } else { "source" };
        let id = self.text(column);
        self.sources.text(id).unwrap_or_else(|| {
            self.refuse_word(column, id, "an id of sources.csv".to_owned());
            ""
        })
    }

    fn cell(&self, quantity: &str, part: &str) -> Option<&'static str> {
        let named = |column: &str| column.strip_prefix(quantity) == Some(part);
        let found = self.cells.iter().find(|(column, _)| named(column));
        found.map(|(_, cell)| *cell)
    }

    fn part(&mut self, quantity: &str, part: &str) -> &'static str {
        let (file, line) = (self.file, self.line);
        let fault = match self.cell(quantity, part) {
            Some("") => LibraryError::Empty {
                file,
                line,
                column: format!("{quantity}{part}"),
            },
            Some(cell) => return cell,
            None => LibraryError::NoColumn {
                file,
                column: format!("{quantity}{part}"),
            },
        };
        self.refuse(Box::new(fault));
        ""
    }

    fn number(&mut self, quantity: &str, part: &str, found: &'static str) -> f64 {
        if let Some(number) = nearest(found).filter(|number| number.is_finite()) {
            return number;
        }
        let fault = LibraryError::NotANumber {
            file: self.file,
            line: self.line,
            column: format!("{quantity}{part}"),
            found,
        };
        self.refuse(Box::new(fault));
        f64::NAN
    }
}

#[cfg(test)]
mod tests {
    use super::Record;
    use crate::library::{Sources, csv};

    /// What `read` makes of the last line of a list.
    fn last<T>(text: &'static str, read: impl Fn(&mut Record) -> T) -> Result<T, String> {
        let sources = Sources::of("id,source\nkept,from memory\n").expect("they can be read");
        let records = csv::records("a.csv", text, &sources);
        let mut record = records.expect("the cells can be read").pop();
        let record = record.as_mut().expect("it has a last line");
        let found = read(record);
        record.check().map_err(|error| error.to_string())?;
        Ok(found)
    }

    #[track_caller]
    fn check(text: &'static str, sentence: &str) {
        let error = last(text, |record| record.span("bore_mm"));
        assert_eq!(error, Err(sentence.to_owned()), "{text:?}");
    }

    #[test]
    fn a_span_takes_its_own_source_before_that_of_the_row() {
        let text = "source,bore_mm_low,bore_mm_usual,bore_mm_high\nkept,18,19,19\n";
        let span = last(text, |record| record.span("bore_mm")).expect("it is whole");
        assert_eq!(
            (span.low, span.usual, span.high),
            (18.0, 19.0, 19.0),
            "as written"
        );
        assert_eq!(span.source, "from memory", "of the row");
        check(
            "source,bore_mm_low,bore_mm_usual,bore_mm_high,bore_mm_source\nkept,18,19,20,\n",
            "a.csv, line 2: `bore_mm_source` is empty",
        );
    }

    #[test]
    fn what_cannot_be_read_is_named_by_line_and_column() {
        check(
            "source,bore_mm_low,bore_mm_usual,bore_mm_high\nkept,18,19,20\nkept,18,wide,20\n",
            "a.csv, line 3: `bore_mm_usual` is `wide`, must be a number such as 0.19",
        );
        check(
            "source,bore_mm_low,bore_mm_usual,bore_mm_high\nkept,18,19,inf\n",
            "a.csv, line 2: `bore_mm_high` is `inf`, must be a number such as 0.19",
        );
        check(
            "source,bore_mm_low,bore_mm_usual,bore_mm_high\nkept,,19,20\n",
            "a.csv, line 2: `bore_mm_low` is empty",
        );
        check(
            "source,bore_mm_low,bore_mm_usual,bore_mm_high\nkept,18,17,20\n",
            "a.csv, line 2: `bore_mm` goes from 18 by 17 to 20, must not fall",
        );
        check(
            "source,bore_mm_low,bore_mm_usual,bore_mm_high\nlost,18,19,20\n",
            "a.csv, line 2: `source` is `lost`, must be an id of sources.csv",
        );
        check(
            "source,bore_mm_low\nkept,18\n",
            "a.csv has no column `bore_mm_usual`",
        );
    }

    #[test]
    fn a_span_is_left_out_whole_or_not_at_all() {
        let text = "source,a_k_low,a_k_usual,a_k_high\nkept,,,\n";
        let span = last(text, |record| record.optional_span("a_k"));
        assert_eq!(span, Ok(None), "all cells are empty");
        let text = "source,a_k_low,a_k_usual,a_k_high\nkept,,2,\n";
        let span = last(text, |record| record.optional_span("a_k"));
        assert_eq!(
            span,
            Err("a.csv, line 2: `a_k_low` is empty".to_owned()),
            "one cell is filled"
        );
    }

    #[test]
    fn what_was_read_is_kept_as_it_is_written() {
        let text = "source,a_pa_low,a_pa_usual,a_pa_high\nkept,15.8,15.88,15.96\n";
        let entries = last(text, |record| {
            record.span_as("a_pa", "b_pa");
            record.take_entries()
        });
        let entries = entries.expect("it is whole");
        let found: Vec<_> = entries
            .iter()
            .map(|entry| (entry.field, entry.span.usual))
            .collect();
        assert_eq!(found, [("b_pa", 15.88)], "under the name asked for");
    }

    #[test]
    fn a_word_is_one_of_those_known() {
        assert_eq!(
            last("form\nround\n", |record| record.choice(
                "form",
                ("plain", 1),
                [("corrugated", 2)]
            )),
            Err("a.csv, line 2: `form` is `round`, must be plain or corrugated".to_owned()),
            "the words are listed"
        );
        assert_eq!(
            last("form\nplain\n", |record| record.choice(
                "form",
                ("plain", 1),
                [("corrugated", 2)]
            )),
            Ok(1),
            "this one is known"
        );
    }
}
