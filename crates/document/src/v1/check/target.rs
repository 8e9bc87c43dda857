//! Limits of a project's target.

use super::{Checked, within};
use crate::field_path::Here;
use crate::limits;
use crate::v1::DryEnough;

pub(in crate::v1) fn target(at: &Here<'_>, target: &DryEnough) -> Checked {
    for (name, number, limits) in [
        ("wet_hours", target.wet_hours, limits::HOURS_OF_YEAR),
        ("formed_l", target.formed_l, limits::LITRES_OF_YEAR),
        (
            "chamber_margin_percent",
            target.chamber_margin_percent,
            limits::CHAMBER_MARGIN_PERCENT,
        ),
        ("blind_hours", target.blind_hours, limits::HOURS_OF_YEAR),
        ("trap_days", target.trap_days, limits::TRAP_DAYS),
    ] {
        if let Some(number) = number {
            within(&at.field(name), number, &limits)?;
        }
    }
    Ok(())
}
