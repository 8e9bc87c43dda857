//! Where the value of an input came from, in words.

use dewrun_quantity::Length;
use dewrun_run::figure::{Figure, Given, Origin, Spot};
use dewrun_run::{Place, Tube, library};

use super::super::element;
use super::{Origins, part_name};
use crate::view::View;

/// What a row of a table of inputs says of a value.
pub(super) struct Source {
    /// `typed`, `assumed`, `measured` or `computed`.
    pub(super) origin: &'static str,
    /// From its lowest to its highest plausible value, or how far a relation may be off.
    pub(super) range: String,
    /// The row of the library, who measured it, or who found the relation.
    pub(super) text: String,
}

/// The input of the run that a figure is, at a spot.
pub(super) fn given<'a>(
    view: &View<'_>,
    origins: Origins<'a>,
    figure: Figure,
    spot: Spot,
) -> Option<&'a Given> {
    if !figure.is_given() {
        return None;
    }
    let place = match figure {
        Figure::TrapPlace | Figure::TrapCapacity | Figure::TrapSeal | Figure::TrapDrop => {
            trap_near(origins, spot)?
        }
        _ => spot
            .looked_into(figure, view.run, view.outcome)
            .place(figure, view.run)?,
    };
    let mut givens = origins.givens.iter();
    givens.find(|given| given.figure == figure && given.place == place)
}

/// The trap nearest to a spot.
fn trap_near(origins: Origins<'_>, spot: Spot) -> Option<Place> {
    let whole = origins.whole?;
    let water = match spot.tube {
        Tube::Intake => &whole.intake,
        Tube::Exhaust => whole.exhaust.as_ref()?,
    };
    let here = spot.at_m.unwrap_or_default();
    let traps = water.traps.iter().enumerate();
    let away = |at: Length| (at.to_metres() - here).abs();
    let near = traps.min_by(|(_, one), (_, next)| away(one.at).total_cmp(&away(next.at)))?;
    Some(Place::Trap(spot.tube, near.0))
}

/// Origin, range and source of a value.
pub(super) fn source(view: &View<'_>, origins: Origins<'_>, figure: Figure, spot: Spot) -> Source {
    let Some(given) = given(view, origins, figure, spot) else {
        return Source {
            origin: "computed",
            range: figure.spread().to_owned(),
            text: figure.source().to_owned(),
        };
    };
    let number = |value| figure.kind().show_entered(value, view.style).number;
    match &given.origin {
        Origin::Typed => Source {
            origin: "typed",
            range: String::new(),
            text: String::new(),
        },
        Origin::Assumed { row, low, high } => Source {
            origin: "assumed",
            range: format!("{} to {}", number(*low), number(*high)),
            text: row_source(row, *low, *high),
        },
        Origin::Measured { on, by } => Source {
            origin: "measured",
            range: String::new(),
            text: format!("{on}, {by}"),
        },
    }
}

/// The row of the library that a value is from, and its own source, in words.
#[must_use]
pub fn row_source(id: &str, low: f64, high: f64) -> String {
    let Some(row) = library::row(id) else {
        let stands_in = library::assumptions().iter().find(|row| row.id == id);
        return stands_in.map_or_else(
            || format!("library row {id}"),
            |row| {
                format!(
                    "library row \u{201c}{}\u{201d}; {}",
                    row.name, row.value.source
                )
            },
        );
    };
    let mut entries = row.entries().iter();
    let entry = entries.find(|entry| entry.span.low == low && entry.span.high == high);
    let name = row.name();
    entry.map_or_else(
        || format!("library row \u{201c}{name}\u{201d}"),
        |entry| format!("library row \u{201c}{name}\u{201d}; {}", entry.span.source),
    )
}

/// An opened input: where it came from and how it is measured.
pub(super) fn told(view: &View<'_>, origins: Origins<'_>, figure: Figure, spot: Spot) -> String {
    let source = source(view, origins, figure, spot);
    let sentence = match source.origin {
        "assumed" => format!("Assumed, {} is plausible: {}.", source.range, source.text),
        "measured" => format!("Measured on {}.", source.text.replacen(", ", " by ", 1)),
        "typed" => "Typed by somebody; nothing says how it is known.".to_owned(),
        _ => "This run has no such input.".to_owned(),
    };
    let origin = format!(
        "<p><span class=\"dw-origin dw-origin--{}\">{}</span></p>",
        source.origin, source.origin
    );
    [
        part_name("Origin"),
        origin,
        element("p", "", &sentence),
        part_name("How to measure it"),
        element("p", "", figure.how_to_measure()),
    ]
    .concat()
}
