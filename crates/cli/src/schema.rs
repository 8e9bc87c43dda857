//! `dewrun schema`: the published form of the documents.

use std::io::{self, Write};

use dewrun_document::{
    air_schema, answer_schema, doubt_schema, project_schema, remedies_schema, troubles_schema,
    weather_schema,
};

use crate::args::{Document, Schema};
use crate::exit::Ending;

pub(crate) fn schema(args: &Schema, out: &mut impl Write) -> io::Result<Ending> {
    let text = match args.document {
        Document::Project => project_schema(),
        Document::Answer => answer_schema(),
        Document::Air => air_schema(),
        Document::Doubt => doubt_schema(),
        Document::Remedies => remedies_schema(),
        Document::Troubles => troubles_schema(),
        Document::Weather => weather_schema(),
    };
    out.write_all(text.as_bytes())?;
    Ok(Ending::Dry)
}
