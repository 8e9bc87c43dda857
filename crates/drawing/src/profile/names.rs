//! Names at the curves, end values at the right, and the one note that says what the hatch means.

use dewrun_quantity::Temperature;
use dewrun_quantity::format::{DOES_NOT_APPLY, fixed};
use dewrun_quantity::measure::{TEMPERATURE, TEMPERATURE_DIFFERENCE};
use dewrun_run::{ProfilePoint, TubeOutcome};

use super::layout::Plan;
use crate::block::{Block, Line};
use crate::geometry::{Point, Rect};
use crate::place::{Board, Wanted};
use crate::scene::Scene;
use crate::text::{Size, Tone};
use crate::view::View;

/// Places and draws the labels of the temperature plot; gives what they cover.
pub(crate) fn draw(
    scene: &mut Scene,
    board: &mut Board,
    view: &View<'_>,
    plan: &Plan,
    answer: &TubeOutcome,
) -> Vec<Rect> {
    let mut placed = Vec::new();
    let mut place = |forms: Vec<Block>, at: Point, reach: Point, needed: bool| {
        let wanted = Wanted {
            forms: forms
                .iter()
                .map(|form| form.size(plan.frame.text))
                .collect(),
            at,
            room: plan.plot,
            reach,
            needed,
        };
        let Some(found) = board.place(&wanted) else {
            return;
        };
        if let Some(block) = forms.get(found.form) {
            block.draw(scene, &found.rect, plan.frame.text);
            placed.push(found.rect);
        }
    };
    let near = Point::new(plan.plot.width * 0.3, 40.0);
    for curve in curves() {
        let Some(at) = spot(plan, answer, &curve) else {
            continue;
        };
        place(vec![curve.block()], at, near, true);
    }
    let end = Point::new(40.0, 24.0);
    for curve in curves() {
        let Some((point, t)) = answer
            .profile
            .last()
            .and_then(|p| Some((p, (curve.read)(p)?)))
        else {
            continue;
        };
        let words = fixed(
            (TEMPERATURE.unit(view.style.units).read)(t),
            1,
            view.style.mark,
        );
        let line = Line::new(words).toned(curve.tone);
        let x = plan.frame.px(point.x.to_metres());
        let at = Point::new(x - 18.0, plan.y(t) - 9.0);
        place(vec![Block::of(vec![line])], at, end, false);
    }
    if !plan.frame.narrow {
        let at = Point::new(plan.plot.x + plan.plot.width * 0.55, plan.plot.y + 30.0);
        place(
            vec![note(view, answer)],
            at,
            Point::new(plan.plot.width / 2.0, 80.0),
            false,
        );
    }
    for (block, at) in spaces(view, plan) {
        place(vec![block], at, Point::new(60.0, 20.0), false);
    }
    placed
}

/// One of the three curves.
struct Curve {
    name: &'static str,
    tone: Tone,
    /// Where along the tube its name would best stand, 0 to 1.
    share: f64,
    /// Above the curve rather than under it.
    above: bool,
    read: fn(&ProfilePoint) -> Option<Temperature>,
}

impl Curve {
    fn block(&self) -> Block {
        Block::of(vec![Line::new(self.name).toned(self.tone).bold()])
    }
}

fn curves() -> [Curve; 3] {
    [
        Curve {
            name: "air",
            tone: Tone::Ink,
            share: 0.2,
            above: true,
            read: |point| Some(point.air),
        },
        Curve {
            name: "dew point",
            tone: Tone::Water,
            share: 0.06,
            above: false,
            read: |point| point.dew_point,
        },
        Curve {
            name: "inner wall",
            tone: Tone::Second,
            share: 0.6,
            above: false,
            read: |point| Some(point.inner_wall),
        },
    ]
}

fn spot(plan: &Plan, answer: &TubeOutcome, curve: &Curve) -> Option<Point> {
    let x_m = plan.frame.length_m * curve.share;
    let point = answer
        .profile
        .iter()
        .find(|point| x_m <= point.x.to_metres())?;
    let y = plan.y((curve.read)(point)?);
    let away = 12.0 * plan.frame.text;
    let x = plan.frame.px(x_m).max(plan.plot.x + 34.0);
    Some(Point::new(x, if curve.above { y - away } else { y + away }))
}

/// What is to be seen: that the hatch is where water forms, or by how much the wall stays clear of it.
fn note(view: &View<'_>, answer: &TubeOutcome) -> Block {
    let (first, second) = if answer.wet.is_empty() {
        let margin = least_margin(answer).map_or_else(
            || DOES_NOT_APPLY.to_owned(),
            |margin| TEMPERATURE_DIFFERENCE.show(margin, view.style).to_string(),
        );
        (
            "Wall above the dew point all along: no water forms.".to_owned(),
            format!("Where they come closest, {margin} are left."),
        )
    } else {
        (
            "Wall below the dew point: water forms.".to_owned(),
            "The wider the hatch, the faster.".to_owned(),
        )
    };
    Block::of(vec![
        Line::new(first),
        Line::new(second).toned(Tone::Second),
    ])
}

fn least_margin(answer: &TubeOutcome) -> Option<dewrun_quantity::TemperatureDifference> {
    let margins = answer.profile.iter().filter_map(|point| {
        point
            .dew_point
            .map(|dew_point| point.inner_wall - dew_point)
    });
    margins.reduce(dewrun_quantity::TemperatureDifference::min)
}

/// Name and temperature of each space that the tube passes, on its dotted line.
fn spaces(view: &View<'_>, plan: &Plan) -> Vec<(Block, Point)> {
    let mut along_m = 0.0;
    let mut before = None;
    let mut found = Vec::new();
    for leg in view.legs() {
        let middle = along_m + leg.length.to_metres() / 2.0;
        along_m += leg.length.to_metres();
        let Some(space) = view.run.spaces.get(leg.space) else {
            continue;
        };
        if before == Some(leg.space) {
            continue;
        }
        before = Some(leg.space);
        let temperature = TEMPERATURE.show_entered(space.temperature, view.style);
        let words = format!("{} {temperature}", view.space_name(leg.space));
        let line = Line::new(words).sized(Size::Least).toned(Tone::Quiet);
        let at = Point::new(plan.frame.px(middle), plan.y(space.temperature) - 8.0);
        found.push((Block::of(vec![line]), at));
    }
    found
}
