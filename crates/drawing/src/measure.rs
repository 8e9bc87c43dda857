//! How wide a text is in the page's typeface, so that labels can be placed without a browser.

/// Advance widths of the printable ASCII characters from the space on, in fortieths of an em.
///
/// # Source
/// Table `hmtx` of B612 Regular (The B612 Project Authors 2012, SIL Open Font License 1.1), 2000 units an em.
/// The bold has the same widths.
const ASCII: [u8; 95] = [
    14, 14, 16, 34, 22, 36, 28, 8, 18, 18, 22, 24, 10, 18, 12, 22, 26, 26, 26, 26, 26, 26, 26, 26,
    26, 26, 12, 10, 26, 20, 26, 22, 40, 26, 26, 24, 26, 24, 22, 26, 28, 12, 18, 24, 22, 36, 30, 32,
    24, 32, 26, 22, 24, 28, 26, 38, 26, 24, 24, 18, 22, 20, 30, 22, 22, 21, 24, 20, 24, 22, 16, 24,
    24, 12, 12, 22, 14, 36, 24, 24, 24, 24, 16, 18, 16, 24, 22, 30, 22, 22, 20, 26, 8, 24, 30,
];

/// A character that the table lacks is taken to be as wide as the widest letters with a mark.
const OTHER: u8 = 32;

/// The typeface's word space is wide; the style sheets take this much of an em away.
const WORD_SPACING_EM: f64 = -0.06;

/// Width of one line of text set in `size` px, px.
///
/// ```
/// let width = dewrun_drawing::text_width("20", 10.0);
/// assert!((width - 13.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn text_width(text: &str, size: f64) -> f64 {
    text.chars().map(|c| advance_em(c) * size).sum()
}

fn advance_em(c: char) -> f64 {
    let fortieths = match c {
        ' '..='~' => usize::try_from(u32::from(c) - 0x20)
            .ok()
            .and_then(|place| ASCII.get(place))
            .copied()
            .unwrap_or(OTHER),
        '°' | '²' | '³' | '¹' => 12,
        '·' | '′' => 10,
        '\u{a0}' | '’' | '‘' => 14,
        '\u{202f}' | '\u{2009}' => 10,
        '−' | '–' => 22,
        '×' => 32,
        _ => OTHER,
    };
    let spacing = if matches!(c, ' ' | '\u{a0}') {
        WORD_SPACING_EM
    } else {
        0.0
    };
    f64::from(fortieths) / 40.0 + spacing
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_tabular() {
        let one = text_width("1", 40.0);
        for figure in "0123456789".chars() {
            let width = text_width(&figure.to_string(), 40.0);
            assert!((width - one).abs() < 1e-12, "{figure} is as wide as 1");
        }
    }

    #[test]
    fn width_grows_with_size() {
        let (small, large) = (text_width("Lobby", 10.0), text_width("Lobby", 20.0));
        assert!((large - 2.0 * small).abs() < 1e-9, "in proportion");
    }
}
