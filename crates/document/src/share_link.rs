//! A project within an address: JSON without spaces, deflated (RFC 1951), a check behind it, in letters that every address takes (RFC 4648, section 5).
//!
//! The page leaves packing to the browser, which can do it already; both read each other's links.

mod letters;

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress};

use crate::json::written_short;
use crate::{DocumentError, Project, check, limits, read_bytes};

pub use letters::{LINK_MARK, is_link, link_letters, within_limit};

/// The strongest setting.
const LEVEL: u8 = 10;

/// What stands after the address of the page, the `#` included, in a link that carries a project.
///
/// ```
/// use dewrun_document::{from_link, read, share_link};
/// let text = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json"));
/// let project = read(text)?;
/// let link = format!("https://example.org/dewrun/{}", share_link(&project)?);
/// assert!(link.len() < 2500);
/// assert_eq!(from_link(&link)?, project);
/// # Ok::<(), dewrun_document::DocumentError>(())
/// ```
///
/// # Errors
/// [`DocumentError`] where a limit of the project is left, or where the link would be longer than any that is read.
pub fn share_link(project: &Project) -> Result<String, DocumentError> {
    let text = link_text(project)?.into_bytes();
    let mut packed = compress_to_vec(&text, LEVEL);
    packed.extend(crc_32(&packed).to_be_bytes());
    let letters = URL_SAFE_NO_PAD.encode(packed);
    Ok(format!("{LINK_MARK}{}", within_limit(&letters)?))
}

/// The text that is packed into a link: the project file without spaces and lines.
///
/// # Errors
/// [`DocumentError`] where a limit of the project is left.
pub fn link_text(project: &Project) -> Result<String, DocumentError> {
    check(project)?;
    Ok(written_short(project))
}

/// The project that a link carries; around the link may stand an address and other words.
///
/// # Errors
/// [`DocumentError`] says what is wrong with the link, or with the project in it; nothing is opened then.
pub fn from_link(text: &str) -> Result<Project, DocumentError> {
    let packed = URL_SAFE_NO_PAD.decode(link_letters(text)?);
    let packed = packed.map_err(|_| DocumentError::LinkDamaged)?;
    let (text, is_checked) = unpacked(&packed)?;
    read_bytes(&text).map_err(|error| match error {
        // Damage may lengthen what was packed by just its check: no program packs what is no JSON.
        DocumentError::Syntax { .. } | DocumentError::NotText { .. } if !is_checked => {
            DocumentError::LinkDamaged
        }
        error => error,
    })
}

/// The text that was packed, in no more memory than the longest project takes, and whether a check stood behind it.
///
/// A check that is there must hold; a link that another program has made may lack it.
fn unpacked(packed: &[u8]) -> Result<(Vec<u8>, bool), DocumentError> {
    let mut state = Box::<DecompressorOxide>::default();
    let mut text = vec![0; packed.len().saturating_mul(4).min(limits::TEXT_BYTES)];
    let (mut taken, mut made) = (0, 0);
    loop {
        let rest = packed.get(taken..).unwrap_or_default();
        let flags = TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
        let (status, read, written) = decompress(&mut state, rest, &mut text, made, flags);
        taken += read;
        made += written;
        match status {
            TINFLStatus::Done => break,
            TINFLStatus::HasMoreOutput if text.len() < limits::TEXT_BYTES => {
                text.resize((text.len() * 2).min(limits::TEXT_BYTES), 0);
            }
            TINFLStatus::HasMoreOutput => {
                let max = limits::TEXT_BYTES;
                return Err(DocumentError::LinkTooLarge { max });
            }
            _ => return Err(DocumentError::LinkDamaged),
        }
    }
    text.truncate(made);
    let (deflated, check) = packed.split_at(taken.min(packed.len()));
    // Of what was packed, not of the text: the last bits of it say nothing, and are seen all the same.
    let is_checked = !check.is_empty();
    let holds = !is_checked || check == crc_32(deflated).to_be_bytes();
    let found = holds.then_some((text, is_checked));
    found.ok_or(DocumentError::LinkDamaged)
}

/// By which a project is told from one of other inputs: the check of its text, in hexadecimal digits.
///
/// # Errors
/// [`DocumentError`] where the project can't be written.
pub fn fingerprint(project: &Project) -> Result<String, DocumentError> {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let check = crc_32(link_text(project)?.as_bytes()).to_be_bytes();
    let digit = |half: u8| {
        DIGITS
            .get(usize::from(half))
            .map_or('0', |digit| char::from(*digit))
    };
    let mut print = String::with_capacity(9);
    for (at, byte) in check.into_iter().enumerate() {
        if at == 2 {
            print.push('-');
        }
        print.extend([digit(byte >> 4), digit(byte & 15)]);
    }
    Ok(print)
}

/// The check of many formats, CRC-32 of ISO/IEC 13239 and IEEE 802.3: one damaged letter could else turn a figure into another.
fn crc_32(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, byte| {
        (0..8).fold(sum ^ u32::from(*byte), |sum, _| {
            (sum >> 1) ^ (0xEDB8_8320 & (sum & 1).wrapping_neg())
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn link(packed: &[u8]) -> String {
        format!("{LINK_MARK}{}", URL_SAFE_NO_PAD.encode(packed))
    }

    /// The check value that catalogues of CRCs give for the nine digits.
    #[test]
    fn check_is_the_usual_one() {
        assert_eq!(crc_32(b"123456789"), 0xCBF4_3926, "CRC-32 of 123456789");
    }

    /// 64 MiB of one letter pack into 64 kB.
    #[test]
    fn what_would_fill_the_memory_is_refused() {
        let bomb = compress_to_vec(&vec![b' '; 64 << 20], 9);
        assert!(bomb.len() < 100_000, "it is small: {} B", bomb.len());
        let max = limits::TEXT_BYTES;
        let refused = from_link(&link(&bomb));
        assert_eq!(refused, Err(DocumentError::LinkTooLarge { max }), "a bomb");
    }

    /// The stored block of RFC 1951, section 3.2.4, holds its text as it is: no compressor of ours is in the way.
    #[test]
    fn what_another_program_packed_without_a_check_is_read() {
        let text = "{\"format\": \"dewrun-project\", \"version\": 1}";
        let length = u16::try_from(text.len()).expect("it is short");
        let mut packed = vec![1];
        packed.extend(length.to_le_bytes());
        packed.extend((!length).to_le_bytes());
        packed.extend(text.as_bytes());
        let refused = from_link(&link(&packed)).map_err(|error| error.sentence());
        let lacks = "revision: missing field `revision`, must be a whole number from 1";
        assert_eq!(refused, Err(lacks.to_owned()), "the text was read");
        packed.extend([0, 0, 0, 0]);
        let refused = from_link(&link(&packed));
        assert_eq!(refused, Err(DocumentError::LinkDamaged), "a wrong check");
    }
}
