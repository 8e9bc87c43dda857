//! Labels in the charts of the airflow, placed by the rule of all drawings.

use crate::block::Block;
use crate::geometry::{Point, Rect};
use crate::place::{Board, Wanted};
use crate::scene::Scene;

/// A label in the fullest of its forms that fits near a point; dropped where none does.
pub(super) fn put(
    scene: &mut Scene,
    board: &mut Board,
    forms: &[Block],
    (at, reach): (Point, Point),
    scale: f64,
) -> Option<Rect> {
    let wanted = Wanted {
        forms: forms.iter().map(|form| form.size(scale)).collect(),
        at,
        room: scene.bounds(),
        reach,
        needed: false,
    };
    let placed = board.place(&wanted)?;
    if let Some(form) = forms.get(placed.form) {
        form.draw(scene, &placed.rect, scale);
    }
    Some(placed.rect)
}
