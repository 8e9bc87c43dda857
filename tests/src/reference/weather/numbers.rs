//! Counts and cells of a series as JSON holds them.

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
