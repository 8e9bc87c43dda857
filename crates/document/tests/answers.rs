//! An answer file holds what was computed, reads back whole, and never holds a number that is not finite.

use dewrun_advice::{rests_on, staying_dry};
use dewrun_document::output::{AssessOutput, Figure, RunOutput, VerdictOutput};
use dewrun_document::{DocumentError, Telling, air_answer, answer, givens, read, to_run};
use dewrun_quantity::measure::ENTHALPY;
use dewrun_quantity::{Noted, Pressure, Temperature};
use dewrun_run::air::{Humidity, MoistAir, Pair};

const DEMOS: [(&str, &str); 3] = [
    (
        "make-up air",
        include_str!("../../../demo/make-up-air.json"),
    ),
    (
        "pool hall",
        include_str!("../../../demo/pool-hall-exhaust.json"),
    ),
    (
        "chilled supply",
        include_str!("../../../demo/chilled-supply.json"),
    ),
];

/// The answer to an example, its tubes drawn out.
fn answered(text: &str) -> AssessOutput {
    let project = read(text).expect("an example can be read");
    let (run, names) = to_run(&project, 0).expect("it has a run");
    let outcome = dewrun_run::evaluate(&run).expect("which has an answer");
    let staying = staying_dry(&run, &outcome.value).ok();
    let telling = Telling {
        sentence: "It is so.",
        profile: true,
        rests_on: &rests_on(&run, &outcome.value, &givens(&project, 0)),
        staying_dry: staying.as_ref(),
        whole: None,

        doubt: None,
    };
    let output = RunOutput {
        id: project.runs[0].id.clone(),
        name: project.runs[0].name.clone(),
        steady: Some(answer(0, &run, &names, &outcome, telling)),
        year: None,
        error: None,
    };
    AssessOutput::new(&project.name, vec![output]).with_figures()
}

#[test]
fn an_answer_is_read_back_as_it_was_written() {
    for (name, text) in DEMOS {
        let answer = answered(text);
        for on_one_line in [true, false] {
            let json = answer.to_json(on_one_line).expect("it can be written");
            let back = serde_json::from_str(&json);
            assert!(
                back.is_ok_and(|back: AssessOutput| back == answer),
                "{name}: figure by figure"
            );
            assert_eq!(
                on_one_line,
                !json.contains('\n'),
                "{name}: on one line or on many"
            );
        }
    }
}

#[test]
fn what_is_no_number_is_never_written() {
    let mut answer = answered(DEMOS[0].1);
    let steady = answer.runs[0].steady.as_mut().expect("it has an answer");
    steady.chamber.temperature_c = Figure(f64::NAN);
    assert_eq!(
        answer.to_json(true),
        Err(DocumentError::NotFinite),
        "nothing is written instead"
    );
}

#[test]
fn a_tube_is_the_sum_of_its_legs_and_each_leg_is_named() {
    for (name, text) in DEMOS {
        let answer = answered(text);
        let steady = answer.runs[0].steady.as_ref().expect("it has an answer");
        let project = read(text).expect("an example can be read");
        let ids: Vec<&str> = project.runs[0]
            .intake
            .legs
            .iter()
            .map(|leg| leg.id.as_str())
            .collect();
        let named: Vec<&str> = steady
            .intake
            .legs
            .iter()
            .map(|leg| leg.id.as_str())
            .collect();
        assert_eq!(named, ids, "{name}: ids of the file");
        for tube in [Some(&steady.intake), steady.exhaust.as_ref()]
            .into_iter()
            .flatten()
        {
            let sum: f64 = tube.legs.iter().map(|leg| leg.condensate_g_h.0).sum();
            assert!(
                (sum - tube.condensate_g_h.0).abs() <= 1e-9 * (1.0 + sum),
                "{name}: {sum} in all"
            );
            let length: f64 = tube.legs.last().map_or(0.0, |leg| leg.to_m.0);
            let end = tube
                .profile
                .as_ref()
                .and_then(|profile| Some(profile.last()?.x_m.0));
            assert_eq!(
                end,
                Some(length),
                "{name}: the profile ends where the last leg does"
            );
        }
    }
}

/// Frost, sweat and plain water, g/h in both tubes together.
fn forms(text: &str) -> (VerdictOutput, [f64; 3]) {
    let answer = answered(text);
    let steady = answer.runs[0].steady.as_ref().expect("it has an answer");
    let legs = steady
        .intake
        .legs
        .iter()
        .chain(steady.exhaust.iter().flat_map(|tube| &tube.legs));
    let sums = legs.fold([0.0; 3], |[frost, sweat, water], leg| {
        let plain = leg.condensate_g_h.0 - leg.frost_g_h.0;
        [
            frost + leg.frost_g_h.0,
            sweat + leg.sweat_g_h.0,
            water + plain,
        ]
    });
    (steady.verdict, sums)
}

#[test]
fn each_worked_example_tells_its_own_story() {
    let (verdict, [frost, _, water]) = forms(DEMOS[0].1);
    assert_eq!(verdict, VerdictOutput::Wet, "make-up air");
    assert!(
        frost == 0.0 && 1.0 < water,
        "make-up air: water, not ice: {frost} and {water} g/h"
    );
    let (verdict, [frost, ..]) = forms(DEMOS[1].1);
    assert_eq!(verdict, VerdictOutput::Wet, "pool hall");
    assert!(1.0 < frost, "pool hall: ice: {frost} g/h");
    let (verdict, [frost, sweat, water]) = forms(DEMOS[2].1);
    assert_eq!(
        verdict,
        VerdictOutput::Dry,
        "chilled supply: sweat alone is dry"
    );
    assert!(
        frost == 0.0 && water == 0.0 && 0.1 < sweat,
        "chilled supply: outside only: {sweat} g/h"
    );
}

/// An air of 32 °C with a dew point of 26 °C at sea level.
fn muggy() -> MoistAir {
    let pair = Pair::Temperature(
        Temperature::celsius(32.0),
        Humidity::DewPoint(Temperature::celsius(26.0)),
    );
    let air = MoistAir::new(pair, Pressure::pascals(101_325.0));
    air.expect("such an air exists").value
}

/// Expected: CoolProp 8.0.0, `HAPropsSI` with T 305.15 K, D 299.15 K, P 101325 Pa.
/// Tolerances: the product's claims for W (0.07 %) and wet bulb (0.02 K); a handbook's enthalpy differs from the real gas by 0.1 %.
#[test]
fn an_air_is_answered_in_the_units_its_fields_name() {
    let air = air_answer(&Noted::plain(muggy()));
    let rows = [
        ("temperature_c", air.temperature_c, 32.0, 1e-9),
        ("pressure_pa", air.pressure_pa, 101_325.0, 1e-9),
        (
            "humidity_ratio_kg_kg",
            air.humidity_ratio_kg_kg,
            0.021_450_9,
            1.5e-5,
        ),
        ("vapour_pressure_pa", air.vapour_pressure_pa, 3378.19, 2.4),
        (
            "relative_humidity_percent",
            air.relative_humidity_percent,
            70.6634,
            0.05,
        ),
        (
            "relative_humidity_over_ice_percent",
            air.relative_humidity_over_ice_percent,
            70.6634,
            0.05,
        ),
        ("wet_bulb_c", air.wet_bulb_c, 27.4362, 0.02),
        ("enthalpy_kj_kg", air.enthalpy_kj_kg, 87.085, 0.09),
        (
            "specific_volume_m3_kg",
            air.specific_volume_m3_kg,
            0.893_938,
            9e-4,
        ),
        (
            "density_kg_m3",
            air.density_kg_m3,
            1.021_450_9 / 0.893_938,
            1.2e-3,
        ),
    ];
    for (field, Figure(got), expected, tolerance) in rows {
        let is_near = (got - expected).abs() <= tolerance;
        assert!(is_near, "{field}: {got}, expected {expected}");
    }
    let dew_point = air
        .dew_point_c
        .map(|Figure(point)| (point - 26.0).abs() <= 0.01);
    assert_eq!(dew_point, Some(true), "dew_point_c");
    assert_eq!(air.frost_point_c, None, "no frost above the triple point");
}

#[test]
fn inch_pound_enthalpy_is_counted_from_the_same_zero_everywhere() {
    let air = muggy();
    let shown = (ENTHALPY.inch_pound.read)(air.enthalpy());
    let counted = air.enthalpy_from_zero_fahrenheit().to_btu_per_pound();
    assert!(
        (shown - counted).abs() <= 1e-9,
        "{shown} and {counted} Btu/lb"
    );
}
