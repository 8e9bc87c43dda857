//! A value and where it came from.

use crate::field_path::Here;
use crate::json::{
    Content, Fault, Fields, FromJson, Node, Part, ToJson, Writer, record, variant, word,
};
use schemars::JsonSchema;

/// A value and where it came from.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
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
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(rename_all = "snake_case", deny_unknown_fields)]
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

record!(
    Input<f64>,
    "a value with its origin, such as {\"value\": 4.2, \"origin\": \"typed\"}",
    value,
    origin,
);

const ORIGIN: &str = "\"typed\", {\"assumed\": ..} or {\"measured\": ..}";
const ORIGINS: [&str; 3] = ["typed", "assumed", "measured"];

impl FromJson for Origin {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        let wrong = || Fault::wrong(node, at, ORIGIN);
        if let Content::Text(_) = &node.content {
            let word = word(node, at, &ORIGINS)?;
            return (word == "typed").then_some(Self::Typed).ok_or_else(wrong);
        }
        let (name, inner) = variant(node, at, ORIGIN, &ORIGINS)?;
        let at = &at.field(name);
        match name {
            "assumed" => {
                let fields = Fields::of(inner, at, ORIGIN, &["row", "low", "high"])?;
                Ok(Self::Assumed {
                    row: fields.take("row")?,
                    low: fields.take("low")?,
                    high: fields.take("high")?,
                })
            }
            "measured" => {
                let fields = Fields::of(inner, at, ORIGIN, &["on", "by"])?;
                Ok(Self::Measured {
                    on: fields.take("on")?,
                    by: fields.take("by")?,
                })
            }
            _ => Err(wrong()),
        }
    }
}

impl ToJson for Origin {
    fn to_json(&self, out: &mut Writer) {
        match self {
            Self::Typed => out.text("typed"),
            Self::Assumed { row, low, high } => out.record(&[(
                "assumed",
                &Part(&[("row", row), ("low", low), ("high", high)]),
            )]),
            Self::Measured { on, by } => {
                out.record(&[("measured", &Part(&[("on", on), ("by", by)]))]);
            }
        }
    }
}
