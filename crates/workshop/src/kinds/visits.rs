//! Visits: what is expected on site, what a form says, and the project with one visit more.

use dewrun_desk::{VisitField, VisitPlaces, filter_at, occasion, style_of, visit_of, water_g};
use dewrun_document::{Visit, VisitedTube, visited, write};
use dewrun_drawing::html::opening;
use dewrun_drawing::{escaped, site_place};
use dewrun_quantity::{Length, Style};
use dewrun_run::figure::{Figure, Kind, Spot};
use dewrun_run::{ExpectedOnSite, FilterOnSite, OnSite, Tube, TubeWater, Whole, on_site};

use crate::asked::Asked;

/// Between the fields of a form, and between the name and the text of one.
const FIELD: char = '\u{1f}';
const NAME: char = '\u{1e}';

/// Where a visit to the run looks.
pub(super) fn places(whole: &Whole) -> VisitPlaces {
    let mut water = Vec::new();
    for (tube, of) in [
        (Tube::Intake, Some(&whole.intake)),
        (Tube::Exhaust, whole.exhaust.as_ref()),
    ] {
        water.extend(of.into_iter().flat_map(along).map(|at| (tube, at)));
    }
    let suction = whole.intake.traps.first().map(|trap| trap.at);
    let missing = || {
        let mut all = whole.intake.proposals.iter();
        all.find_map(|one| one.trap.at)
    };
    VisitPlaces {
        water,
        suction: suction.or_else(missing),
    }
}

/// Traps, missing traps, then low points where none of both is.
fn along(water: &TubeWater) -> Vec<Length> {
    const SAME: Length = Length::millimetres(1.0);
    let traps = water.traps.iter().map(|trap| trap.at);
    let missing = water.proposals.iter().filter_map(|one| one.trap.at);
    let mut places: Vec<Length> = traps.chain(missing).collect();
    for low in &water.low_points {
        let is_there = |place: &Length| (*place - low.at).max(low.at - *place) < SAME;
        if !places.iter().any(is_there) {
            places.push(low.at);
        }
    }
    places
}

/// What is expected of readings with that filter.
pub(super) fn expected(whole: &Whole, filter: FilterOnSite) -> OnSite {
    on_site(&whole.airflow, filter, places(whole).suction)
}

/// What each field of a form says: its name, whether it is wrong, and a sentence.
pub(super) fn told(asked: &Asked<'_>) -> Result<String, String> {
    let (style, _) = style_of(asked.numbers);
    let whole = whole(asked)?;
    let fields = fields(asked.words);
    let expected = expected(whole, filter_at(occasion(&fields)));
    let mut all = Vec::new();
    for field in VisitField::ALL {
        let span = field.expected(&expected);
        let (is_wrong, words) = match field.take(text(&fields, field.name()), style) {
            Err(sentence) => (true, sentence),
            Ok(Some(value)) => (
                false,
                span.map_or_else(String::new, |span| {
                    opens(field, &field.against(value, &span, style))
                }),
            ),
            Ok(None) => (
                false,
                span.map_or_else(String::new, |span| {
                    opens(field, &awaited(field, &span, style))
                }),
            ),
        };
        all.push(line(field.name(), is_wrong, &words));
    }
    for number in 0..places(whole).water.len() {
        let name = format!("water-{number}");
        let sentence = water_g(text(&fields, &name), style).err();
        all.push(line(
            &name,
            sentence.is_some(),
            &sentence.unwrap_or_default(),
        ));
    }
    for name in ["on", "note"] {
        all.push(line(name, false, ""));
    }
    Ok(all.join(&FIELD.to_string()))
}

/// What is expected of a field that is empty.
fn awaited(field: VisitField, span: &ExpectedOnSite<f64>, style: Style) -> String {
    let number = |value: f64| field.show(value, style);
    format!(
        "Expected {} ({} to {}).",
        number(span.usual),
        number(span.low),
        number(span.high)
    )
}

/// What is expected, as a text that opens to where it comes from.
fn opens(field: VisitField, words: &str) -> String {
    let figure = match field {
        VisitField::Airflow => Figure::SensorFlow,
        VisitField::DuctStatic => Figure::DuctStatic,
        VisitField::Suction => Figure::LinePressure,
        VisitField::FirstSmoke => Figure::TransportFirst,
        VisitField::NinetyPercent => Figure::TransportNinety,
    };
    opening(figure, Spot::tube(Tube::Intake), "", words)
}

/// The words of a field as HTML; what is wrong holds what somebody typed.
fn line(name: &str, is_wrong: bool, words: &str) -> String {
    let wrong = if is_wrong {
        escaped(words)
    } else {
        String::new()
    };
    let words = if is_wrong { &wrong } else { words };
    let sign = if is_wrong { "wrong" } else { "" };
    format!("{name}{NAME}{sign}{NAME}{words}")
}

/// The project with the visit that a form is; where something is wrong, what and where as [`told`] has it, behind a mark.
pub(super) fn with_visit(asked: &Asked<'_>) -> Result<String, String> {
    let (style, _) = style_of(asked.numbers);
    let whole = whole(asked)?;
    let fields = fields(asked.words);
    let expected = expected(whole, filter_at(occasion(&fields)));
    let visit = match visit_of(&fields, &places(whole), &expected, style) {
        Ok(visit) => visit,
        Err(wrong) => {
            let wrong: Vec<String> = wrong
                .iter()
                .map(|(name, sentence)| line(name, true, sentence))
                .collect();
            return Ok(format!("{FIELD}{}", wrong.join(&FIELD.to_string())));
        }
    };
    let open = &asked.open.answered.project;
    let mut project = open.project.clone();
    if let Some(run) = project.runs.get_mut(open.run) {
        visited(run, visit);
    }
    match write(&project) {
        Ok(text) => Ok(text),
        Err(error) => Ok(format!("{FIELD}{}", line("note", true, &error.sentence()))),
    }
}

/// All visits in words, the last first.
pub(super) fn list(visits: &[Visit], style: Style) -> String {
    let items: String = visits
        .iter()
        .rev()
        .map(|visit| format!("<li>{}</li>", one(visit, style)))
        .collect();
    if items.is_empty() {
        return "<p>Nobody has noted a visit yet.</p>".to_owned();
    }
    format!("<ol class=\"dw-visits\" reversed>{items}</ol>")
}

fn one(visit: &Visit, style: Style) -> String {
    let by = if visit.by.trim().is_empty() {
        String::new()
    } else {
        format!(", {}", visit.by)
    };
    let why = match visit.occasion {
        dewrun_document::Occasion::AsFitted => "fitted",
        dewrun_document::Occasion::Service => "service",
    };
    let mut text = format!("<b>{}</b>", escaped(&format!("{}{by}, {why}", visit.on)));
    for (field, reading) in VisitField::ALL.into_iter().zip(visit.readings()) {
        let Some(reading) = reading else { continue };
        let value = field.show(reading.value, style);
        let against = reading.expected.as_ref().map_or_else(String::new, |then| {
            let span = ExpectedOnSite {
                low: then.low,
                usual: then.usual,
                high: then.high,
            };
            format!(" {}", field.against(reading.value, &span, style))
        });
        let words = format!(
            "{} {value}\u{a0}{}.{against}",
            field.label(),
            field.unit(style)
        );
        text.push_str(&format!("<br>{}", escaped(&words)));
    }
    for found in &visit.water {
        let tube = match found.tube {
            VisitedTube::Intake => "intake",
            VisitedTube::Exhaust => "exhaust",
        };
        let words = format!(
            "Water {} at {} of the {tube} tube.",
            Kind::Mass.show(found.water_g, style),
            site_place(Length::metres(found.at_m), style)
        );
        text.push_str(&format!("<br>{}", escaped(&words)));
    }
    if !visit.note.is_empty() {
        text.push_str(&format!("<br>{}", escaped(&visit.note)));
    }
    text
}

pub(super) fn whole<'a>(asked: &'a Asked<'_>) -> Result<&'a Whole, String> {
    asked.open.whole().map_err(|error| error.sentence())
}

/// Names and texts of a form.
pub(super) fn fields(words: &str) -> Vec<(&str, &str)> {
    words
        .split(FIELD)
        .filter_map(|field| field.split_once(NAME))
        .collect()
}

pub(super) fn text<'a>(fields: &[(&str, &'a str)], name: &str) -> &'a str {
    let found = fields.iter().find(|(known, _)| *known == name);
    found.map_or("", |(_, text)| *text)
}
