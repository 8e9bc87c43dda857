//! A run of ten legs with all that a file may hold of it; every name and number in it is invented.

#![allow(
    dead_code,
    unreachable_pub,
    reason = "each test file uses a part of it"
)]

use dewrun_document::{
    AirPath, Input, Occasion, Origin, Project, Reading, Trap, TrapCondition, TrapForm, TrapKind,
    Visit, VisitedTube, WaterFound, read,
};

/// A worked example.
#[track_caller]
pub fn demo(name: &str) -> Project {
    let path = format!("{}/../../demo/{name}.json", env!("CARGO_MANIFEST_DIR"));
    read(&std::fs::read_to_string(path).expect("the example is there")).expect("it opens")
}

/// The humid make-up air with a leg more, hangers, a trap, limits, visits.
#[must_use]
pub fn ten_legs() -> Project {
    let mut project = demo("make-up-air");
    let run = &mut project.runs[0];
    let mut extra = run.intake.legs[2].clone();
    extra.id = "in-3b".to_owned();
    run.intake.legs[2].length_m = Input::typed(1.65);
    run.intake.legs[2].rise_m = Input::typed(0.0275);
    extra.length_m = Input::typed(2.15);
    extra.rise_m = Input::typed(0.0358);
    run.intake.legs.insert(3, extra);
    for (leg, spacing) in run.intake.legs.iter_mut().zip([0.9, 0.95, 1.0, 0.85]) {
        leg.hanger_spacing_m = Some(Input::typed(spacing));
    }
    run.intake.traps.push(Trap {
        at_m: Input::typed(5.2),
        kind: TrapKind::HandDrained,
        condition: TrapCondition::Shut,
        form: TrapForm::EqualLegs,
        capacity_ml: Some(Input::typed(2500.0)),
        seal_mm: None,
        outlet_drop_mm: Some(Input::typed(95.0)),
        bore_mm: None,
        pot_bore_mm: None,
    });
    run.air_path = Some(AirPath {
        hole_count: Some(Input::typed(6.0)),
        hole_diameter_mm: Some(Input::typed(7.5)),
        low_limit_percent: Some(Input::typed(78.0)),
        high_limit_percent: Some(Input::typed(117.0)),
        drain_interval_days: Some(Input::typed(14.0)),
        ..AirPath::default()
    });
    run.duct.static_pa = Input {
        value: -62.0,
        origin: Origin::Measured {
            on: "2026-05-12".to_owned(),
            by: "J. Orre".to_owned(),
        },
    };
    run.visits = (1..=6).map(visit).collect();
    project
}

fn visit(month: u8) -> Visit {
    let reading = |value| {
        Some(Reading {
            value,
            expected: None,
        })
    };
    Visit {
        on: format!("2026-{month:02}-17"),
        by: "J. Orre".to_owned(),
        occasion: if month == 1 {
            Occasion::AsFitted
        } else {
            Occasion::Service
        },
        airflow_l_min: reading(29.4 - 0.3 * f64::from(month)),
        suction_pa: reading(61.0 + f64::from(month)),
        suction_at_m: Some(5.2),
        first_smoke_s: reading(4.3),
        water: vec![WaterFound {
            tube: VisitedTube::Intake,
            at_m: 5.2,
            water_g: 120.0 * f64::from(month),
        }],
        note: format!("Trap emptied, seal wiped, visit {month} of the season."),
        ..Visit::default()
    }
}
