//! The trouble that a small picture shows: water, frost or sweat, where it is most.

use dewrun_run::{LegOutcome, TubeOutcome, Verdict};

use super::bore;
use super::plan::{HALF, Plan};
use crate::geometry::Point;
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::text::{Anchor, Text, Tone};
use crate::view::View;

/// Distance of the drops under a sweating tube, px.
const DROPS: f64 = 9.0;
/// Base line of the label under the middle of the tube, and of one under its drops, px.
const LABEL: f64 = 20.0;
const UNDER_DROPS: f64 = 30.0;

/// What is wrong with a run, and in which leg it is worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Trouble {
    Water(usize),
    Frost(usize),
    Sweat(usize),
    /// Nothing forms.
    None,
}

impl Trouble {
    pub(super) fn of(view: &View<'_>) -> Self {
        let Some(tube) = view.answer() else {
            return Self::None;
        };
        let frost = most(tube, |leg| leg.frost.to_grams_per_hour());
        let water = most(tube, |leg| leg.condensate.to_grams_per_hour());
        let sweat = most(tube, |leg| leg.sweat.to_grams_per_hour());
        match (view.outcome.verdict, frost, water, sweat) {
            (Verdict::Wet, Some(leg), ..) => Self::Frost(leg),
            (Verdict::Wet, None, Some(leg), _) => Self::Water(leg),
            (_, _, _, Some(leg)) => Self::Sweat(leg),
            _ => Self::None,
        }
    }

    /// The leg where it is worst.
    pub(super) const fn leg(self) -> usize {
        match self {
            Self::Water(leg) | Self::Frost(leg) | Self::Sweat(leg) => leg,
            Self::None => 0,
        }
    }

    pub(super) const fn words(self) -> &'static str {
        match self {
            Self::Water(_) => "water forms in the tube",
            Self::Frost(_) => "frost grows in the tube",
            Self::Sweat(_) => "the tube drips on the outside",
            Self::None => "dry",
        }
    }

    pub(super) fn draw(self, scene: &mut Scene, view: &View<'_>, plan: &Plan) {
        let Some(tube) = view.answer() else { return };
        for (place, leg) in tube.legs.iter().enumerate() {
            match self {
                Self::Water(_) => film(scene, plan, place, leg),
                Self::Frost(_) => frost(scene, plan, place, leg),
                Self::Sweat(_) => drops(scene, plan, place, leg),
                Self::None => {}
            }
        }
        let (place, words, tone) = match self {
            Self::Water(leg) => match low_point(view, leg) {
                Some(joint) => {
                    pool(scene, plan, joint);
                    (plan.joints.get(joint).copied(), "runs to here", Tone::Water)
                }
                None => (plan.at(leg, 0.5), "forms here", Tone::Water),
            },
            Self::Frost(leg) => (plan.at(leg, 0.35), "frost", Tone::Frost),
            Self::Sweat(leg) => (plan.at(leg, 0.5), "outside only", Tone::Sweat),
            Self::None => (None, "", Tone::Ink),
        };
        let under = if matches!(self, Self::Sweat(_)) {
            UNDER_DROPS
        } else {
            LABEL
        };
        if let Some(at) = place {
            let text = Text::new(at.moved(0.0, under), words);
            scene.text(text.anchored(Anchor::Middle).toned(tone).bold());
        }
    }
}

/// The leg with most of something, if any has some.
fn most(tube: &TubeOutcome, amount: fn(&LegOutcome) -> f64) -> Option<usize> {
    let legs = tube.legs.iter().map(amount).enumerate();
    legs.filter(|(_, amount)| dewrun_run::WET_TUBE_G_H < *amount)
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(leg, _)| leg)
}

/// The joint at which a leg falls down to a low point, if it ends or begins at one.
fn low_point(view: &View<'_>, leg: usize) -> Option<usize> {
    let legs = view.legs();
    let rise = |at: usize| legs.get(at).map(|leg| leg.rise.to_metres());
    let is_low = |joint: &usize| {
        let before = joint.checked_sub(1).and_then(rise);
        before.is_some_and(|rise| rise < 0.0) && rise(*joint).is_some_and(|rise| 0.0 < rise)
    };
    [leg, leg + 1].into_iter().find(is_low)
}

/// The wet part of a leg, as its two ends on the middle line.
fn wet_ends(plan: &Plan, place: usize, leg: &LegOutcome) -> Option<(Point, Point)> {
    let (from, to) = (leg.from.to_metres(), leg.to.to_metres());
    let first = leg.first_wet?.to_metres();
    let share = ((first - from) / (to - from)).clamp(0.0, 1.0);
    Some((plan.at(place, share)?, plan.at(place, 1.0)?))
}

/// Water on the invert.
fn film(scene: &mut Scene, plan: &Plan, place: usize, leg: &LegOutcome) {
    let Some((from, to)) = wet_ends(plan, place, leg) else {
        return;
    };
    let invert = [from, to].map(|at| at.moved(0.0, bore() - 1.0));
    scene.path("dw-b-water", Path::through(invert));
}

/// Frost over the whole bore.
fn frost(scene: &mut Scene, plan: &Plan, place: usize, leg: &LegOutcome) {
    if leg.frost.to_grams_per_hour() <= dewrun_run::WET_TUBE_G_H {
        return;
    }
    let Some((from, to)) = wet_ends(plan, place, leg) else {
        return;
    };
    // Across an upright leg the bore lies sideways.
    let (dx, dy) = if (to.x - from.x).abs() < (to.y - from.y).abs() {
        (bore(), 0.0)
    } else {
        (0.0, bore())
    };
    let band = [
        from.moved(-dx, -dy),
        to.moved(-dx, -dy),
        to.moved(dx, dy),
        from.moved(dx, dy),
    ];
    scene.hatched(Hatch::Frost, Path::area(band));
}

/// Drops under the tube.
fn drops(scene: &mut Scene, plan: &Plan, place: usize, leg: &LegOutcome) {
    if leg.sweat.to_grams_per_hour() <= dewrun_run::WET_TUBE_G_H {
        return;
    }
    let (Some(from), Some(to)) = (plan.at(place, 0.0), plan.at(place, 1.0)) else {
        return;
    };
    let wide = to.x - from.x;
    let mut x = DROPS;
    let mut path = Path::new();
    while x < wide - DROPS {
        let at = from.towards(to, x / wide).moved(0.0, HALF + 2.5);
        path = path.from(at).to(at.moved(0.0, 3.5));
        x += DROPS;
    }
    scene.path("dw-s-sweat", path);
}

/// Water that stands at a low point: level above, the invert below.
fn pool(scene: &mut Scene, plan: &Plan, joint: usize) {
    let (Some(low), Some(before), Some(behind)) = (
        plan.joints.get(joint),
        plan.joints.get(joint.wrapping_sub(1)),
        plan.joints.get(joint + 1),
    ) else {
        return;
    };
    let deep = 2.0 * bore() - 2.0;
    let surface = low.y + bore() - deep;
    let reach = |other: &Point| {
        let steep = low.y - other.y;
        let share = if deep < steep { deep / steep } else { 1.0 };
        Point::new(low.x + (other.x - low.x) * share, surface)
    };
    let pool = [reach(before), low.moved(0.0, bore()), reach(behind)];
    scene.path("dw-s-water", Path::area(pool));
}
