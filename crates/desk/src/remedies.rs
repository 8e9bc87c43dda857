//! Remedies made in the open project, as a person would enter them.

use dewrun_advice::Change;
use dewrun_document::{Input, Route, Trap, TrapCondition, TrapForm, TrapKind};
use dewrun_run::Drain;

use super::OpenProject;
use super::field::route_mut;

/// Nearer to a joint than this a trap lies at it, m.
const AT_JOINT_M: f64 = 1e-9;

/// Makes changes in the run that is open, each value typed.
pub fn make_changes(project: &mut OpenProject, changes: &[Change]) {
    for change in changes {
        if let Some(route) = route_mut(project, change.tube()) {
            make(route, change);
        }
    }
}

fn make(route: &mut Route, change: &Change) {
    match *change {
        Change::Trap {
            at,
            drain,
            capacity,
            seal,
            outlet_drop,
            ..
        } => {
            let at_m = at.to_metres();
            let behind = route.traps.iter().filter(|trap| trap.at_m.value < at_m);
            let behind = behind.count();
            let kind = match drain {
                Drain::ByHand => TrapKind::HandDrained,
                Drain::ByItself => TrapKind::SelfDraining,
                Drain::OpenStub => TrapKind::OpenStub,
            };
            let typed = |value: f64| Some(Input::typed(value));
            route.traps.insert(
                behind,
                Trap {
                    at_m: Input::typed(at_m),
                    kind,
                    condition: TrapCondition::Shut,
                    form: TrapForm::EqualLegs,
                    capacity_ml: (kind == TrapKind::HandDrained)
                        .then(|| Input::typed(capacity.to_grams())),
                    seal_mm: typed(seal.to_millimetres()),
                    outlet_drop_mm: typed(outlet_drop.to_millimetres()),
                    bore_mm: None,
                    pot_bore_mm: None,
                },
            );
        }
        Change::Leg {
            leg, rise, length, ..
        } => {
            let end_m: f64 = route
                .legs
                .iter()
                .take(leg + 1)
                .map(|leg| leg.length_m.value)
                .sum();
            let Some(leg) = route.legs.get_mut(leg) else {
                return;
            };
            let longer_m = length.to_metres() - leg.length_m.value;
            leg.rise_m = Input::typed(rise.to_metres());
            if longer_m != 0.0 {
                leg.length_m = Input::typed(length.to_metres());
                for trap in &mut route.traps {
                    if end_m - AT_JOINT_M <= trap.at_m.value {
                        trap.at_m = Input::typed(trap.at_m.value + longer_m);
                    }
                }
            }
        }
        Change::Hangers { leg, spacing, .. } => {
            if let Some(leg) = route.legs.get_mut(leg) {
                leg.hanger_spacing_m = Some(Input::typed(spacing.to_metres()));
            }
        }
    }
}
