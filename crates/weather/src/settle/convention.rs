//! Whether dew points and relative humidities below freezing are meant over water or over ice, told from the numbers themselves.
//!
//! Weather services and sensors give both over water (WMO-No. 8), handbooks over ice.
//! Where a row has temperature, dew point and relative humidity, one of the customs makes the three agree and the others are off by up to some kelvin.

use dewrun_moist_air::Over;
use dewrun_moist_air::fast::{
    SaturationCurve, dew_or_frost_point_c, dew_or_frost_point_of_c, dew_point_c,
};
use dewrun_quantity::DecimalMark;
use dewrun_quantity::format::fixed;

use super::over_name;
use super::readings::Readings;
use super::spread::median;
use crate::column::Role;
use crate::note::{Note, Topic};
use crate::understanding::Understanding;
use crate::weather::Convention;

/// Dew points that tell the customs apart are colder than this, °C.
const COLDER_THAN_C: f64 = -2.0;
/// Fewer rows tell nothing.
const LEAST_ROWS: usize = 10;
/// Customs that agree this nearly with the file can't be told apart, K.
const TOO_NEAR_K: f64 = 0.05;

/// Medians of recomputed less file, for each custom; none where too few rows tell.
pub(super) fn compare(readings: &Readings, pressure_pa: &[f64]) -> Option<Convention> {
    let temperature = readings.get(Role::Temperature)?;
    let points = readings.get(Role::DewPoint)?;
    let relative = readings.get(Role::RelativeHumidity)?;
    let (mut water, mut ice, mut frost) = (Vec::new(), Vec::new(), Vec::new());
    let rows = temperature
        .iter()
        .zip(points)
        .zip(relative)
        .zip(pressure_pa);
    for (((t_c, point_c), percent), p_pa) in rows {
        if !(*point_c < COLDER_THAN_C && 0.0 < *percent && *percent < 100.0 && t_c.is_finite()) {
            continue;
        }
        let rh = percent / 100.0;
        let x = rh * SaturationCurve::at(*p_pa).mole_fraction_over_water(*t_c).0;
        let all = dew_point_c(*t_c, rh, *p_pa)
            .zip(dew_or_frost_point_c(*t_c, rh, *p_pa))
            .zip(dew_or_frost_point_of_c(x, *p_pa));
        if let Some(((over_water, over_ice), frost_point)) = all {
            water.push(over_water - point_c);
            ice.push(over_ice - point_c);
            frost.push(frost_point - point_c);
        }
    }
    if water.len() < LEAST_ROWS {
        return None;
    }
    Some(Convention {
        rows: u64::try_from(water.len()).unwrap_or(u64::MAX),
        water_k: median(water.into_iter())?,
        ice_k: median(ice.into_iter())?,
        frost_point_k: median(frost.into_iter())?,
    })
}

/// Over what dew points and relative humidities are meant: as said, as the numbers show, or over water.
pub(super) fn decide(
    found: Option<Convention>,
    given: &Understanding,
    notes: &mut Vec<Note>,
) -> (Over, Over) {
    let (mut dew_point, mut relative) = (Over::Water, Over::Water);
    if let Some(found) = found {
        let over_ice = found.ice_k.abs().min(found.frost_point_k.abs());
        let is_clear = TOO_NEAR_K < (found.water_k.abs() - over_ice).abs();
        if is_clear && over_ice < found.water_k.abs() {
            dew_point = Over::Ice;
            if found.ice_k.abs() < found.frost_point_k.abs() {
                relative = Over::Ice;
            }
        }
        let k = |value: f64| fixed(value, 2, DecimalMark::Point);
        let verdict = if is_clear {
            format!(
                "dew points are meant over {}, relative humidities over {}",
                over_name(dew_point),
                over_name(relative)
            )
        } else {
            "the customs can't be told apart, both are taken over water".to_owned()
        };
        notes.push(Note::of_file(
            Topic::Humidity,
            format!(
                "below 0 °C {verdict}: over {} rows the middle of recomputed less file is {} K with both over water, {} K with both over ice, {} K with the dew point alone over ice",
                found.rows,
                k(found.water_k),
                k(found.ice_k),
                k(found.frost_point_k)
            ),
        ));
    }
    (
        given.dew_point_over.unwrap_or(dew_point),
        given.relative_over.unwrap_or(relative),
    )
}
