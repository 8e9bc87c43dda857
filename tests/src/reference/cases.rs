//! The faults of `cases.json` that the product answers for so far: psychrometrics here, weather and logger files beside.

use core::num::ParseFloatError;
use std::path::Path;

use dewrun_moist_air::dew_point::pure_vapour_c;
use dewrun_moist_air::{AirNote, Humidity, MoistAir, Over, Pair};
use dewrun_quantity::{Noted, RelativeHumidity, Temperature};
use serde_json::{Value, json};

use super::compare::{Comparison, Tolerance};
use super::front_end;
use super::inputs::Inputs;
use super::report::{Answer, FileReport, Values};
use super::states::{dew_point_c, noted, of_pair, over_water, ratio, state, w, wet_bulb};
use super::weather;

/// Computes a case; the inputs stand in its sentence and are repeated in the function.
type Hold = fn(&Inputs<'_>) -> Result<Answer, String>;

const CASES: [(&str, Hold); 9] = [
    ("F01", front_end::half_typed),
    ("F08", front_end::missing_in_a_file),
    ("P01", seam_between_ice_and_water),
    ("P03", missing_value),
    ("P05", a_little_over_saturation),
    ("P07", dew_point_above_dry_bulb),
    ("P09", ice_on_the_wick),
    ("P11", dry_bulb_of_dew_point),
    ("P13", other_pressures),
];

/// Holds every case that has a function here, and names those that have none.
#[must_use]
pub fn hold(name: &str, cases: &[Value], folder: &Path) -> FileReport {
    let mut report = FileReport::new(name);
    for case in cases {
        let id = case["id"].as_str().unwrap_or("a case without id");
        match CASES.iter().find(|(known, _)| *known == id) {
            Some((_, hold)) => report.take(id, hold(&Inputs::of(&case["expected"]))),
            None => match weather::hold(id, case, folder) {
                Some(answer) => report.take(id, answer),
                None => report.skip(&front_end::with_its_browser_test(id)),
            },
        }
    }
    report
}

fn answer<const N: usize>(values: [(&str, Value); N], comparisons: Vec<Comparison>) -> Answer {
    let values = values.map(|(key, value)| (key.to_owned(), value));
    Answer {
        values: values.into_iter().collect(),
        comparisons,
    }
}

/// psychrolib 2.5, `GetTDewPointFromVapPres`: the seam between the two curves, on vapour pressure alone.
fn seam_between_ice_and_water(expected: &Inputs<'_>) -> Result<Answer, String> {
    let tolerance = Tolerance::absolute(expected.number("tolerance_K")?);
    let table = expected.raw()["dew_or_frost_point_C"]
        .as_object()
        .ok_or("the table is missing")?;
    let (mut values, mut comparisons, mut points) = (Values::new(), Vec::new(), Vec::new());
    for (pressure, wanted) in table {
        let e_pa: f64 = pressure
            .parse()
            .map_err(|error: ParseFloatError| error.to_string())?;
        let point = pure_vapour_c(e_pa).map_err(|error| format!("{error:?}"))?;
        let wanted = wanted.as_f64().ok_or("the table holds numbers")?;
        values.insert(pressure.clone(), json!(point));
        comparisons.push(Comparison::number(pressure, point, wanted, tolerance));
        points.push((e_pa, point));
    }
    points.sort_by(|(one, _), (other, _)| one.total_cmp(other));
    let rising = points
        .windows(2)
        .all(|pair| matches!(pair, [(_, one), (_, next)] if one < next));
    comparisons.push(Comparison::fact("monotonic", rising));
    Ok(answer(
        [
            ("dew_or_frost_point_C", Value::Object(values)),
            ("monotonic", json!(rising)),
        ],
        comparisons,
    ))
}

/// Missing in, missing out: T 25 °C with RH missing, T missing with W 0.010.
fn missing_value(expected: &Inputs<'_>) -> Result<Answer, String> {
    let states = [
        noted(25.0, over_water(f64::NAN), 101_325.0),
        noted(f64::NAN, ratio(0.010), 101_325.0),
    ];
    let says_so = states
        .iter()
        .all(|state| matches!(state, Err(sentence) if sentence.ends_with("is missing")));
    let said = if says_so { "missing" } else { "a value" };
    let text = |key: &str| Comparison {
        key: key.to_owned(),
        got: said.into(),
        expected: expected.raw()[key].clone(),
        tolerance: Tolerance::default(),
    };
    Ok(answer(
        [("dew_point", said.into()), ("wet_bulb", said.into())],
        vec![text("dew_point"), text("wet_bulb")],
    ))
}

/// T 20 °C with RH 101, 104.1 and 120 %: clipped and counted, clipped with the sensor suspected, refused.
fn a_little_over_saturation(_: &Inputs<'_>) -> Result<Answer, String> {
    const DRY_BULB_C: f64 = 20.0;
    // The sentences of the case give the dew point with two decimals.
    let printed = Tolerance::absolute(0.005);
    let at = |percent: f64| noted(DRY_BULB_C, over_water(percent), 101_325.0);
    let dew = |air: &Noted<MoistAir, AirNote>| dew_point_c(&air.value);
    let (slightly, saturated, fault) = (at(101.0)?, at(104.1)?, at(120.0));
    let (slightly_c, saturated_c) = (dew(&slightly)?, dew(&saturated)?);
    let refused = fault.is_err_and(|sentence| sentence.contains("sensor is at fault"));
    Ok(answer(
        [
            (
                "101",
                json!({"dew_point_C": slightly_c, "notes": slightly.notes.len()}),
            ),
            (
                "104.1",
                json!({"dew_point_C": saturated_c, "notes": saturated.notes.len()}),
            ),
            ("120", json!({"refused": refused})),
        ],
        vec![
            Comparison::number("101 dew point", slightly_c, DRY_BULB_C, printed),
            Comparison::fact(
                "101 is clipped",
                matches!(slightly.notes[..], [AirNote::Clipped { .. }]),
            ),
            Comparison::number("104.1 dew point", saturated_c, DRY_BULB_C, printed),
            Comparison::fact(
                "104.1 is a saturated sensor",
                matches!(saturated.notes[..], [AirNote::SaturatedSensor { .. }]),
            ),
            Comparison::fact("120 is a fault", refused),
            Comparison::fact(
                "dew_point_never_above_dry_bulb",
                slightly_c <= DRY_BULB_C && saturated_c <= DRY_BULB_C,
            ),
        ],
    ))
}

/// Dry bulb 12 °C with dew point 16 °C at 950 hPa: no wet bulb in between.
fn dew_point_above_dry_bulb(_: &Inputs<'_>) -> Result<Answer, String> {
    let state = noted(
        12.0,
        Humidity::DewPoint(Temperature::celsius(16.0)),
        95_000.0,
    );
    let refused = state.is_err_and(|sentence| sentence.contains("above the air's temperature"));
    Ok(answer(
        [("result", if refused { "error" } else { "a state" }.into())],
        vec![Comparison::fact("result", refused)],
    ))
}

/// Dry bulb 5 °C, wet bulb −1.5 °C: the handbook's ice-bulb formula with the real-gas saturation, and CoolProp 8.0.
fn ice_on_the_wick(expected: &Inputs<'_>) -> Result<Answer, String> {
    let air = state(5.0, wet_bulb(-1.5), 101_325.0)?;
    let near = Tolerance::relative(expected.number("tolerance_rel")?);
    let kelvin = Tolerance::absolute(expected.number("tolerance_K")?);
    let frost_c = air
        .frost_point()
        .ok_or("there is no frost point")?
        .to_celsius();
    let dew_c = dew_point_c(&air)?;
    let number = |key: &str, got: f64, tolerance: Tolerance| {
        Ok::<_, String>(Comparison::number(
            key,
            got,
            expected.number(key)?,
            tolerance,
        ))
    };
    Ok(answer(
        [
            ("humidity_ratio_ice_bulb", json!(w(&air))),
            ("frost_point_C", json!(frost_c)),
            ("dew_point_over_water_C", json!(dew_c)),
        ],
        vec![
            number("humidity_ratio_ice_bulb", w(&air), near)?,
            number("CoolProp_W", w(&air), near)?,
            number("frost_point_C", frost_c, kelvin)?,
            number("dew_point_over_water_C", dew_c, kelvin)?,
        ],
    ))
}

/// Dew point 9 °C and RH 75 %: CoolProp 8.0, `HAPropsSI(T, D, R)`.
fn dry_bulb_of_dew_point(expected: &Inputs<'_>) -> Result<Answer, String> {
    let pair = Pair::DewPointAndRelative {
        dew_point: Temperature::celsius(9.0),
        value: RelativeHumidity::percent(75.0),
        over: Over::Water,
    };
    let dry_c = of_pair(pair, 101_325.0)?.value.temperature().to_celsius();
    let tolerance = Tolerance::absolute(expected.number("tolerance_K")?);
    Ok(answer(
        [("dry_bulb_C", json!(dry_c))],
        vec![Comparison::number(
            "dry_bulb_C",
            dry_c,
            expected.number("dry_bulb_C")?,
            tolerance,
        )],
    ))
}

/// T 25 °C with W 0.010 at three pressures: CoolProp 8.0.
fn other_pressures(expected: &Inputs<'_>) -> Result<Answer, String> {
    let percent = Tolerance::absolute(expected.number("tolerance_RH_pct")?);
    let kelvin = Tolerance::absolute(expected.number("tolerance_K")?);
    let (mut values, mut comparisons) = (Values::new(), Vec::new());
    for (name, p_pa) in [
        ("101325", 101_325.0),
        ("84000", 84_000.0),
        ("61303", 61_303.0),
    ] {
        let air = state(25.0, ratio(0.010), p_pa)?;
        for (key, got, tolerance) in [
            (
                "RH_pct",
                air.relative_humidity(Over::Water).to_percent(),
                percent,
            ),
            ("dew_point_C", dew_point_c(&air)?, kelvin),
            ("wet_bulb_C", air.wet_bulb().value.to_celsius(), kelvin),
        ] {
            let wanted = expected.within(name).number(key)?;
            values.insert(format!("{name} {key}"), json!(got));
            comparisons.push(Comparison::number(
                &format!("{name} {key}"),
                got,
                wanted,
                tolerance,
            ));
        }
    }
    Ok(Answer {
        values,
        comparisons,
    })
}
