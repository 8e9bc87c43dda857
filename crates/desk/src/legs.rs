//! Splitting, adding and deleting legs.

use dewrun_document::{Fitting, Leg, Route};

use super::field::route_mut;
use super::{OpenProject, TubeName};

/// Parts a leg in the middle: two legs of half its length and the same slope.
pub fn split_leg(project: &mut OpenProject, tube: TubeName, at: usize) {
    let Some(route) = route_mut(project, tube) else {
        return;
    };
    let id = free_id(route);
    let Some(leg) = route.legs.get_mut(at) else {
        return;
    };
    leg.length_m.value /= 2.0;
    leg.rise_m.value /= 2.0;
    let mut second = Leg {
        id,
        fittings: Vec::new(),
        ..leg.clone()
    };
    let half = leg.length_m.value;
    let (near, far): (Vec<Fitting>, Vec<Fitting>) = leg
        .fittings
        .drain(..)
        .partition(|fitting| fitting.at_m.value <= half);
    leg.fittings = near;
    second.fittings = far;
    for fitting in &mut second.fittings {
        fitting.at_m.value -= half;
    }
    route.legs.insert(at + 1, second);
}

/// Puts a leg like that one behind it, without fittings.
pub fn add_leg(project: &mut OpenProject, tube: TubeName, at: usize) {
    let Some(route) = route_mut(project, tube) else {
        return;
    };
    let id = free_id(route);
    let Some(leg) = route.legs.get(at) else {
        return;
    };
    let added = Leg {
        id,
        fittings: Vec::new(),
        ..leg.clone()
    };
    route.legs.insert(at + 1, added);
}

/// Takes a leg away; the last one of a tube stays.
pub fn delete_leg(project: &mut OpenProject, tube: TubeName, at: usize) {
    let Some(route) = route_mut(project, tube) else {
        return;
    };
    if 1 < route.legs.len() && at < route.legs.len() {
        route.legs.remove(at);
    }
}

/// An id that no leg of the route bears.
fn free_id(route: &Route) -> String {
    let mut number = route.legs.len() + 1;
    loop {
        let id = format!("leg-{number}");
        if route.legs.iter().all(|leg| leg.id != id) {
            return id;
        }
        number += 1;
    }
}
