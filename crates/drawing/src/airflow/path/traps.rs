//! What the pressure asks of traps in the intake: how far their outlet lies under the tube, how high their seal stands.

use dewrun_quantity::{Length, Pressure};

use super::Px;
use super::course::Course;
use crate::airflow::Shown;
use crate::airflow::judged::signed;
use crate::airflow::put::put;
use crate::block::{Block, Line};
use crate::geometry::Point;
use crate::place::Board;
use crate::scene::Scene;
use crate::text::Tone;
use crate::wording;

/// A trap that is there or missing.
struct Asked {
    at: Length,
    name: &'static str,
    starting: Option<Pressure>,
    drop: Length,
    seal: Length,
}

/// Marks and names them.
pub(super) fn draw(
    scene: &mut Scene,
    board: &mut Board,
    shown: &Shown<'_>,
    (course, px): (&Course, Px<'_>),
    text: f64,
) {
    for trap in asked(shown) {
        let place = course.in_intake(trap.at);
        let at = px(&place);
        scene.circle("dw-v-state", at, 4.0);
        let forms = forms(shown, &trap, place.1);
        let down = forms.first().map_or(0.0, |form| form.size(text).1);
        let spot = at.moved(0.0, down / 2.0 + 10.0 * text);
        let placed = put(scene, board, &forms, (spot, Point::new(264.0, 120.0)), text);
        if let Some(rect) = placed {
            let x = at.x.max(rect.x).min(rect.right());
            let y = if rect.y < at.y { rect.bottom() } else { rect.y };
            let end = Point::new(x, y);
            if 6.0 < at.distance(end) {
                scene.line("dw-d-leader", at.towards(end, 4.0 / at.distance(end)), end);
            }
        }
    }
}

fn asked(shown: &Shown<'_>) -> Vec<Asked> {
    let water = &shown.whole.intake;
    let given = water.traps.iter().map(|trap| Asked {
        at: trap.at,
        name: "trap",
        starting: Some(trap.starting),
        drop: trap.needs.outlet_drop,
        seal: trap.needs.seal,
    });
    let missing = water.proposals.iter().filter_map(|proposal| {
        Some(Asked {
            at: proposal.trap.at?,
            name: "trap missing",
            starting: None,
            drop: proposal.needs.outlet_drop,
            seal: proposal.needs.seal,
        })
    });
    given.chain(missing).collect()
}

fn forms(shown: &Shown<'_>, trap: &Asked, pressure: Pressure) -> Vec<Block> {
    let style = shown.style;
    let place = wording::metres(trap.at.to_metres(), style);
    let running = signed(pressure, style);
    let started = trap
        .starting
        .map(|starting| format!(", at fan start {}", signed(starting, style)));
    let first = format!(
        "{} at {place}: {running}{}",
        trap.name,
        started.unwrap_or_default()
    );
    let [drop, seal] = [trap.drop, trap.seal].map(|length| wording::at_least(length, style));
    let bold = |words: String| Line::new(words).bold();
    let quiet = |words: String| Line::new(words).toned(Tone::Second);
    vec![
        Block::of(vec![
            quiet(first.clone()),
            bold(format!(
                "self-draining: outlet {drop} below the tube, seal {seal}"
            )),
        ]),
        Block::of(vec![
            quiet(first),
            bold(format!("outlet {drop} below")),
            bold(format!("the tube, seal {seal}")),
        ]),
        Block::of(vec![bold(format!("trap: {drop}, {seal}"))]),
    ]
}
