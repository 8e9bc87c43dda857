//! A value and where it came from.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A value and where it came from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(
    deny_unknown_fields,
    expecting = "a value with its origin, such as {\"value\": 4.2, \"origin\": \"typed\"}"
)]
#[schemars(rename = "Input")]
pub struct Input<T> {
    /// The value, in the unit that the field's name ends in.
    pub value: T,
    /// Where it came from.
    pub origin: Origin,
}

impl<T> Input<T> {
    /// A value that somebody typed.
    pub const fn typed(value: T) -> Self {
        Self {
            value,
            origin: Origin::Typed,
        }
    }
}

/// Where a value came from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(
    rename_all = "snake_case",
    deny_unknown_fields,
    expecting = "\"typed\", {\"assumed\": ..} or {\"measured\": ..}"
)]
pub enum Origin {
    /// Somebody typed it.
    Typed,
    /// The usual value of a library row, or one within the row's span.
    Assumed {
        /// Which row, by its id.
        row: String,
        /// The lowest value that is plausible, in the unit of the value.
        low: f64,
        /// The highest value that is plausible, in the unit of the value.
        high: f64,
    },
    /// Somebody measured it on site.
    Measured {
        /// The day, as 2026-08-30.
        on: String,
        /// Who measured it.
        by: String,
    },
}
