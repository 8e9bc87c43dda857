//! The charts of the airflow as tables.

use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_run::figure::{Figure, Kind};
use dewrun_run::told::AirPlace;

use super::head::{number, opens, seconds};
use super::judged::trips;
use super::rows::{Row, all_faults, states};
use super::{Shown, budget};
use crate::html::element;
use crate::wording;

/// All of them, one under the other.
#[must_use]
pub fn tables(shown: &Shown<'_>) -> String {
    [
        pressures(shown),
        budget_table(shown),
        transport(shown),
        judged(shown),
    ]
    .concat()
}

fn table(caption: &str, heads: &[String], rows: &[Vec<String>]) -> String {
    let head: String = heads
        .iter()
        .enumerate()
        .map(|(place, head)| {
            let class = if place == 0 {
                ""
            } else {
                " class=\"dw-number\""
            };
            format!("<th scope=\"col\"{class}>{head}</th>")
        })
        .collect();
    let row = |cells: &Vec<String>| {
        let cells: String = cells
            .iter()
            .enumerate()
            .map(|(place, cell)| {
                if place == 0 {
                    format!("<th scope=\"row\">{cell}</th>")
                } else {
                    format!("<td class=\"dw-number\">{cell}</td>")
                }
            })
            .collect();
        format!("<tr>{cells}</tr>")
    };
    let rows: String = rows.iter().map(row).collect();
    let caption = element("caption", "", caption);
    format!(
        "<table class=\"dw-table\">{caption}<thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>"
    )
}

fn pressures(shown: &Shown<'_>) -> String {
    let unit = Kind::Gauge.unit(shown.style);
    let rows: Vec<Vec<String>> = shown
        .whole
        .airflow
        .now
        .pressures
        .iter()
        .map(|at| {
            let written = wording::gauge_number(at.pressure, shown.style);
            vec![place(at.place).to_owned(), written]
        })
        .collect();
    let heads = [
        "Place".to_owned(),
        opens(Figure::LinePressure, &format!("Total pressure, {unit}")),
    ];
    table("Pressure along the path", &heads, &rows)
}

const fn place(place: AirPlace) -> &'static str {
    match place {
        AirPlace::DuctAtIntake => "Duct at the intake",
        AirPlace::Inlet => "Behind the holes",
        AirPlace::PartedJoint => "Parted joint",
        AirPlace::Leak(_) => "Leak",
        AirPlace::DetectorInlet => "Detector's inlet",
        AirPlace::FilterOutlet => "Behind the filter",
        AirPlace::FanInlet => "Behind the chamber",
        AirPlace::FanOutlet => "Behind the fan",
        AirPlace::ExhaustEnd => "Exhaust's end",
        AirPlace::DuctAtExhaust => "Duct at the exhaust",
    }
}

fn budget_table(shown: &Shown<'_>) -> String {
    let unit = Kind::Gauge.unit(shown.style);
    let rows: Vec<Vec<String>> = budget::losses(shown)
        .into_iter()
        .map(|(name, loss)| {
            let written = wording::gauge_number(loss, shown.style);
            vec![name.to_owned(), written]
        })
        .collect();
    let heads = [
        "Spent in".to_owned(),
        opens(Figure::PressureBudget, &format!("Pressure, {unit}")),
    ];
    table("Budget", &heads, &rows)
}

fn transport(shown: &Shown<'_>) -> String {
    let Some(band) = shown.whole.airflow.now.transport else {
        return String::new();
    };
    let rows = [
        ("First smoke", Figure::TransportFirst, band.first),
        ("As if at one speed", Figure::TransportPlug, band.plug),
        ("90\u{a0}%", Figure::TransportNinety, band.ninety_percent),
    ];
    let row = |(name, figure, time)| {
        let text = seconds(time, shown.style);
        vec![name, opens(figure, &text)]
    };
    let rows = rows.map(|(name, figure, time)| row((name.to_owned(), figure, time)));
    let heads = ["Transport time".to_owned(), "After".to_owned()];
    table("From the duct to the sensor", &heads, &rows)
}

fn judged(shown: &Shown<'_>) -> String {
    let heads = [
        "State or fault".to_owned(),
        opens(Figure::FlowReading, "Airflow, %"),
        opens(Figure::SampleShare, "From the duct, %"),
        "Limits as set".to_owned(),
        "Limits advised".to_owned(),
    ];
    let pairs = [shown.limits, shown.advised()];
    let row = |row: Row| {
        let verdict = |limits: Option<[f64; 2]>| {
            let Some(limits) = limits else {
                return DOES_NOT_APPLY.to_owned();
            };
            let words = match (row.is_fault, trips(limits, row.reading)) {
                (true, true) => "caught",
                (true, false) => "missed",
                (false, true) => "trips",
                (false, false) => "no trouble",
            };
            words.to_owned()
        };
        let mut cells = vec![
            crate::svg::escaped(&row.name),
            number(row.reading, shown.style),
            number(row.share, shown.style),
        ];
        cells.extend(pairs.map(verdict));
        cells
    };
    let rows: Vec<Vec<String>> = states(shown)
        .into_iter()
        .chain(all_faults(shown))
        .map(row)
        .collect();
    table("States and faults", &heads, &rows)
}
