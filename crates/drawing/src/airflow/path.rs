//! Total pressure along the path of the air, with what it means for traps; under it the budget and the transport time.

mod course;
mod traps;

use dewrun_quantity::Pressure;
use dewrun_quantity::format::fixed;
use dewrun_quantity::measure::DRAUGHT;
use dewrun_run::figure::Kind;

use super::put::put;
use super::{Shown, blank, budget, chart, transport};
use crate::block::{Block, Line};
use crate::frame::Room;
use crate::geometry::{Point, Rect};
use crate::measure::text_width;
use crate::path::Path;
use crate::place::Board;
use crate::scale::Scale;
use crate::scene::Scene;
use crate::text::{Anchor, Size, Text, Tone};
use crate::ticks::{Ticks, rounded_span};
use crate::wording;
use course::Course;

/// Height of the plot, px: on a wide page and on a phone.
const HEIGHTS: (f64, f64) = (168.0, 132.0);

/// Where a place of the path with its pressure lies.
type Px<'a> = &'a dyn Fn(&(f64, Pressure)) -> Point;

/// The charts of pressure, budget and transport time.
#[must_use]
pub fn path(shown: &Shown<'_>, room: Room) -> String {
    let unit = Kind::Gauge.unit(shown.style);
    let mut html = chart(
        "Pressure along the path",
        &format!("{unit}, against the detector's room"),
        &scene(shown, room),
    );
    html.push_str(&chart(
        "Budget",
        &format!(
            "{}, every loss to scale; {}",
            Kind::Gauge.unit(shown.style),
            budget::given(shown)
        ),
        &budget::draw(shown, room),
    ));
    if let Some(band) = transport::draw(shown, room) {
        html.push_str(&chart(
            "Transport time",
            "from the duct to the sensor",
            &band,
        ));
    }
    html
}

pub(super) fn scene(shown: &Shown<'_>, room: Room) -> Scene {
    let text = room.text;
    let high = if room.is_narrow() {
        HEIGHTS.1
    } else {
        HEIGHTS.0
    };
    let now = &shown.whole.airflow.now;
    let read = DRAUGHT.unit(shown.style.units).read;
    let named = now.pressures.iter().map(|at| read(at.pressure));
    let values: Vec<f64> = named
        .chain(now.course.iter().map(|at| read(at.pressure)))
        .collect();
    let low = values.iter().copied().fold(0.0, f64::min);
    let top = values.iter().copied().fold(0.0, f64::max);
    let (from, to, marks) = rounded_span(low, if low < top { top } else { low + 1.0 }, 7);
    let numbers = marks.values.iter().map(|value| {
        let number = fixed(*value, marks.decimals, shown.style.mark);
        text_width(&number, Size::Label.px() * text)
    });
    let left = numbers.fold(30.0 * text, f64::max) + 14.0;
    let plot = Rect::new(left, 18.0 * text, room.width - left - 4.0, high * text);
    let course = Course::new(shown, &plot, room);
    let scale = Scale::new((from, to), (plot.bottom(), plot.y));
    let mut scene = blank("pressure", room, plot.bottom() + 8.0 * text);
    scene.title = "Total pressure along the path".to_owned();
    scene.description = describe(shown);
    let mut board = Board::new(scene.bounds());
    board.take(Rect::new(0.0, 0.0, plot.x - 8.0, scene.height));
    ground(&mut scene, &plot, (&scale, &marks), (shown, text));
    for part in &course.parts {
        if part.is_device {
            let column = Rect::new(part.from, plot.y, part.to - part.from, plot.height);
            scene.rect("dw-g-raise", &column);
        }
    }
    let zero = scale.px(0.0);
    let (left, right) = (Point::new(plot.x, zero), Point::new(plot.right(), zero));
    scene.line("dw-d-measure", left, right);
    let px = |(x, pressure): &(f64, Pressure)| Point::new(*x, scale.px(read(*pressure)));
    let line: Vec<Point> = course.points.iter().map(px).collect();
    for pair in line.windows(2) {
        if let [a, b] = pair {
            keep_off(&mut board, *a, *b);
        }
    }
    scene.path("dw-c-air", Path::through(line.iter().copied()));
    traps::draw(&mut scene, &mut board, shown, (&course, &px), text);
    names(&mut scene, &mut board, shown, (&course, &plot), &line, text);
    scene
}

/// Tells the board where a line runs.
fn keep_off(board: &mut Board, a: Point, b: Point) {
    let long = a.distance(b);
    let mut at = 0.0;
    while at < long {
        let here = a.towards(b, at / long);
        board.keep_off(Rect::new(here.x, here.y, 0.0, 0.0).grown(4.0));
        at += 8.0;
    }
}

fn ground(
    scene: &mut Scene,
    plot: &Rect,
    (scale, marks): (&Scale, &Ticks),
    (shown, text): (&Shown<'_>, f64),
) {
    scene.rect("dw-g-sheet", plot);
    for value in &marks.values {
        let y = scale.px(*value);
        scene.line(
            "dw-d-grid",
            Point::new(plot.x, y),
            Point::new(plot.right(), y),
        );
        let number = fixed(*value, marks.decimals, shown.style.mark);
        let at = Point::new(plot.x - 6.0, y + 4.0 * text);
        scene.text(
            Text::new(at, number)
                .anchored(Anchor::End)
                .toned(Tone::Second),
        );
    }
}

/// Legs as balloons, parts by name.
fn names(
    scene: &mut Scene,
    board: &mut Board,
    shown: &Shown<'_>,
    (course, plot): (&Course, &Rect),
    line: &[Point],
    text: f64,
) {
    let narrow = scene.width / text < 600.0;
    for leg in &course.legs {
        let at = on_line(line, leg.at);
        let balloon = Block {
            balloon: Some(leg.number.to_string()),
            ..Block::default()
        };
        let over = at.moved(0.0, -18.0 * text);
        put(
            scene,
            board,
            &[balloon],
            (over, Point::new(12.0, 28.0)),
            text,
        );
    }
    for part in &course.parts {
        let middle = f64::midpoint(part.from, part.to);
        if narrow && part.is_device && part.name != "fan" {
            continue;
        }
        let name = Line::new(part.name);
        let forms = if part.name == "fan" {
            let lift = shown.whole.airflow.now.budget.fan;
            let lift = wording::gauge(lift, shown.style);
            vec![
                Block::of(vec![Line::new("fan gives"), Line::new(lift.clone()).bold()]),
                Block::of(vec![Line::new(lift).bold()]),
            ]
        } else {
            vec![Block::of(vec![name])]
        };
        let at = Point::new(middle, plot.y - 9.0 * text);
        let reach = Point::new(110.0, plot.height);
        put(scene, board, &forms, (at, reach), text);
    }
}

/// The point of a line over a place.
fn on_line(line: &[Point], x: f64) -> Point {
    let mut found = Point::new(x, line.first().map_or(0.0, |point| point.y));
    for pair in line.windows(2) {
        if let [a, b] = pair
            && a.x <= x
            && x <= b.x
            && a.x < b.x
        {
            found = a.towards(*b, (x - a.x) / (b.x - a.x));
        }
    }
    found
}

fn describe(shown: &Shown<'_>) -> String {
    let at = |place, name: &str| {
        let pressure = shown.whole.airflow.now.pressure(place)?;
        let written = wording::gauge(pressure, shown.style);
        Some(format!("{name} {written}"))
    };
    use dewrun_run::told::AirPlace;
    let told = [
        at(AirPlace::DuctAtIntake, "duct"),
        at(AirPlace::DetectorInlet, "detector's inlet"),
        at(AirPlace::FanInlet, "before the fan"),
        at(AirPlace::FanOutlet, "behind the fan"),
        at(AirPlace::DuctAtExhaust, "duct at the exhaust"),
    ];
    let told: Vec<String> = told.into_iter().flatten().collect();
    format!("{}.", wording::capital(&told.join(", ")))
}
