//! The headings above the readings: which line names the columns, which stand beside it.

use super::sniff::{HeadLine, any_number};
use crate::column::Role;
use crate::column::names::{folded, role};
use crate::text::cells::{Delimiter, Splitter};
use crate::text::encoding::text_of;

/// More lines above the readings do not belong to their headings.
const MOST_LINES: usize = 8;

/// What stands above one column.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Heading {
    /// Its name as written.
    pub(super) name: String,
    /// The same, folded.
    pub(super) folded: String,
    /// What else stands above or below the name, folded: units, kinds of mean.
    pub(super) beside: Vec<String>,
    pub(super) role: Option<Role>,
}

/// The headings of a table.
#[derive(Debug, Default)]
pub(super) struct Headings {
    pub(super) columns: Vec<Heading>,
    /// Place of the line that names the columns, among the lines of the head.
    pub(super) line: Option<usize>,
    /// Place of the first line that belongs to the headings.
    pub(super) from: usize,
    /// A name was no UTF-8.
    pub(super) is_latin: bool,
}

/// A line above the readings as cells.
struct Above {
    at: usize,
    cells: Vec<(String, String)>,
    is_latin: bool,
}

impl Above {
    fn of(at: usize, line: &[u8], delimiter: Delimiter) -> Self {
        let mut splitter = Splitter::default();
        let line = line
            .strip_prefix(b"#")
            .filter(|rest| rest.first() != Some(&b'"') && rest.first() != Some(&b','))
            .unwrap_or(line);
        let (_, is_latin) = text_of(line);
        let cells = splitter.split(line, delimiter);
        let one = |cell: &[u8]| (text_of(cell).0.trim_matches('"').to_owned(), folded(cell));
        Self {
            at,
            cells: cells.iter().map(one).collect(),
            is_latin,
        }
    }

    /// How many of its cells name a reading, and how many a time.
    fn named(&self) -> (usize, usize) {
        let roles: Vec<Role> = self.cells.iter().map(|(_, folded)| role(folded)).collect();
        let readings = roles.iter().filter(|role| role.is_reading()).count();
        (readings, roles.iter().filter(|role| role.is_time()).count())
    }

    /// Words and no numbers, under which no reading was recognised.
    fn is_words(&self) -> bool {
        let filled: Vec<&String> = self
            .cells
            .iter()
            .map(|(text, _)| text)
            .filter(|text| !text.is_empty())
            .collect();
        1 < filled.len()
            && filled
                .iter()
                .all(|text| any_number(text.as_bytes()).is_none())
    }

    fn has(&self, word: &str) -> bool {
        self.cells.iter().any(|(_, folded)| folded.contains(word))
    }
}

/// The headings above the line at `first`, for a table of so many cells.
pub(super) fn find(
    lines: &[HeadLine],
    first: usize,
    cells: usize,
    delimiter: Delimiter,
) -> Headings {
    let mut block: Vec<Above> = Vec::new();
    for at in (0..first).rev() {
        let Some((line, _)) = lines.get(at) else {
            break;
        };
        if line.trim_ascii().is_empty() {
            if block.is_empty() {
                continue;
            }
            break;
        }
        let above = Above::of(at, line, delimiter);
        let fits = above.cells.len().abs_diff(cells) <= 1
            || (cells < above.cells.len() && 0 < above.named().1);
        let is_pair = above
            .cells
            .first()
            .is_some_and(|(text, _)| text.ends_with(':'));
        let is_place = above.has("latitude") && above.has("longitude");
        if !fits || is_pair || is_place || MOST_LINES <= block.len() {
            break;
        }
        block.push(above);
    }
    // The line that names most readings; of several, the lowest.
    let names = block
        .iter()
        .enumerate()
        .filter(|(_, above)| 0 < above.named().0)
        .max_by_key(|(at, above)| (above.named().0, core::cmp::Reverse(*at)));
    let words = || block.iter().enumerate().find(|(_, above)| above.is_words());
    let Some((names_at, names)) = names.or_else(words) else {
        return Headings {
            from: first,
            ..Headings::default()
        };
    };
    let shift = usize::from(names.cells.len() + 1 == cells && names.named().1 == 0);
    let cell = |above: &Above, column: usize| {
        column
            .checked_sub(shift)
            .and_then(|column| above.cells.get(column))
            .cloned()
            .unwrap_or_default()
    };
    let columns = (0..cells.max(names.cells.len())).map(|column| {
        let (name, folded) = cell(names, column);
        let others = block.iter().enumerate().filter(|(at, _)| *at != names_at);
        let beside = others
            .map(|(_, above)| cell(above, column).1)
            .filter(|text| !text.is_empty())
            .collect();
        let role = (!folded.is_empty()).then(|| role(&folded));
        Heading {
            name,
            folded,
            beside,
            role,
        }
    });
    Headings {
        columns: columns.collect(),
        line: Some(names.at),
        from: block.iter().map(|above| above.at).min().unwrap_or(first),
        is_latin: block.iter().any(|above| above.is_latin),
    }
}

/// How many names the line right above the readings holds, where it names a time and a reading; 0 where it does not.
pub(super) fn names_above(lines: &[HeadLine], delimiter: Delimiter) -> usize {
    let filled = lines
        .iter()
        .rev()
        .find(|(line, _)| !line.trim_ascii().is_empty());
    let Some((line, _)) = filled else {
        return 0;
    };
    let above = Above::of(0, line, delimiter);
    let (readings, times) = above.named();
    if readings == 0 || times == 0 {
        return 0;
    }
    above
        .cells
        .iter()
        .filter(|(name, _)| !name.is_empty())
        .count()
}

/// The first line that names a part of the time and a reading: where no date was found, the time may be in parts.
pub(super) fn first_with_names(lines: &[HeadLine], delimiter: Delimiter) -> Option<(usize, usize)> {
    lines.iter().enumerate().find_map(|(at, (line, _))| {
        let above = Above::of(at, line, delimiter);
        let (readings, times) = above.named();
        (0 < readings && 1 < times).then_some((at, above.cells.len()))
    })
}
