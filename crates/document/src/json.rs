//! JSON text to values and back: small, because the page carries it, and with the place of every fault.

mod fault;
mod from;
mod node;
mod read;
mod to;

pub(crate) use fault::Fault;
pub(crate) use from::{Fields, FromJson, variant, word};
pub(crate) use node::{Content, Node};
pub(crate) use read::tree;
pub(crate) use to::{Part, ToJson, Writer, written, written_short};

/// How a type of that many fields is read from and written as an object, field by field in this order.
///
/// A list of those `left_out_where_none` may lack where it is empty.
macro_rules! record {
    ($type:ty, $expected:literal, $($field:ident),+ $(,)? $(; $left_out:ident)?) => {
        impl $crate::json::FromJson for $type {
            fn from_json(
                node: &$crate::json::Node<'_>,
                at: &$crate::field_path::Here<'_>,
            ) -> Result<Self, $crate::json::Fault> {
                let names = &[$(stringify!($field)),+];
                let fields = $crate::json::Fields::of(node, at, $expected, names)?;
                Ok(Self { $($field: fields.take(stringify!($field))?),+ })
            }
            $(
                fn $left_out() -> bool {
                    true
                }
            )?
        }

        impl $crate::json::ToJson for $type {
            fn to_json(&self, out: &mut $crate::json::Writer) {
                out.record(&[$((stringify!($field), &self.$field)),+]);
            }
            $(
                fn $left_out() -> bool {
                    true
                }
            )?
        }
    };
}
pub(crate) use record;

/// How a type that is one word of a few is read and written; one of them may stand where none is given.
macro_rules! words {
    ($type:ty $(, or $missing:ident)?; $($variant:ident = $word:literal),+ $(,)?) => {
        impl $crate::json::FromJson for $type {
            fn from_json(
                node: &$crate::json::Node<'_>,
                at: &$crate::field_path::Here<'_>,
            ) -> Result<Self, $crate::json::Fault> {
                let words = [$((Self::$variant, $word)),+];
                let known = &[$($word),+];
                let word = $crate::json::word(node, at, known)?;
                let found = words.into_iter().find(|(_, own)| *own == word);
                found
                    .map(|(variant, _)| variant)
                    .ok_or_else(|| $crate::json::Fault::wrong(node, at, "a word"))
            }
            $(
                fn missing() -> Option<Self> {
                    Some(Self::$missing)
                }
            )?
        }

        impl $crate::json::ToJson for $type {
            fn to_json(&self, out: &mut $crate::json::Writer) {
                out.text(match self {
                    $(Self::$variant => $word),+
                });
            }
        }
    };
}
pub(crate) use words;
