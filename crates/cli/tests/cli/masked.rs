//! Masking of numbers, so that a snapshot guards wording and form alone.

/// The text with every number, its sign included, as `#` and every run of spaces as at most two, none at the end of a line.
pub(crate) fn masked(text: &str) -> String {
    let mut out = String::new();
    let mut signs = text.chars().peekable();
    let mut in_word = false;
    while let Some(sign) = signs.next() {
        let is_minus = ['-', '\u{2212}'].contains(&sign);
        let begins =
            sign.is_ascii_digit() || (is_minus && signs.peek().is_some_and(char::is_ascii_digit));
        if begins && !in_word {
            while signs.next_if(|&next| is_of_number(next)).is_some() {}
            out.push('#');
            continue;
        }
        in_word = sign.is_alphabetic()
            || (in_word && (sign == '-' || sign == '_' || sign.is_ascii_digit()));
        if sign == ' ' && out.ends_with("  ") {
            continue;
        }
        if sign == '\n' {
            out.truncate(out.trim_end_matches(' ').len());
        }
        out.push(sign);
    }
    out
}

fn is_of_number(sign: char) -> bool {
    sign.is_ascii_digit() || ['.', '\u{2009}', 'e'].contains(&sign)
}

#[test]
fn numbers_are_masked_and_words_are_not() {
    assert_eq!(
        masked("in-1    10.6 g/h at \u{2212}4.2 \u{b0}C, 101\u{2009}325 Pa"),
        "in-1  # g/h at # \u{b0}C, # Pa",
        "numbers only"
    );
}
