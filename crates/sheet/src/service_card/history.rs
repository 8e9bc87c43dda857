//! The visits so far as a table, the last first.

use dewrun_document::{Occasion, Reading, Visit};
use dewrun_drawing::escaped;
use dewrun_quantity::Style;
use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_run::figure::Kind;

use crate::markup::{cell, element, table_head};
use crate::site_card::measured::shown;
use crate::told::Told;

/// A row for each visit.
pub(super) fn rows(told: &Told<'_>, style: Style) -> Vec<String> {
    let visits = told.entered().map_or(&[][..], |run| run.visits.as_slice());
    visits.iter().rev().map(|visit| row(visit, style)).collect()
}

/// The table around them; without any it says so.
pub(super) fn table(rows: &[String], style: Style) -> String {
    if rows.is_empty() {
        return element("p", "dw-card__last", "Nobody has noted a visit yet.");
    }
    let unit = |name: &str, kind: Kind| format!("{name}, {}", kind.unit(style));
    let (airflow, suction) = (unit("Airflow", Kind::Flow), unit("Suction", Kind::Gauge));
    let water = unit("Water", Kind::Mass);
    let head = table_head(&[
        ("", "Day"),
        ("", "By"),
        ("", "Why"),
        ("dw-card__n", &airflow),
        ("dw-card__n", &suction),
        ("dw-card__n", "First smoke, s"),
        ("dw-card__n", "90 %, s"),
        ("dw-card__n", &water),
        ("", "Note"),
    ]);
    let body = element("tbody", "", &rows.concat());
    element("table", "dw-card__table", &format!("{head}{body}"))
}

fn row(visit: &Visit, style: Style) -> String {
    let read = |kind: Kind, reading: &Option<Reading>| {
        reading.as_ref().map_or_else(
            || DOES_NOT_APPLY.to_owned(),
            |reading| shown(kind, reading.value, style).number,
        )
    };
    let water_g: f64 = visit.water.iter().map(|found| found.water_g).sum();
    let water = if visit.water.is_empty() {
        DOES_NOT_APPLY.to_owned()
    } else {
        shown(Kind::Mass, water_g, style).number
    };
    let why = match visit.occasion {
        Occasion::AsFitted => "fitted",
        Occasion::Service => "service",
    };
    let cells = [
        cell("dw-card__unit", &escaped(&visit.on)),
        cell("", &escaped(&visit.by)),
        cell("", why),
        cell("dw-card__n", &read(Kind::Flow, &visit.airflow_l_min)),
        cell("dw-card__n", &read(Kind::Gauge, &visit.suction_pa)),
        cell("dw-card__n", &read(Kind::Seconds, &visit.first_smoke_s)),
        cell("dw-card__n", &read(Kind::Seconds, &visit.ninety_percent_s)),
        cell("dw-card__n", &water),
        cell("", &escaped(&visit.note)),
    ];
    element("tr", "", &cells.concat())
}
