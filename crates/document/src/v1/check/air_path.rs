//! Limits of what water and air meet: traps, fan, filter, holes, airflow limits.

use super::{Checked, each, many, number};
use crate::field_path::Here;
use crate::v1::{AirPath, Input, Trap};
use crate::{DocumentError, limits};

pub(super) fn traps(at: &Here<'_>, traps: &[Trap]) -> Checked {
    many(at, traps.len(), limits::TRAPS)?;
    for (position, trap) in traps.iter().enumerate() {
        let at = at.index(position);
        number(&at.field("at_m"), &trap.at_m, &limits::TRAP_AT_M)?;
        each(
            &at,
            &[
                ("capacity_ml", &trap.capacity_ml),
                ("seal_mm", &trap.seal_mm),
                ("outlet_drop_mm", &trap.outlet_drop_mm),
                ("bore_mm", &trap.bore_mm),
                ("pot_bore_mm", &trap.pot_bore_mm),
            ],
        )?;
    }
    Ok(())
}

pub(super) fn air_path(at: &Here<'_>, path: &AirPath) -> Checked {
    let fan = at.field("fan");
    many(&fan, path.fan.len(), limits::FAN_POINTS)?;
    for (position, point) in path.fan.iter().enumerate() {
        let at = fan.index(position);
        number(
            &at.field("flow_l_min"),
            &point.flow_l_min,
            &limits::VOLUME_L_MIN,
        )?;
        number(
            &at.field("pressure_pa"),
            &point.pressure_pa,
            &limits::PRESSURE_PA,
        )?;
    }
    each(
        at,
        &[
            ("hole_count", &path.hole_count),
            ("hole_diameter_mm", &path.hole_diameter_mm),
            ("hole_discharge", &path.hole_discharge),
            ("intake_catch", &path.intake_catch),
            ("exhaust_catch", &path.exhaust_catch),
            ("exhaust_static_pa", &path.exhaust_static_pa),
            ("exhaust_velocity_pa", &path.exhaust_velocity_pa),
            ("filter_pa_min_l", &path.filter_pa_min_l),
            ("chamber_loss", &path.chamber_loss),
            ("chamber_volume_ml", &path.chamber_volume_ml),
            ("start_suction_pa", &path.start_suction_pa),
            ("low_limit_percent", &path.low_limit_percent),
            ("high_limit_percent", &path.high_limit_percent),
            ("limit_margin_percent", &path.limit_margin_percent),
            ("drain_interval_days", &path.drain_interval_days),
        ],
    )?;
    limits_in_order(at, path)
}

/// Checks that the low limit lies below the high one.
fn limits_in_order(at: &Here<'_>, path: &AirPath) -> Checked {
    let value = |input: &Option<Input<f64>>| input.as_ref().map(|input| input.value);
    if let (Some(low), Some(high)) = (
        value(&path.low_limit_percent),
        value(&path.high_limit_percent),
    ) && high <= low
    {
        return Err(Box::new(DocumentError::LimitsCrossed {
            path: at.field("low_limit_percent").path(),
            low,
            high,
        }));
    }
    Ok(())
}
