//! Remedies made in a project, as a person would enter them.

use dewrun_advice::Change;
use dewrun_quantity::Length;
use dewrun_remedies::{Alteration, INSULATION_ROW};
use dewrun_run::library::{self, Row};
use dewrun_run::{Drain, Tube};

use crate::{
    Input, Insulation, Leg, Origin, Project, Route, Run, Trap, TrapCondition, TrapForm, TrapKind,
};

/// Nearer to a joint than this a trap lies at it, m.
const AT_JOINT_M: f64 = 1e-9;

/// Makes alterations in a run of a project: what comes from a row of the library is assumed by it, all else typed.
///
/// What the run does not have is left alone.
pub fn make_alterations(project: &mut Project, run_index: usize, alterations: &[Alteration]) {
    let spaces: Vec<String> = project
        .spaces
        .iter()
        .map(|space| space.id.clone())
        .collect();
    let Some(run) = project.runs.get_mut(run_index) else {
        return;
    };
    for alteration in alterations {
        make(run, &spaces, alteration);
    }
}

/// Makes changes of geometry in a run, each value typed.
pub fn make_changes(run: &mut Run, changes: &[Change]) {
    for change in changes {
        if let Some(route) = route_mut(run, change.tube()) {
            change_route(route, change);
        }
    }
}

const fn route_mut(run: &mut Run, tube: Tube) -> Option<&mut Route> {
    match tube {
        Tube::Intake => Some(&mut run.intake),
        Tube::Exhaust => run.exhaust.as_mut(),
    }
}

fn make(run: &mut Run, spaces: &[String], alteration: &Alteration) {
    match *alteration {
        Alteration::Geometry(change) => make_changes(run, &[change]),
        Alteration::TrapCapacity {
            tube,
            trap,
            capacity,
        } => {
            let route = route_mut(run, tube);
            if let Some(trap) = route.and_then(|route| route.traps.get_mut(trap)) {
                trap.capacity_ml = Some(Input::typed(capacity.to_grams()));
            }
        }
        Alteration::DrainEvery(time) => {
            let path = run.air_path.get_or_insert_default();
            path.drain_interval_days = Some(Input::typed(rounded(time.to_days())));
        }
        Alteration::Flow(volume) => {
            run.flow.volume_l_min = Input::typed(rounded(volume.to_litres_per_minute()));
        }
        Alteration::Warm(heat) => run.detector.heat_w = Input::typed(rounded(heat.to_watts())),
        Alteration::DetectorAt {
            intake_legs,
            exhaust_gone,
        } => detector_at(run, intake_legs, exhaust_gone),
        Alteration::Insulate { tube, leg, .. }
        | Alteration::Bare { tube, leg }
        | Alteration::Trace { tube, leg, .. }
        | Alteration::Space { tube, leg, .. }
        | Alteration::Tube { tube, leg, .. } => {
            let route = route_mut(run, tube);
            if let Some(leg) = route.and_then(|route| route.legs.get_mut(leg)) {
                // What a row does not have stays as it was.
                let _ = make_leg(leg, spaces, alteration);
            }
        }
    }
}

fn make_leg(leg: &mut Leg, spaces: &[String], alteration: &Alteration) -> Option<()> {
    match *alteration {
        Alteration::Insulate { thickness, .. } => insulate(leg, thickness)?,
        Alteration::Bare { .. } => leg.insulation = None,
        Alteration::Trace { power, .. } => {
            leg.heat_tracing_w_m = Some(Input::typed(rounded(power.to_watts_per_metre())));
        }
        Alteration::Space { space, .. } => leg.space.clone_from(spaces.get(space)?),
        Alteration::Tube { row, .. } => {
            let row = library::find(library::tubes(), row)?;
            leg.tube.bore_mm = usual(row, "bore_mm")?;
            leg.tube.outside_diameter_mm = usual(row, "outside_diameter_mm")?;
            leg.tube.conductivity_w_mk = usual(row, "conductivity_w_mk")?;
            // What it is like besides follows from the row of its bore.
            leg.tube.stuff = None;
        }
        _ => {}
    }
    Some(())
}

fn insulate(leg: &mut Leg, thickness: Length) -> Option<()> {
    let row = library::find(library::insulation(), INSULATION_ROW)?;
    leg.insulation = Some(Insulation {
        thickness_mm: Input::typed(rounded(thickness.to_millimetres())),
        conductivity_w_mk: usual(row, "conductivity_w_mk")?,
    });
    leg.emissivity = usual(row, "emissivity")?;
    Some(())
}

/// As a person would write it: 13, not 13 and the dust of the way through metres.
fn rounded(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

/// The usual value of a row's figure, assumed.
fn usual(row: &dyn Row, figure: &str) -> Option<Input<f64>> {
    let span = row.entry(figure)?.span;
    Some(Input {
        value: span.usual,
        origin: Origin::Assumed {
            row: row.id().to_owned(),
            low: span.low,
            high: span.high,
        },
    })
}

fn detector_at(run: &mut Run, intake_legs: usize, exhaust_gone: usize) {
    let length_m = |legs: &[Leg]| legs.iter().map(|leg| leg.length_m.value).sum::<f64>();
    run.intake.legs.truncate(intake_legs);
    let end_m = length_m(&run.intake.legs);
    run.intake.traps.retain(|trap| trap.at_m.value <= end_m);
    if let Some(exhaust) = &mut run.exhaust {
        let gone = exhaust_gone.min(exhaust.legs.len());
        let short: Vec<Leg> = exhaust.legs.drain(..gone).collect();
        let short_m = length_m(&short);
        exhaust.traps.retain(|trap| short_m <= trap.at_m.value);
        for trap in &mut exhaust.traps {
            trap.at_m.value -= short_m;
        }
    }
}

fn change_route(route: &mut Route, change: &Change) {
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
            let legs = route.legs.iter().take(leg + 1);
            let end_m: f64 = legs.map(|leg| leg.length_m.value).sum();
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
