//! Counts, cells and air of a series, and counts as JSON holds them.

use dewrun_moist_air::{Humidity, MoistAir, Pair};
use dewrun_quantity::{Pressure, Temperature};
use dewrun_weather::Series;
use serde_json::Value;

/// A count.
pub(super) fn count(count: usize) -> Value {
    u64::try_from(count).unwrap_or(u64::MAX).into()
}

/// Least, most and mean of a column.
pub(super) fn range(values: &[f64]) -> Value {
    dewrun_weather::Range::of(values).map_or(Value::Null, |range| {
        vec![range.min, range.max, range.mean].into()
    })
}

/// The value of a row.
pub(super) fn at(column: &[f64], row: usize) -> f64 {
    column.get(row).copied().unwrap_or(f64::NAN)
}

/// The air of the first row, from its temperature, dew point and pressure.
pub(super) fn first_air(series: &Series) -> Result<MoistAir, String> {
    let pair = Pair::Temperature(
        Temperature::celsius(at(&series.temperature_c, 0)),
        Humidity::DewPoint(Temperature::celsius(at(&series.dew_point_c, 0))),
    );
    let air = MoistAir::new(pair, Pressure::pascals(at(&series.pressure_pa, 0)));
    air.map(|air| air.value).map_err(|error| error.to_string())
}
