//! The strip of water formed per metre of tube, frost in its own hatch.

use dewrun_run::{ProfilePoint, TubeOutcome};

use super::curves::legs;
use super::layout::Plan;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::text::{Anchor, Text, Tone};
use crate::view::View;
use crate::wording;

/// Draws the strip; gives what its label covers.
pub(crate) fn draw(
    scene: &mut Scene,
    view: &View<'_>,
    plan: &Plan,
    answer: &TubeOutcome,
) -> Option<Rect> {
    for leg in legs(answer) {
        for (part, is_cold) in parts(leg) {
            area(scene, plan, part, is_cold);
        }
    }
    let line = answer.profile.iter().map(|point| at(plan, point));
    scene.path("dw-c-formed", Path::through(line));
    label(scene, view, plan, answer)
}

/// The leg cut where its wall passes 0 °C, each part reaching up to the next, and whether it freezes.
fn parts(leg: &[ProfilePoint]) -> Vec<(&[ProfilePoint], bool)> {
    let mut parts = Vec::new();
    let (mut start, mut before) = (0, None);
    for (place, pair) in leg.windows(2).enumerate() {
        let is_cold = is_cold(pair);
        if let Some(cold) = before.filter(|cold| *cold != is_cold) {
            parts.extend(leg.get(start..=place).map(|part| (part, cold)));
            start = place;
        }
        before = Some(is_cold);
    }
    parts.extend(leg.get(start..).zip(before));
    parts
}

/// Whether the wall is below 0 °C between two places, one of which is where it passes.
fn is_cold(pair: &[ProfilePoint]) -> bool {
    let sum: f64 = pair.iter().map(|point| point.inner_wall.to_celsius()).sum();
    sum < 0.0
}

fn area(scene: &mut Scene, plan: &Plan, part: &[ProfilePoint], is_cold: bool) {
    let (Some(first), Some(last)) = (part.first(), part.last()) else {
        return;
    };
    let foot = |point: &ProfilePoint| Point::new(at(plan, point).x, plan.strip.bottom());
    let top = part.iter().map(|point| at(plan, point));
    let corners = core::iter::once(foot(first))
        .chain(top)
        .chain(core::iter::once(foot(last)));
    let area = Path::area(corners);
    if is_cold {
        scene.hatched(Hatch::Frost, area);
    } else {
        scene.path("dw-s-tint", area);
    }
}

fn at(plan: &Plan, point: &ProfilePoint) -> Point {
    Point::new(
        plan.frame.px(point.x.to_metres()),
        plan.y_water(point.deposit),
    )
}

/// How much forms in all, over the lowest part of the curve.
fn label(scene: &mut Scene, view: &View<'_>, plan: &Plan, answer: &TubeOutcome) -> Option<Rect> {
    let words = if answer.condensate.to_grams_per_hour() == 0.0 {
        "none".to_owned()
    } else {
        format!("{} in all", wording::water(answer.condensate, view.style))
    };
    let text = |x: f64| {
        let at = Point::new(x, plan.strip.y + 13.0 * plan.frame.text);
        Text::new(at, words.clone())
            .anchored(Anchor::Middle)
            .toned(Tone::Ink)
            .haloed()
    };
    let least = plan.strip.x + text(0.0).rect(plan.frame.text).width / 2.0 + 4.0;
    let most = plan.strip.right() - (least - plan.strip.x);
    let shares = [0.5, 0.7, 0.85, 0.3, 1.0, 0.0];
    let places = shares.map(|share| least + (most - least).max(0.0) * share);
    let clear = places
        .into_iter()
        .find(|x| is_clear(plan, answer, &text(*x).rect(plan.frame.text)));
    let label = text(clear.unwrap_or(places[0]));
    let rect = label.rect(plan.frame.text);
    scene.text(label);
    Some(rect)
}

fn is_clear(plan: &Plan, answer: &TubeOutcome, rect: &Rect) -> bool {
    answer
        .profile
        .iter()
        .map(|point| at(plan, point))
        .all(|point| {
            point.x < rect.x - 4.0 || rect.right() + 4.0 < point.x || rect.bottom() + 3.0 < point.y
        })
}
