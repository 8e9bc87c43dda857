//! How many lines a text takes, told without a browser.

use dewrun_drawing::text_width;

/// A CSS pixel on paper, mm.
pub(crate) const PX_MM: f64 = 25.4 / 96.0;

/// Lines that words take in a width, mm, broken between words; a word that is wider is broken within.
pub(crate) fn lines(words: &str, px: f64, width_mm: f64) -> f64 {
    let space = text_width(" ", px) * PX_MM;
    let (mut lines, mut used) = (1.0, 0.0);
    for word in words.split([' ', '\n']).filter(|word| !word.is_empty()) {
        let wide = text_width(word, px) * PX_MM;
        let after = if used == 0.0 {
            wide
        } else {
            used + space + wide
        };
        if after <= width_mm {
            used = after;
            continue;
        }
        if 0.0 < used {
            lines += 1.0;
        }
        let whole = (wide / width_mm).floor();
        lines += whole;
        used = wide - whole * width_mm;
    }
    lines
}

/// The words of mark-up.
pub(crate) fn words_of(markup: &str) -> String {
    let mut in_tag = false;
    let mut words = String::with_capacity(markup.len());
    for sign in markup.chars() {
        match sign {
            '<' => in_tag = true,
            '>' if in_tag => in_tag = false,
            _ if in_tag => {}
            _ => words.push(sign),
        }
    }
    for (entity, sign) in [
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&quot;", "\""),
        ("&amp;", "&"),
    ] {
        if words.contains(entity) {
            words = words.replace(entity, sign);
        }
    }
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_break_between_and_long_ones_within() {
        // B612 figures are 26/40 of an em: four take 26 px at 10 px, 6.88 mm.
        assert_eq!(lines("1111", 10.0, 7.0), 1.0, "just one line");
        assert_eq!(lines("1111 1111", 10.0, 7.0), 2.0, "a line each");
        assert_eq!(lines("11111111", 10.0, 7.0), 2.0, "broken within");
        assert_eq!(lines("", 10.0, 7.0), 1.0, "an empty cell is a line high");
    }

    #[test]
    fn tags_take_no_room() {
        assert_eq!(
            words_of("<b class=\"x\">t &lt; 0</b>"),
            "t < 0",
            "only words count"
        );
    }
}
