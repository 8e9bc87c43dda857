//! The pointer on the length axis: the line through both drawings, the points on the curves, and the flag that reads out every quantity there.

mod flag;
mod flag_place;
mod steps;

use dewrun_quantity::format;
use dewrun_quantity::measure::{TEMPERATURE, TUBE_LENGTH};
use dewrun_quantity::{Length, Temperature};
use dewrun_run::{Reading, reading};

use crate::elevation::{Elevation, Ground};
use crate::frame::Frame;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::profile::Profile;
use crate::scale::Scale;
use crate::scene::Scene;
use crate::svg::overlay;
use crate::view::View;

pub use steps::{BigStep, Step, big_steps};

/// The pointer's own sign, its tip in the middle of its upper edge: an `svg` element.
pub const HANDLE: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dw-pointer__sign\" aria-hidden=\"true\" viewBox=\"0 0 16 18\"><path d=\"M8 1L15 7V17H1V7Z\"/></svg>";

/// Places are read to this many decimals of their unit.
const DECIMALS: usize = 2;

/// What the pointer slides on: the length axis of a tube's two drawings, the profile right under the elevation.
#[derive(Debug, Clone, PartialEq)]
pub struct Rail {
    frame: Frame,
    ground: Ground,
    /// Height of the elevation, which the profile begins under.
    split: f64,
    /// Base of the axis.
    axis: f64,
    temperature: Scale,
    labels: Vec<Rect>,
    solids: Vec<Rect>,
}

/// The pointer at one place.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Distance from the inlet.
    pub x: Length,
    /// The same in the unit shown, as a number.
    pub value: String,
    /// The length of the tube, as a number in the same unit.
    pub most: String,
    /// Where the pointer's tip is, px from the left upper corner of both drawings.
    pub handle: Point,
    /// The line and the points on the curves, an `svg` element as large as both drawings.
    pub lines: String,
    /// What is read there, as HTML.
    pub flag: String,
    /// Where the flag's left upper corner lies, px; on a phone it stands under the drawings.
    pub flag_at: Point,
    /// The whole flag in a sentence.
    pub spoken: String,
}

impl Rail {
    /// The rail under two drawings of one tube.
    #[must_use]
    pub fn new(elevation: &Elevation, profile: &Profile) -> Self {
        Self {
            frame: elevation.frame,
            ground: elevation.ground.clone(),
            split: elevation.scene.height,
            axis: elevation.scene.height + profile.axis,
            temperature: profile.temperature,
            labels: elevation.labels.iter().map(|label| label.rect).collect(),
            solids: elevation.solids.clone(),
        }
    }

    /// The place that lies `px` from the left edge of the drawings, to the hundredth of a unit.
    #[must_use]
    pub fn at(&self, view: &View<'_>, px: f64) -> Length {
        let metres = (px - self.frame.origin) / self.frame.px_per_m;
        steps::rounded(view, Length::metres(metres))
    }

    /// The pointer at a place; none where the tube has no answer.
    #[must_use]
    pub fn mark(&self, view: &View<'_>, x: Length) -> Option<Mark> {
        let x = steps::within(view, x)?;
        let read = reading(view.answer()?, view.run.pressure, x)?;
        let rows = flag::rows(view, &read);
        let tube = self.ground.course.at(x.to_metres()).point;
        let size = flag_place::size(rows.len(), self.frame.text);
        let room = Rect::new(0.0, 0.0, self.frame.width, self.ground.floor);
        let unit = TUBE_LENGTH.unit(view.style.units);
        Some(Mark {
            x,
            value: machine((unit.read)(x)),
            most: machine((unit.read)(Length::metres(self.frame.length_m))),
            handle: Point::new(self.frame.px(x.to_metres()), self.axis),
            lines: overlay(&self.lines(view, &read, tube)),
            flag: flag::html(view, &read, &rows),
            flag_at: flag_place::place(tube.x, size, &room, &self.labels, &self.solids),
            spoken: flag::spoken(view, &read, &rows),
        })
    }

    /// From the tube down to the floor, across to its place on the axis, and through the profile.
    fn lines(&self, view: &View<'_>, read: &Reading, tube: Point) -> Scene {
        let x = self.frame.px(read.point.x.to_metres());
        let mut scene = Scene::bare("pointer", self.frame.width, self.axis);
        let line = [
            tube.moved(0.0, -self.ground.half),
            Point::new(tube.x, self.ground.floor),
            Point::new(x, self.split),
            Point::new(x, self.axis),
        ];
        scene.path("dw-p-line", Path::through(line));
        let to_unit = TEMPERATURE.unit(view.style.units).read;
        let mut dot = |class: &'static str, t: Temperature| {
            let y = self.split + self.temperature.px(to_unit(t));
            scene.circle(class, Point::new(x, y), 3.0);
        };
        dot("dw-p-air", read.point.air);
        dot("dw-p-wall", read.point.inner_wall);
        if let Some(dew_point) = read.point.dew_point {
            dot("dw-p-dew", dew_point);
        }
        scene
    }
}

/// A number for the accessibility tree, which has a point whatever a person types.
fn machine(value: f64) -> String {
    format::machine(value, DECIMALS)
}

/// Height of the flag of a tube, px.
pub(crate) fn flag_height(view: &View<'_>, text: f64) -> f64 {
    let rows = view.answer().map_or(0, flag::count);
    flag_place::size(rows, text).1
}
