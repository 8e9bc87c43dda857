//! What every dew square has: saturation, the hatch over it, lines of relative humidity, and the frost line.

use dewrun_quantity::{RelativeHumidity, Temperature};
use dewrun_run::air::fast::dew_point_of_c;
use dewrun_run::air::humidity::saturated_over_ice;
use dewrun_run::air::{Humidity, MoistAir, Over, Pair};

use super::course::boxes;
use super::window::{State, Window};
use crate::geometry::{Point, Rect, kept};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::view::View;

/// Relative humidities that have a line, %.
pub(super) const LINES_PERCENT: [f64; 4] = [20.0, 40.0, 60.0, 80.0];
/// Points that a curve is drawn through.
const POINTS: u8 = 16;
/// Above the triple point there is no frost, °C.
const FROST_BELOW_C: f64 = 0.01;

/// Draws the ground of a window.
pub(super) fn draw(scene: &mut Scene, view: &View<'_>, window: &Window) {
    scene.rect("dw-g-sheet", &window.rect);
    scene.hatched(Hatch::Above, above(window));
    for percent in LINES_PERCENT {
        scene.path(
            "dw-d-grid",
            window.line(&humidity_line(view, window, percent)),
        );
    }
    let frost = frost_line(view, window);
    if let Some(area) = frost_area(window, &frost) {
        scene.hatched(Hatch::Frost, area);
    }
    scene.path("dw-d-zero", window.line(&frost));
    if let Some((from, to)) = window.diagonal() {
        scene.line("dw-d-cut", window.at((from, from)), window.at((to, to)));
    }
    scene.rect("dw-d-measure", &window.rect);
}

/// What labels keep off: saturation and the frost line.
pub(super) fn solid(view: &View<'_>, window: &Window) -> Vec<Rect> {
    let mut solid = boxes(&window.pieces(&frost_line(view, window)));
    if let Some((from, to)) = window.diagonal() {
        let steps = evenly(from, to);
        let states: Vec<State> = steps.map(|t_c| (t_c, t_c)).collect();
        // A slanting line is kept off in small pieces.
        for pair in states.windows(2) {
            let [a, b] = pair else { continue };
            let halves = [(*a, middle(*a, *b)), (middle(*a, *b), *b)];
            for (from, to) in halves {
                solid.extend(boxes(&window.pieces(&[from, to])));
            }
        }
    }
    solid
}

/// Dew point of air at one relative humidity (over water), over the width of the window.
pub(super) fn humidity_line(view: &View<'_>, window: &Window, percent: f64) -> Vec<State> {
    let state = |t_c: f64| {
        let humidity = Humidity::Relative {
            value: RelativeHumidity::percent(percent),
            over: Over::Water,
        };
        let pair = Pair::Temperature(Temperature::celsius(t_c), humidity);
        let air = MoistAir::new(pair, view.run.pressure).ok()?.value;
        Some((t_c, air.dew_point()?.to_celsius()))
    };
    evenly(window.left_c, window.right_c())
        .filter_map(state)
        .collect()
}

/// Dew point of air that is saturated over ice: a wall left of this line takes frost.
pub(super) fn frost_line(view: &View<'_>, window: &Window) -> Vec<State> {
    let p_pa = view.run.pressure.to_pascals();
    let to_c = FROST_BELOW_C.min(window.right_c());
    if to_c <= window.left_c {
        return Vec::new();
    }
    let state = |t_c: f64| Some((t_c, dew_point_of_c(saturated_over_ice(t_c, p_pa), p_pa)?));
    evenly(window.left_c, to_c).filter_map(state).collect()
}

/// Between the frost line and saturation over water: frost, though the air is nowhere below its dew point.
fn frost_area(window: &Window, frost: &[State]) -> Option<Path> {
    let pieces = window.pieces(frost);
    let (from_c, to_c) = window.diagonal()?;
    let (first, last) = (pieces.first()?, pieces.last()?);
    let line = core::iter::once(first.0).chain(pieces.iter().map(|(_, to)| *to));
    let end_c = kept(frost.last()?.0, from_c, to_c);
    let start = window.at((from_c, from_c));
    let end = window.at((end_c, end_c));
    // Where the line leaves by the lower edge, the corner lies between it and the diagonal.
    let corners = [end, start]
        .into_iter()
        .filter(|corner| corner.x <= last.1.x);
    Some(Path::area(line.chain(corners)))
}

/// The part of the window where a wall is below the dew point.
fn above(window: &Window) -> Path {
    let Some((from, to)) = window.diagonal() else {
        // The diagonal passes by: all of the window lies above or below it.
        let is_above = window.right_c() <= window.lowest_c;
        return if is_above {
            Path::rect(&window.rect)
        } else {
            Path::new()
        };
    };
    let rect = &window.rect;
    let (start, end) = (window.at((from, from)), window.at((to, to)));
    let mut corners = vec![start, end];
    if end.y - rect.y < 0.5 {
        corners.push(Point::new(rect.x, rect.y));
    } else {
        corners.extend([Point::new(rect.right(), rect.y), Point::new(rect.x, rect.y)]);
    }
    if 0.5 < start.x - rect.x {
        corners.push(Point::new(rect.x, rect.bottom()));
    }
    Path::area(corners)
}

fn middle(a: State, b: State) -> State {
    (0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1))
}

fn evenly(from: f64, to: f64) -> impl Iterator<Item = f64> {
    (0..=POINTS).map(move |step| from + (to - from) * f64::from(step) / f64::from(POINTS))
}
