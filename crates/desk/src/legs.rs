//! Splitting, adding, moving, shaping and deleting legs; everything else of the project stays as it is.

use dewrun_document::{Fitting, Input, Leg};
use dewrun_drawing::Shape;
use dewrun_quantity::{Fall, FallForm, Length};

use super::field::{leg, route, route_mut};
use super::rows;
use super::traps::with_traps;
use super::{OpenProject, TubeName};
use crate::kind::Kind;

/// Two falls nearer than this are one.
const SAME_SLOPE: f64 = 1e-9;

/// Parts a leg in the middle: two legs of half its length and the same slope.
pub fn split_leg(project: &mut OpenProject, tube: TubeName, at: usize) {
    let length_m = leg(project, tube, at).map(|leg| leg.length_m.value);
    if let Some(length_m) = length_m {
        split_leg_at(project, tube, at, Length::metres(length_m / 2.0));
    }
}

/// Parts a leg so far from its start: two legs of the same slope. Where either would be too short to be entered it stays whole.
pub fn split_leg_at(project: &mut OpenProject, tube: TubeName, at: usize, from_start: Length) {
    let id = free_id(project);
    let Some(route) = route_mut(project, tube) else {
        return;
    };
    let Some(leg) = route.legs.get_mut(at) else {
        return;
    };
    let (whole, near) = (leg.length_m.value, from_start.to_metres());
    let far = short(whole - near);
    let least = Kind::Length.limits().min;
    if near < least || far < least {
        return;
    }
    let mut second = Leg {
        id,
        fittings: Vec::new(),
        ..leg.clone()
    };
    for (part, length_m) in [(&mut second, far), (leg, near)] {
        part.rise_m = rows::scaled(&part.rise_m, length_m / whole);
        part.length_m = resized(&part.length_m, length_m);
    }
    let (first, rest): (Vec<Fitting>, Vec<Fitting>) = leg
        .fittings
        .drain(..)
        .partition(|fitting| fitting.at_m.value <= near);
    leg.fittings = first;
    second.fittings = rest;
    for fitting in &mut second.fittings {
        fitting.at_m.value -= near;
    }
    route.legs.insert(at + 1, second);
}

/// Puts a leg like that one behind it, without fittings.
pub fn add_leg(project: &mut OpenProject, tube: TubeName, at: usize) {
    let id = free_id(project);
    let Some(route) = route_mut(project, tube) else {
        return;
    };
    let Some(leg) = route.legs.get(at) else {
        return;
    };
    let added = Leg {
        id,
        fittings: Vec::new(),
        ..leg.clone()
    };
    with_traps(route, |route| route.legs.insert(at + 1, added));
}

/// Takes a leg away; the last one of a tube stays.
pub fn delete_leg(project: &mut OpenProject, tube: TubeName, at: usize) {
    let Some(route) = route_mut(project, tube) else {
        return;
    };
    if 1 < route.legs.len() && at < route.legs.len() {
        with_traps(route, |route| {
            route.legs.remove(at);
        });
    }
}

/// Changes places with the leg before it or behind it; gives where it is then.
pub fn move_leg(project: &mut OpenProject, tube: TubeName, at: usize, on: bool) -> Option<usize> {
    let route = route_mut(project, tube)?;
    let to = if on { at + 1 } else { at.checked_sub(1)? };
    if route.legs.len() <= at.max(to) {
        return None;
    }
    with_traps(route, |route| route.legs.swap(at, to));
    Some(to)
}

/// Gives a leg another length and rise; what stays the same keeps where it came from.
pub fn shape_leg(project: &mut OpenProject, tube: TubeName, at: usize, shape: Shape) {
    let Some(before) = leg(project, tube, at).map(shape_of) else {
        return;
    };
    let Some(route) = route_mut(project, tube) else {
        return;
    };
    with_traps(route, |route| {
        if let Some(leg) = route.legs.get_mut(at) {
            set(leg, before, shape);
        }
    });
}

/// Length and rise of a leg as it is entered.
#[must_use]
pub fn leg_shape(project: &OpenProject, tube: TubeName, at: usize) -> Option<Shape> {
    leg(project, tube, at).map(shape_of)
}

/// The leg that a place along a tube lies in, and how far from its start.
#[must_use]
pub fn leg_at(project: &OpenProject, tube: TubeName, along: Length) -> Option<(usize, Length)> {
    let mut start = Length::ZERO;
    for (at, leg) in route(project, tube)?.legs.iter().enumerate() {
        let end = start + Length::metres(leg.length_m.value);
        if along <= end {
            return Some((at, along - start));
        }
        start = end;
    }
    None
}

fn set(leg: &mut Leg, before: Shape, shape: Shape) {
    if shape.length != before.length {
        leg.length_m = Input::typed(shape.length.to_metres());
        for fitting in &mut leg.fittings {
            fitting.at_m.value = fitting.at_m.value.min(shape.length.to_metres());
        }
    }
    let rise = shape.rise.to_metres();
    if is_same_fall(before, shape) {
        leg.rise_m = resized(&leg.rise_m, rise);
    } else {
        leg.rise_m = Input::typed(rise);
    }
}

/// Another value of the same origin; the span of what is assumed grows or shrinks with it.
fn resized(input: &Input<f64>, value: f64) -> Input<f64> {
    if input.value == 0.0 {
        return rows::moved(input, value);
    }
    rows::moved(&rows::scaled(input, value / input.value), value)
}

fn is_same_fall(before: Shape, shape: Shape) -> bool {
    let slope = |shape: Shape| Fall::of(shape.length, shape.rise, FallForm::Ratio).map(Fall::slope);
    match (slope(before), slope(shape)) {
        (Some(before), Some(after)) => (before - after).abs() < SAME_SLOPE,
        (None, None) => (before.rise < Length::ZERO) == (shape.rise < Length::ZERO),
        _ => false,
    }
}

fn shape_of(leg: &Leg) -> Shape {
    Shape {
        length: Length::metres(leg.length_m.value),
        rise: Length::metres(leg.rise_m.value),
    }
}

/// Without the digits that taking away leaves behind.
pub(crate) fn short(metres: f64) -> f64 {
    (metres * 1e9).round() / 1e9
}

/// An id that no leg of either tube bears.
fn free_id(project: &OpenProject) -> String {
    let legs = |tube| route(project, tube).map_or(&[][..], |route| &route.legs);
    let (intake, exhaust) = (legs(TubeName::Intake), legs(TubeName::Exhaust));
    let mut number = intake.len() + 1;
    loop {
        let id = format!("leg-{number}");
        if intake.iter().chain(exhaust).all(|leg| leg.id != id) {
            return id;
        }
        number += 1;
    }
}

#[cfg(test)]
mod tests {
    use dewrun_document::{Access, Origin};

    use super::*;
    use crate::field::leg_mut;
    use crate::{EXAMPLES, Field};

    const TUBE: TubeName = TubeName::Intake;

    fn project() -> OpenProject {
        let example = EXAMPLES[0].project().expect("the example is sound");
        let mut project = OpenProject::from(example);
        let leg = leg_mut(&mut project, TUBE, 1).expect("it has a second leg");
        leg.access = Access::Lift;
        leg.fittings = [0.5, 3.0].map(fitting).into();
        project
    }

    fn fitting(at_m: f64) -> Fitting {
        Fitting {
            kind: dewrun_document::FittingKind::Bend,
            at_m: Input::typed(at_m),
            loss_coefficient: Input::typed(0.4),
        }
    }

    fn legs(project: &OpenProject) -> &[Leg] {
        &route(project, TUBE).expect("it has an intake").legs
    }

    /// All that is no leg of the intake tube.
    fn rest(project: &OpenProject) -> OpenProject {
        let mut rest = project.clone();
        route_mut(&mut rest, TUBE)
            .expect("it has an intake")
            .legs
            .clear();
        rest
    }

    #[test]
    fn a_split_leg_is_as_long_and_falls_as_before() {
        let before = project();
        let mut after = before.clone();
        split_leg_at(&mut after, TUBE, 1, Length::metres(1.05));
        assert_eq!(rest(&after), rest(&before), "nothing else changes");
        let (whole, near, far) = (&legs(&before)[1], &legs(&after)[1], &legs(&after)[2]);
        assert_eq!(near.length_m.value, 1.05, "up to the place");
        assert_eq!(far.length_m.value, 3.15, "4.2 less 1.05");
        let slope = |leg: &Leg| leg.rise_m.value / leg.length_m.value;
        for leg in [near, far] {
            assert!((slope(leg) - slope(whole)).abs() < 1e-12, "the same fall");
            assert_eq!(leg.access, whole.access, "and all else of it");
            assert_eq!(
                leg.length_m.origin, whole.length_m.origin,
                "from the same hand"
            );
        }
        let places = |leg: &Leg| -> Vec<f64> {
            leg.fittings
                .iter()
                .map(|fitting| fitting.at_m.value)
                .collect()
        };
        assert_eq!(places(near), [0.5], "the first bend stays");
        assert_eq!(places(far), [1.95], "the second lies 3.0 less 1.05 on");
        let ids: std::collections::BTreeSet<_> = legs(&after).iter().map(|leg| &leg.id).collect();
        assert_eq!(ids.len(), legs(&after).len(), "no two bear one id");
    }

    #[test]
    fn a_leg_is_not_split_at_its_end() {
        let before = project();
        for place in [0.0, 4.2, 5.0, -1.0] {
            let mut after = before.clone();
            split_leg_at(&mut after, TUBE, 1, Length::metres(place));
            assert_eq!(after, before, "at {place} m there is nothing to part");
        }
    }

    #[test]
    fn moved_legs_change_places_and_nothing_else() {
        let before = project();
        let mut after = before.clone();
        assert_eq!(move_leg(&mut after, TUBE, 1, true), Some(2), "one on");
        let ids = |project: &OpenProject| -> Vec<String> {
            legs(project).iter().map(|leg| leg.id.clone()).collect()
        };
        let mut expected = ids(&before);
        expected.swap(1, 2);
        assert_eq!(ids(&after), expected, "the two have changed places");
        assert_eq!(legs(&after)[2], legs(&before)[1], "it is the same leg");
        assert_eq!(move_leg(&mut after, TUBE, 2, false), Some(1), "and back");
        assert_eq!(after, before, "as it was");
        assert_eq!(
            move_leg(&mut after, TUBE, 0, false),
            None,
            "nothing before it"
        );
        let last = legs(&after).len() - 1;
        assert_eq!(
            move_leg(&mut after, TUBE, last, true),
            None,
            "nothing behind it"
        );
    }

    #[test]
    fn a_shaped_leg_keeps_where_what_stays_came_from() {
        let mut project = project();
        let origin = |project: &OpenProject, field: Field| field.origin(project);
        let (length, fall) = (Field::LegLength(TUBE, 1), Field::LegFall(TUBE, 1));
        let leg = leg_mut(&mut project, TUBE, 1).expect("it has a second leg");
        let measured = Origin::Measured {
            on: "2026-08-30".to_owned(),
            by: "somebody".to_owned(),
        };
        leg.rise_m.origin = measured.clone();
        let shape = leg_shape(&project, TUBE, 1).expect("it has a second leg");
        let half = Shape {
            length: shape.length * 0.5,
            rise: shape.rise * 0.5,
        };
        shape_leg(&mut project, TUBE, 1, half);
        assert_eq!(origin(&project, length), Some(Origin::Typed), "it was set");
        assert_eq!(
            origin(&project, fall),
            Some(measured),
            "the fall is the same"
        );
        assert_eq!(
            legs(&project)[1].fittings[1].at_m.value,
            2.1,
            "a bend beyond its end lies at its end"
        );
        let level = Shape {
            rise: Length::ZERO,
            ..half
        };
        shape_leg(&mut project, TUBE, 1, level);
        assert_eq!(origin(&project, fall), Some(Origin::Typed), "it was set");
    }

    #[test]
    fn a_place_lies_in_one_leg() {
        let project = project();
        let at = |along| leg_at(&project, TUBE, Length::metres(along)).map(|(at, _)| at);
        assert_eq!(at(0.5), Some(0), "in the first metre");
        assert_eq!(at(1.0), Some(0), "its end is its own");
        assert_eq!(at(3.0), Some(1), "2 m into the second");
        let (_, from_start) = leg_at(&project, TUBE, Length::metres(3.0)).expect("it is there");
        assert!((from_start.to_metres() - 2.0).abs() < 1e-9, "2 m");
        assert_eq!(at(99.0), None, "beyond the tube");
    }

    #[test]
    fn the_last_leg_stays() {
        let mut project = project();
        for _ in 0..9 {
            delete_leg(&mut project, TUBE, 0);
        }
        assert_eq!(legs(&project).len(), 1, "a tube has one leg at least");
    }
}
