//! Frost that narrows a bore, ice that closes it, standing water that freezes, and bores so narrow that water stays in them.

use dewrun_quantity::Length;
use dewrun_run::figure::Kind;
use dewrun_run::told::{Freezes, Lock};
use dewrun_run::{IceOutcome, LowPoint, TubeWater, WET_TUBE_G_H};

use crate::block::{Block, Line};
use crate::elevation::labels::{LabelKind, Labels, Spot};
use crate::elevation::layout::Plan;
use crate::elevation::outline::strip;
use crate::geometry::Point;
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::text::Tone;
use crate::view::View;
use crate::wording;

/// Half of the length of a plug of ice, or of the narrowest place, px.
const PLUG: f64 = 18.0;
/// The same of water that spans a narrow bore.
const SPAN: f64 = 5.0;

/// Whether water that stands there is ice by the time it has come to rest.
pub(super) fn is_frozen(low: &LowPoint) -> bool {
    low.freezes == Freezes::Surely
}

/// Draws plugs of ice, walls that frost has grown on, and water that spans a narrow bore.
pub(super) fn draw(scene: &mut Scene, view: &View<'_>, plan: &Plan, water: &TubeWater) {
    for ice in &water.ice {
        let axis = around(plan, ice.at, PLUG);
        let half = plan.half - 0.6;
        if ice.free_share <= 0.0 {
            let plug = Path::area(strip(&axis, half, -half));
            scene.path("dw-s-frost", plug.clone());
            scene.hatched(Hatch::Ice, plug);
            continue;
        }
        let free = half * ice.free_share.sqrt();
        for side in [1.0, -1.0] {
            let layer = strip(&axis, side * half, side * free);
            scene.path("dw-s-frost", Path::area(layer));
        }
    }
    for (leg, at) in locks(view, plan, water) {
        let bore = plan.half - 0.6;
        for away in [-3.0 * SPAN, 0.0, 3.0 * SPAN] {
            let place = Length::metres(at + away / plan.frame.px_per_m.max(1e-9));
            if leg.from.along_m < place.to_metres() && place.to_metres() < leg.to.along_m {
                let axis = around(plan, place, SPAN / 2.0);
                scene.path("dw-s-water", Path::area(strip(&axis, bore, -bore)));
            }
        }
    }
}

/// Says what frost and narrow bores do.
pub(super) fn label(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan, water: &TubeWater) {
    for ice in &water.ice {
        let thing = plan.course.at(ice.at.to_metres()).point;
        place(
            labels,
            plan,
            LabelKind::Ice(ice.leg),
            frost(view, ice),
            thing,
        );
    }
    let narrow = locks(view, plan, water).next();
    if let Some((leg, at)) = narrow {
        let thing = plan.course.at(at).point;
        let number = plan.course.legs.iter().position(|other| other == leg);
        let bore = number
            .and_then(|leg| view.legs().get(leg))
            .map_or(0.0, |leg| leg.tube.bore.to_millimetres());
        let bore = wording::measured(Kind::Diameter, bore, view.style);
        let line = |words: String| Line::new(words).toned(Tone::Water).bold();
        let forms = vec![
            Block::of(vec![line(format!("{bore} bore: water fills it and stays"))]),
            Block::of(vec![
                line(format!("{bore} bore:")),
                line("water stays in it".to_owned()),
            ]),
        ];
        let kind = LabelKind::Lock(number.unwrap_or_default());
        place(labels, plan, kind, forms, thing);
    }
}

fn place(labels: &mut Labels<'_>, plan: &Plan, kind: LabelKind, forms: Vec<Block>, thing: Point) {
    let spot = Spot {
        at: thing.moved(0.0, plan.half + 26.0 * labels.scale),
        room: plan.floor_at(thing),
        reach: Point::new(220.0, 120.0),
        needed: false,
        thing: Some(thing.moved(0.0, plan.half)),
    };
    labels.place(kind, forms, spot);
}

/// What frost does to a leg by the time that traps are next emptied.
fn frost(view: &View<'_>, ice: &IceOutcome) -> Vec<Block> {
    let at = wording::metres(ice.at.to_metres(), view.style);
    let line = |words: String| Line::new(words).toned(Tone::Frost);
    let (name, what) = match ice.closed {
        Some(closed) if ice.free_share <= 0.0 => (
            format!("ice at {at}"),
            format!("bore closed after {}", wording::time(closed, view.style)),
        ),
        _ => {
            let free = wording::measured(Kind::Percent, 100.0 * ice.free_share, view.style);
            (
                format!("frost, most at {at}"),
                format!("leaves {free} of the bore"),
            )
        }
    };
    vec![
        Block::of(vec![line(name.clone()).bold(), line(what)]),
        Block::of(vec![line(name).bold()]),
    ]
}

/// Wet legs whose bore keeps water, each with its middle.
fn locks<'a>(
    view: &'a View<'_>,
    plan: &'a Plan,
    water: &'a TubeWater,
) -> impl Iterator<Item = (&'a crate::elevation::Stretch, f64)> {
    let wet = view.answer().map(|answer| &answer.legs);
    let legs = plan.course.legs.iter().zip(&water.legs).enumerate();
    legs.filter_map(move |(number, (drawn, told))| {
        let found = wet?.get(number)?;
        let is_wet = WET_TUBE_G_H < found.condensate.to_grams_per_hour();
        let middle = (drawn.from.along_m + drawn.to.along_m) / 2.0;
        (is_wet && told.lock != Lock::Runs).then_some((drawn, middle))
    })
}

/// The tube so many pixels to both sides of a place.
fn around(plan: &Plan, at: Length, away: f64) -> Vec<Point> {
    let at = at.to_metres();
    let away = away / plan.frame.px_per_m.max(1e-9);
    let end = plan.frame.length_m;
    let part = plan.course.part((at - away).max(0.0), (at + away).min(end));
    crate::elevation::tube::points(&part)
}
