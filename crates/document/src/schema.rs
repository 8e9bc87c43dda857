//! The published schemas of the documents.

use dewrun_quantity::Limits;
use serde_json::{Value, json};

use crate::limits::{FIELDS, PLAIN, READINGS, YEAR, YEAR_PLAIN};
use crate::output::{
    AirStateOutput, AssessOutput, DoubtFile, RemediesFile, TroublesFile, WeatherOutput,
};
use crate::v1::File;

/// The JSON schema (draft 2020-12) of the project file, with the limits of every number.
#[must_use]
pub fn project_schema() -> String {
    let mut schema = schemars::schema_for!(File).to_value();
    add_limits("Project", &mut schema);
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

/// The JSON schema (draft 2020-12) of the answer about a weather or logger file.
#[must_use]
pub fn weather_schema() -> String {
    published(&schemars::schema_for!(WeatherOutput).to_value())
}

/// The JSON schema (draft 2020-12) of the answer about the doubt of a year.
#[must_use]
pub fn doubt_schema() -> String {
    published(&schemars::schema_for!(DoubtFile).to_value())
}

/// The JSON schema (draft 2020-12) of the answer about remedies.
#[must_use]
pub fn remedies_schema() -> String {
    published(&schemars::schema_for!(RemediesFile).to_value())
}

/// The JSON schema (draft 2020-12) of the answer about a log of troubles.
#[must_use]
pub fn troubles_schema() -> String {
    published(&schemars::schema_for!(TroublesFile).to_value())
}

fn published(schema: &Value) -> String {
    format!("{schema:#}\n")
}

/// Adds its limits to every field of a known name; the owner is the definition that the field belongs to.
fn add_limits(owner: &str, schema: &mut Value) {
    match schema {
        Value::Object(members) => {
            for (name, member) in members {
                match (name.as_str(), member) {
                    ("properties", Value::Object(fields)) => {
                        for (name, field) in fields {
                            limit(owner, name, field);
                            add_limits(owner, field);
                        }
                    }
                    ("$defs", Value::Object(definitions)) => {
                        for (name, definition) in definitions {
                            add_limits(name, definition);
                        }
                    }
                    (_, member) => add_limits(owner, member),
                }
            }
        }
        Value::Array(entries) => entries
            .iter_mut()
            .for_each(|entry| add_limits(owner, entry)),
        _ => {}
    }
}

fn limit(owner: &str, name: &str, field: &mut Value) {
    let owned = format!("{owner}.{name}");
    let is_it = |(known, _): &&(&str, Limits)| *known == name || *known == owned;
    let Value::Object(members) = field else {
        return;
    };
    if let Some((_, Limits { min, max, .. })) =
        FIELDS.iter().chain(&READINGS).chain(&YEAR).find(is_it)
    {
        let value = json!({ "value": { "minimum": min, "maximum": max } });
        members.insert("properties".to_owned(), value);
    }
    if let Some((_, Limits { min, max, .. })) = PLAIN.iter().chain(&YEAR_PLAIN).find(is_it) {
        members.insert("minimum".to_owned(), json!(min));
        members.insert("maximum".to_owned(), json!(max));
    }
}
