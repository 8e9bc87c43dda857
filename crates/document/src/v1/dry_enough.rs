//! The target of a project: what counts as dry enough.

use crate::DocumentError;
use crate::field_path::Here;
use crate::json::{record, words};
use schemars::JsonSchema;

use super::{Kept, Project};

/// What counts as dry enough; every part that stands has to hold, and what is left out is not asked for. Since revision 6.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct DryEnough {
    /// No water in this hour.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub dry_in: Option<DryIn>,
    /// At most so many wet hours a year.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub wet_hours: Option<f64>,
    /// At most so much water forms a year, L.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub formed_l: Option<f64>,
    /// The air around the sensor stays below the device's rating by so much, % relative humidity.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub chamber_margin_percent: Option<f64>,
    /// No ice on a wall.
    #[schemars(default)]
    pub no_frost: bool,
    /// At most so many hours a year in which the detector does not sample its duct.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub blind_hours: Option<f64>,
    /// No trap is emptied more often than every so many days.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub trap_days: Option<f64>,
}

/// An hour that a route is designed for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
pub enum DryIn {
    /// The conditions that are entered.
    #[schemars(rename = "entered")]
    Entered,
    /// The hour of which 0.4 % of all are wetter.
    #[schemars(rename = "0.4")]
    Wettest04,
    /// The hour of which 1 % of all are wetter.
    #[schemars(rename = "1")]
    Wettest1,
    /// The hour of which 2 % of all are wetter.
    #[schemars(rename = "2")]
    Wettest2,
}

impl DryEnough {
    /// What counts where a project says nothing: dry in the conditions entered, and never blind.
    pub const USUAL: Self = Self {
        dry_in: Some(DryIn::Entered),
        wet_hours: None,
        formed_l: None,
        chamber_margin_percent: None,
        no_frost: false,
        blind_hours: Some(0.0),
        trap_days: None,
    };

    /// What a project says of it, or else what is usual.
    ///
    /// # Errors
    /// [`DocumentError`] where something else stands there.
    pub fn of(project: &Project) -> Result<Self, DocumentError> {
        let kept = project.target.as_ref();
        kept.map_or(Ok(Self::USUAL), |kept| kept.get_at(&Here::at("target")))
    }

    /// Lets a project say it; what is usual needs no words.
    ///
    /// # Errors
    /// [`DocumentError`] where a number leaves its limit; the project is as before then.
    pub fn put(&self, project: &mut Project) -> Result<(), DocumentError> {
        let kept = Kept::<Self>::of(self)?;
        project.target = (*self != Self::USUAL).then_some(kept);
        Ok(())
    }
}

record!(
    DryEnough,
    "what counts as dry enough, such as {\"dry_in\": \"entered\", \"blind_hours\": 0}",
    dry_in,
    wet_hours,
    formed_l,
    chamber_margin_percent,
    no_frost,
    blind_hours,
    trap_days,
);
words!(DryIn; Entered = "entered", Wettest04 = "0.4", Wettest1 = "1", Wettest2 = "2");
