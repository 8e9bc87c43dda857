//! Numbers of a sheet: as people read them, and as the answer file has them.

use dewrun_drawing::escaped;
use dewrun_quantity::Style;
use dewrun_quantity::decimal::shortest;
use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_run::figure::Kind;

/// A number with the value that it was rounded from; a dash where there is none.
pub(super) fn number(kind: Kind, value: Option<f64>, style: Style) -> String {
    with_value(value, |value| {
        // None at all is written plainly; no temperature or pressure is none.
        let is_level = matches!(kind, Kind::Temperature | Kind::Gauge | Kind::Place);
        if value == 0.0 && !is_level {
            return "0".to_owned();
        }
        kind.show(value, style).number
    })
}

/// A number that was entered, with the digits it was entered with.
pub(super) fn entered(kind: Kind, value: f64, style: Style) -> String {
    with_value(Some(value), |value| kind.show_entered(value, style).number)
}

/// A number with its unit.
pub(super) fn with_unit(kind: Kind, value: f64, style: Style) -> String {
    let unit = kind.unit(style);
    let number = number(kind, Some(value), style);
    if unit.is_empty() {
        return number;
    }
    format!("{number}\u{a0}{unit}")
}

/// A count.
pub(super) fn count(count: usize) -> String {
    let value = u32::try_from(count).map_or(f64::INFINITY, f64::from);
    with_value(Some(value), |value| {
        Kind::Count.show(value, Style::default()).number
    })
}

pub(super) fn with_value(value: Option<f64>, words: impl Fn(f64) -> String) -> String {
    match value.filter(|value| value.is_finite()) {
        Some(value) => format!(
            "<data value=\"{}\">{}</data>",
            shortest(value),
            escaped(&words(value))
        ),
        None => DOES_NOT_APPLY.to_owned(),
    }
}
