//! The elevation as a person holds it on site: levels, lengths and falls to set a level to, without the water.

use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{Length, Style, Units, format};

use super::fitted::{self, DrawnTrap};
use super::labels::{Label, LabelKind, Labels, Spot};
use super::layout::{self, Plan};
use super::{Elevation, Shows, drawn_as, notes, rows};
use crate::block::{Block, Line};
use crate::frame::Room;
use crate::geometry::{Point, Rect};
use crate::place::Board;
use crate::scene::Scene;
use crate::text::Size;
use crate::view::View;

/// Draws the elevation of a tube for a sheet that is used on site: every joint has its level, counted from the middle of the tube where it begins.
///
/// The traps of the view are named by their places; nothing of the answer is drawn.
#[must_use]
pub fn elevation_for_site(view: &View<'_>) -> Elevation {
    let plan = layout::plan(view, Room::PAPER, 0.0, None);
    drawn_as(view, Room::PAPER, plan, Shows::Site)
}

/// A level against that at the start of the tube, with its sign.
#[must_use]
pub fn level(height: Length, style: Style) -> String {
    let (number, decimals) = match style.units {
        Units::Si => (height.to_metres(), 3),
        Units::InchPound => (height.to_feet(), 2),
    };
    let text = format::fixed(number, decimals, style.mark);
    let is_nothing = !text.contains(|sign: char| ('1'..='9').contains(&sign));
    match (is_nothing, text.strip_prefix(format::MINUS)) {
        (true, stripped) => format!("±{}", stripped.unwrap_or(&text)),
        (false, Some(_)) => text,
        (false, None) => format!("+{text}"),
    }
}

/// A length as it is set out on site, without its unit: to a centimetre or a tenth of a foot.
#[must_use]
pub fn site_length(length: Length, style: Style) -> String {
    match style.units {
        Units::Si => format::fixed(length.to_metres(), 2, style.mark),
        Units::InchPound => format::fixed(length.to_feet(), 1, style.mark),
    }
}

/// A place along a tube as it is set out on site, with its unit.
#[must_use]
pub fn site_place(along: Length, style: Style) -> String {
    let unit = TUBE_LENGTH.unit(style.units).name;
    format!("{}{}{unit}", site_length(along, style), format::UNIT_SPACE)
}

/// Places and draws all labels.
pub(crate) fn draw_labels(
    scene: &mut Scene,
    board: &mut Board,
    view: &View<'_>,
    plan: &Plan,
    traps: &[DrawnTrap],
) -> Vec<Label> {
    let mut labels = Labels::new(board, plan.frame.text);
    rows::draw_dimensions(scene, &mut labels, view, plan, |length| {
        site_length(length, view.style)
    });
    place_levels(&mut labels, view, plan);
    fitted::place_trap_names(&mut labels, plan, traps, |_, trap| {
        let at = site_place(trap.along, view.style);
        vec![Block::of(vec![Line::new(format!("trap at {at}")).bold()])]
    });
    notes::place_legs(&mut labels, view, plan);
    place_ends(&mut labels, view, plan);
    place_spaces(&mut labels, view, plan);
    labels.draw(scene)
}

/// Height of the end of each leg over the start of the tube.
fn heights(view: &View<'_>) -> Vec<Length> {
    let mut height = Length::ZERO;
    let legs = view.legs().iter();
    legs.map(|leg| {
        height += leg.rise;
        height
    })
    .collect()
}

/// A level at every joint: under the dimension line where there is one, beside the joint else.
fn place_levels(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan) {
    let start = core::iter::once((plan.start(), Length::ZERO));
    let ends = plan.course.legs.iter().map(|leg| leg.to.point);
    let joints: Vec<(Point, Length)> = start.chain(ends.zip(heights(view))).collect();
    let line = plan.rows.and_then(|rows| rows.dimensions);
    for (place, (joint, height)) in joints.iter().enumerate() {
        // The end of the tube has its level at the thing there.
        if place + 1 == joints.len() {
            continue;
        }
        let block = Block::of(vec![Line::new(level(*height, view.style)).bold()]);
        let (width, high) = block.size(labels.scale);
        let into_drop = plan.course.legs.get(place).is_some_and(|leg| leg.steep);
        let out_of_drop = place
            .checked_sub(1)
            .and_then(|before| plan.course.legs.get(before))
            .is_some_and(|leg| leg.steep);
        let (at, reach) = match line {
            Some(y) if !into_drop && !out_of_drop => (
                Point::new(joint.x, y + 4.0 + high / 2.0),
                Point::new(30.0, 12.0),
            ),
            _ => (
                joint.moved(plan.half + 8.0 + width / 2.0, -high / 2.0),
                Point::new(80.0, 60.0),
            ),
        };
        let spot = Spot {
            at,
            room: plan.outer.grown(-2.0),
            reach,
            needed: true,
            thing: None,
        };
        labels.place(LabelKind::Level(place), vec![block], spot);
    }
}

/// Duct and detector by their names, with the level where the tube ends.
fn place_ends(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan) {
    let last = heights(view).last().copied().unwrap_or(Length::ZERO);
    for (device, end, height) in [
        (&plan.inlet, plan.start(), Length::ZERO),
        (&plan.outlet, plan.end(), last),
    ] {
        let rect = device.place(end);
        let (kind, name) = if device.is_duct {
            (LabelKind::Duct, view.names.duct.clone())
        } else {
            (LabelKind::Detector, "Detector".to_owned())
        };
        let name = Line::new(name).bold();
        let lines = if device.first {
            vec![name.clone()]
        } else {
            vec![name.clone(), Line::new(level(height, view.style)).bold()]
        };
        let block = Block::of(lines);
        let (width, high) = block.size(labels.scale);
        let beside = Point::new(rect.right() + 6.0 + width / 2.0, rect.centre().y);
        let under = Point::new(
            (rect.x + width / 2.0).max(width / 2.0 + 4.0),
            rect.bottom() + 5.0 + high / 2.0,
        );
        let spot = Spot {
            at: if device.is_duct || device.first {
                under
            } else {
                beside
            },
            room: plan.band_at(rect.centre()).grown(-2.0),
            reach: Point::new(130.0, 70.0),
            needed: true,
            thing: None,
        };
        labels.place(kind, vec![block], spot);
    }
}

/// The names of the spaces along their floors.
fn place_spaces(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan) {
    for band in &plan.building.bands {
        let inner = notes::room_of(band, plan);
        let name = |size| {
            let line = Line::new(view.space_name(band.space)).sized(size).bold();
            Block::of(vec![line])
        };
        let forms = vec![name(Size::Label), name(Size::Least)];
        let (width, high) = forms
            .first()
            .map_or((0.0, 0.0), |form| form.size(labels.scale));
        let at = Point::new(inner.x + width / 2.0, inner.bottom() - high / 2.0);
        let room = Rect::new(inner.x, inner.y, inner.width, inner.height + 2.0);
        let spot = Spot {
            at,
            room,
            reach: Point::new(inner.width, inner.height.min(120.0)),
            needed: false,
            thing: None,
        };
        labels.place(LabelKind::Space(band.space), forms, spot);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn levels_have_their_sign() {
        let style = Style::default();
        for (metres, words) in [
            (0.0, "±0.000"),
            (-0.0004, "±0.000"),
            (-0.104, "\u{2212}0.104"),
            (2.886, "+2.886"),
        ] {
            assert_eq!(level(Length::metres(metres), style), words, "{metres} m");
        }
    }
}
