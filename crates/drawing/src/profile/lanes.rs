//! Lanes over the axis that show which lengths are wet, frozen, misty or sweating.

use super::layout::{Lane, Place, Plan};
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::states::{State, StateStretch};
use crate::text::{Anchor, Text, Tone};
use crate::view::View;

/// Draws each lane with its bars.
pub(crate) fn draw(scene: &mut Scene, _view: &View<'_>, plan: &Plan, found: &[StateStretch]) {
    for lane in &plan.lanes {
        scene.rect("dw-g-lane", &lane.rect);
        let here = || {
            found
                .iter()
                .filter(|stretch| Place::of(stretch.state) == lane.what)
        };
        for stretch in here() {
            let left = plan.frame.px(stretch.from_m);
            // A stretch too short to see is still shown.
            let right = plan.frame.px(stretch.to_m).max(left + 2.0);
            bar(
                scene,
                stretch.state,
                &Rect::new(left, lane.rect.y, right - left, lane.rect.height),
            );
        }
        name(
            scene,
            plan,
            lane,
            &here().map(|stretch| stretch.state).collect::<Vec<_>>(),
        );
    }
}

fn bar(scene: &mut Scene, state: State, rect: &Rect) {
    match state {
        State::Water => scene.rect("dw-s-water", rect),
        State::Frost => scene.hatched(Hatch::Frost, Path::rect(rect)),
        State::Mist => scene.hatched(Hatch::Mist, Path::rect(rect)),
        State::Sweat => scene.hatched(Hatch::Sweat, Path::rect(rect)),
    }
}

/// What a lane is about: at its left, on a phone in its free part.
fn name(scene: &mut Scene, plan: &Plan, lane: &Lane, states: &[State]) {
    let (frost, water) = (
        states.contains(&State::Frost),
        states.contains(&State::Water),
    );
    let (name, tone) = match lane.what {
        Place::Inside if frost && water => ("water and frost", Tone::Water),
        Place::Inside if frost => ("frost inside", Tone::Frost),
        Place::Inside => ("water inside", Tone::Water),
        Place::Air => ("mist in the air", Tone::Mist),
        Place::Outside => ("sweat outside", Tone::Sweat),
    };
    let y = lane.rect.bottom() - 3.0 * plan.frame.text;
    if !plan.frame.narrow {
        let at = Point::new(4.0, y);
        scene.text(Text::new(at, name).toned(tone));
    }
    if states.is_empty() {
        let at = Point::new(lane.rect.centre().x, y);
        let text = Text::new(at, "dry inside").toned(Tone::Second);
        let middle = text.clone().anchored(Anchor::Middle);
        // In a lane that is too short it begins where the lane begins.
        scene.text(if lane.rect.x <= middle.rect(plan.frame.text).x {
            middle
        } else {
            Text {
                at: Point::new(lane.rect.x, y),
                ..text
            }
        });
    }
}
