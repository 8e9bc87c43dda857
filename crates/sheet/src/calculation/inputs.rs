//! The inputs: each value with its spread and where it comes from; parts of a run that share a value share a row.

use dewrun_drawing::{escaped, fall_number, html::row_source};
use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_quantity::{Fall, Length, Style};
use dewrun_run::figure::{Figure, Given, Origin};
use dewrun_run::{Place, Tube};

use super::Worked;
use super::flow::Piece;
use super::number::entered;
use super::table::{Column, Table};
use crate::told::{Told, called};

/// The table of inputs.
pub(super) struct Inputs(Table);

/// A row: what has that value.
struct Shared<'a> {
    given: &'a Given,
    places: Vec<Place>,
}

impl Inputs {
    pub(super) fn of(worked: &Worked<'_>, style: Style) -> Self {
        let mut shared: Vec<Shared<'_>> = Vec::new();
        for given in worked.givens {
            let same = shared.iter_mut().find(|known| {
                let known = known.given;
                known.figure == given.figure
                    && known.value == given.value
                    && known.origin == given.origin
            });
            match same {
                Some(known) => known.places.push(given.place),
                None => shared.push(Shared {
                    given,
                    places: vec![given.place],
                }),
            }
        }
        let mut table = Table::new(
            "Inputs",
            "spread: lowest to highest plausible value of what is assumed; a dash: taken as it stands",
            vec![
                Column::words("No.", 9.0),
                Column::words("Quantity", 62.0),
                Column::number("Value", 19.0),
                Column::words("", 18.0),
                Column::number("Spread", 32.0),
                Column::words("Where from", 62.0),
            ],
        );
        for (at, one) in shared.iter().enumerate() {
            table.row(&row(worked, at, one, style));
        }
        Self(table)
    }

    pub(super) fn piece(self) -> Piece {
        Piece::Table(self.0)
    }
}

fn row(worked: &Worked<'_>, at: usize, shared: &Shared<'_>, style: Style) -> [String; 6] {
    let given = shared.given;
    let kind = given.figure.kind();
    let number = match (given.figure, given.place) {
        (Figure::Rise, Place::Leg(tube, leg)) => fall(&worked.told, tube, leg, style),
        _ => entered(kind, given.value, style),
    };
    let decides = worked.told.resting.iter().any(|one| {
        one.decides
            && one.assumed.figure == given.figure
            && one
                .assumed
                .places
                .iter()
                .any(|place| shared.places.contains(place))
    });
    let (value, spread, from) = match &given.origin {
        Origin::Typed => (
            format!("<b>{number}</b>"),
            DOES_NOT_APPLY.to_owned(),
            "typed".to_owned(),
        ),
        Origin::Assumed { row, low, high } => (
            format!("<span class=\"dw-calc__assumed\">{number}</span>"),
            format!(
                "{} to {}",
                entered(kind, *low, style),
                entered(kind, *high, style)
            ),
            format!(
                "<b>assumed</b>{}; {}",
                if decides { ", decides the answer" } else { "" },
                escaped(&row_source(row, *low, *high))
            ),
        ),
        Origin::Measured { on, by } => (
            format!("<b>{number}</b>"),
            DOES_NOT_APPLY.to_owned(),
            format!(
                "measured {}",
                escaped(&[on.as_str(), by.as_str()].join(", "))
            ),
        ),
    };
    [
        format!("A{}", at + 1),
        escaped(&name(&worked.told, given.figure, &shared.places)),
        value,
        if given.figure == Figure::Rise {
            String::new()
        } else {
            kind.unit(style).to_owned()
        },
        spread,
        from,
    ]
}

/// The fall of a leg in the form it was typed, along the air.
fn fall(told: &Told<'_>, tube: Tube, at: usize, style: Style) -> String {
    let (legs, forms) = match tube {
        Tube::Intake => (&told.run.intake, &told.names.intake_falls),
        Tube::Exhaust => (&told.run.exhaust, &told.names.exhaust_falls),
    };
    let Some(leg) = legs.get(at) else {
        return String::new();
    };
    let form = forms.get(at).copied().unwrap_or_default();
    match Fall::of(leg.length, leg.rise, form) {
        Some(fall) if !leg.is_steep() => escaped(&fall_number(fall.number, fall, style)),
        _ if leg.rise < Length::ZERO => "drop".to_owned(),
        _ => "riser".to_owned(),
    }
}

/// What it is, and of which parts.
fn name(told: &Told<'_>, figure: Figure, places: &[Place]) -> String {
    let of = places_told(told, places);
    let name = if figure == Figure::Rise {
        "fall with the air"
    } else {
        figure.name()
    };
    let mut letters = name.chars();
    let name = letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_ascii_uppercase(), letters.as_str())
    });
    if of.is_empty() {
        return name;
    }
    format!("{name}: {of}")
}

fn places_told(told: &Told<'_>, places: &[Place]) -> String {
    let mut legs: Vec<usize> = Vec::new();
    let mut words: Vec<String> = Vec::new();
    for place in places {
        match place {
            Place::Leg(Tube::Intake, at) => legs.push(at + 1),
            Place::Leg(Tube::Exhaust, at) => legs.push(told.run.intake.len() + at + 1),
            Place::Space(at) => words.extend(told.names.spaces.get(*at).cloned()),
            Place::Duct(tube) => words.push(called(*tube).to_owned()),
            Place::Trap(tube, at) => {
                words.push(format!("trap {} of the {}", at + 1, called(*tube)))
            }
            Place::Run | Place::DuctAir | Place::Flow | Place::Detector => {}
        }
    }
    if !legs.is_empty() {
        words.insert(0, legs_told(&legs));
    }
    words.join(", ")
}

/// Legs by number, those in a row from the first to the last.
fn legs_told(legs: &[usize]) -> String {
    let mut spans: Vec<(usize, usize)> = Vec::new();
    for leg in legs {
        match spans.last_mut() {
            Some((_, last)) if *last + 1 == *leg => *last = *leg,
            _ => spans.push((*leg, *leg)),
        }
    }
    let told = spans.iter().map(|(first, last)| {
        if first == last {
            first.to_string()
        } else {
            format!("{first} to {last}")
        }
    });
    let word = if legs.len() == 1 { "leg" } else { "legs" };
    format!("{word} {}", told.collect::<Vec<_>>().join(", "))
}

#[cfg(test)]
mod tests {
    use super::legs_told;

    #[test]
    fn legs_in_a_row_are_told_as_a_span() {
        assert_eq!(legs_told(&[3]), "leg 3", "one");
        assert_eq!(legs_told(&[1, 2, 3, 5]), "legs 1 to 3, 5", "a row and one");
    }
}
