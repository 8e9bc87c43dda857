//! What the flag at the pointer says: one list of rows, written as HTML and spoken as a sentence.

use dewrun_quantity::MassFlow;
use dewrun_quantity::format::{DOES_NOT_APPLY, UNIT_SPACE, fixed};
use dewrun_quantity::measure::{
    MIST, RELATIVE_HUMIDITY, TEMPERATURE, TUBE_LENGTH, WATER, WATER_PER_LENGTH, Written,
};
use dewrun_run::{Leg, Reading, TubeOutcome, reading};

use super::DECIMALS;
use crate::elevation::{Runs, runs};
use crate::states::LEAST_MIST;
use crate::svg::escaped;
use crate::view::View;
use crate::wording;

/// A quantity and its figure.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Row {
    name: &'static str,
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
    let row = |name, figure| Row {
        name,
        figure,
        tone: "",
    };
    let per_length = |flow| WATER_PER_LENGTH.show(flow, style);
    let is_cold = point.inner_wall.to_celsius() < 0.0;
    let mut rows = vec![
        row("air", TEMPERATURE.show(point.air, style)),
        row("inner wall", TEMPERATURE.show(point.inner_wall, style)),
        Row {
            name: if is_cold { "frost point" } else { "dew point" },
            figure: point
                .dew_point
                .map_or_else(none, |t| TEMPERATURE.show(t, style)),
            tone: if is_cold { "frost" } else { "water" },
        },
        row(
            "humidity",
            RELATIVE_HUMIDITY.show(read.relative_humidity, style),
        ),
    ];
    if LEAST_MIST < tube.most_mist.to_kilograms_per_kilogram() {
        rows.push(Row {
            tone: "mist",
            ..row("mist", MIST.show(point.mist, style))
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
            per_length(point.deposit),
        )
    });
    if 0.0 < tube.condensate.to_grams_per_hour() {
        rows.push(row("formed so far", WATER.show(read.deposited, style)));
        rows.push(row(
            "runs past",
            WATER.show(runs_past(view, tube, read), style),
        ));
    }
    if 0.0 < tube.sweat.to_grams_per_hour() {
        rows.push(Row {
            tone: "sweat",
            ..row("sweats here", per_length(point.sweat))
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
        let figure = escaped(&row.figure.to_string());
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

/// The water that runs past a place: what has formed uphill of it, up to where the tube last turns.
fn runs_past(view: &View<'_>, tube: &TubeOutcome, read: &Reading) -> MassFlow {
    let (legs, here) = (view.legs(), read.point.leg);
    let way = legs.get(here).map_or(Runs::Nowhere, runs);
    let alike = |leg: &&Leg| runs(leg) == way;
    let liquid_at = |x| {
        let there = reading(tube, view.run.pressure, x);
        there.map_or(MassFlow::ZERO, |there| there.deposited - there.frozen)
    };
    let liquid = read.deposited - read.frozen;
    match way {
        Runs::Nowhere => MassFlow::ZERO,
        Runs::Onwards => {
            let before = legs.get(..here).unwrap_or_default();
            let uphill = before.iter().rev().take_while(alike).count();
            let top = tube.legs.get(here - uphill).map(|leg| leg.from);
            liquid - top.map_or(liquid, liquid_at)
        }
        Runs::Back => {
            let after = legs.get(here + 1..).unwrap_or_default();
            let uphill = after.iter().take_while(alike).count();
            let top = tube.legs.get(here + uphill).map(|leg| leg.to);
            top.map_or(liquid, liquid_at) - liquid
        }
    }
}
