//! States as rings and faults as diamonds on one axis of airflow, and the limits that go through all of them.

mod hands;
mod marks;
mod sentence;

use super::rows::{self, Row};
use super::strip::Strip;
use super::{Shown, blank};
use crate::frame::Room;
use crate::scene::Scene;
use crate::svg::svg;
use crate::wording;

/// So many faults are drawn: on a wide page and on a phone.
const FAULTS: (usize, usize) = (14, 7);
/// Width of a column of verdicts, px.
const VERDICT: f64 = 76.0;

/// Limits, states and faults with the handles of the limits.
///
/// The handles are sliders with `data-limit`; `data-from` and `data-per` of the group that holds them say where 0 % lies and how many px 1 % is.
#[must_use]
pub fn limits(shown: &Shown<'_>, room: Room) -> String {
    let (strip, scene, left) = drawn(shown, room);
    let more = if left == 0 {
        String::new()
    } else {
        format!("<p class=\"dw-chart__name\">{left} more faults, further off: in the table.</p>")
    };
    let steppers = if strip.narrow {
        hands::steppers(shown)
    } else {
        String::new()
    };
    format!(
        "{}{steppers}<div class=\"dw-limits\">{}{}</div>{more}",
        sentence::sentence(shown),
        svg(&scene),
        hands::hands(shown, &strip),
    )
}

/// The chart, where everything in it lies, and how many faults it leaves out.
pub(super) fn drawn(shown: &Shown<'_>, room: Room) -> (Strip, Scene, usize) {
    let states = rows::states(shown);
    let most = if room.is_narrow() { FAULTS.1 } else { FAULTS.0 };
    let (faults, left) = rows::faults(shown, most);
    let columns = verdict_columns(shown);
    // Room for both columns, so that nothing moves under a hand that makes the second one.
    let verdicts = 2.0 * VERDICT * room.text;
    let strip = Strip::new((room.width, room.text), &states, &faults, verdicts);
    let mut scene = scene(shown, room, &strip);
    marks::draw(&mut scene, &strip, shown, (&states, &faults), &columns);
    (strip, scene, left)
}

/// The pairs of limits whose verdicts stand beside the rows: those under the handles, and those advised where they differ.
fn verdict_columns(shown: &Shown<'_>) -> Vec<(&'static str, [f64; 2])> {
    let mut columns: Vec<(&'static str, [f64; 2])> = Vec::new();
    columns.extend(shown.limits.map(|limits| ("as set", limits)));
    if let (Some(limits), Some(advised)) = (shown.limits, shown.advised()) {
        let differs = limits
            .iter()
            .zip(&advised)
            .any(|(one, other)| 0.005 < (one - other).abs());
        if differs {
            columns.push(("advised", advised));
        } else if let Some(first) = columns.first_mut() {
            first.0 = "advised";
        }
    }
    columns
}

fn scene(shown: &Shown<'_>, room: Room, strip: &Strip) -> Scene {
    let mut scene = blank("limits", room, strip.height());
    scene.title = "Airflow in every state and fault, and the limits".to_owned();
    let missed: Vec<Row> = rows::all_faults(shown)
        .into_iter()
        .filter(|row| row.is_wrong)
        .collect();
    scene.description = match missed.first() {
        None => "All faults lie outside the limits.".to_owned(),
        Some(first) => format!(
            "{} faults lie within the limits, such as: {}, {}.",
            missed.len(),
            first.name,
            wording::capital(&first.remark)
        ),
    };
    scene
}
