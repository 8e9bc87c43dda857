//! What is told of rows beside a pick: lowest and highest of each value, and where they are from.

use dewrun_document::Origin;
use dewrun_quantity::{Style, format};
use dewrun_run::library;

use super::Pick;
use crate::rows;
use crate::{Field, OpenProject};

impl Pick {
    /// What is assumed of the part, in words; empty where nothing is.
    pub fn told(self, project: &OpenProject, style: Style) -> String {
        match self {
            Self::DuctAir => spans(&[Field::DuctFirst, Field::DuctSecond], project, style),
            Self::Detector => spans(
                &[Field::DetectorHeat, Field::DetectorRating],
                project,
                style,
            ),
            Self::Tube(tube, at) => spans(
                &[
                    Field::LegBore(tube, at),
                    Field::LegOutside(tube, at),
                    Field::LegConductivity(tube, at),
                ],
                project,
                style,
            ),
            Self::Insulation(tube, at) => {
                spans(&[Field::InsulationConductivity(tube, at)], project, style)
            }
            Self::Space(tube, at) => {
                let space = super::leg(project, tube, at).map(|leg| &leg.space);
                let place =
                    |space: &String| project.spaces.iter().position(|other| other.id == *space);
                space
                    .and_then(place)
                    .map_or_else(String::new, |at| of_space(at, project, style))
            }
        }
    }
}

/// What is assumed of a space, with its design situation and how far it follows the weather.
fn of_space(at: usize, project: &OpenProject, style: Style) -> String {
    let fields = [
        Field::SpaceTemperature(at),
        Field::SpaceHumidity(at),
        Field::SpaceWind(at),
    ];
    let mut text = spans(&fields, project, style);
    let row = project.spaces.get(at);
    let row = row.and_then(|space| rows::row_of(&space.temperature_c));
    let row = row.and_then(|row| library::find(library::spaces(), row.id()));
    if let Some(row) = row {
        let coupling = row.coupling;
        let number = |value: f64| format::entered_with(value, style.mark);
        text.insert_str(0, &format!("{}: {}. ", row.name, row.situation));
        text += &format!(
            " It follows the outdoors by {} to {} of the way ({}).",
            number(coupling.low),
            number(coupling.high),
            coupling.source
        );
    }
    text
}

/// Lowest and highest of each field that is assumed; those of one source in a sentence.
fn spans(fields: &[Field], project: &OpenProject, style: Style) -> String {
    let mut told: Vec<(&str, Vec<String>)> = Vec::new();
    for field in fields {
        let Some((source, span)) = span(*field, project, style) else {
            continue;
        };
        match told.last_mut().filter(|(last, _)| *last == source) {
            Some((_, spans)) => spans.push(lower(&span)),
            None => told.push((source, vec![span])),
        }
    }
    let sentence =
        |(source, spans): (&str, Vec<String>)| format!("{} ({source}).", spans.join(", "));
    let sentences: Vec<String> = told.into_iter().map(sentence).collect();
    sentences.join(" ")
}

/// A field's span and its source, if it is assumed from a row of the library.
fn span(field: Field, project: &OpenProject, style: Style) -> Option<(&'static str, String)> {
    let input = field.input(project)?;
    let Origin::Assumed { low, high, .. } = input.origin else {
        return None;
    };
    let kind = field.kind(project)?;
    let source = rows::row_of(&input)?.entry(kind.figure())?.span.source;
    let low = kind.show(low, style).number;
    Some((
        source,
        format!(
            "{} {low} to {}",
            field.name(project),
            kind.show(high, style)
        ),
    ))
}

fn lower(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_ascii_lowercase(), letters.as_str())
    })
}
