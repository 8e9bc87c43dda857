//! A project saved with the files that it goes by: one JSON text, each file deflated (RFC 1951) in base64 (RFC 4648).

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::decompress_to_vec_with_limit;
use serde::{Deserialize, Serialize};

use crate::{DocumentError, FieldPath, Project, limits, read, write};

/// What stands in `format` of a project that is saved with its files.
pub const PACKED_FORMAT: &str = "dewrun-packed";
/// The most bytes of a file that is packed.
pub const FILE_BYTES: usize = 256 * 1024 * 1024;
/// Strength of the deflation: stronger ones take long and gain little.
const LEVEL: u8 = 6;

/// A file that a project goes by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PackedFile {
    /// Its name.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// A project and the files that it goes by.
#[derive(Debug, Clone, PartialEq)]
pub struct Packed {
    /// The project.
    pub project: Project,
    /// Its files; none where the text was a project alone.
    pub files: Vec<PackedFile>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Text {
    format: String,
    version: u64,
    /// The text of the project file as it is, so that every fault keeps its line.
    project: String,
    files: Vec<File>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    name: String,
    bytes: u64,
    deflated: String,
}

/// A project with its files as one text.
///
/// # Errors
/// [`DocumentError`] where a limit of the project is left.
///
/// ```
/// use dewrun_document::{Packed, PackedFile, pack, read, unpack};
/// let project = read(include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json")))?;
/// let file = PackedFile { name: "a.csv".to_owned(), bytes: b"time,temperature\n".to_vec() };
/// let packed = Packed { project, files: vec![file] };
/// assert_eq!(unpack(pack(&packed)?.as_bytes())?, packed);
/// # Ok::<(), dewrun_document::DocumentError>(())
/// ```
pub fn pack(packed: &Packed) -> Result<String, DocumentError> {
    let text = Text {
        format: PACKED_FORMAT.to_owned(),
        version: 1,
        project: write(&packed.project)?,
        files: packed.files.iter().map(deflated).collect(),
    };
    let json = serde_json::to_string_pretty(&text).map_err(|_| DocumentError::NotFinite)?;
    Ok(json + "\n")
}

fn deflated(file: &PackedFile) -> File {
    File {
        name: file.name.clone(),
        bytes: u64::try_from(file.bytes.len()).unwrap_or(u64::MAX),
        deflated: STANDARD.encode(compress_to_vec(&file.bytes, LEVEL)),
    }
}

/// Whether bytes are a project that was saved with its files.
#[must_use]
pub fn is_packed(bytes: &[u8]) -> bool {
    let head = bytes.get(..bytes.len().min(limits::ID)).unwrap_or(bytes);
    let mark = format!("\"{PACKED_FORMAT}\"");
    head.windows(mark.len()).any(|part| part == mark.as_bytes())
}

/// A project with its files from one text; a project file alone has none.
///
/// # Errors
/// [`DocumentError`] says what is wrong with the text, with a file of it, or with the project in it.
pub fn unpack(bytes: &[u8]) -> Result<Packed, DocumentError> {
    if !is_packed(bytes) {
        let project = crate::read_bytes(bytes)?;
        return Ok(Packed {
            project,
            files: Vec::new(),
        });
    }
    let text: Text = serde_json::from_slice(bytes).map_err(|error| DocumentError::Syntax {
        message: error.to_string(),
        line: error.line(),
        column: error.column(),
    })?;
    if text.version != 1 {
        return Err(DocumentError::Newer {
            version: text.version,
            revision: 1,
            known: crate::REVISION,
        });
    }
    let files = text.files.into_iter().enumerate();
    Ok(Packed {
        project: read(&text.project)?,
        files: files
            .map(|(at, file)| inflated(at, file))
            .collect::<Result<_, _>>()?,
    })
}

fn inflated(at: usize, file: File) -> Result<PackedFile, DocumentError> {
    let damaged = || DocumentError::Told {
        path: FieldPath::root().field("files").index(at).field("deflated"),
        sentence: format!("the file `{}` in it is damaged; save it anew", file.name),
    };
    let length = usize::try_from(file.bytes).map_err(|_| damaged())?;
    let packed = STANDARD.decode(&file.deflated).map_err(|_| damaged())?;
    let most = length.min(FILE_BYTES);
    let bytes = decompress_to_vec_with_limit(&packed, most).map_err(|_| damaged())?;
    if bytes.len() != length {
        return Err(damaged());
    }
    Ok(PackedFile {
        name: file.name,
        bytes,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const DEMO: &str = include_str!("../../../demo/make-up-air.json");

    fn packed() -> String {
        let file = PackedFile {
            name: "weather.csv".to_owned(),
            bytes: b"time,temperature\n".repeat(1000),
        };
        let project = read(DEMO).expect("the example opens");
        pack(&Packed {
            project,
            files: vec![file],
        })
        .expect("it is packed")
    }

    #[test]
    fn a_file_is_smaller_packed_and_comes_back() {
        let text = packed();
        assert!(is_packed(text.as_bytes()), "it says so at its head");
        assert!(text.len() < 2 * DEMO.len(), "{} bytes", text.len());
        let back = unpack(text.as_bytes()).expect("it is read");
        assert_eq!(back.files[0].bytes.len(), 17_000, "all of it");
        assert_eq!(read(DEMO), Ok(back.project), "and the project");
        let alone = unpack(DEMO.as_bytes()).expect("a project alone");
        assert!(alone.files.is_empty(), "has no files");
    }

    #[test]
    fn a_damaged_file_is_named() {
        let text = packed();
        let longer = text.replace("\"bytes\": 17000", "\"bytes\": 17001");
        let error = unpack(longer.as_bytes()).expect_err("it is too short");
        assert!(
            error
                .sentence()
                .contains("files[0].deflated: the file `weather.csv` in it is damaged"),
            "{error}"
        );
        let shorter = text.replace("\"bytes\": 17000", "\"bytes\": 16");
        assert!(
            unpack(shorter.as_bytes()).is_err(),
            "no more than it says is unpacked"
        );
        let cut = text.get(..text.len() / 2).expect("half of it");
        assert!(
            matches!(unpack(cut.as_bytes()), Err(DocumentError::Syntax { .. })),
            "cut short"
        );
    }
}
