//! An answer as JSON on the standard output.

use std::io::{self, Write};

use dewrun_document::DocumentError;

use crate::exit::Ending;

/// Writes an answer about something of that name; what can't be written ends the command as failed, with its reason.
pub(crate) fn write_answer(
    name: &str,
    json: Result<String, DocumentError>,
    ending: Ending,
    out: &mut impl Write,
) -> io::Result<Ending> {
    match json {
        Ok(json) => {
            writeln!(out, "{json}")?;
            Ok(ending)
        }
        Err(error) => {
            eprintln!("dewrun: {name}: {}", error.sentence());
            Ok(Ending::Failed)
        }
    }
}
