//! One line to its cells.

use csv_core::{ReadRecordResult, ReaderBuilder};

/// What stands between cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Delimiter {
    /// A comma.
    Comma,
    /// A semicolon.
    Semicolon,
    /// A tabulator.
    Tab,
    /// A vertical bar.
    Bar,
    /// Any run of spaces.
    Spaces,
}

impl Delimiter {
    /// All of them, the likelier first.
    pub(crate) const ALL: [Self; 5] = [
        Self::Semicolon,
        Self::Tab,
        Self::Comma,
        Self::Bar,
        Self::Spaces,
    ];

    const fn byte(self) -> u8 {
        match self {
            Self::Comma => b',',
            Self::Semicolon => b';',
            Self::Tab => b'\t',
            Self::Bar => b'|',
            Self::Spaces => b' ',
        }
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Comma => "comma",
            Self::Semicolon => "semicolon",
            Self::Tab => "tab",
            Self::Bar => "bar",
            Self::Spaces => "spaces",
        }
    }
}

/// More cells than this are not told apart.
const MOST: usize = 4096;

/// Cuts lines into cells; keeps its space from line to line.
#[derive(Debug, Default)]
pub(crate) struct Splitter {
    ended: Vec<u8>,
    unquoted: Vec<u8>,
    ends: Vec<usize>,
    bounds: Vec<(usize, usize)>,
}

/// The cells of one line.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cells<'a> {
    text: &'a [u8],
    bounds: &'a [(usize, usize)],
}

impl<'a> Cells<'a> {
    pub(crate) const fn len(&self) -> usize {
        self.bounds.len()
    }

    /// A cell without the spaces around it; empty where there is none.
    pub(crate) fn get(&self, at: usize) -> &'a [u8] {
        let text = self.text;
        self.bounds
            .get(at)
            .and_then(|&(start, end)| text.get(start..end))
            .map_or(&[], <[u8]>::trim_ascii)
    }

    pub(crate) fn iter(&self) -> impl Iterator<Item = &'a [u8]> {
        let this = *self;
        (0..this.len()).map(move |at| this.get(at))
    }

    /// Nothing stands in any of them.
    pub(crate) fn is_blank(&self) -> bool {
        self.iter().all(<[u8]>::is_empty)
    }
}

impl Splitter {
    pub(crate) fn split<'a>(&'a mut self, line: &'a [u8], delimiter: Delimiter) -> Cells<'a> {
        self.bounds.clear();
        if delimiter == Delimiter::Spaces {
            self.split_at_spaces(line);
        } else if line.contains(&b'"') && self.split_quoted(line, delimiter.byte()) {
            return Cells {
                text: &self.unquoted,
                bounds: &self.bounds,
            };
        } else {
            self.bounds.clear();
            self.split_plain(line, delimiter.byte());
        }
        Cells {
            text: line,
            bounds: &self.bounds,
        }
    }

    fn split_plain(&mut self, line: &[u8], delimiter: u8) {
        let mut start = 0;
        for (at, sign) in line.iter().enumerate() {
            if *sign == delimiter && self.bounds.len() < MOST {
                self.bounds.push((start, at));
                start = at + 1;
            }
        }
        self.bounds.push((start, line.len()));
    }

    fn split_at_spaces(&mut self, line: &[u8]) {
        let mut start = None;
        for (at, sign) in line.iter().enumerate() {
            let is_space = sign.is_ascii_whitespace();
            match (start, is_space) {
                (None, false) => start = Some(at),
                (Some(begun), true) if self.bounds.len() < MOST => {
                    self.bounds.push((begun, at));
                    start = None;
                }
                _ => {}
            }
        }
        if let Some(begun) = start {
            self.bounds.push((begun, line.len()));
        }
    }

    /// Takes quotes away; false where one is never closed, so that it stands for itself.
    fn split_quoted(&mut self, line: &[u8], delimiter: u8) -> bool {
        self.ended.clear();
        self.ended.extend_from_slice(line);
        self.ended.push(b'\n');
        self.unquoted.resize(self.ended.len(), 0);
        self.ends.resize(MOST, 0);
        let mut reader = ReaderBuilder::new().delimiter(delimiter).build();
        let (result, _, _, cells) =
            reader.read_record(&self.ended, &mut self.unquoted, &mut self.ends);
        if result != ReadRecordResult::Record {
            return false;
        }
        let mut start = 0;
        for end in self.ends.iter().take(cells) {
            self.bounds.push((start, *end));
            start = *end;
        }
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(line: &str, delimiter: Delimiter, expected: &[&str]) {
        let mut splitter = Splitter::default();
        // A second line must not see the first one's cells.
        splitter.split(b"\"x,y\",z", Delimiter::Comma);
        let cells = splitter.split(line.as_bytes(), delimiter);
        let found: Vec<_> = cells.iter().map(String::from_utf8_lossy).collect();
        assert_eq!(found, expected, "{line}");
        assert_eq!(cells.get(cells.len()), b"", "beyond the last");
    }

    #[test]
    fn cells_of_every_kind() {
        check("a, b ,,c,", Delimiter::Comma, &["a", "b", "", "c", ""]);
        check(
            "\"8,0\",\"a \"\"b\"\"\"",
            Delimiter::Comma,
            &["8,0", "a \"b\""],
        );
        check("8,0;9", Delimiter::Semicolon, &["8,0", "9"]);
        check("  1   2\t3 ", Delimiter::Spaces, &["1", "2", "3"]);
        check("", Delimiter::Comma, &[""]);
        check("", Delimiter::Spaces, &[]);
    }

    #[test]
    fn a_quote_that_is_never_closed_stands_for_itself() {
        check("5\" pipe,3", Delimiter::Comma, &["5\" pipe", "3"]);
        check("\"open,3", Delimiter::Comma, &["\"open", "3"]);
    }
}
