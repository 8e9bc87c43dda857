//! Path and inner wall enlarged: where the wall lies beyond saturation, and so where it takes water.

use dewrun_advice::BoundaryPoint;
use dewrun_quantity::Temperature;

use super::axis::number;
use super::course::{Course, Place};
use super::layout::Plan;
use super::marks::{Boards, Mark, put};
use super::window::Window;
use super::{ground, limit, spaces};
use crate::block::{Block, Line};
use crate::frame::Room;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::scene::Scene;
use crate::states::{State, states};
use crate::text::{Size, Text, Tone};
use crate::view::View;
use crate::wording;

/// Share of the square's side that the enlarged part takes across and up, in its empty corner.
const INSET: (f64, f64) = (0.54, 0.36);
/// From the corner, px.
const OFF_CORNER: f64 = 12.0;
/// Around path and wall, as a share of what they span, and at least so many K.
const AROUND: f64 = 0.09;
const LEAST_AROUND_K: f64 = 0.5;

/// Where the enlarged part lies and what it shows.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Lens {
    /// All of it, px.
    pub(super) place: Rect,
    /// The part of the plane, under the head.
    pub(super) window: Window,
}

/// The empty corner of the square.
pub(super) fn inset(square: &Window) -> Rect {
    let side = square.rect.width;
    Rect::new(
        square.rect.x + OFF_CORNER,
        square.rect.y + OFF_CORNER,
        side * INSET.0,
        side * INSET.1,
    )
}

/// Height of the enlarged part where it lies under the square.
pub(super) fn low_height(room: Room) -> f64 {
    head_height(room.text) + 0.56 * room.width
}

fn head_height(text: f64) -> f64 {
    38.0 * text
}

/// The window that path and wall fill.
pub(super) fn lens(square: &Window, course: &Course, place: Rect) -> Lens {
    let head = head_height(square.text).min(0.5 * place.height);
    let rect = Rect::new(place.x, place.y + head, place.width, place.height - head);
    let temperatures = |place: &Place| [place.air.0, place.wall.0];
    let sensor_c = course.sensor.map(|(t_c, _)| t_c);
    let across = course.places.iter().flat_map(temperatures).chain(sensor_c);
    let all = (square.left_c, square.right_c());
    let across = around(across, all);
    let up = around(course.places.iter().map(|place| place.air.1), all);
    let per_k = (rect.width / (across.1 - across.0)).min(rect.height / (up.1 - up.0));
    // What is left over lies at the cold end, where the walls are, and half of it above and below.
    let left_c = across.1 - rect.width / per_k;
    let middle_c = 0.5 * (up.0 + up.1);
    Lens {
        place,
        window: Window {
            rect,
            left_c,
            lowest_c: middle_c - 0.5 * rect.height / per_k,
            px_per_k: per_k,
            text: square.text,
        },
    }
}

/// From the lowest to the highest, with room around.
fn around(values: impl Iterator<Item = f64>, else_: (f64, f64)) -> (f64, f64) {
    let ends = values.fold(None, |ends: Option<(f64, f64)>, value| {
        let (low, high) = ends.unwrap_or((value, value));
        Some((low.min(value), high.max(value)))
    });
    let Some((low, high)) = ends else {
        return else_;
    };
    let room = (AROUND * (high - low)).max(LEAST_AROUND_K);
    (low - room, high + room)
}

/// Draws the enlarged part and what of the square it enlarges; gives what its labels cover.
pub(super) fn draw(
    scene: &mut Scene,
    view: &View<'_>,
    plan: &Plan,
    course: &Course,
    boundary: &[BoundaryPoint],
) -> Vec<Rect> {
    let Lens { place, window } = &plan.lens;
    enlarged_part(scene, plan);
    scene.rect("dw-g-sheet", place);
    ground::draw(scene, view, window);
    spaces::uprights(scene, view, window);
    limit::draw(scene, window, boundary);
    course.draw_wall(scene, window);
    course.draw_path(scene, window);
    scene.rect("dw-q-lens", place);
    let mut labels = head(scene, view, plan);
    let heavy = [ground::solid(view, window), course.solid(window)].concat();
    let fine = [limit::solid(window, boundary), spaces::solid(view, window)].concat();
    let mut boards = Boards::new(window.rect, &heavy, &fine);
    for mark in wanted(view, window, course) {
        labels.extend(put(scene, &mut boards, &mark, window.rect, plan.text));
    }
    labels
}

/// The part of the square that is enlarged, and lines to its picture.
fn enlarged_part(scene: &mut Scene, plan: &Plan) {
    let (square, window) = (&plan.square, &plan.lens.window);
    let left = window.left_c.max(square.left_c);
    let right = window.right_c().min(square.right_c());
    let low = window.lowest_c.max(square.lowest_c);
    let high = window.highest_c().min(square.highest_c());
    if right <= left || high <= low {
        return;
    }
    let part = Rect::between(square.at((left, low)), square.at((right, high)));
    scene.rect("dw-d-measure", &part);
    if plan.is_inset {
        let place = &plan.lens.place;
        let path = Path::new()
            .from(Point::new(place.right(), place.bottom()))
            .to(Point::new(part.x, part.y));
        scene.path("dw-d-measure", path);
    }
}

/// What it is, and where water forms, in two lines.
fn head(scene: &mut Scene, view: &View<'_>, plan: &Plan) -> Vec<Rect> {
    let place = &plan.lens.place;
    let line = Size::Label.line() * plan.text;
    let at = Point::new(place.x + 8.0, place.y + 4.0 + 0.76 * line);
    let (words, tone) = condensing(view);
    let texts = [
        Text::new(at, "Path and inner wall, enlarged").bold(),
        Text::new(at.moved(0.0, line), words).toned(tone),
    ];
    texts
        .into_iter()
        .map(|text| {
            let rect = text.rect(plan.text);
            scene.text(text);
            rect
        })
        .collect()
}

/// Where the wall is below the dew point.
fn condensing(view: &View<'_>) -> (String, Tone) {
    let all = states(&view.outcome.intake);
    let wet = || {
        all.iter()
            .filter(|stretch| matches!(stretch.state, State::Water | State::Frost))
    };
    let from_m = wet().map(|stretch| stretch.from_m).reduce(f64::min);
    let to_m = wet().map(|stretch| stretch.to_m).reduce(f64::max);
    let (Some(from_m), Some(to_m)) = (from_m, to_m) else {
        return (
            "wall above the dew point all along".to_owned(),
            Tone::Second,
        );
    };
    let span = wording::span(from_m, to_m, view.style);
    if wet().all(|stretch| stretch.state == State::Frost) {
        return (format!("wall below the frost point: {span}"), Tone::Frost);
    }
    (format!("wall below the dew point: {span}"), Tone::Water)
}

/// The labels and where each would best lie.
fn wanted(view: &View<'_>, window: &Window, course: &Course) -> Vec<Mark> {
    let mut wanted = ends(view, window, course);
    for leg in course.legs() {
        let Some(middle) = leg.get(leg.len() / 2) else {
            continue;
        };
        let balloon = Block {
            balloon: Some(view.leg_number(middle.leg).to_string()),
            ..Block::default()
        };
        wanted.push(Mark {
            block: balloon,
            at: window.at(middle.air).moved(6.0, 16.0),
            reach: Point::new(60.0, 40.0),
        });
    }
    for upright in spaces::all(view) {
        if let Some((foot, _)) = spaces::ends(window, &upright) {
            let line = Line::new(upright.names.join(", "))
                .sized(Size::Least)
                .toned(Tone::Quiet);
            let block = Block::of(vec![line]);
            let (width, height) = block.size(window.text);
            let at = foot.moved(0.5 * width + 4.0, -0.5 * height - 2.0);
            wanted.push(Mark {
                block,
                at,
                reach: Point::new(2.0, 0.6 * window.rect.height),
            });
        }
    }
    wanted
}

/// The states in the duct and at the sensor.
fn ends(view: &View<'_>, window: &Window, course: &Course) -> Vec<Mark> {
    let state = |name: &str, (t_c, dew_c)| {
        let t = wording::celsius(Temperature::celsius(t_c), view.style);
        let dew = number(Temperature::celsius(dew_c), view);
        let first = Line::new(format!("{name} {t}")).bold();
        Block::of(vec![first, Line::new(format!("dew point {dew}"))])
    };
    let mark = |name, state_of, right: bool| {
        let block = state(name, state_of);
        let (width, height) = block.size(window.text);
        let away = if right {
            (0.5 * width + 10.0, 2.0)
        } else {
            (-0.5 * width, -0.5 * height - 8.0)
        };
        Mark {
            at: window.at(state_of).moved(away.0, away.1),
            block,
            reach: Point::new(width + 40.0, 0.5 * window.rect.height),
        }
    };
    let duct = course.duct().map(|duct| mark("duct", duct, false));
    let sensor = course.sensor.map(|sensor| mark("sensor", sensor, true));
    duct.into_iter().chain(sensor).collect()
}
