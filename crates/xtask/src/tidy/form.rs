//! Every Rust file opens with a sentence on what it is for; no line of any file ends in a space.
//!
//! Files that stand for those of other programs are as these write them.

use super::source::Source;

/// Exports of loggers and weather services, rebuilt byte by byte.
const AS_WRITTEN: &str = "tests/cases/fixtures/";

pub(super) fn check(source: &Source) -> Vec<String> {
    let mut problems = Vec::new();
    if source.is_rust() && !source.text.starts_with("//! ") {
        problems.push(": does not begin with a `//!` sentence".to_owned());
    }
    for (number, line) in (1..).zip(source.text.lines()) {
        if line.ends_with([' ', '\t']) && !source.path.starts_with(AS_WRITTEN) {
            problems.push(format!(":{number}: ends in white space"));
        }
    }
    problems
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tidy::source::source;

    #[test]
    fn rust_needs_its_sentence() {
        assert_eq!(check(&source("a.rs", "use b;\n")).len(), 1, "no sentence");
        assert_eq!(
            check(&source("a.rs", "//! What a is.\n")).len(),
            0,
            "a sentence"
        );
        assert_eq!(
            check(&source("a.md", "# A\n")).len(),
            0,
            "only Rust needs one"
        );
    }

    #[test]
    fn no_line_ends_in_a_space() {
        assert_eq!(
            check(&source("a.md", "a \nb\nc\t\n")).len(),
            2,
            "a space and a tab"
        );
    }
}
