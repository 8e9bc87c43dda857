//! What a run assumes: each row of the library once, with all the places that have its value.

use dewrun_run::Place;
use dewrun_run::figure::{Figure, Given, Origin};

/// A value that is assumed, by a row of the library.
#[derive(Debug, Clone, PartialEq)]
pub struct Assumption {
    /// What is assumed.
    pub figure: Figure,
    /// The parts of the run that have it: legs of one tube of the library are one assumption.
    pub places: Vec<Place>,
    /// The value assumed, in the unit of the figure's kind.
    pub value: f64,
    /// The row of the library, by its id.
    pub row: String,
    /// The lowest value that is plausible.
    pub low: f64,
    /// The highest.
    pub high: f64,
}

/// What is only compared with the answer, or moves the airflow limits alone.
const BESIDE: [Figure; 4] = [
    Figure::HumidityRating,
    Figure::LimitMargin,
    Figure::Season,
    Figure::FilterDust,
];

/// The assumed values that an answer may rest on; those of legs and of both ends of the duct that share a row and a value are one.
///
/// # Range
/// Inputs of a run, of its installation, or of both.
///
/// # Source
/// No relation of its own.
#[must_use]
pub fn assumptions(givens: &[Given]) -> Vec<Assumption> {
    let mut found: Vec<Assumption> = Vec::new();
    for given in givens {
        let Origin::Assumed { row, low, high } = &given.origin else {
            continue;
        };
        if BESIDE.contains(&given.figure) {
            continue;
        }
        let is_shared = |place: &Place| matches!(place, Place::Leg(..) | Place::Duct(_));
        let same = found.iter_mut().find(|known| {
            known.figure == given.figure
                && known.row == *row
                && known.value == given.value
                && is_shared(&given.place)
        });
        if let Some(known) = same {
            known.places.push(given.place);
            continue;
        }
        found.push(Assumption {
            figure: given.figure,
            places: vec![given.place],
            value: given.value,
            row: row.clone(),
            low: *low,
            high: *high,
        });
    }
    found
}
