//! What an answer rests on, in words: the assumed values that alone would change it, and how each could be measured.

use dewrun_advice::Resting;
use dewrun_quantity::Style;
use dewrun_run::figure::{Figure, Spot};
use dewrun_run::{Place, Run};

use super::part::{Emphasis, Part};
use crate::wording::capital;

/// So many are named at once.
const NAMED: usize = 3;

/// The assumed values that an answer rests on, in words.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rests {
    /// How many there are, and the first of them.
    pub sentence: Vec<Part>,
    /// The others that decide, where there are more.
    pub more: Vec<Part>,
    /// How each of those named could be measured, a sentence each.
    pub how: Vec<String>,
}

impl Rests {
    /// All of it as plain text.
    #[must_use]
    pub fn plain(&self) -> String {
        let mut text = super::plain(&self.sentence);
        if !self.more.is_empty() {
            text.push_str(", ");
            text.push_str(&super::plain(&self.more));
        }
        text.push('.');
        text
    }
}

/// What an answer rests on, from the ranking of its assumed values; spaces are called by their names.
#[must_use]
pub fn rests(run: &Run, spaces: &[String], ranked: &[Resting], style: Style) -> Rests {
    let deciding: Vec<&Resting> = ranked.iter().filter(|one| one.decides).collect();
    let head = match (ranked.len(), deciding.len()) {
        (0, _) => "Rests on no assumed value".to_owned(),
        (1, 0) => "The one assumed value does not decide it alone".to_owned(),
        (tried, 0) => format!("None of {tried} assumed values decides it alone"),
        (_, 1) => "Rests on 1 assumed value: ".to_owned(),
        (_, many) => format!("Rests on {many} assumed values: "),
    };
    let words = |of: &[&Resting]| {
        let mut parts = Vec::new();
        for one in of {
            if !parts.is_empty() {
                parts.push(Part::words("; "));
            }
            parts.push(named(run, spaces, one, style));
        }
        parts
    };
    let (first, others) = deciding.split_at(deciding.len().min(NAMED));
    let mut sentence = vec![Part::words(head)];
    sentence.extend(words(first));
    let how = |one: &&Resting| {
        let name = capital(&assumed_name(
            spaces,
            one.assumed.figure,
            one.assumed.places.first().copied(),
        ));
        format!("{name}: {}", one.assumed.figure.how_to_measure())
    };
    Rests {
        sentence,
        more: words(others),
        how: first.iter().map(how).collect(),
    }
}

/// One assumed value with its span.
fn named(run: &Run, spaces: &[String], one: &Resting, style: Style) -> Part {
    let place = one.assumed.places.first().copied();
    let kind = one.assumed.figure.kind();
    let number = |value| kind.show_entered(value, style).number;
    let text = format!(
        "{} {} [{} to {}]",
        assumed_name(spaces, one.assumed.figure, place),
        kind.show_entered(one.assumed.value, style),
        number(one.assumed.low),
        number(one.assumed.high),
    );
    let spot = place.and_then(|place| Spot::of_place(place, run));
    match spot {
        Some(spot) => Part::figure(text, Emphasis::Assumed, one.assumed.figure, spot),
        None => Part::words(text),
    }
}

/// What an input is called where nothing around says whose it is; the air of a space by the name of the space.
#[must_use]
pub fn assumed_name(spaces: &[String], figure: Figure, place: Option<Place>) -> String {
    let name = match place {
        Some(Place::Space(at)) => spaces.get(at),
        _ => None,
    };
    match (name, figure) {
        (Some(name), Figure::SpaceTemperature) => name.clone(),
        (Some(name), Figure::SpaceRelative) => format!("{name} humidity"),
        (Some(name), _) => format!("{name} {}", figure.name().replace(" of the space", "")),
        _ => figure.name().to_owned(),
    }
}
