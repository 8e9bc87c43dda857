//! The cells of a list: parted by commas, a cell that holds a comma in quotes, one row a line.

use super::record::Record;
use super::{LibraryError, Read, Sources};

/// The rows of a list, each made of its record.
pub(super) fn rows<'a, T>(
    file: &'static str,
    text: &'static str,
    sources: &'a Sources,
    row: impl Fn(&mut Record<'a>) -> T,
) -> Read<Vec<T>> {
    let mut rows = Vec::new();
    for mut record in records(file, text, sources)? {
        rows.push(row(&mut record));
        record.check()?;
    }
    Ok(rows)
}

/// The records of a list by the head in its first line.
pub(super) fn records<'a>(
    file: &'static str,
    text: &'static str,
    sources: &'a Sources,
) -> Read<Vec<Record<'a>>> {
    let mut lines = (1..).zip(text.lines());
    let Some((line, head)) = lines.next() else {
        return Err(LibraryError::NoHead { file }.into());
    };
    let columns = cells(file, line, head)?;
    lines
        .map(|(line, text)| {
            let cells = cells(file, line, text)?;
            if cells.len() != columns.len() {
                return Err(LibraryError::CellCount {
                    file,
                    line,
                    found: cells.len(),
                    columns: columns.len(),
                }
                .into());
            }
            let cells = columns.iter().copied().zip(cells).collect();
            Ok(Record::new(file, line, cells, sources))
        })
        .collect()
}

/// The cells of one line.
fn cells(file: &'static str, line: usize, text: &'static str) -> Read<Vec<&'static str>> {
    let mut cells = Vec::new();
    let mut rest = Some(text);
    while let Some(text) = rest {
        let (cell, after) = first_cell(text).ok_or(LibraryError::Quote { file, line })?;
        cells.push(cell);
        rest = after;
    }
    Ok(cells)
}

/// The first cell, and what comes after its comma; nothing where quotes are astray.
fn first_cell(text: &'static str) -> Option<(&'static str, Option<&'static str>)> {
    if let Some(quoted) = text.strip_prefix('"') {
        let (cell, after) = quoted.split_once('"')?;
        if after.is_empty() {
            return Some((cell, None));
        }
        return Some((cell, Some(after.strip_prefix(',')?)));
    }
    let (cell, after) = match text.split_once(',') {
        Some((cell, after)) => (cell, Some(after)),
        None => (text, None),
    };
    (!cell.contains('"')).then_some((cell, after))
}

#[cfg(test)]
mod tests {
    use super::records;
    use crate::library::{LibraryError, Sources};

    #[track_caller]
    fn check(text: &'static str, expected: &[&[&str]]) {
        let sources = Sources::default();
        let records = records("a.csv", text, &sources).expect("it can be read");
        let cells: Vec<Vec<&str>> = records
            .iter()
            .map(|record| record.texts().collect())
            .collect();
        assert_eq!(cells, expected, "{text}");
    }

    #[test]
    fn cells_are_parted_by_commas_outside_quotes() {
        check("a,b\n1,2\n", &[&["1", "2"]]);
        check("a,b\r\n1,\"2, 3\"\r\n\"\",4", &[&["1", "2, 3"], &["", "4"]]);
        check("a,b\n,\n", &[&["", ""]]);
        check("a,b\n", &[]);
    }

    #[test]
    fn the_line_at_fault_is_named() {
        let count = |line, found| LibraryError::CellCount {
            file: "a.csv",
            line,
            found,
            columns: 2,
        };
        let quote = |line| LibraryError::Quote {
            file: "a.csv",
            line,
        };
        for (text, error) in [
            ("", LibraryError::NoHead { file: "a.csv" }),
            ("a,b\n1,2\n1\n", count(3, 1)),
            ("a,b\n1,2,3\n", count(2, 3)),
            ("a,b\n\n", count(2, 1)),
            ("a,b\n1,2\n1,\"2\n", quote(3)),
            ("a,b\n1,2\"\n", quote(2)),
            ("a,b\n1,\"2\"3\n", quote(2)),
            ("a,b\n1,\"2\"\"3\"\n", quote(2)),
            ("\"a,b\n", quote(1)),
        ] {
            let sources = Sources::default();
            let found = records("a.csv", text, &sources).map(|_| ());
            assert_eq!(found, Err(Box::new(error)), "{text:?}");
        }
    }
}
