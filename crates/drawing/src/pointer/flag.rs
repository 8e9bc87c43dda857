//! What the flag at the pointer says: one list of rows, written as HTML and spoken as a sentence.

use dewrun_quantity::MassFlow;
use dewrun_quantity::format::{DOES_NOT_APPLY, UNIT_SPACE, fixed};
use dewrun_quantity::measure::{
    MIST, RELATIVE_HUMIDITY, TEMPERATURE, TUBE_LENGTH, WATER, WATER_PER_LENGTH, Written,
};
use dewrun_run::figure::{Figure, Spot};
use dewrun_run::{Reading, TubeOutcome, runs_past};

use super::DECIMALS;
use crate::html::opening;
use crate::states::LEAST_MIST;
use crate::svg::escaped;
use crate::view::View;
use crate::wording;

/// A quantity and its figure.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Row {
    name: &'static str,
    of: Figure,
    figure: Written,
    /// The class of its ink, empty for plain.
    tone: &'static str,
}

/// The rows at a place: the same ones all along a tube, so that the flag keeps its size.
pub(crate) fn rows(view: &View<'_>, read: &Reading) -> Vec<Row> {
    let Some(tube) = view.answer() else {
        return Vec::new();
    };
    let (style, point) = (view.style, &read.point);
    let row = |name, of, figure| Row {
        name,
        of,
        figure,
        tone: "",
    };
    let per_length = |flow| WATER_PER_LENGTH.show(flow, style);
    let is_cold = point.inner_wall.to_celsius() < 0.0;
    let mut rows = vec![
        row("air", Figure::AirAlong, TEMPERATURE.show(point.air, style)),
        row(
            "inner wall",
            Figure::WallAlong,
            TEMPERATURE.show(point.inner_wall, style),
        ),
        Row {
            name: if is_cold { "frost point" } else { "dew point" },
            of: Figure::DewPointAlong,
            figure: point
                .dew_point
                .map_or_else(none, |t| TEMPERATURE.show(t, style)),
            tone: if is_cold { "frost" } else { "water" },
        },
        row(
            "humidity",
            Figure::HumidityAlong,
            RELATIVE_HUMIDITY.show(read.relative_humidity, style),
        ),
    ];
    if LEAST_MIST < tube.most_mist.to_kilograms_per_kilogram() {
        rows.push(Row {
            tone: "mist",
            ..row("mist", Figure::MistAlong, MIST.show(point.mist, style))
        });
    }
    let forms = 0.0 < point.deposit.to_grams_per_hour_metre();
    let freezes = forms && 0.5 <= point.frozen_share;
    rows.push(Row {
        tone: match (forms, freezes) {
            (false, _) => "",
            (true, false) => "water",
            (true, true) => "frost",
        },
        ..row(
            if freezes { "frosts here" } else { "forms here" },
            Figure::Deposit,
            per_length(point.deposit),
        )
    });
    if 0.0 < tube.condensate.to_grams_per_hour() {
        let past = runs_past(view.run, view.outcome, spot(view, read));
        rows.push(row(
            "formed so far",
            Figure::FormedSoFar,
            WATER.show(read.deposited, style),
        ));
        rows.push(row(
            "runs past",
            Figure::RunsPast,
            WATER.show(past.unwrap_or(MassFlow::ZERO), style),
        ));
    }
    if 0.0 < tube.sweat.to_grams_per_hour() {
        rows.push(Row {
            tone: "sweat",
            ..row("sweats here", Figure::SweatAlong, per_length(point.sweat))
        });
    }
    rows
}

/// How many rows there are all along a tube.
pub(crate) fn count(tube: &TubeOutcome) -> usize {
    let has_mist = LEAST_MIST < tube.most_mist.to_kilograms_per_kilogram();
    let has_water = 0.0 < tube.condensate.to_grams_per_hour();
    let has_sweat = 0.0 < tube.sweat.to_grams_per_hour();
    5 + usize::from(has_mist) + 2 * usize::from(has_water) + usize::from(has_sweat)
}

/// The flag as HTML.
pub(crate) fn html(view: &View<'_>, read: &Reading, rows: &[Row]) -> String {
    let mut out = format!(
        "<p class=\"dw-flag__head\">{}</p><dl class=\"dw-flag__rows\">",
        escaped(&place(view, read))
    );
    for row in rows {
        let class = if row.tone.is_empty() {
            String::new()
        } else {
            format!(" class=\"dw-figure--{}\"", row.tone)
        };
        let figure = opening(row.of, spot(view, read), "", &row.figure.to_string());
        out.push_str(&format!(
            "<div class=\"dw-flag__row\"><dt>{}</dt><dd{class}>{figure}</dd></div>",
            row.name
        ));
    }
    out.push_str("</dl>");
    out
}

/// The flag as a sentence, its units in words that can be heard.
pub(crate) fn spoken(view: &View<'_>, read: &Reading, rows: &[Row]) -> String {
    let per_length = WATER_PER_LENGTH.unit(view.style.units).name;
    let part = |row: &Row| {
        let unit = if row.figure.unit == per_length {
            wording::per_length(view.style)
        } else {
            row.figure.unit
        };
        format!("{} {} {unit}", row.name, row.figure.number)
            .trim_end()
            .to_owned()
    };
    let parts: Vec<String> = rows.iter().map(part).collect();
    format!("{}: {}", place(view, read), parts.join(", "))
}

/// The place as the figures read there name it.
fn spot(view: &View<'_>, read: &Reading) -> Spot {
    Spot::at(view.tube, read.point.leg, read.point.x)
}

fn place(view: &View<'_>, read: &Reading) -> String {
    let unit = TUBE_LENGTH.unit(view.style.units);
    let x = fixed((unit.read)(read.point.x), DECIMALS, view.style.mark);
    let leg = view.leg_number(read.point.leg);
    format!("at {x}{UNIT_SPACE}{}, leg {leg}", unit.name)
}

fn none() -> Written {
    Written {
        number: DOES_NOT_APPLY.to_owned(),
        unit: "",
    }
}
