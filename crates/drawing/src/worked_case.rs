//! A worked case as a small picture: duct, tube, detector, the spaces between them and the trouble it teaches.
//!
//! It is a sign and not to scale: lengths fill the width, falls and drops each have a factor of their own.

mod plan;
mod trouble;

use dewrun_quantity::measure::TEMPERATURE;

use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::text::{Anchor, Text, Tone};
use crate::view::View;

use plan::{Border, FLOOR, HALF, HEIGHT, LEFT, Plan, RIGHT, SLAB, WIDTH};
use trouble::Trouble;

/// Half the thickness of a wall, px.
const WALL: f64 = 2.5;
/// Air left between a wall and the tube that goes through it, px.
const GAP: f64 = 9.0;

/// The picture of a worked case.
///
/// `name` tells its ids from those of other drawings on the same page.
#[must_use]
pub fn worked_case(view: &View<'_>, name: &'static str) -> Scene {
    let plan = Plan::of(view);
    let trouble = Trouble::of(view);
    let mut scene = Scene {
        prefix: name,
        width: WIDTH,
        height: HEIGHT,
        title: format!("{} to the detector: {}", view.names.duct, trouble.words()),
        description: "A sign of the case, not to scale.".to_owned(),
        items: Vec::new(),
    };
    building(&mut scene, &plan);
    // The tube ends within duct and detector, which are drawn over it.
    let ends = [plan.duct.centre(), plan.detector.centre()];
    for class in ["dw-w-wall", "dw-w-bore"] {
        let [duct, detector] = ends.map(core::iter::once);
        let course = duct.chain(plan.joints.iter().copied()).chain(detector);
        scene.path(class, Path::through(course));
    }
    trouble.draw(&mut scene, view, &plan);
    furniture(&mut scene, &plan);
    space(&mut scene, view, &plan, &trouble);
    scene
}

/// Slab, floor and what parts the spaces.
fn building(scene: &mut Scene, plan: &Plan) {
    let whole = Rect::new(0.0, 0.0, WIDTH, HEIGHT);
    scene.hatched(Hatch::Cut, Path::rect(&whole));
    scene.rect("dw-g-sheet", &Rect::new(0.0, SLAB, WIDTH, FLOOR - SLAB));
    let upper = plan.borders.iter().find_map(|border| match border {
        Border::Floor(y) => Some(*y),
        Border::Wall(_) => None,
    });
    if let Some(y) = upper {
        scene.rect("dw-g-raise", &Rect::new(0.0, SLAB, WIDTH, y - SLAB));
    }
    let across = |scene: &mut Scene, y: f64| {
        scene.line("dw-d-cut", Point::new(0.0, y), Point::new(WIDTH, y));
    };
    across(scene, SLAB);
    across(scene, FLOOR);
    for border in &plan.borders {
        match border {
            Border::Floor(y) => across(scene, *y),
            Border::Wall(at) => {
                for (top, bottom) in [(SLAB, at.y - GAP), (at.y + GAP, FLOOR)] {
                    let wall = Rect::new(at.x - WALL, top, 2.0 * WALL, bottom - top);
                    scene.rect("dw-d-solid", &wall);
                }
            }
        }
    }
}

/// The duct and the detector.
fn furniture(scene: &mut Scene, plan: &Plan) {
    let duct = &plan.duct;
    scene.rect("dw-d-duct", duct);
    scene.rect("dw-d-seen", duct);
    let corner = Point::new(duct.x, duct.y);
    scene.line(
        "dw-d-measure",
        corner,
        corner.moved(duct.width, duct.height),
    );
    scene.line(
        "dw-d-measure",
        corner.moved(duct.width, 0.0),
        corner.moved(0.0, duct.height),
    );
    scene.rect("dw-d-device", &plan.detector);
    scene.rect("dw-d-seen", &plan.detector);
    scene.circle("dw-d-fan", plan.detector.centre(), 4.5);
}

/// The name and temperature of the space where the trouble is.
fn space(scene: &mut Scene, view: &View<'_>, plan: &Plan, trouble: &Trouble) {
    let leg = trouble.leg();
    let Some(space) = view.legs().get(leg).map(|leg| leg.space) else {
        return;
    };
    let Some(temperature) = view.run.spaces.get(space).map(|space| space.temperature) else {
        return;
    };
    let temperature = TEMPERATURE.show_entered(temperature, view.style);
    let words = format!("{} {temperature}", view.space_name(space));
    let at = if plan.is_upper(leg) {
        Point::new(RIGHT, SLAB + 12.0)
    } else {
        Point::new(LEFT.max(plan.first_wall_before(leg)), FLOOR - 5.0)
    };
    let anchor = if plan.is_upper(leg) {
        Anchor::End
    } else {
        Anchor::Start
    };
    let text = Text::new(at, words).anchored(anchor).toned(Tone::Second);
    scene.text(text);
}

/// Half the bore, for what lies in it.
const fn bore() -> f64 {
    HALF - 1.5
}
