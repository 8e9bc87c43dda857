//! The project file as it stands on disk: its head, and how it is read and written.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{Pressure, Project, Run, Space, check};
use crate::{DocumentError, FieldPath, limits};

/// What stands in `format`.
pub const FORMAT: &str = "dewrun-project";
/// The version that is written and read.
pub const VERSION: u64 = 1;
/// The revision that is written; every revision up to it is read.
pub const REVISION: u64 = 1;

/// The head and the project of a file.
#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, expecting = "a project")]
#[schemars(rename = "Project", title = "Dewrun project, version 1, revision 1")]
pub(crate) struct File {
    /// Always `dewrun-project`.
    #[schemars(extend("const" = FORMAT))]
    format: String,
    /// Always 1.
    #[schemars(extend("const" = VERSION))]
    version: u64,
    /// Which fields the file may hold; rises with every field added.
    #[schemars(range(min = 1, max = 1))]
    revision: u64,
    /// What people call the project.
    name: String,
    /// Anything worth saying about it; may be empty.
    note: String,
    /// Pressure of the air on site.
    pressure: Pressure,
    /// The spaces that legs pass.
    spaces: Vec<Space>,
    /// The runs: one for each detector.
    runs: Vec<Run>,
}

/// The head alone, whatever else the file holds.
#[derive(Deserialize)]
#[serde(expecting = "a project")]
struct Head {
    format: Option<Value>,
    version: Option<Value>,
    revision: Option<Value>,
}

/// Reads a project file.
///
/// # Errors
/// [`DocumentError`] says what is wrong, where, and what would be right; nothing is opened then.
pub fn read(text: &str) -> Result<Project, DocumentError> {
    if limits::TEXT_BYTES < text.len() {
        return Err(DocumentError::TooLong {
            bytes: text.len(),
            max: limits::TEXT_BYTES,
        });
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    check_head(&parsed(text)?)?;
    let file: File = parsed(text)?;
    let project = Project {
        name: file.name,
        note: file.note,
        pressure: file.pressure,
        spaces: file.spaces,
        runs: file.runs,
    };
    check(&project)?;
    Ok(project)
}

/// As [`read`], from the bytes of a file.
///
/// # Errors
/// As [`read`], and where the bytes are no text.
pub fn read_bytes(bytes: &[u8]) -> Result<Project, DocumentError> {
    let text = str::from_utf8(bytes).map_err(|error| DocumentError::NotText {
        byte: error.valid_up_to(),
    })?;
    read(text)
}

/// Writes a project file that [`read`] gives back bit for bit.
///
/// # Errors
/// [`DocumentError`] where a limit is left, a number that is not finite included: such a file could not be opened again.
pub fn write(project: &Project) -> Result<String, DocumentError> {
    check(project)?;
    let project = project.clone();
    let file = File {
        format: FORMAT.to_owned(),
        version: VERSION,
        revision: REVISION,
        name: project.name,
        note: project.note,
        pressure: project.pressure,
        spaces: project.spaces,
        runs: project.runs,
    };
    let mut text = serde_json::to_string_pretty(&file).map_err(|_| DocumentError::NotFinite)?;
    text.push('\n');
    Ok(text)
}

fn check_head(head: &Head) -> Result<(), DocumentError> {
    let found = head.format.as_ref();
    if found.and_then(Value::as_str) != Some(FORMAT) {
        return Err(DocumentError::NotAProject {
            found: found.map_or_else(|| "missing".to_owned(), shortened),
        });
    }
    let version = whole(head.version.as_ref(), "version")?;
    let revision = whole(head.revision.as_ref(), "revision")?;
    if VERSION < version || REVISION < revision {
        return Err(DocumentError::Newer {
            version,
            revision,
            known: REVISION,
        });
    }
    Ok(())
}

/// A whole number of the head, 1 or more.
fn whole(value: Option<&Value>, name: &str) -> Result<u64, DocumentError> {
    match value.map(|value| (value, value.as_u64())) {
        Some((_, Some(number))) if 1 <= number => Ok(number),
        found => Err(DocumentError::Shape {
            path: FieldPath::root().field(name),
            message: match found {
                Some((value, _)) => {
                    format!("is {}, must be a whole number from 1", shortened(value))
                }
                None => format!("missing field `{name}`, must be a whole number from 1"),
            },
            line: 1,
            column: 1,
        }),
    }
}

fn shortened(value: &Value) -> String {
    let text = value.to_string();
    match text.char_indices().nth(limits::ID) {
        Some((end, _)) => format!("{}..", text.get(..end).unwrap_or("")),
        None => text,
    }
}

fn parsed<'a, T: Deserialize<'a>>(text: &'a str) -> Result<T, DocumentError> {
    let mut reader = serde_json::Deserializer::from_str(text);
    let value = serde_path_to_error::deserialize(&mut reader)
        .map_err(|error| translated(error.inner(), FieldPath::from(error.path())))?;
    reader
        .end()
        .map_err(|error| translated(&error, FieldPath::root()))?;
    Ok(value)
}

/// The reader's own error, in words for people who do not program.
fn translated(error: &serde_json::Error, path: FieldPath) -> DocumentError {
    let (line, column) = (error.line(), error.column());
    let whole = error.to_string();
    let place = format!(" at line {line} column {column}");
    let message = whole
        .strip_suffix(&place)
        .unwrap_or(&whole)
        .replace("EOF while parsing", "the text ends within")
        .replace("expected f64", "expected a number")
        .replace("expected a sequence", "expected a list")
        .replace("floating point `", "the number `")
        .replace("integer `", "the number `");
    if error.is_data() {
        return DocumentError::Shape {
            path,
            message,
            line,
            column,
        };
    }
    DocumentError::Syntax {
        message,
        line,
        column,
    }
}
