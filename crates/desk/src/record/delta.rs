//! A text as the piece in which it differs from another.

/// How many bytes at both ends are the same as in the base, and what stands between them.
pub(super) fn delta<'a>(base: &str, text: &'a str) -> (usize, usize, &'a str) {
    let same = |ends: &mut dyn Iterator<Item = (u8, u8)>| ends.take_while(|(a, b)| a == b).count();
    let mut before = same(&mut base.bytes().zip(text.bytes()));
    while !text.is_char_boundary(before) || !base.is_char_boundary(before) {
        before -= 1;
    }
    let rest = base.len().min(text.len()) - before;
    let mut behind = same(&mut base.bytes().rev().zip(text.bytes().rev())).min(rest);
    while !text.is_char_boundary(text.len() - behind) || !base.is_char_boundary(base.len() - behind)
    {
        behind -= 1;
    }
    let middle = text.get(before..text.len() - behind).unwrap_or("");
    (before, behind, middle)
}

/// The text again; none where the base is another.
pub(super) fn undelta(base: &str, before: usize, behind: usize, middle: &str) -> Option<String> {
    let start = base.get(..before)?;
    let end = base.get(base.len().checked_sub(behind)?..)?;
    Some([start, middle, end].concat())
}

#[cfg(test)]
mod tests {
    use proptest::prelude::{prop_assert_eq, proptest};

    use super::{delta, undelta};

    #[test]
    fn only_the_piece_that_differs_is_named() {
        assert_eq!(
            delta("length 4.2 m", "length 4.35 m"),
            (9, 2, "35"),
            "a number"
        );
        assert_eq!(delta("aa", "aaa"), (2, 0, "a"), "ends that overlap");
        assert_eq!(
            delta("é", "è"),
            (0, 0, "è"),
            "whole signs, though they share a byte"
        );
    }

    proptest! {
        #[test]
        fn a_text_comes_back(base in "[aé€]{0,8}", text in "[aé€]{0,8}") {
            let (before, behind, middle) = delta(&base, &text);
            prop_assert_eq!(undelta(&base, before, behind, middle), Some(text.clone()));
        }
    }
}
