//! Where in a text a link is, and the letters that carry the project.

use crate::{DocumentError, limits};

/// What stands before the letters in a link of this version.
pub const LINK_MARK: &str = "#v1=";
/// The version that is written and read.
const VERSION: &str = "1";
/// Signs that writing puts behind a link.
const BEHIND: [char; 9] = ['.', ',', ';', ':', '!', ')', ']', '>', '='];

/// Whether a text holds a link that carries a project, of whatever version, rather than a project itself.
///
/// ```
/// use dewrun_document::is_link;
/// assert!(is_link("See https://example.org/dewrun/#v1=q1YqS8wp."));
/// assert!(!is_link("{\"note\": \"#v1=q1YqS8wp\"}"));
/// assert!(!is_link("#example=make-up-air"));
/// ```
#[must_use]
pub fn is_link(text: &str) -> bool {
    !text.trim_start().starts_with('{') && parts(text).is_some()
}

/// The letters of the link in a text; around it may stand an address and other words.
///
/// # Errors
/// [`DocumentError`] where there is no link, or one that can't be read.
pub fn link_letters(text: &str) -> Result<&str, DocumentError> {
    let (version, carried) = parts(text).ok_or(DocumentError::NoLink)?;
    if version != VERSION {
        return Err(DocumentError::NewerLink {
            version: version.chars().take(6).collect(),
        });
    }
    let letters = within_limit(carried.trim_end_matches(BEHIND))?;
    match letters.bytes().position(|sign| !is_letter(sign)) {
        Some(before) => Err(DocumentError::LinkLetter { at: before + 1 }),
        None => Ok(letters),
    }
}

/// The letters, unless there are more than any link has.
///
/// # Errors
/// [`DocumentError::LinkTooLong`].
pub fn within_limit(letters: &str) -> Result<&str, DocumentError> {
    let (count, max) = (letters.len(), limits::LINK_LETTERS);
    if max < count {
        return Err(DocumentError::LinkTooLong {
            letters: count,
            max,
        });
    }
    Ok(letters)
}

/// The version of the link in a text, and what stands behind it up to the next space or quote.
fn parts(text: &str) -> Option<(&str, &str)> {
    text.match_indices("#v").find_map(|(at, mark)| {
        let rest = text.get(at + mark.len()..)?;
        let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
        let (version, rest) = rest.split_at_checked(digits)?;
        // Some programs write the equals sign of an address in their own way.
        let carried = ["=", "%3D", "%3d"]
            .iter()
            .find_map(|sign| rest.strip_prefix(sign))?;
        let ends = |sign: u8| sign.is_ascii_whitespace() || sign == b'"';
        let end = carried.bytes().position(ends).unwrap_or(carried.len());
        (!version.is_empty()).then_some((version, carried.get(..end)?))
    })
}

fn is_letter(sign: u8) -> bool {
    sign.is_ascii_alphanumeric() || sign == b'-' || sign == b'_'
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, letters: &str) {
        assert_eq!(link_letters(text), Ok(letters), "letters in `{text}`");
    }

    #[test]
    fn links_are_found_in_what_people_write() {
        check("#v1=aB-_9", "aB-_9");
        check("https://example.org/d/?x=1#v1=aB", "aB");
        check("Please look: <https://example.org/#v1=aB>, thanks", "aB");
        check("  http://127.0.0.1:8327/#v1=aB.\n", "aB");
        check("a #vase and #v1%3DaB==", "aB");
        check("href=\"https://example.org/#v1=aB\" class=\"x\"", "aB");
    }

    #[test]
    fn what_is_no_link_is_told_apart() {
        for text in ["", "#", "#v", "#v=ab", "#v1", "v1=ab", "#project"] {
            assert!(!is_link(text), "`{text}` is no link");
            assert_eq!(link_letters(text), Err(DocumentError::NoLink), "{text}");
        }
    }

    #[test]
    fn a_newer_link_names_its_version() {
        let refused = link_letters("https://example.org/#v12=ab");
        let version = "12".to_owned();
        assert_eq!(refused, Err(DocumentError::NewerLink { version }), "v12");
    }

    #[test]
    fn a_sign_that_no_link_has_is_pointed_at() {
        for text in ["#v1=abc%20d", "#v1=abc+d", "#v1=abc\u{202e}d", "#v1=abc<d"] {
            let refused = link_letters(text);
            assert_eq!(refused, Err(DocumentError::LinkLetter { at: 4 }), "{text}");
        }
    }

    #[test]
    fn no_more_is_read_than_any_link_has() {
        let longest = format!("#v1={}", "a".repeat(limits::LINK_LETTERS));
        assert!(link_letters(&longest).is_ok(), "as long as a link may be");
        let (letters, max) = (limits::LINK_LETTERS + 1, limits::LINK_LETTERS);
        let refused = link_letters(&(longest + "a")).err();
        let expected = DocumentError::LinkTooLong { letters, max };
        assert_eq!(refused, Some(expected), "a letter more");
    }
}
