//! The published schemas of the documents.

use dewrun_quantity::Limits;
use serde_json::{Value, json};

use crate::limits::FIELDS;
use crate::output::{AirStateOutput, AssessOutput};
use crate::v1::File;

/// The JSON schema (draft 2020-12) of the project file, with the limits of every number.
#[must_use]
pub fn project_schema() -> String {
    let mut schema = schemars::schema_for!(File).to_value();
    add_limits(&mut schema);
    published(&schema)
}

/// The JSON schema (draft 2020-12) of the answer file.
#[must_use]
pub fn answer_schema() -> String {
    published(&schemars::schema_for!(AssessOutput).to_value())
}

/// The JSON schema (draft 2020-12) of the answer about one state of air.
#[must_use]
pub fn air_schema() -> String {
    published(&schemars::schema_for!(AirStateOutput).to_value())
}

fn published(schema: &Value) -> String {
    format!("{schema:#}\n")
}

/// Adds its limits to every field of a known name.
fn add_limits(schema: &mut Value) {
    match schema {
        Value::Object(members) => {
            if let Some(Value::Object(properties)) = members.get_mut("properties") {
                for (name, field) in properties {
                    limit(name, field);
                }
            }
            members.values_mut().for_each(add_limits);
        }
        Value::Array(entries) => entries.iter_mut().for_each(add_limits),
        _ => {}
    }
}

fn limit(name: &str, field: &mut Value) {
    let Some((_, Limits { min, max, .. })) = FIELDS.iter().find(|(known, _)| *known == name) else {
        return;
    };
    if let Value::Object(members) = field {
        let value = json!({ "value": { "minimum": min, "maximum": max } });
        members.insert("properties".to_owned(), value);
    }
}
