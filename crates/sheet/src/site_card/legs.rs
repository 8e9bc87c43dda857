//! The table of legs: what is set out with a level, leg by leg.

use dewrun_drawing::{escaped, fall_number, site_length};
use dewrun_quantity::format::{DOES_NOT_APPLY, THIN_SPACE, fixed};
use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{Fall, Length, Style, Units};
use dewrun_run::told::Course;
use dewrun_run::{HangerAdvice, Leg, Tube};

use super::joints::joints;
use crate::markup::{cell, element, strong, table_head};
use crate::told::{Told, reached};

/// The rows of both tubes, each with a row of its own that names the tube where there are two.
pub(crate) fn rows(told: &Told<'_>, style: Style) -> Vec<String> {
    let mut rows = Vec::new();
    for (tube, legs, first) in [
        (Tube::Intake, &told.run.intake, 1),
        (Tube::Exhaust, &told.run.exhaust, told.run.intake.len() + 1),
    ] {
        let ends = joints(told, tube);
        for ((place, leg), ends) in legs.iter().enumerate().zip(ends) {
            let at = Place { tube, place };
            rows.push(row(told, at, (first + place, leg), ends, style));
        }
    }
    rows
}

/// The table around rows.
pub(crate) fn table(rows: &[String], style: Style) -> String {
    let (length, drop) = match style.units {
        Units::Si => ("Length m", "Drop mm"),
        Units::InchPound => ("Length ft", "Drop in"),
    };
    let hangers = format!("Hangers, {}", TUBE_LENGTH.unit(style.units).name);
    let head = table_head(&[
        ("", "Leg"),
        ("", "From, to"),
        ("dw-card__n", length),
        ("dw-card__n", "Fall"),
        ("dw-card__n", drop),
        ("", "Low end; water runs"),
        ("dw-card__n", &hangers),
        ("", "In; reached from"),
    ]);
    let body = element("tbody", "", &rows.concat());
    element(
        "table",
        "dw-card__table dw-card__legs",
        &format!("{head}{body}"),
    )
}

#[derive(Clone, Copy)]
struct Place {
    tube: Tube,
    place: usize,
}

fn row(
    told: &Told<'_>,
    Place { tube, place }: Place,
    (number, leg): (usize, &Leg),
    [from, to]: [&str; 2],
    style: Style,
) -> String {
    let form = match tube {
        Tube::Intake => told.names.intake_falls.get(place),
        Tube::Exhaust => told.names.exhaust_falls.get(place),
    };
    let fall = Fall::of(leg.length, leg.rise, form.copied().unwrap_or_default());
    let fall = match fall {
        Some(fall) if !leg.is_steep() => fall_number(fall.number.abs(), fall, style),
        _ => "upright".to_owned(),
    };
    let water = told.water(tube).and_then(|water| water.legs.get(place));
    let runs = match water.map(|water| (water.report.course, water.report.flat)) {
        Some((Course::Level, _)) | None => strong("level: water stays"),
        Some((_, true)) => strong("too flat: water stays"),
        Some((Course::WithAir, false)) => format!("{to} end, with the air"),
        Some((Course::AgainstAir, false)) => {
            format!("{}, against the air", strong(&format!("{from} end")))
        }
    };
    let space = told.names.spaces.get(leg.space).map_or("", String::as_str);
    let route = told.route(tube).and_then(|route| route.legs.get(place));
    let reached = route.map_or("", |leg| reached(leg.access));
    let tube_sign = if tube == Tube::Exhaust {
        " dw-card__exhaust"
    } else {
        ""
    };
    let row = [
        cell("", &strong(&number.to_string())),
        cell("", &format!("{from} to {to}")),
        cell("dw-card__n", &site_length(leg.length, style)),
        cell("dw-card__n", &strong(&fall)),
        cell("dw-card__n", &strong(&drop(leg.rise, style))),
        cell("", &runs),
        cell("dw-card__n", &hangers(told, tube, place, style)),
        cell("", &escaped(&format!("{space}; {reached}"))),
    ];
    format!(
        "<tr class=\"dw-card__leg{tube_sign}\">{}</tr>",
        row.concat()
    )
}

/// Height between the ends, no finer than a level shows it.
fn drop(rise: Length, style: Style) -> String {
    let height = rise.max(-rise);
    match style.units {
        Units::Si => fixed(height.to_millimetres(), 0, style.mark),
        Units::InchPound => fixed(height.to_inches(), 1, style.mark),
    }
    .replace(THIN_SPACE, "\u{a0}")
}

fn hangers(told: &Told<'_>, tube: Tube, place: usize, style: Style) -> String {
    if let Some(spacing) = told.hangers(tube, place) {
        return site_length(spacing, style);
    }
    let water = told.water(tube).and_then(|water| water.legs.get(place));
    match water.map(|water| water.hangers) {
        Some(HangerAdvice::AllAlong) => "all along".to_owned(),
        Some(HangerAdvice::Steep) => "clips".to_owned(),
        _ => DOES_NOT_APPLY.to_owned(),
    }
}
