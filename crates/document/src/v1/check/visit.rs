//! Limits of what is noted at a visit.

use dewrun_quantity::Limits;

use super::{Checked, day, many, text, within};
use crate::field_path::Here;
use crate::v1::{Reading, Visit};
use crate::{DocumentError, limits};

pub(super) fn visits(at: &Here<'_>, visits: &[Visit]) -> Checked {
    many(at, visits.len(), limits::VISITS)?;
    for (position, one) in visits.iter().enumerate() {
        visit(&at.index(position), one)?;
    }
    Ok(())
}

fn visit(at: &Here<'_>, visit: &Visit) -> Checked {
    day(&at.field("on"), &visit.on)?;
    text(&at.field("by"), &visit.by, 0, limits::NAME)?;
    let found = [
        &visit.airflow_l_min,
        &visit.duct_static_pa,
        &visit.suction_pa,
        &visit.first_smoke_s,
        &visit.ninety_percent_s,
    ];
    for ((name, limits), found) in limits::READINGS.iter().zip(found) {
        if let Some(found) = found {
            reading(&at.field(name), found, limits)?;
        }
    }
    if let Some(along) = visit.suction_at_m {
        within(&at.field("suction_at_m"), along, &limits::TRAP_AT_M)?;
    }
    let water = at.field("water");
    many(&water, visit.water.len(), limits::TRAPS)?;
    for (position, found) in visit.water.iter().enumerate() {
        let at = water.index(position);
        within(&at.field("at_m"), found.at_m, &limits::TRAP_AT_M)?;
        within(&at.field("water_g"), found.water_g, &limits::WATER_G)?;
    }
    text(&at.field("note"), &visit.note, 0, limits::NOTE)
}

fn reading(at: &Here<'_>, reading: &Reading, limits: &Limits) -> Checked {
    within(&at.field("value"), reading.value, limits)?;
    let Some(expected) = &reading.expected else {
        return Ok(());
    };
    let at = at.field("expected");
    let ends = [expected.low, expected.usual, expected.high];
    for (name, value) in ["low", "usual", "high"].into_iter().zip(ends) {
        within(&at.field(name), value, &limits::EXPECTED)?;
    }
    if ends.is_sorted() {
        return Ok(());
    }
    Err(Box::new(DocumentError::OutsideSpan {
        path: at.path(),
        value: expected.usual,
        low: expected.low,
        high: expected.high,
    }))
}
