//! Places and draws all labels: first what may not be missing, notes last.

use super::building::Band;
use super::fitted::{self, DrawnTrap};
use super::furniture;
use super::labels::{self, Label, LabelKind, Labels, Spot};
use super::layout::Plan;
use super::{Standing, rows};
use crate::geometry::{Point, Rect};
use crate::place::Board;
use crate::scene::Scene;
use crate::states::StateStretch;
use crate::view::View;
use crate::wording;

/// Width that a leg's number and fall take on average, px.
const LEG_LABEL: f64 = 90.0;

/// Places and draws all labels of an elevation.
pub(crate) fn draw(
    scene: &mut Scene,
    board: &mut Board,
    view: &View<'_>,
    plan: &Plan,
    (states, traps): (&[StateStretch], &[DrawnTrap]),
    standing: Option<&dyn Standing>,
) -> Vec<Label> {
    let mut labels = Labels::new(board, plan.frame.text);
    let stub = plan.has_stub.then(|| stub(scene, &mut labels, plan));
    if let Some(standing) = standing {
        standing.first(&mut labels, plan);
    }
    rows::draw_bars(scene, &mut labels, view, plan, states);
    rows::draw_dimensions(scene, &mut labels, view, plan, |length| {
        wording::length_number(length, view.style)
    });
    place_devices(&mut labels, view, plan);
    place_legs(&mut labels, view, plan);
    if !plan.frame.narrow {
        place_water(&mut labels, view, plan);
    }
    if let Some(standing) = standing {
        standing.label(scene, &mut labels, plan);
    }
    fitted::place_traps(&mut labels, plan, traps, standing);
    rows::place_states(&mut labels, view, plan, states);
    place_spaces(&mut labels, view, plan);
    if let Some(stub) = stub {
        place_stub(&mut labels, view, plan, &stub);
    }
    if let Some(standing) = standing {
        standing.note(&mut labels, plan);
    }
    labels.draw(scene)
}

pub(crate) fn place_legs(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan) {
    let wanted = plan.course.legs.iter().fold(0.0, |sum, _| sum + LEG_LABEL);
    let crowded = plan.frame.width < wanted * labels.scale;
    for (place, drawn) in plan.course.legs.iter().enumerate() {
        let middle = plan.middle_of(drawn);
        let side = plan.half + 16.0 * labels.scale;
        let at = if drawn.steep {
            middle.moved(-side - 22.0 * labels.scale, 0.0)
        } else {
            middle.moved(0.0, -side)
        };
        let long = drawn.from.point.distance(drawn.to.point);
        let spot = Spot {
            at,
            room: plan.band_at(middle),
            reach: Point::new((long / 2.0 + 60.0).min(200.0), 110.0),
            needed: false,
            thing: Some(middle),
        };
        let forms = labels::leg(view, place, drawn, plan.frame.narrow);
        let fullest: Vec<_> = forms.first().cloned().into_iter().collect();
        let with_fall = forms
            .split_last()
            .map_or_else(Vec::new, |(_, full)| full.to_vec());
        let on_the_floor = Spot {
            room: plan.floor_at(middle),
            ..spot
        };
        let anywhere = Spot {
            room: plan.outer,
            reach: Point::new(plan.frame.width, plan.height),
            ..spot
        };
        let across_lines = |spot: Spot| Spot {
            needed: true,
            ..spot
        };
        let kind = LabelKind::Leg(place);
        // In its own space if that can be, else on the floor, else anywhere; where legs crowd rather without its fall than across lines.
        let _ = labels.place(kind, fullest, spot)
            || labels.place(kind, with_fall.clone(), on_the_floor)
            || !crowded && labels.place(kind, with_fall.clone(), across_lines(on_the_floor))
            || !crowded && labels.place(kind, with_fall, across_lines(anywhere))
            || labels.place(kind, forms.clone(), anywhere)
            || labels.place(kind, forms, across_lines(anywhere));
    }
}

fn place_water(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan) {
    let Some(answer) = view.answer() else { return };
    for (place, (found, drawn)) in answer.legs.iter().zip(&plan.course.legs).enumerate() {
        let Some(forms) = labels::leg_water(view, found) else {
            continue;
        };
        let middle = drawn.from.point.towards(drawn.to.point, 0.5);
        let side = plan.half + 22.0 * labels.scale;
        let at = if drawn.steep {
            middle.moved(side + 18.0 * labels.scale, 0.0)
        } else {
            middle.moved(0.0, side)
        };
        let spot = Spot {
            at,
            room: plan.floor_at(middle),
            reach: Point::new(150.0, 110.0),
            needed: true,
            thing: Some(middle),
        };
        let anywhere = Spot {
            room: plan.outer,
            reach: Point::new(plan.frame.width, plan.height),
            ..spot
        };
        let kind = LabelKind::LegWater(place);
        // Short legs between steep ones can leave no room on their floor.
        let _ = labels.place(kind, forms.clone(), spot) || labels.place(kind, forms, anywhere);
    }
}

fn place_devices(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan) {
    for (device, end) in [(&plan.inlet, plan.start()), (&plan.outlet, plan.end())] {
        let rect = device.place(end);
        let (kind, forms) = if device.is_duct {
            (LabelKind::Duct, labels::duct(view))
        } else {
            (LabelKind::Detector, labels::detector(view))
        };
        if device.is_duct && plan.frame.narrow {
            continue;
        }
        let size = forms
            .first()
            .map_or((0.0, 0.0), |form| form.size(labels.scale));
        let beside = Point::new(rect.right() + 8.0 + size.0 / 2.0, rect.centre().y);
        let under = Point::new(
            (rect.x + size.0 / 2.0).max(size.0 / 2.0 + 4.0),
            rect.bottom() + 6.0 + size.1 / 2.0,
        );
        let is_under = device.is_duct || plan.frame.narrow;
        let spot = Spot {
            at: if is_under { under } else { beside },
            room: plan.band_at(rect.centre()).grown(-3.0),
            reach: if is_under {
                Point::new(130.0, 60.0)
            } else {
                Point::new(60.0, 60.0)
            },
            needed: false,
            thing: None,
        };
        labels.place(kind, forms, spot);
    }
}

fn place_spaces(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan) {
    for band in &plan.building.bands {
        let forms = labels::space(view, band, plan.frame.narrow);
        let inner = room_of(band, plan);
        let size = forms
            .first()
            .map_or((0.0, 0.0), |form| form.size(labels.scale));
        let along_floor = Spot {
            at: Point::new(inner.x + size.0 / 2.0, inner.bottom() - size.1 / 2.0),
            room: inner,
            reach: Point::new(inner.width, 6.0),
            needed: false,
            thing: None,
        };
        let anywhere = Spot {
            reach: Point::new(inner.width, inner.height.min(160.0)),
            ..along_floor
        };
        let kind = LabelKind::Space(band.space);
        let fullest = forms.first().cloned().into_iter().collect();
        let _ = labels.place(kind, fullest, along_floor) || labels.place(kind, forms, anywhere);
    }
}

/// The part of a band where its name may stand.
pub(crate) fn room_of(band: &Band, plan: &Plan) -> Rect {
    let edge = plan.wall_thickness / 2.0 + if plan.frame.narrow { 3.0 } else { 8.0 };
    Rect::new(
        band.rect.x + edge,
        band.rect.y + edge,
        band.rect.width - 2.0 * edge,
        band.rect.height - edge - 4.0,
    )
}

/// The stub stands on the side of the detector that the tube does not come from.
fn stub(scene: &mut Scene, labels: &mut Labels<'_>, plan: &Plan) -> Rect {
    let (device, end) = if plan.inlet.is_duct {
        (&plan.outlet, plan.end())
    } else {
        (&plan.inlet, plan.start())
    };
    let detector = device.place(end);
    let rect = furniture::draw_stub(scene, &detector, plan.outer.y, !device.first);
    labels.board.keep_off(rect.grown(2.0));
    rect
}

fn place_stub(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan, stub: &Rect) {
    let forms = labels::stub(view);
    let size = forms
        .first()
        .map_or((0.0, 0.0), |form| form.size(labels.scale));
    let side = if plan.inlet.is_duct { 1.0 } else { -1.0 };
    let spot = Spot {
        at: Point::new(
            stub.centre().x + side * (14.0 + size.0 / 2.0),
            stub.y + size.1 / 2.0,
        ),
        room: plan.outer.grown(-3.0),
        reach: Point::new(60.0, 60.0),
        needed: false,
        thing: None,
    };
    labels.place(LabelKind::Stub, forms, spot);
}
