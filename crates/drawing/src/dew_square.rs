//! The dew square: temperature across, dew point up on the same scale; duct air, path, spaces and dry boundary against saturation.

mod axis;
mod course;
mod describe;
mod ground;
mod hours;
mod layout;
mod lens;
mod limit;
mod marks;
mod spaces;
mod window;

use dewrun_advice::BoundaryPoint;
use dewrun_quantity::Temperature;

use crate::frame::Room;
use crate::geometry::Rect;
use crate::scene::Scene;
use crate::view::View;

pub use hours::SquareHours;

/// A dew square drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct DewSquare {
    /// The shapes and texts.
    pub scene: Scene,
    /// The square itself, px.
    pub plot: Rect,
    /// Where path and inner wall are drawn enlarged, px.
    pub lens: Rect,
    /// The labels, px.
    pub labels: Vec<Rect>,
}

/// The duct temperatures at which the dry boundary is to be known for the square of a run: its ends and round numbers between.
#[must_use]
pub fn boundary_temperatures(
    view: &View<'_>,
    year: &[SquareHours],
    room: Room,
) -> Vec<Temperature> {
    layout::boundary_temperatures(view, year, room)
}

/// Draws the dew square of the intake tube, with the dry boundary over its width, and the hours of a year where there are any.
#[must_use]
pub fn dew_square(
    view: &View<'_>,
    boundary: &[BoundaryPoint],
    year: &[SquareHours],
    room: Room,
) -> DewSquare {
    let course = course::Course::of(view);
    let plan = layout::plan(view, &course, year, room);
    let mut scene = Scene {
        prefix: "dew-square",
        width: room.width,
        height: plan.height,
        title: describe::title(),
        description: describe::sentence(view, &course, boundary),
        items: Vec::new(),
    };
    ground::draw(&mut scene, view, &plan.square);
    hours::draw(&mut scene, &plan.square, year);
    let mut labels = axis::draw(&mut scene, view, &plan);
    spaces::uprights(&mut scene, view, &plan.square);
    limit::draw(&mut scene, &plan.square, boundary);
    course.draw_path(&mut scene, &plan.square);
    let heavy = [
        ground::solid(view, &plan.square),
        course.solid(&plan.square),
    ]
    .concat();
    let fine = [
        limit::solid(&plan.square, boundary),
        spaces::solid(view, &plan.square),
    ]
    .concat();
    let mut boards = marks::Boards::new(scene.bounds(), &heavy, &fine);
    if plan.is_inset {
        boards.take(plan.lens.place);
    }
    labels.extend(marks::draw(&mut scene, &mut boards, view, &plan, boundary));
    labels.extend(lens::draw(&mut scene, view, &plan, &course, boundary));
    DewSquare {
        scene,
        plot: plan.square.rect,
        lens: plan.lens.place,
        labels,
    }
}
