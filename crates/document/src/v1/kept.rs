//! A part of a project that is kept as it is written, and looked at only by those who ask for it.
//!
//! The page's first answer needs nothing of a year or a target: it carries those parts unread.

use core::marker::PhantomData;

use super::check::{fan_off, source, space_year, target, troubles, weather};
use super::{AirSource, DryEnough, Period, SpaceYear, TroublesKept, WeatherReference};
use crate::DocumentError;
use crate::field_path::Here;
use crate::json::{self, Fault, FromJson, Node, ToJson, Writer};

/// A part of a project that is kept as it is written; [`crate::read`] has looked at it, [`crate::read_keeping_years`] has not.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept<T> {
    /// Short, so that two that say the same are the same.
    text: String,
    of: PhantomData<T>,
}

impl<T> FromJson for Kept<T> {
    fn from_json(node: &Node<'_>, _: &Here<'_>) -> Result<Self, Fault> {
        Ok(Self {
            text: json::written_short(node),
            of: PhantomData,
        })
    }
}

impl<T> ToJson for Kept<T> {
    fn to_json(&self, out: &mut Writer) {
        if let Ok(node) = json::tree(&self.text) {
            node.to_json(out);
        }
    }
}

/// How a part is kept and looked at.
macro_rules! kept {
    ($type:ty, $check:expr) => {
        impl Kept<$type> {
            /// Keeps it.
            ///
            /// # Errors
            /// [`DocumentError`] where it leaves a limit.
            pub fn of(value: &$type) -> Result<Self, DocumentError> {
                $check(&Here::ROOT, value).map_err(|error| *error)?;
                Ok(Self {
                    text: json::written_short(value),
                    of: PhantomData,
                })
            }

            /// What is kept.
            ///
            /// # Errors
            /// [`DocumentError`] where something else stands there, with the path within it.
            pub fn get(&self) -> Result<$type, DocumentError> {
                self.get_at(&Here::ROOT)
            }

            pub(crate) fn get_at(&self, at: &Here<'_>) -> Result<$type, DocumentError> {
                let told = |fault: Fault| fault.told(&self.text);
                let tree = json::tree(&self.text).map_err(told)?;
                Self::looked_at(&tree, at).map_err(told)?
            }

            /// What a node holds: a fault of its form, or else what its limits say of it.
            pub(crate) fn looked_at(
                node: &Node<'_>,
                at: &Here<'_>,
            ) -> Result<Result<$type, DocumentError>, Fault> {
                let value = <$type>::from_json(node, at)?;
                let checked = $check(at, &value).map_err(|error| *error);
                Ok(checked.map(|()| value))
            }
        }
    };
}

kept!(WeatherReference, weather);
kept!(AirSource, source);
kept!(Vec<Period>, fan_off);
kept!(SpaceYear, space_year);
kept!(TroublesKept, troubles);
kept!(DryEnough, target);
