//! How closely a first sheet is set, and how many legs stand on it, so that nothing runs over its edge.

use dewrun_drawing::text_width;

use crate::paper::Paper;

/// A CSS pixel on paper, mm.
const PX_MM: f64 = 25.4 / 96.0;
/// Type of lists and of the sentence about blindness, px.
const BODY_PX: f64 = 8.0 / 0.75;
const LEAD_PX: f64 = 9.5 / 0.75;
/// Width of an item of a list, and of the sentence, mm.
const ITEM_MM: f64 = 86.0;
const LEAD_MM: f64 = 184.0;
/// Words break before the end of their line.
const RAGGED: f64 = 1.05;
/// Head of the sheet; a heading; the head of a table; the code with its caption, mm.
const HEAD: f64 = 7.6;
const HEADING: f64 = 6.6;
const TABLE_HEAD: f64 = 4.6;
const CODE: f64 = 57.0;

/// How closely a sheet is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Density {
    Roomy,
    Dense,
    Close,
}

/// What stands on a first sheet.
#[derive(Debug, Clone)]
pub(crate) struct Content<'a> {
    /// The sentence about blindness; may be empty.
    pub(crate) lead: &'a str,
    /// Height of the drawing, px.
    pub(crate) drawing_px: f64,
    pub(crate) legs: usize,
    /// Both lists, as mark-up.
    pub(crate) lists: [&'a [String]; 2],
    /// Rows of what is measured.
    pub(crate) measured: usize,
    /// The sentence about the last visit; may be empty.
    pub(crate) last: &'a str,
}

impl Density {
    pub(crate) const ALL: [Self; 3] = [Self::Roomy, Self::Dense, Self::Close];

    /// As the style calls it.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Roomy => "roomy",
            Self::Dense => "dense",
            Self::Close => "close",
        }
    }

    /// Height of a row of a table, of a line of a list and what an item takes besides, mm.
    const fn heights(self) -> [f64; 3] {
        match self {
            Self::Roomy => [6.1, 3.7, 0.95],
            Self::Dense => [4.3, 3.7, 0.95],
            Self::Close => [3.8, 3.55, 0.45],
        }
    }
}

/// The roomiest way to set all of it; where none has room for all legs, the closest one and as many as it has room for.
pub(crate) fn fit(content: &Content<'_>, paper: Paper) -> (Density, usize) {
    let room = |density| paper.height_mm() - height(content, density);
    let fits = Density::ALL
        .into_iter()
        .find(|density| 0.0 <= room(*density));
    if let Some(density) = fits {
        return (density, content.legs);
    }
    let [row, ..] = Density::Close.heights();
    let mut legs = content.legs;
    let mut lacks = -room(Density::Close);
    while 1 < legs && 0.0 < lacks {
        legs -= 1;
        lacks -= row;
    }
    (Density::Close, legs)
}

/// Height of all of it, mm.
fn height(content: &Content<'_>, density: Density) -> f64 {
    let [row, line, item] = density.heights();
    let count = |count: usize| f64::from(u32::try_from(count).unwrap_or(u32::MAX));
    let lead = match content.lead {
        "" => 0.0,
        words => 4.0 + 4.3 * lines(words, LEAD_PX, LEAD_MM),
    };
    let list = |items: &[String]| -> f64 {
        let each = items.iter();
        each.map(|words| item + line * lines(words, BODY_PX, ITEM_MM))
            .sum()
    };
    let [traps, checks] = content.lists;
    let last = match content.last {
        "" => 0.0,
        words => 1.0 + 3.7 * lines(words, BODY_PX, LEAD_MM),
    };
    HEAD + lead
        + content.drawing_px * PX_MM
        + 2.5
        + HEADING
        + TABLE_HEAD
        + row * count(content.legs)
        + HEADING
        + 0.6
        + list(traps).max(list(checks))
        + HEADING
        + TABLE_HEAD
        + row * count(content.measured)
        + last
        + CODE
}

/// Lines that mark-up takes in a width.
fn lines(markup: &str, px: f64, width_mm: f64) -> f64 {
    let mut in_tag = false;
    let words: String = markup
        .chars()
        .filter(|sign| {
            let is_tag = in_tag || *sign == '<';
            in_tag = is_tag && *sign != '>';
            !is_tag
        })
        .collect();
    let lines = text_width(&words, px) * PX_MM / width_mm;
    if lines <= 1.0 {
        return 1.0;
    }
    (RAGGED * lines).ceil()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn content(legs: usize) -> Content<'static> {
        Content {
            lead: "",
            drawing_px: 250.0,
            legs,
            lists: [&[], &[]],
            measured: 7,
            last: "",
        }
    }

    #[test]
    fn few_legs_are_set_with_room_and_many_go_on() {
        assert_eq!(fit(&content(5), Paper::A4), (Density::Roomy, 5), "few");
        let (density, on_first) = fit(&content(200), Paper::A4);
        assert_eq!(density, Density::Close, "as close as can be read");
        assert!(
            10 < on_first && on_first < 200,
            "{on_first} and the rest on further sheets"
        );
    }

    #[test]
    fn tags_take_no_room() {
        let plain = lines("words that stand in a line", BODY_PX, ITEM_MM);
        let marked = lines(
            "<b class=\"x\">words that stand in a line</b>",
            BODY_PX,
            ITEM_MM,
        );
        assert_eq!(plain, marked, "only words count");
    }
}
