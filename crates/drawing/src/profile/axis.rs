//! Grounds, grids and numbers of the profile, and the joints that the elevation has carried down.

use dewrun_quantity::Length;
use dewrun_quantity::format::{entered_with, fixed};
use dewrun_quantity::measure::{TEMPERATURE, TUBE_LENGTH};

use super::layout::Plan;
use crate::geometry::{Point, Rect, kept};
use crate::scene::Scene;
use crate::text::{Anchor, Text, Tone};
use crate::ticks::ticks;
use crate::view::View;
use crate::wording;

/// Draws everything that stands still under the curves.
pub(crate) fn draw(scene: &mut Scene, view: &View<'_>, plan: &Plan) {
    for ground in [&plan.plot, &plan.strip] {
        scene.rect("dw-g-sheet", ground);
    }
    temperatures(scene, view, plan);
    water(scene, view, plan);
    joints(scene, view, plan);
    lengths(scene, view, plan);
    if !plan.frame.narrow {
        heads(scene, view, plan);
    }
}

fn temperatures(scene: &mut Scene, view: &View<'_>, plan: &Plan) {
    let marks = &plan.temperature_ticks;
    for value in &marks.values {
        let y = plan.temperature.px(*value);
        let is_freezing = *value
            == (TEMPERATURE.unit(view.style.units).read)(dewrun_quantity::Temperature::celsius(
                0.0,
            ));
        grid(scene, &plan.plot, y, is_freezing);
        number(
            scene,
            plan,
            y,
            fixed(*value, marks.decimals, view.style.mark),
        );
    }
    let unit = TEMPERATURE.unit(view.style.units).name;
    let at = Point::new(
        plan.frame.origin - 8.0,
        plan.plot.y - 10.0 * plan.frame.text,
    );
    scene.text(Text::new(at, unit).anchored(Anchor::End).toned(Tone::Quiet));
}

fn water(scene: &mut Scene, view: &View<'_>, plan: &Plan) {
    let marks = &plan.water_ticks;
    // A low strip has room for two numbers.
    let ends = [marks.values.first(), marks.values.last()];
    for value in ends.into_iter().flatten() {
        let y = plan.water.px(*value);
        grid(scene, &plan.strip, y, false);
        number(scene, plan, y, entered_with(*value, view.style.mark));
    }
    if plan.frame.narrow {
        let at = Point::new(plan.frame.origin, plan.strip.y - 8.0 * plan.frame.text);
        let words = format!("water formed, {}", wording::per_length(view.style));
        let text = Text::new(at, words).toned(Tone::Quiet);
        scene.text(text.within(plan.frame.width, plan.frame.text));
    }
}

/// The joints of the legs, as chain lines.
fn joints(scene: &mut Scene, view: &View<'_>, plan: &Plan) {
    let mut along_m = 0.0;
    let mut places = vec![along_m];
    for leg in view.legs() {
        along_m += leg.length.to_metres();
        places.push(along_m);
    }
    for place in places {
        let x = plan.frame.px(place);
        scene.line("dw-d-carry", Point::new(x, 0.0), Point::new(x, plan.axis));
    }
}

/// The length axis with its numbers, the unit after the last.
fn lengths(scene: &mut Scene, view: &View<'_>, plan: &Plan) {
    let unit = TUBE_LENGTH.unit(view.style.units);
    let frame = &plan.frame;
    let long = (unit.read)(Length::metres(frame.length_m));
    let apart = if frame.narrow { 44.0 } else { 60.0 };
    let most = kept(
        (frame.end() - frame.origin) / (apart * frame.text),
        2.0,
        24.0,
    );
    let marks = ticks(0.0, long, whole(most));
    scene.line(
        "dw-d-measure",
        Point::new(frame.origin, plan.axis),
        Point::new(frame.end(), plan.axis),
    );
    // From the last, which carries the unit, so that on a short axis it is the others that are left out.
    let mut placed: Option<Rect> = None;
    for value in marks.values.iter().rev() {
        let x = frame.px((unit.make)(*value).to_metres());
        scene.line(
            "dw-d-measure",
            Point::new(x, plan.axis),
            Point::new(x, plan.axis + 4.0),
        );
        let digits = fixed(*value, marks.decimals, view.style.mark);
        let words = match placed {
            None => format!("{digits} {}", unit.name),
            Some(_) => digits,
        };
        let at = Point::new(x, plan.axis + 5.0 + 12.0 * frame.text);
        let text = Text::new(at, words)
            .anchored(Anchor::Middle)
            .toned(Tone::Second)
            .within(frame.width, frame.text);
        let rect = text.rect(frame.text);
        if placed.is_none_or(|before| rect.right() + 4.0 <= before.x) {
            scene.text(text);
            placed = Some(rect);
        }
    }
}

/// What each row shows, at the left of it.
fn heads(scene: &mut Scene, view: &View<'_>, plan: &Plan) {
    let line = 15.0 * plan.frame.text;
    let mut head = |y: f64, name: &str, second: &str| {
        let at = Point::new(4.0, y + 0.8 * line);
        scene.text(Text::new(at, name).bold());
        scene.text(Text::new(at.moved(0.0, line), second).toned(Tone::Second));
    };
    head(plan.plot.y, "Temperature", "along the tube");
    head(
        plan.strip.y,
        "Water formed",
        wording::per_length(view.style),
    );
}

fn grid(scene: &mut Scene, ground: &Rect, y: f64, is_freezing: bool) {
    let class = if is_freezing {
        "dw-d-zero"
    } else {
        "dw-d-grid"
    };
    scene.line(
        class,
        Point::new(ground.x, y),
        Point::new(ground.right(), y),
    );
}

fn number(scene: &mut Scene, plan: &Plan, y: f64, digits: String) {
    let at = Point::new(plan.frame.origin - 8.0, y + 4.0 * plan.frame.text);
    let text = Text::new(at, digits)
        .anchored(Anchor::End)
        .toned(Tone::Second);
    // A long number on a phone may reach over the plot's edge.
    scene.text(text.within(plan.frame.width, plan.frame.text));
}

/// A count that is at least 2.
pub(crate) fn whole(count: f64) -> usize {
    (2..=24)
        .rev()
        .find(|whole: &u8| f64::from(*whole) <= count)
        .map_or(2, usize::from)
}
