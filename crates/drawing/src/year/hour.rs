//! One hour of the year in figures.

use dewrun_quantity::measure::TEMPERATURE;
use dewrun_quantity::{Temperature, format};

use super::calendar::rate;
use super::{Step, Year};
use crate::html::element;

/// A step as a panel: when, and what is known of it.
#[must_use]
pub fn hour(year: &Year, at: usize) -> String {
    let Some(step) = year.steps.get(at) else {
        return String::new();
    };
    let name = element("h3", " class=\"dw-year__when\"", &year.stamp(step.start_s));
    let rows: String = figures(year, at, step)
        .into_iter()
        .map(|(term, value)| {
            let (term, value) = (element("dt", "", &term), element("dd", "", &value));
            format!("<div>{term}{value}</div>")
        })
        .collect();
    format!("{name}<dl class=\"dw-year__figures\">{rows}</dl>")
}

/// The same in a line, as it is spoken.
pub(super) fn told(year: &Year, at: usize) -> String {
    let Some(step) = year.steps.get(at) else {
        return String::new();
    };
    let figures: Vec<String> = figures(year, at, step)
        .into_iter()
        .map(|(term, value)| format!("{term} {value}"))
        .collect();
    let told = format!("{}: {}", year.stamp(step.start_s), figures.join(", "));
    crate::svg::escaped(&told)
}

fn figures(year: &Year, at: usize, step: &Step) -> Vec<(String, String)> {
    let mark = year.style.mark;
    let celsius = |value| {
        TEMPERATURE
            .show(Temperature::celsius(value), year.style)
            .to_string()
    };
    let mut rows = vec![
        ("forms".to_owned(), rate(year, step)),
        ("duct air".to_owned(), celsius(step.air_c)),
        ("duct dew point".to_owned(), celsius(step.dew_point_c)),
    ];
    if 0.0 < step.chamber {
        let percent = format::fixed(100.0 * step.chamber, 0, mark);
        rows.push(("chamber".to_owned(), format!("{percent}\u{a0}%")));
    }
    if 0.0 < step.ice_g {
        let ice = format::amount(step.ice_g, 1, mark);
        rows.push(("ice".to_owned(), format!("{ice}\u{a0}g")));
    }
    if step.is_misty {
        let mist = format::amount(1000.0 * step.mist, 2, mark);
        rows.push(("mist".to_owned(), format!("{mist}\u{a0}g/kg")));
    }
    for standing in &year.standing {
        if let Some(level) = standing.level_l.get(at) {
            let level = format::amount(*level, 2, mark);
            rows.push((standing.name(year.style), format!("{level}\u{a0}L")));
        }
    }
    let flow = year.flow.as_ref().and_then(|flow| flow.percent.get(at));
    if let Some(percent) = flow {
        let percent = format::fixed(*percent, 0, mark);
        rows.push(("airflow".to_owned(), format!("{percent}\u{a0}%")));
    }
    if 0.5 <= step.blind {
        rows.push(("detector".to_owned(), "blind".to_owned()));
    }
    rows
}
