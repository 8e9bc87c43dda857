//! The air's way through the intake tube, and that of its inner wall, as states on the plane.

use dewrun_quantity::{HumidityRatio, Pressure};
use dewrun_run::air::fast::dew_point_of_c;
use dewrun_run::air::mixture::mole_fraction;
use dewrun_run::{ProfilePoint, course};

use super::window::{State, Window};
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::view::View;

/// Straight pieces that a curve is drawn with between two places of the march.
const PARTS: u16 = 4;
/// Radius of the dot at the duct and of the ring at the sensor, px.
const DOT: f64 = 4.0;
const RING: f64 = 4.5;

/// One place along the tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Place {
    pub(super) x_m: f64,
    pub(super) leg: usize,
    /// Bulk air.
    pub(super) air: State,
    /// Inner wall, at the dew point of the bulk.
    pub(super) wall: State,
    /// Where a wall of that dew point would begin to take water, or frost below 0 °C.
    pub(super) onset: State,
    pub(super) is_frost: bool,
}

/// The way of the air and of the wall.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Course {
    /// In flow order; none in bone-dry air, which has no dew point.
    pub(super) places: Vec<Place>,
    /// The air at the sensor.
    pub(super) sensor: Option<State>,
}

impl Course {
    /// Of a run's intake.
    pub(super) fn of(view: &View<'_>) -> Self {
        let pressure = view.run.pressure;
        let profile = course(&view.outcome.intake.profile, PARTS);
        let chamber = &view.outcome.chamber;
        let sensor_dew = dew_point_c(chamber.humidity_ratio, pressure);
        Self {
            places: profile
                .iter()
                .filter_map(|point| place(point, pressure))
                .collect(),
            sensor: sensor_dew.map(|dew_c| (chamber.temperature.to_celsius(), dew_c)),
        }
    }

    /// The places leg by leg.
    pub(super) fn legs(&self) -> impl Iterator<Item = &[Place]> {
        self.places.chunk_by(|a, b| a.leg == b.leg)
    }

    /// The duct air.
    pub(super) fn duct(&self) -> Option<State> {
        self.places.first().map(|place| place.air)
    }

    /// All states of the air from the duct to the sensor.
    pub(super) fn path(&self) -> Vec<State> {
        let along = self.places.iter().map(|place| place.air);
        along.chain(self.sensor).collect()
    }

    /// Draws the air's way, from a dot at the duct to a ring at the sensor.
    pub(super) fn draw_path(&self, scene: &mut Scene, window: &Window) {
        scene.path("dw-q-path", window.line(&self.path()));
        if let Some(duct) = self.duct() {
            scene.circle("dw-d-solid", window.at(duct), DOT);
        }
        if let Some(sensor) = self.sensor {
            scene.circle("dw-q-ring", window.at(sensor), RING);
        }
    }

    /// Draws the wall, and the hatch between it and saturation where water or frost forms.
    pub(super) fn draw_wall(&self, scene: &mut Scene, window: &Window) {
        for leg in self.legs() {
            for part in leg.chunk_by(|a, b| is_wet(a) == is_wet(b) && a.is_frost == b.is_frost) {
                let hatch = match part.first() {
                    Some(first) if !is_wet(first) => continue,
                    Some(first) if first.is_frost => Hatch::Frost,
                    _ => Hatch::Water,
                };
                let wall = part.iter().map(|place| window.at(place.wall));
                let onset = part.iter().rev().map(|place| window.at(place.onset));
                scene.hatched(hatch, Path::area(wall.chain(onset)));
            }
            let wall: Vec<State> = leg.iter().map(|place| place.wall).collect();
            scene.path("dw-c-wall", window.line(&wall));
        }
    }

    /// What labels keep off.
    pub(super) fn solid(&self, window: &Window) -> Vec<Rect> {
        let walls: Vec<State> = self.places.iter().map(|place| place.wall).collect();
        let both = [self.path(), walls];
        let ends = [self.duct(), self.sensor];
        let around = |state| {
            let at = window.at(state);
            Rect::between(at, at).grown(RING + 1.5)
        };
        both.iter()
            .flat_map(|line| boxes(&window.pieces(line)))
            .chain(ends.into_iter().flatten().map(around))
            .collect()
    }
}

/// Whether water or frost forms there.
fn is_wet(place: &Place) -> bool {
    place.wall.0 < place.onset.0
}

/// Rectangles around the pieces of a line.
pub(super) fn boxes(pieces: &[(Point, Point)]) -> Vec<Rect> {
    pieces
        .iter()
        .map(|(from, to)| Rect::between(*from, *to).grown(2.0))
        .collect()
}

fn place(point: &ProfilePoint, pressure: Pressure) -> Option<Place> {
    let dew_c = dew_point_c(point.humidity_ratio, pressure)?;
    let onset_c = point.dew_point.map_or(dew_c, |t| t.to_celsius());
    let wall_c = point.inner_wall.to_celsius();
    Some(Place {
        x_m: point.x.to_metres(),
        leg: point.leg,
        air: (point.air.to_celsius(), dew_c),
        wall: (wall_c, dew_c),
        onset: (onset_c, dew_c),
        is_frost: wall_c < 0.0,
    })
}

fn dew_point_c(vapour: HumidityRatio, pressure: Pressure) -> Option<f64> {
    let x = mole_fraction(vapour.to_kilograms_per_kilogram());
    dew_point_of_c(x, pressure.to_pascals())
}
