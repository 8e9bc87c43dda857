//! Bytes in pieces to whole lines: LF, CR LF or CR alone, with the number of each line.

use crate::error::WeatherError;

/// Longest line that is kept, bytes; a longer one is no row of a table.
pub(crate) const LONGEST: usize = 1 << 20;

/// Puts lines together from pieces that may end anywhere.
#[derive(Debug, Default)]
pub(crate) struct Lines {
    rest: Vec<u8>,
    after_return: bool,
    count: u64,
}

impl Lines {
    /// Hands every line that this piece completes to `take`, without its end, with its number from 1.
    ///
    /// # Errors
    /// What `take` says, or a line beyond [`LONGEST`].
    pub(crate) fn push(
        &mut self,
        mut piece: &[u8],
        mut take: impl FnMut(&[u8], u64) -> Result<(), WeatherError>,
    ) -> Result<(), WeatherError> {
        if self.after_return {
            piece = piece.strip_prefix(b"\n").unwrap_or(piece);
            self.after_return = false;
        }
        while let Some(end) = piece.iter().position(|sign| matches!(sign, b'\n' | b'\r')) {
            let (line, after) = piece.split_at(end);
            self.count += 1;
            if self.rest.is_empty() {
                take(line, self.count)?;
            } else {
                self.keep(line)?;
                take(&self.rest, self.count)?;
                self.rest.clear();
            }
            piece = match after {
                [b'\r', b'\n', next @ ..] | [_, next @ ..] => next,
                [] => after,
            };
            self.after_return = after == b"\r";
        }
        self.keep(piece)
    }

    /// Hands over what stands after the last line end.
    pub(crate) fn finish(
        &mut self,
        mut take: impl FnMut(&[u8], u64) -> Result<(), WeatherError>,
    ) -> Result<(), WeatherError> {
        if self.rest.is_empty() {
            return Ok(());
        }
        self.count += 1;
        let rest = core::mem::take(&mut self.rest);
        take(&rest, self.count)
    }

    /// Lines so far.
    pub(crate) const fn count(&self) -> u64 {
        self.count
    }

    fn keep(&mut self, part: &[u8]) -> Result<(), WeatherError> {
        if LONGEST < self.rest.len() + part.len() {
            return Err(WeatherError::LineTooLong {
                line: self.count + 1,
                most: LONGEST,
            });
        }
        self.rest.extend_from_slice(part);
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{prop_assert_eq, proptest};

    fn lines_of(pieces: &[&[u8]]) -> Vec<(String, u64)> {
        let mut found = Vec::new();
        let mut take = |line: &[u8], number: u64| {
            found.push((String::from_utf8_lossy(line).into_owned(), number));
            Ok(())
        };
        let mut lines = Lines::default();
        for piece in pieces {
            lines.push(piece, &mut take).expect("short lines");
        }
        lines.finish(&mut take).expect("short lines");
        found
    }

    #[test]
    fn every_kind_of_end_is_one_line() {
        let expected: Vec<(String, u64)> = [("a", 1), ("", 2), ("b", 3)]
            .map(|(text, number)| (text.to_owned(), number))
            .to_vec();
        for text in [
            "a\n\nb",
            "a\r\n\r\nb",
            "a\r\rb",
            "a\n\nb\n",
            "a\r\n\r\nb\r\n",
        ] {
            assert_eq!(lines_of(&[text.as_bytes()]), expected, "{text:?}");
        }
    }

    #[test]
    fn too_long_a_line_is_refused() {
        let piece = vec![b'x'; LONGEST];
        let mut lines = Lines::default();
        assert!(lines.push(&piece, |_, _| Ok(())).is_ok(), "just fits");
        let refused = lines.push(b"x", |_, _| Ok(()));
        assert!(
            matches!(refused, Err(WeatherError::LineTooLong { line: 1, .. })),
            "{refused:?}"
        );
    }

    proptest! {
        #[test]
        fn where_pieces_end_does_not_matter(text in "[ab\r\n]{0,40}", cut in 0_usize..40) {
            let cut = cut.min(text.len());
            let (one, other) = text.as_bytes().split_at(cut);
            prop_assert_eq!(lines_of(&[one, other]), lines_of(&[text.as_bytes()]));
        }
    }
}
