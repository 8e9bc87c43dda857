//! The seals of traps that drain themselves: by how much each falls in a step that brings no water.

use dewrun_moist_air::{Humidity, MoistAir, Pair};
use dewrun_quantity::{HumidityRatio, Length, Pressure, Temperature};
use dewrun_water::drying::{StillColumn, seal_dries_out};

use super::places::{Lets, Places, TrapAt};
use crate::hours::Hours;

/// Still air over each surface, where nobody says otherwise. Common practice, no source.
const STILL_AIR: Length = Length::millimetres(50.0);

/// The fall of each seal, m; nothing where a seal freezes, or in traps that have none.
pub(super) fn falls_m(
    places: &Places,
    hours: &Hours,
    hour: usize,
    seconds: f64,
    in_tube: &[(f64, f64)],
) -> Vec<f64> {
    let traps = places.traps.iter().zip(in_tube);
    traps
        .map(|(trap, air)| fall_m(trap, hours, hour, seconds, *air).unwrap_or(0.0))
        .collect()
}

fn fall_m(
    trap: &TrapAt,
    hours: &Hours,
    hour: usize,
    seconds: f64,
    (t_c, w): (f64, f64),
) -> Option<f64> {
    if trap.lets != Lets::OverSeal || trap.seal_m <= 0.0 {
        return None;
    }
    let around = hours.around(hour, trap.space)?;
    let p_pa = hours.hour(hour)?.p_pa;
    if t_c <= 0.0 || around.air_c <= 0.0 {
        return None;
    }
    let column = |t_c: f64, w: f64| {
        let ratio = Humidity::Ratio(HumidityRatio::kilograms_per_kilogram(w));
        let pair = Pair::Temperature(Temperature::celsius(t_c), ratio);
        let air = MoistAir::new(pair, Pressure::pascals(p_pa)).ok()?.value;
        Some(StillColumn {
            height: STILL_AIR,
            air,
        })
    };
    let over = [column(t_c, w)?, column(around.air_c, around.w)?];
    let dries = seal_dries_out(over, Length::metres(trap.seal_m))?;
    Some(trap.seal_m * seconds / dries.to_seconds())
}
