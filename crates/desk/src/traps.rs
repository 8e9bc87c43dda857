//! Traps along a tube: put there, moved, taken away, and kept at their place of a leg when legs change.

use dewrun_document::{Input, Route, Trap, TrapKind};
use dewrun_quantity::Length;

use super::field::{route, route_mut};
use super::legs::short;
use super::{OpenProject, TubeName};

/// Nobody sets a trap finer than that, m.
const PLACE_M: f64 = 0.05;

/// Puts a trap at a place along a tube; gives which of its traps it is, or the one that is there already.
pub fn add_trap(project: &mut OpenProject, tube: TubeName, along: Length) -> Option<usize> {
    let route = route_mut(project, tube)?;
    let at_m = place(route, along);
    let is_there = |trap: &Trap| (trap.at_m.value - at_m).abs() < PLACE_M / 2.0;
    if let Some(there) = route.traps.iter().position(is_there) {
        return Some(there);
    }
    let behind = route.traps.iter().filter(|trap| trap.at_m.value < at_m);
    let at = behind.count();
    route.traps.insert(at, trap(at_m));
    Some(at)
}

/// Moves a trap along its tube.
pub fn move_trap(project: &mut OpenProject, tube: TubeName, at: usize, along: Length) {
    let Some(route) = route_mut(project, tube) else {
        return;
    };
    let at_m = place(route, along);
    if let Some(trap) = route.traps.get_mut(at) {
        trap.at_m = Input::typed(at_m);
    }
}

/// Takes a trap away.
pub fn delete_trap(project: &mut OpenProject, tube: TubeName, at: usize) {
    if let Some(route) = route_mut(project, tube).filter(|route| at < route.traps.len()) {
        route.traps.remove(at);
    }
}

/// Where the traps of a tube are, in the order of the project.
#[must_use]
pub fn trap_places(project: &OpenProject, tube: TubeName) -> Vec<Length> {
    route(project, tube).map_or_else(Vec::new, |route| {
        let traps = route.traps.iter();
        traps.map(|trap| Length::metres(trap.at_m.value)).collect()
    })
}

/// Changes the legs of a route and keeps each trap where it is in its leg; at the joint where that leg is gone.
pub(crate) fn with_traps(route: &mut Route, change: impl FnOnce(&mut Route)) {
    let held: Vec<(String, f64, f64)> = route
        .traps
        .iter()
        .map(|trap| place_in(route, trap))
        .collect();
    change(route);
    for ((id, from_start, before), at) in held.into_iter().zip(0..) {
        let start = start_of(route, &id);
        let at_m = match start {
            // What lay at its end stays at its end.
            Some((start, length)) if is_same(from_start, before) => start + length,
            Some((start, length)) => start + from_start.min(length),
            None => trap_at(route, at) - from_start,
        };
        if let Some(trap) = route.traps.get_mut(at)
            && !is_same(trap.at_m.value, at_m)
        {
            trap.at_m.value = short(at_m);
        }
    }
    let end = length(route);
    for trap in &mut route.traps {
        trap.at_m.value = trap.at_m.value.min(end);
    }
}

fn trap_at(route: &Route, at: usize) -> f64 {
    route.traps.get(at).map_or(0.0, |trap| trap.at_m.value)
}

fn is_same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

/// The leg that a trap is in, how far from its start, and how long it is.
fn place_in(route: &Route, trap: &Trap) -> (String, f64, f64) {
    let mut start = 0.0;
    for leg in &route.legs {
        let length = leg.length_m.value;
        if trap.at_m.value <= start + length + 1e-6 {
            return (leg.id.clone(), trap.at_m.value - start, length);
        }
        start += length;
    }
    (String::new(), 0.0, 0.0)
}

/// Where a leg begins, and how long it is.
fn start_of(route: &Route, id: &str) -> Option<(f64, f64)> {
    let mut start = 0.0;
    for leg in &route.legs {
        if leg.id == id {
            return Some((start, leg.length_m.value));
        }
        start += leg.length_m.value;
    }
    None
}

fn length(route: &Route) -> f64 {
    short(route.legs.iter().map(|leg| leg.length_m.value).sum())
}

/// A place along a tube to what is set, and on the tube.
fn place(route: &Route, along: Length) -> f64 {
    let end = length(route);
    let place = short((along.to_metres() / PLACE_M).round() * PLACE_M);
    place.min(end).max(0.0)
}

/// A trap of which nothing is known but where it is.
fn trap(at_m: f64) -> Trap {
    Trap {
        at_m: Input::typed(at_m),
        kind: TrapKind::HandDrained,
        condition: Default::default(),
        form: Default::default(),
        capacity_ml: None,
        seal_mm: None,
        outlet_drop_mm: None,
        bore_mm: None,
        pot_bore_mm: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{EXAMPLES, add_leg, delete_leg, leg_shape, move_leg, shape_leg, split_leg};

    const TUBE: TubeName = TubeName::Intake;

    /// Legs of 1.0, 4.2, 3.8, 1.6 and 1.5 m; traps at the low point, in leg 4 and at the end.
    fn project() -> OpenProject {
        let example = EXAMPLES[0].project().expect("the example is sound");
        let mut project = OpenProject::from(example);
        for at_m in [5.2, 9.4, 12.1] {
            let _ = add_trap(&mut project, TUBE, Length::metres(at_m));
        }
        project
    }

    #[track_caller]
    fn check(project: &OpenProject, expected: &[f64]) {
        let found: Vec<f64> = trap_places(project, TUBE)
            .into_iter()
            .map(Length::to_metres)
            .collect();
        let near = |(a, b): (&f64, &f64)| (a - b).abs() < 1e-6;
        assert!(
            found.len() == expected.len() && found.iter().zip(expected).all(near),
            "{found:?}, expected {expected:?}"
        );
    }

    #[test]
    fn traps_lie_in_order_once_each_and_on_the_tube() {
        let mut project = project();
        let there = add_trap(&mut project, TUBE, Length::metres(5.21));
        assert_eq!(there, Some(0), "it is there already");
        let new = add_trap(&mut project, TUBE, Length::metres(7.02));
        assert_eq!(new, Some(1), "between the first and the second");
        check(&project, &[5.2, 7.0, 9.4, 12.1]);
        move_trap(&mut project, TUBE, 1, Length::metres(99.0));
        check(&project, &[5.2, 12.1, 9.4, 12.1]);
        delete_trap(&mut project, TUBE, 1);
        check(&project, &[5.2, 9.4, 12.1]);
    }

    #[test]
    fn they_keep_their_place_of_a_leg() {
        let mut shorter = project();
        let mut shape = leg_shape(&shorter, TUBE, 1).expect("it has a second leg");
        shape.length = Length::metres(3.2);
        shape_leg(&mut shorter, TUBE, 1, shape);
        // The low point is the end of leg 2 still.
        check(&shorter, &[4.2, 8.4, 11.1]);

        let mut split = project();
        split_leg(&mut split, TUBE, 1);
        check(&split, &[5.2, 9.4, 12.1]);

        let mut added = project();
        add_leg(&mut added, TUBE, 0);
        check(&added, &[6.2, 10.4, 13.1]);

        let mut moved = project();
        // 0.4 m into the leg of 1.6 m, which begins at 5.2 m then; the leg of 3.8 m comes after it.
        let _ = move_leg(&mut moved, TUBE, 3, false);
        check(&moved, &[5.2, 5.6, 12.1]);
    }

    #[test]
    fn where_the_leg_is_gone_they_stay_on_the_tube() {
        let mut deleted = project();
        delete_leg(&mut deleted, TUBE, 4);
        check(&deleted, &[5.2, 9.4, 10.6]);
    }
}
