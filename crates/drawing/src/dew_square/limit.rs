//! The dry boundary: the most humid duct air that stays dry, as a broken line.

use dewrun_advice::BoundaryPoint;

use super::course::boxes;
use super::window::{State, Window};
use crate::geometry::Rect;
use crate::scene::Scene;

/// Draws the boundary.
pub(super) fn draw(scene: &mut Scene, window: &Window, boundary: &[BoundaryPoint]) {
    scene.path("dw-q-limit", window.line(&states(boundary)));
}

/// The boundary as a line of states; where even saturated air is dry there is none.
pub(super) fn states(boundary: &[BoundaryPoint]) -> Vec<State> {
    let state = |point: &BoundaryPoint| {
        let dew_point = point.dew_point.at()?;
        Some((point.temperature.to_celsius(), dew_point.to_celsius()))
    };
    boundary.iter().filter_map(state).collect()
}

/// What labels keep off.
pub(super) fn solid(window: &Window, boundary: &[BoundaryPoint]) -> Vec<Rect> {
    boxes(&window.pieces(&states(boundary)))
}
