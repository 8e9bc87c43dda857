//! The target that a project sets, to the engine's, by hand.

use dewrun_remedies::{DesignHour, Target};

use crate::{DocumentError, DryEnough, DryIn, Project};

/// Percent of a whole.
const PERCENT: f64 = 100.0;

/// What counts as dry enough in a project: what it says, or else what is usual.
///
/// # Errors
/// [`DocumentError`] where something else stands there.
///
/// ```
/// use dewrun_document::{read, target_of};
/// let text = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json"));
/// let target = target_of(&read(text)?)?;
/// assert_eq!(target.blind_hours, Some(0.0));
/// # Ok::<(), dewrun_document::DocumentError>(())
/// ```
pub fn target_of(project: &Project) -> Result<Target, DocumentError> {
    DryEnough::of(project).map(|said| Target {
        dry_in: said.dry_in.map(hour_of),
        wet_hours: said.wet_hours,
        formed_kg: said.formed_l,
        chamber_margin: said.chamber_margin_percent.map(|percent| percent / PERCENT),
        no_frost: said.no_frost,
        blind_hours: said.blind_hours,
        trap_days: said.trap_days,
    })
}

const fn hour_of(said: DryIn) -> DesignHour {
    match said {
        DryIn::Entered => DesignHour::Entered,
        DryIn::Wettest04 => DesignHour::Wettest04,
        DryIn::Wettest1 => DesignHour::Wettest1,
        DryIn::Wettest2 => DesignHour::Wettest2,
    }
}
