//! The rows under the tube: bars for the stretches in one state, and the dimension line.

use dewrun_quantity::Length;

use super::labels::{LabelKind, Labels, Spot};
use super::layout::Plan;
use crate::block::{Block, Line};
use crate::geometry::{Point, Rect};
use crate::scene::Scene;
use crate::states::{State, StateStretch};
use crate::text::Tone;
use crate::view::View;

/// A bar for each wet or frozen stretch.
pub(crate) fn draw_bars(
    scene: &mut Scene,
    labels: &mut Labels<'_>,
    view: &View<'_>,
    plan: &Plan,
    states: &[StateStretch],
) {
    let Some(rows) = plan.rows else { return };
    for (place, stretch) in states.iter().enumerate() {
        let class = match stretch.state {
            State::Water => "dw-b-water",
            State::Frost => "dw-b-frost",
            State::Mist | State::Sweat => continue,
        };
        let from = plan.course.at(stretch.from_m).point.x;
        let to = plan.course.at(stretch.to_m).point.x.max(from + 2.0);
        let y = rows.bar;
        scene.line(class, Point::new(from, y), Point::new(to, y));
        for x in [from, to] {
            scene.line(
                "dw-d-measure",
                Point::new(x, y - 4.0),
                Point::new(x, y + 4.0),
            );
        }
        labels
            .board
            .keep_off(Rect::new(from, y - 3.0, to - from, 6.0));
        let spot = Spot {
            at: Point::new((from + to) / 2.0, y - 11.0 * labels.scale),
            room: Rect::new(
                0.0,
                y - 24.0 * labels.scale,
                plan.frame.width,
                44.0 * labels.scale,
            ),
            reach: Point::new(240.0, 0.0),
            needed: false,
            thing: None,
        };
        labels.place(
            LabelKind::Stretch(place),
            super::labels::stretch(view, stretch),
            spot,
        );
    }
}

/// The dimension line of all legs but the steep ones.
pub(crate) fn draw_dimensions(
    scene: &mut Scene,
    labels: &mut Labels<'_>,
    view: &View<'_>,
    plan: &Plan,
    number: impl Fn(Length) -> String,
) {
    let Some(y) = plan.rows.and_then(|rows| rows.dimensions) else {
        return;
    };
    let (start, end) = (plan.start().x, plan.end().x);
    if start == end {
        return;
    }
    scene.line(
        "dw-d-measure",
        Point::new(start - 6.0, y),
        Point::new(end + 6.0, y),
    );
    labels
        .board
        .keep_off(Rect::new(start - 6.0, y - 2.0, end - start + 12.0, 4.0));
    for (place, (leg, drawn)) in view.legs().iter().zip(&plan.course.legs).enumerate() {
        let (left, right) = (drawn.from.point.x, drawn.to.point.x);
        for x in [left, right] {
            let slash = Point::new(4.0, -4.0);
            let at = Point::new(x, y);
            scene.line(
                "dw-d-tick",
                at.moved(-slash.x, -slash.y),
                at.moved(slash.x, slash.y),
            );
        }
        if drawn.steep {
            continue;
        }
        let block = Block::of(vec![Line::new(number(leg.length)).toned(Tone::Second)]);
        let room = Rect::new(
            left + 2.0,
            y - 24.0 * labels.scale,
            right - left - 4.0,
            24.0 * labels.scale,
        );
        let spot = Spot {
            at: Point::new((left + right) / 2.0, y - 11.0 * labels.scale),
            room,
            reach: Point::new(0.0, 2.0),
            needed: false,
            thing: None,
        };
        labels.place(LabelKind::Dimension(place), vec![block], spot);
    }
}

/// Labels of stretches that have no bar: near the tube itself.
pub(crate) fn place_states(
    labels: &mut Labels<'_>,
    view: &View<'_>,
    plan: &Plan,
    states: &[StateStretch],
) {
    for (place, stretch) in states.iter().enumerate() {
        let has_bar = plan.rows.is_some() && matches!(stretch.state, State::Water | State::Frost);
        if has_bar {
            continue;
        }
        let thing = plan.course.at((stretch.from_m + stretch.to_m) / 2.0).point;
        let below = if stretch.state == State::Sweat {
            1.0
        } else {
            -1.0
        };
        let spot = Spot {
            at: thing.moved(0.0, below * (plan.half + 34.0)),
            room: plan.floor_at(thing),
            reach: Point::new(180.0, 120.0),
            needed: false,
            thing: Some(thing.moved(0.0, below * plan.half)),
        };
        labels.place(
            LabelKind::Stretch(place),
            super::labels::stretch(view, stretch),
            spot,
        );
    }
}
