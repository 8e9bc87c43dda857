//! The curves of air, inner wall and dew point, and the hatch between wall and dew point where water forms.

use dewrun_run::{ProfilePoint, TubeOutcome};

use super::layout::Plan;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::place::Board;
use crate::scene::Scene;
use crate::states::{State, StateStretch};
use crate::view::View;

/// Draws hatches and curves and keeps labels off the curves.
pub(crate) fn draw(
    scene: &mut Scene,
    board: &mut Board,
    view: &View<'_>,
    plan: &Plan,
    answer: &TubeOutcome,
    found: &[StateStretch],
) {
    for stretch in found {
        let hatch = match stretch.state {
            State::Water => Hatch::Water,
            State::Frost => Hatch::Frost,
            State::Mist | State::Sweat => continue,
        };
        for leg in legs(answer) {
            scene.hatched(hatch, between_wall_and_dew_point(plan, leg, stretch));
        }
    }
    surroundings(scene, view, plan);
    for leg in legs(answer) {
        let wall = curve(plan, leg, |point| Some(point.inner_wall));
        scene.path("dw-c-wall", wall);
    }
    let dew_point = curve(plan, &answer.profile, |point| point.dew_point);
    scene.path("dw-c-dew", dew_point);
    let air = curve(plan, &answer.profile, |point| Some(point.air));
    scene.path("dw-c-air", air);
    keep_off(board, plan, answer);
}

/// The profile leg by leg.
pub(crate) fn legs(answer: &TubeOutcome) -> impl Iterator<Item = &[ProfilePoint]> {
    answer.profile.chunk_by(|a, b| a.leg == b.leg)
}

fn curve(
    plan: &Plan,
    points: &[ProfilePoint],
    value: impl Fn(&ProfilePoint) -> Option<dewrun_quantity::Temperature>,
) -> Path {
    Path::through(points.iter().filter_map(|point| {
        let x = plan.frame.px(point.x.to_metres());
        value(point).map(|t| Point::new(x, plan.y(t)))
    }))
}

/// The area between dew point and inner wall within one leg and one stretch.
fn between_wall_and_dew_point(plan: &Plan, leg: &[ProfilePoint], stretch: &StateStretch) -> Path {
    let inside: Vec<&ProfilePoint> = leg
        .iter()
        .filter(|point| {
            let x = point.x.to_metres();
            stretch.from_m <= x && x <= stretch.to_m
        })
        .collect();
    if inside.len() < 2 {
        return Path::new();
    }
    let at = |point: &ProfilePoint, t| Point::new(plan.frame.px(point.x.to_metres()), plan.y(t));
    let above = inside
        .iter()
        .filter_map(|point| point.dew_point.map(|t| at(point, t.max(point.inner_wall))));
    let below = inside.iter().rev().map(|point| at(point, point.inner_wall));
    Path::area(above.chain(below))
}

/// The temperature of each space, as a dotted line over its legs.
fn surroundings(scene: &mut Scene, view: &View<'_>, plan: &Plan) {
    let mut along_m = 0.0;
    for leg in view.legs() {
        let from = along_m;
        along_m += leg.length.to_metres();
        let Some(space) = view.run.spaces.get(leg.space) else {
            continue;
        };
        let y = plan.y(space.temperature);
        let (left, right) = (plan.frame.px(from), plan.frame.px(along_m));
        scene.line("dw-c-space", Point::new(left, y), Point::new(right, y));
    }
}

fn keep_off(board: &mut Board, plan: &Plan, answer: &TubeOutcome) {
    for pair in answer.profile.windows(2) {
        let [a, b] = pair else { continue };
        let (left, right) = (
            plan.frame.px(a.x.to_metres()),
            plan.frame.px(b.x.to_metres()),
        );
        let both = [
            (Some(a.air), Some(b.air)),
            (Some(a.inner_wall), Some(b.inner_wall)),
            (a.dew_point, b.dew_point),
        ];
        for (from, to) in both {
            if let (Some(from), Some(to)) = (from, to) {
                let ends = (
                    Point::new(left, plan.y(from)),
                    Point::new(right, plan.y(to)),
                );
                board.keep_off(Rect::between(ends.0, ends.1).grown(1.5));
            }
        }
    }
}
