//! Values that rows of the library stand for: assumed, with the row and its lowest and highest.

use dewrun_document::{Humidity, Input, Insulation, Origin, Over, Relative, Space};
use dewrun_run::air;
use dewrun_run::library::{self, DuctAirRow, HumiditySpan, InsulationRow, Row, SpaceRow};

/// The usual value of a row's figure.
pub(crate) fn usual(row: &dyn Row, figure: &str) -> Option<Input<f64>> {
    let span = row.entry(figure)?.span;
    Some(assumed(row, span.usual, span.low, span.high))
}

/// As [`usual`], of the row with that id.
pub(crate) fn usual_of(id: &str, figure: &str) -> Option<Input<f64>> {
    usual(library::row(id)?, figure)
}

/// Another value within the span of a row's figure.
pub(crate) fn within(id: &str, figure: &str, value: f64) -> Option<Input<f64>> {
    let input = usual_of(id, figure)?;
    Some(moved(&input, value))
}

/// Another value with the same origin, which is typed where an assumed span does not hold it.
pub(crate) fn moved(input: &Input<f64>, value: f64) -> Input<f64> {
    match &input.origin {
        Origin::Assumed { low, high, .. } if *low <= value && value <= *high => Input {
            value,
            origin: input.origin.clone(),
        },
        Origin::Assumed { .. } => Input::typed(value),
        origin => Input {
            value,
            origin: origin.clone(),
        },
    }
}

/// A value and its whole span, moved alike.
pub(crate) fn shifted(input: &Input<f64>, by: f64) -> Input<f64> {
    let origin = match &input.origin {
        Origin::Assumed { row, low, high } => Origin::Assumed {
            row: row.clone(),
            low: low + by,
            high: high + by,
        },
        origin => origin.clone(),
    };
    Input {
        value: input.value + by,
        origin,
    }
}

/// A value and its whole span, as many times as large.
pub(crate) fn scaled(input: &Input<f64>, by: f64) -> Input<f64> {
    let origin = match &input.origin {
        Origin::Assumed { row, low, high } => Origin::Assumed {
            row: row.clone(),
            low: low * by,
            high: high * by,
        },
        origin => origin.clone(),
    };
    Input {
        value: input.value * by,
        origin,
    }
}

/// The row that a value is assumed from.
pub(crate) fn row_of(input: &Input<f64>) -> Option<&'static dyn Row> {
    match &input.origin {
        Origin::Assumed { row, .. } => library::row(row),
        _ => None,
    }
}

/// The humidity of a row.
fn humidity(row: &dyn Row, span: &HumiditySpan) -> Option<Humidity> {
    Some(match span {
        HumiditySpan::Relative { over, .. } => Humidity::Relative(Relative {
            percent: usual(row, "percent")?,
            over: match over {
                air::Over::Water => Over::Water,
                air::Over::Ice => Over::Ice,
            },
        }),
        HumiditySpan::DewPoint(_) => Humidity::DewPoint(usual(row, "dew_point_c")?),
    })
}

/// The humidity of a duct air of the library.
pub(crate) fn duct_humidity(row: &DuctAirRow) -> Option<Humidity> {
    humidity(row, &row.humidity)
}

/// A space of the library as one of the project.
pub(crate) fn space(row: &SpaceRow) -> Option<Space> {
    let temperature_c = usual(row, "temperature_c")?;
    let radiant_c = row
        .entry("radiant_minus_air_k")
        .map(|entry| entry.span)
        .map(|apart| {
            let air = temperature_c.value;
            assumed(row, air + apart.usual, air + apart.low, air + apart.high)
        });
    Some(Space {
        id: row.id.to_owned(),
        name: row.name.to_owned(),
        temperature_c,
        humidity: humidity(row, &row.humidity)?,
        radiant_c,
        wind_m_s: usual(row, "wind_m_s")?,
        pressure_pa: None,
        year: None,
    })
}

/// Insulation of the library in one of its thicknesses, and the emissivity of its surface.
pub(crate) fn insulation(
    row: &InsulationRow,
    thickness_mm: f64,
) -> Option<(Insulation, Input<f64>)> {
    let layer = Insulation {
        thickness_mm: Input::typed(thickness_mm),
        conductivity_w_mk: usual(row, "conductivity_w_mk")?,
    };
    Some((layer, usual(row, "emissivity")?))
}

fn assumed(row: &dyn Row, value: f64, low: f64, high: f64) -> Input<f64> {
    Input {
        value,
        origin: Origin::Assumed {
            row: row.id().to_owned(),
            low,
            high,
        },
    }
}
