//! Numbers at the edges of the square: temperature, dew point, relative humidity.

use dewrun_quantity::Temperature;
use dewrun_quantity::format::{UNIT_SPACE, fixed};
use dewrun_quantity::measure::TEMPERATURE;

use super::ground::{LINES_PERCENT, humidity_line};
use super::layout::Plan;
use crate::geometry::{Point, Rect};
use crate::scene::Scene;
use crate::text::{Anchor, Text, Tone};
use crate::view::View;

/// Length of a tick, px.
const TICK: f64 = 4.0;

/// Draws ticks, numbers and the names of the axes; gives what they cover.
pub(super) fn draw(scene: &mut Scene, view: &View<'_>, plan: &Plan) -> Vec<Rect> {
    let mut texts = numbers(scene, view, plan);
    texts.extend(names(view, plan));
    texts.extend(humidities(view, plan));
    let covered = texts.iter().map(|text| text.rect(plan.text)).collect();
    texts.into_iter().for_each(|text| scene.text(text));
    covered
}

fn numbers(scene: &mut Scene, view: &View<'_>, plan: &Plan) -> Vec<Text> {
    let make = TEMPERATURE.unit(view.style.units).make;
    let rect = &plan.square.rect;
    let mut texts = Vec::new();
    for value in &plan.ticks.values {
        let t_c = make(*value).to_celsius();
        let digits = fixed(*value, plan.ticks.decimals, view.style.mark);
        let foot = Point::new(plan.square.x(t_c), rect.bottom());
        let left = Point::new(rect.x, plan.square.y(t_c));
        scene.line("dw-d-measure", foot, foot.moved(0.0, TICK));
        scene.line("dw-d-measure", left, left.moved(-TICK, 0.0));
        let across = Text::new(foot.moved(0.0, TICK + 12.0 * plan.text), digits.clone());
        texts.push(across.anchored(Anchor::Middle).toned(Tone::Second));
        let up = Text::new(left.moved(-TICK - 3.0, 4.0 * plan.text), digits);
        texts.push(up.anchored(Anchor::End).toned(Tone::Second));
    }
    texts
}

fn names(view: &View<'_>, plan: &Plan) -> [Text; 2] {
    let rect = &plan.square.rect;
    let unit = TEMPERATURE.unit(view.style.units).name;
    let up = Point::new(0.0, rect.y - 10.0 * plan.text);
    let across = Point::new(rect.right(), rect.bottom() + TICK + 28.0 * plan.text);
    [
        Text::new(up, format!("dew point, {unit}")).toned(Tone::Second),
        Text::new(across, format!("temperature, {unit}"))
            .anchored(Anchor::End)
            .toned(Tone::Second),
    ]
}

/// Each line of relative humidity is named where it leaves the square, and saturation with them.
fn humidities(view: &View<'_>, plan: &Plan) -> Vec<Text> {
    let window = &plan.square;
    let ends = LINES_PERCENT.iter().rev().filter_map(|percent| {
        let line = humidity_line(view, window, *percent);
        let (_, dew_c) = *line.last()?;
        (window.lowest_c < dew_c).then_some((*percent, dew_c))
    });
    let saturated = (100.0, window.highest_c());
    let mut texts: Vec<Text> = Vec::new();
    for (percent, dew_c) in core::iter::once(saturated).chain(ends) {
        let at = Point::new(window.rect.right() + 5.0, window.y(dew_c) + 4.0 * plan.text);
        let digits = fixed(percent, 0, view.style.mark);
        let text = Text::new(at, format!("{digits}{UNIT_SPACE}%")).toned(Tone::Quiet);
        let rect = text.rect(plan.text);
        let is_free = texts
            .iter()
            .all(|other| !other.rect(plan.text).overlaps(&rect));
        if is_free {
            texts.push(text);
        }
    }
    texts
}

/// A temperature in the unit shown, without the unit.
pub(super) fn number(t: Temperature, view: &View<'_>) -> String {
    TEMPERATURE.show(t, view.style).number
}
