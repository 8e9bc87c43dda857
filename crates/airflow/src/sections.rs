//! A line in a state, cut where a joint is parted or water fills the bore.

use crate::error::AirflowNote;
use crate::hole::effective_area;
use crate::layout::{lay, mouth};
use crate::line::{Detector, Inlet, Line, OpenEnd, Side};
use crate::loss::{Loss, Section as Bore, of_coefficient};
use crate::part::{Cause, End, Mouth, Part, Piece, Place, Section};
use crate::state::State;

/// What breaks leave of a line.
#[derive(Debug)]
pub(crate) struct Sections {
    /// From the duct towards the detector, without the one that holds it.
    pub(crate) before: Vec<Section>,
    /// The one that holds the detector.
    pub(crate) main: Section,
    /// From the detector towards the duct.
    pub(crate) after: Vec<Section>,
}

/// Cuts a line.
pub(crate) fn cut(line: &Line, state: &State, notes: &mut Vec<AirflowNote>) -> Sections {
    let intake = lay(&line.intake, Side::Intake, state, line.room, notes);
    let exhaust = lay(&line.exhaust, Side::Exhaust, state, line.room, notes);
    let mut parts = Vec::with_capacity(intake.len() + exhaust.len() + 9);
    parts.push(Part::Place(Place::Inlet));
    parts.extend(intake);
    parts.extend(detector(&line.detector, state));
    parts.extend(exhaust);
    parts.push(Part::Place(Place::ExhaustEnd));
    split(inlet(line, state), parts, outlet(line, state))
}

fn split(start: End, parts: Vec<Part>, end: End) -> Sections {
    let empty = |start: End, start_m: f64| Section {
        start,
        start_m,
        parts: Vec::new(),
        end,
    };
    let mut sections = vec![empty(start, 0.0)];
    for part in parts {
        let Some(last) = sections.last_mut() else {
            break;
        };
        if let Part::Break(at_break, at_m) = part {
            last.end = at_break;
            sections.push(empty(at_break, at_m));
        } else {
            last.parts.push(part);
        }
    }
    let holds_detector = |section: &Section| section.parts.contains(&Part::Fan);
    let place = sections.iter().position(holds_detector).unwrap_or(0);
    let mut from_detector = sections.split_off(place).into_iter();
    Sections {
        before: sections,
        main: from_detector.next().unwrap_or_else(|| empty(start, 0.0)),
        after: from_detector.collect(),
    }
}

fn inlet(line: &Line, state: &State) -> End {
    let duct = state.duct.unwrap_or(line.duct);
    let pressure_pa = duct.intake.to_pascals();
    let Some(stretch) = line.intake.stretches.first() else {
        return End::Closed;
    };
    match &line.inlet {
        Inlet::OpenEnd(end) => End::Open(mouth(stretch, *end, pressure_pa)),
        Inlet::Holes(holes) => {
            let area_m2 = effective_area(holes, &state.hole_open).to_square_metres();
            if area_m2 <= 0.0 {
                return End::Closed;
            }
            let density_kg_m3 = stretch.air.density.to_kilograms_per_cubic_metre();
            let coefficient = of_coefficient(1.0, density_kg_m3, area_m2);
            End::Open(Mouth {
                pressure_pa,
                inward: coefficient,
                outward: coefficient,
                density_kg_m3,
            })
        }
    }
}

fn outlet(line: &Line, state: &State) -> End {
    let duct = state.duct.unwrap_or(line.duct);
    let end: OpenEnd = line.outlet;
    line.exhaust
        .stretches
        .last()
        .map_or(End::Closed, |stretch| {
            End::Open(mouth(stretch, end, duct.exhaust.to_pascals()))
        })
}

/// Filter, chamber and fan with the places between them.
fn detector(detector: &Detector, state: &State) -> Vec<Part> {
    let density_kg_m3 = detector.air.density.to_kilograms_per_cubic_metre();
    let piece = |cause: Cause, loss: Loss, air_m3: f64| {
        Part::Piece(Piece {
            cause,
            end_m: None,
            loss,
            air_m3,
            density_kg_m3,
            reynolds_s_kg: None,
        })
    };
    let mut parts = vec![Part::Place(Place::DetectorInlet)];
    if !state.filter_missing {
        let clean = detector.filter.to_pascals_per_cubic_metre_per_second();
        let loss = Loss {
            linear: clean * state.dust / density_kg_m3,
            ..Loss::default()
        };
        let volume = detector.filter_volume.to_cubic_metres();
        parts.push(piece(Cause::Filter, loss, volume));
    }
    parts.push(Part::Place(Place::FilterOutlet));
    let bore = Bore::round(detector.chamber_bore.to_metres());
    let loss = Loss {
        quadratic: of_coefficient(
            detector.chamber_loss_coefficient,
            density_kg_m3,
            bore.area_m2,
        ),
        ..Loss::default()
    };
    let volume = detector.chamber_volume.to_cubic_metres();
    parts.push(piece(Cause::Chamber, loss, volume));
    parts.push(Part::Place(Place::FanInlet));
    parts.push(Part::Fan);
    parts.push(Part::Place(Place::FanOutlet));
    parts
}
