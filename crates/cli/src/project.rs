//! Projects as the command line is given them: a file, the standard input, or a link that carries one.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use dewrun_document::{
    DocumentError, FILE_BYTES, FieldPath, Packed, Project, Run, from_link, is_link, is_packed,
    read_bytes, unpack,
};

/// The project that an argument names.
///
/// # Errors
/// What can't be read, and why.
pub(crate) fn load(path: &Path) -> Result<Project, DocumentError> {
    if let Some(link) = link(path) {
        return from_link(link);
    }
    let bytes = bytes_of(path).map_err(|error| DocumentError::Unreadable {
        reason: error.to_string(),
    })?;
    of_bytes(&bytes)
}

/// The project that an argument names, with the files that are packed with it.
///
/// # Errors
/// What can't be read, and why.
pub(crate) fn load_packed(path: &Path) -> Result<Packed, DocumentError> {
    if link(path).is_some() {
        let project = load(path)?;
        return Ok(Packed {
            project,
            files: Vec::new(),
        });
    }
    let bytes = bytes_of(path).map_err(|error| DocumentError::Unreadable {
        reason: error.to_string(),
    })?;
    if is_packed(&bytes) {
        return unpack(&bytes);
    }
    Ok(Packed {
        project: of_bytes(&bytes)?,
        files: Vec::new(),
    })
}

/// The runs of a project and their positions, or the one of that id.
///
/// # Errors
/// There are none, or none of that id.
pub(crate) fn asked_runs<'a>(
    project: &'a Project,
    only: Option<&str>,
) -> Result<Vec<(usize, &'a Run)>, DocumentError> {
    if project.runs.is_empty() {
        return Err(DocumentError::NoRuns {
            path: FieldPath::root().field("runs"),
        });
    }
    let runs = project.runs.iter().enumerate();
    let asked: Vec<_> = runs
        .filter(|(_, run)| only.is_none_or(|id| run.id == id))
        .collect();
    if asked.is_empty() {
        let known: Vec<&str> = project.runs.iter().map(|run| run.id.as_str()).collect();
        return Err(DocumentError::NoRunCalled {
            id: only.unwrap_or_default().to_owned(),
            known: known.join(", "),
        });
    }
    Ok(asked)
}

/// The project that bytes hold: its file, packed or not, or a link that carries it.
///
/// # Errors
/// What can't be read, and why.
pub(crate) fn of_bytes(bytes: &[u8]) -> Result<Project, DocumentError> {
    match str::from_utf8(bytes) {
        Ok(text) if is_link(text) => from_link(text),
        _ if is_packed(bytes) => unpack(bytes).map(|packed| packed.project),
        _ => read_bytes(bytes),
    }
}

/// What the project of an argument is called where nothing else is known of it.
pub(crate) fn name_of(path: &Path) -> String {
    if path == Path::new("-") {
        return "standard input".to_owned();
    }
    if link(path).is_some() {
        return "link".to_owned();
    }
    path.display().to_string()
}

/// Says on the standard error what is wrong with a project, with the place in its text.
pub(crate) fn complain_of(name: &str, error: &DocumentError) {
    eprintln!("dewrun: {}", told_of(name, error));
}

/// What is wrong with a project, with the place in its text.
pub(crate) fn told_of(name: &str, error: &DocumentError) -> String {
    let sentence = error.sentence();
    match error.line_column() {
        Some((line, column)) => format!("{name}:{line}:{column}: {sentence}"),
        None => format!("{name}: {sentence}"),
    }
}

/// The link that stands where a path may: no file has such a name.
fn link(path: &Path) -> Option<&str> {
    path.to_str().filter(|text| is_link(text) && !path.exists())
}

/// The bytes of a file, or of the standard input; no more than tell that it is too long.
pub(crate) fn bytes_of(path: &Path) -> io::Result<Vec<u8>> {
    // A packed project is longer than any project alone.
    let most = u64::try_from(FILE_BYTES).unwrap_or(u64::MAX) + 1;
    let mut bytes = Vec::new();
    if path == Path::new("-") {
        io::stdin().lock().take(most).read_to_end(&mut bytes)?;
    } else {
        File::open(path)?.take(most).read_to_end(&mut bytes)?;
    }
    Ok(bytes)
}
