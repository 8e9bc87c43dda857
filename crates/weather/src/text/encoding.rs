//! What the bytes of a file stand for: UTF-8, UTF-16 or Windows-1252, told apart by looking.
//!
//! Numbers are the same bytes in UTF-8 and Windows-1252, so only names are ever decoded; UTF-16 is rewritten as it comes in.
//! A general library for encodings carries the tables of every script on earth, more than a page should load.

use std::borrow::Cow;

/// How the bytes of a text stand for letters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Encoding {
    /// UTF-8, ASCII included.
    Utf8,
    /// Windows-1252, Latin-1 included.
    Windows1252,
    /// UTF-16, low byte first.
    Utf16Le,
    /// UTF-16, high byte first.
    Utf16Be,
}

impl Encoding {
    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Utf8 => "UTF-8",
            Self::Windows1252 => "Windows-1252",
            Self::Utf16Le => "UTF-16 LE",
            Self::Utf16Be => "UTF-16 BE",
        }
    }
}

/// Letters at 0x80 to 0x9f; the five unused places keep their own code, as browsers do.
///
/// # Source
/// WHATWG Encoding Standard, index windows-1252.
const UPPER: [char; 32] = [
    '€', '\u{81}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{8d}', 'Ž', '\u{8f}',
    '\u{90}', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{9d}', 'ž', 'Ÿ',
];

/// The text of some bytes, and whether they had to be taken as Windows-1252.
pub(crate) fn text_of(bytes: &[u8]) -> (Cow<'_, str>, bool) {
    match str::from_utf8(bytes) {
        Ok(text) => (Cow::Borrowed(text), false),
        Err(_) => (
            Cow::Owned(bytes.iter().map(|byte| letter(*byte)).collect()),
            true,
        ),
    }
}

fn letter(byte: u8) -> char {
    match byte {
        0x80..=0x9f => UPPER[usize::from(byte - 0x80)],
        _ => char::from(byte),
    }
}

/// Takes the mark at the start of a file away and turns UTF-16 into UTF-8, piece by piece.
#[derive(Debug, Default)]
pub(crate) struct Decoder {
    seen: Vec<u8>,
    encoding: Option<Encoding>,
    half: Option<u8>,
    high: Option<u16>,
}

/// As many bytes tell which encoding it is.
const ENOUGH: usize = 64;

impl Decoder {
    /// The encoding, once it is known; UTF-8 and Windows-1252 are told apart later, by the names.
    pub(crate) const fn encoding(&self) -> Option<Encoding> {
        self.encoding
    }

    /// The same bytes in UTF-8 or Windows-1252; borrowed where nothing has to change.
    pub(crate) fn push<'a>(&mut self, piece: &'a [u8]) -> Cow<'a, [u8]> {
        match self.encoding {
            Some(Encoding::Utf8 | Encoding::Windows1252) => Cow::Borrowed(piece),
            Some(Encoding::Utf16Le) => Cow::Owned(self.rewrite(piece, u16::from_le_bytes)),
            Some(Encoding::Utf16Be) => Cow::Owned(self.rewrite(piece, u16::from_be_bytes)),
            None => {
                self.seen.extend_from_slice(piece);
                if self.seen.len() < ENOUGH {
                    return Cow::Borrowed(&[]);
                }
                Cow::Owned(self.settle())
            }
        }
    }

    /// What was held back of a very short file.
    pub(crate) fn finish(&mut self) -> Vec<u8> {
        if self.encoding.is_none() {
            return self.settle();
        }
        Vec::new()
    }

    fn settle(&mut self) -> Vec<u8> {
        let seen = core::mem::take(&mut self.seen);
        let (encoding, mark) = recognised(&seen);
        self.encoding = Some(encoding);
        let body = seen.get(mark..).unwrap_or_default();
        match encoding {
            Encoding::Utf16Le => self.rewrite(body, u16::from_le_bytes),
            Encoding::Utf16Be => self.rewrite(body, u16::from_be_bytes),
            Encoding::Utf8 | Encoding::Windows1252 => body.to_vec(),
        }
    }

    fn rewrite(&mut self, piece: &[u8], unit: fn([u8; 2]) -> u16) -> Vec<u8> {
        let mut text = String::with_capacity(piece.len() / 2 + 4);
        for byte in piece {
            let Some(first) = self.half.take() else {
                self.half = Some(*byte);
                continue;
            };
            let unit = unit([first, *byte]);
            if let Some(high) = self.high.take() {
                text.extend(
                    char::decode_utf16([high, unit]).map(|sign| sign.unwrap_or('\u{fffd}')),
                );
            } else if (0xd800..0xdc00).contains(&unit) {
                self.high = Some(unit);
            } else {
                text.push(char::from_u32(u32::from(unit)).unwrap_or('\u{fffd}'));
            }
        }
        text.into_bytes()
    }
}

/// The encoding that the first bytes show, and how many of them are its mark.
fn recognised(head: &[u8]) -> (Encoding, usize) {
    if head.starts_with(b"\xef\xbb\xbf") {
        return (Encoding::Utf8, 3);
    }
    if head.starts_with(b"\xff\xfe") {
        return (Encoding::Utf16Le, 2);
    }
    if head.starts_with(b"\xfe\xff") {
        return (Encoding::Utf16Be, 2);
    }
    let zeros = |first: usize| {
        head.iter()
            .skip(first)
            .step_by(2)
            .filter(|byte| **byte == 0)
            .count()
    };
    let (even, odd) = (zeros(0), zeros(1));
    let most = head.len() / 3;
    if 0 < odd && even == 0 && most <= odd {
        return (Encoding::Utf16Le, 0);
    }
    if 0 < even && odd == 0 && most <= even {
        return (Encoding::Utf16Be, 0);
    }
    (Encoding::Utf8, 0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(bytes: &[u8], encoding: Encoding, text: &str) {
        for size in [1, 3, 1000] {
            let mut decoder = Decoder::default();
            let mut out = Vec::new();
            for piece in bytes.chunks(size) {
                out.extend_from_slice(&decoder.push(piece));
            }
            out.extend(decoder.finish());
            assert_eq!(text_of(&out).0, text, "pieces of {size}");
            assert_eq!(decoder.encoding(), Some(encoding), "pieces of {size}");
        }
    }

    fn utf16(text: &str, bytes: fn(u16) -> [u8; 2]) -> Vec<u8> {
        text.encode_utf16().flat_map(bytes).collect()
    }

    #[test]
    fn marks_and_zeros_tell_the_encoding() {
        let text = "time;Temp °C;𝑇\n2024-06-01 00:00;21,5;70\n2024-06-01 01:00;21,0;71\n";
        check(text.as_bytes(), Encoding::Utf8, text);
        check(
            &[b"\xef\xbb\xbf", text.as_bytes()].concat(),
            Encoding::Utf8,
            text,
        );
        let little = utf16(text, u16::to_le_bytes);
        check(
            &[b"\xff\xfe".to_vec(), little.clone()].concat(),
            Encoding::Utf16Le,
            text,
        );
        check(&little, Encoding::Utf16Le, text);
        check(&utf16(text, u16::to_be_bytes), Encoding::Utf16Be, text);
        check(b"\xef\xbb\xbfa,b", Encoding::Utf8, "a,b");
    }

    #[test]
    fn names_in_windows_letters_are_read() {
        assert_eq!(text_of(b"Bel\xe9m").0, "Belém", "Latin-1");
        assert_eq!(text_of(b"\x80 \xb0C").0, "€ °C", "the Windows part");
        assert!(!text_of("Belém".as_bytes()).1, "UTF-8 stays UTF-8");
    }
}
