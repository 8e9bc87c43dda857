//! The spaces that the tube passes: uprights at their temperatures that end in a bar on the diagonal.

use dewrun_quantity::Temperature;
use dewrun_quantity::measure::TEMPERATURE;

use super::window::Window;
use crate::geometry::{Point, Rect};
use crate::scene::Scene;
use crate::view::View;

/// Half the width of the bar, px.
const BAR: f64 = 6.0;

/// Spaces of one temperature.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Upright {
    pub(super) temperature: Temperature,
    /// Their names, in the order of the tube.
    pub(super) names: Vec<String>,
}

/// The uprights, in the order of the tube; spaces that are equally warm share one.
pub(super) fn all(view: &View<'_>) -> Vec<Upright> {
    let mut found: Vec<Upright> = Vec::new();
    for leg in view.legs() {
        let Some(space) = view.run.spaces.get(leg.space) else {
            continue;
        };
        let name = view.space_name(leg.space).to_owned();
        let alike = found
            .iter_mut()
            .find(|upright| upright.temperature == space.temperature);
        match alike {
            Some(upright) if upright.names.contains(&name) => {}
            Some(upright) => upright.names.push(name),
            None => found.push(Upright {
                temperature: space.temperature,
                names: vec![name],
            }),
        }
    }
    found
}

/// Draws the uprights as far as they lie within a window.
pub(super) fn uprights(scene: &mut Scene, view: &View<'_>, window: &Window) {
    for upright in all(view) {
        let Some((foot, top)) = ends(window, &upright) else {
            continue;
        };
        scene.line("dw-d-measure", foot, top);
        let bar = window.saturated(upright.temperature);
        if window.rect.holds(&Rect::new(bar.x, bar.y, 0.0, 0.0)) {
            scene.line("dw-q-bar", bar.moved(-BAR, 0.0), bar.moved(BAR, 0.0));
        }
    }
}

/// Foot and top of an upright within a window.
pub(super) fn ends(window: &Window, upright: &Upright) -> Option<(Point, Point)> {
    let t_c = upright.temperature.to_celsius();
    let within = window.left_c <= t_c && t_c <= window.right_c() && window.lowest_c < t_c;
    let top = window.at((t_c, t_c.min(window.highest_c())));
    within.then(|| (Point::new(top.x, window.rect.bottom()), top))
}

/// What labels keep off.
pub(super) fn solid(view: &View<'_>, window: &Window) -> Vec<Rect> {
    all(view)
        .iter()
        .filter_map(|upright| ends(window, upright))
        .map(|(foot, top)| Rect::between(foot, top).grown(1.5))
        .collect()
}

/// Names and temperature of an upright.
pub(super) fn words(upright: &Upright, view: &View<'_>) -> String {
    let t = TEMPERATURE.show_entered(upright.temperature, view.style);
    format!("{} {t}", upright.names.join(", "))
}
