//! Formulas and symbols as HTML: an index after `_`, an exponent after `^`.

use crate::svg::escaped;

/// A formula or symbol with its indices and exponents.
#[must_use]
pub fn formula(text: &str) -> String {
    let mut out = String::with_capacity(2 * text.len());
    let mut rest = text;
    while let Some(at) = rest.find(['_', '^']) {
        let (before, sign) = rest.split_at(at);
        out.push_str(&escaped(before));
        let (element, after) = match sign.strip_prefix('_') {
            Some(after) => ("sub", after),
            None => ("sup", sign.get(1..).unwrap_or("")),
        };
        let (low, tail) = parted(after);
        let inner = low.strip_prefix('(').and_then(|low| low.strip_suffix(')'));
        let inner = escaped(inner.unwrap_or(low));
        out.push_str(&format!("<{element}>{inner}</{element}>"));
        rest = tail;
    }
    out.push_str(&escaped(rest));
    out
}

/// What is set low or high, and what goes on: a bracket, or the letters, digits and sign that follow.
fn parted(text: &str) -> (&str, &str) {
    if text.starts_with('(') {
        let end = text.find(')').map_or(text.len(), |at| at + 1);
        return text.split_at(end);
    }
    let goes_on = |c: char| c.is_ascii_alphanumeric() || c == '\u{2212}' || c == '*';
    let is_point = |at: usize| {
        let mut around = text.get(at..).unwrap_or_default().chars();
        0 < at && around.next() == Some('.') && around.next().is_some_and(|c| c.is_ascii_digit())
    };
    let mut signs = text.char_indices();
    let end = signs.find(|(at, c)| !goes_on(*c) && !is_point(*at));
    text.split_at(end.map_or(text.len(), |(at, _)| at))
}

#[cfg(test)]
mod tests {
    use super::formula;

    #[track_caller]
    fn check(text: &str, expected: &str) {
        assert_eq!(formula(text), expected, "{text}");
    }

    #[test]
    fn indices_and_exponents_are_set() {
        check("t_w < t_d", "t<sub>w</sub> &lt; t<sub>d</sub>");
        check("(D/x)^(2/3)/3", "(D/x)<sup>2/3</sup>/3");
        check("1.5)^\u{2212}2", "1.5)<sup>\u{2212}2</sup>");
        check("W*_sat", "W*<sub>sat</sub>");
        check("(T/273.15)^1.81 p", "(T/273.15)<sup>1.81</sup> p");
        check("x_1. Then", "x<sub>1</sub>. Then");
        check("r_o\u{b2}", "r<sub>o</sub>\u{b2}");
        check("plain", "plain");
    }
}
