//! Moist air.

use dewrun_moist_air::humidity::{saturated_over_ice, saturated_over_water};
use dewrun_moist_air::mixture::{density_kg_m3, enthalpy_j_kg, humidity_ratio};
use dewrun_moist_air::saturation::{TRIPLE_POINT_C, pressure_over_ice_pa, pressure_over_water_pa};
use dewrun_moist_air::{Humidity, Over, ZERO_CELSIUS_K, enhancement, standard_pressure};
use dewrun_quantity::{Length, Pressure, Temperature};
use serde_json::{Value, json};

use super::{Computed, Rows};
use crate::reference::compare::{Comparison, Tolerance};
use crate::reference::inputs::Inputs;
use crate::reference::states::{
    dew_point_c, frost_or_dew_point_c, over_ice, over_water, ratio, state, w, wet_bulb,
};

pub(super) const ROWS: Rows = &[
    ("PSY-01", ashrae_table_3),
    ("PSY-03", ashrae_table_2_ratio),
    ("PSY-04", ashrae_table_2_enthalpy),
    ("PSY-05", ashrae_table_2_dry),
    ("PSY-06", saturated_table),
    ("PSY-07", hyland_wexler),
    ("PSY-08", hyland_wexler_enhancement),
    ("PSY-09", enhancement_by_celsius),
    ("PSY-10", enhancement_by_celsius),
    ("PSY-11", iapws_r14_08),
    ("PSY-12", iapws_95_saturation),
    ("PSY-14", murphy_koop),
    ("PSY-15", dew_point_of_frost_point),
    ("PSY-16", ashrae_table_1),
    ("PSY-17", ashrae_example_1),
    ("PSY-18", ashrae_example_1_inch_pound),
    ("PSY-19", ratio_of_wet_bulb),
    ("PSY-20", wet_bulb_of_humidity),
    ("PSY-21", at_altitude),
    ("PSY-22", bs_5422),
    ("PSY-30", iapws_g8_10),
    ("PSY-51", both_routes),
    ("PSY-52", ratio_of_wet_bulb_and_back),
    ("PSY-53", over_water_and_over_ice),
];

fn celsius(t_k: f64) -> f64 {
    t_k - ZERO_CELSIUS_K
}

/// Humidity ratio at saturation, over ice up to 0 °C.
fn saturated_w(t_c: f64, p_pa: f64) -> f64 {
    let saturated = if t_c <= 0.0 {
        saturated_over_ice
    } else {
        saturated_over_water
    };
    humidity_ratio(saturated(t_c, p_pa))
}

/// Saturation pressure, over ice up to 0 °C.
fn saturation_pa(t_c: f64) -> f64 {
    if t_c <= 0.0 {
        pressure_over_ice_pa(t_c)
    } else {
        pressure_over_water_pa(t_c)
    }
}

/// Enhancement factor, over ice up to 0 °C.
fn factor(t_c: f64, p_pa: f64) -> f64 {
    if t_c <= 0.0 {
        enhancement::over_ice(t_c, p_pa)
    } else {
        enhancement::over_water(t_c, p_pa)
    }
}

/// ASHRAE Handbook Fundamentals 2017, ch. 1, table 3.
fn ashrae_table_3(inputs: &Inputs<'_>) -> Result<Computed, String> {
    Ok(Computed::of([(
        "pws_Pa",
        inputs.each("T_C", saturation_pa)?,
    )]))
}

/// ASHRAE Handbook Fundamentals 2017, ch. 1, table 2.
fn ashrae_table_2_ratio(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    Ok(Computed::of([(
        "W_s",
        inputs.each("T_C", |t| saturated_w(t, p_pa))?,
    )]))
}

/// ASHRAE Handbook Fundamentals 2017, ch. 1, table 2.
fn ashrae_table_2_enthalpy(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    let enthalpy = |t| enthalpy_j_kg(t, saturated_w(t, p_pa)) / 1000.0;
    Ok(Computed::of([(
        "h_kJ_per_kg_da",
        inputs.each("T_C", enthalpy)?,
    )]))
}

/// ASHRAE Handbook Fundamentals 2017, ch. 1, table 2.
fn ashrae_table_2_dry(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let air = state(inputs.number("T_C")?, ratio(0.0), inputs.number("p_Pa")?)?;
    Ok(Computed::of([
        (
            "v_m3_per_kg",
            air.specific_volume().to_cubic_metres_per_kilogram().into(),
        ),
        (
            "h_kJ_per_kg",
            air.enthalpy().to_kilojoules_per_kilogram().into(),
        ),
    ]))
}

/// Herrmann, Kretzschmar & Gatley, HVAC&R Res. 15 (2009) 961 (RP-1485), by CoolProp 8.0.0; the row 0 °C is 0.01 °C.
fn saturated_table(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    let temperature = |t: f64| if t == 0.0 { TRIPLE_POINT_C } else { t };
    let ratio = |t: f64| saturated_w(temperature(t), p_pa);
    let volume = |t: f64| (1.0 + ratio(t)) / density_kg_m3(temperature(t), ratio(t), p_pa);
    let enthalpy = |t: f64| enthalpy_j_kg(temperature(t), ratio(t)) / 1000.0;
    Ok(Computed::of([
        ("W_s", inputs.each("T_C", ratio)?),
        ("v_s_m3_per_kg_da", inputs.each("T_C", volume)?),
        ("h_s_kJ_per_kg_da", inputs.each("T_C", enthalpy)?),
    ]))
}

/// Hyland & Wexler, ASHRAE Trans. 89 (2A) (1983), appendix table.
fn hyland_wexler(inputs: &Inputs<'_>) -> Result<Computed, String> {
    Ok(Computed::of([
        (
            "ice",
            inputs.each("T_K", |t| pressure_over_ice_pa(celsius(t)))?,
        ),
        (
            "water",
            inputs.each("T_K_water", |t| pressure_over_water_pa(celsius(t)))?,
        ),
    ]))
}

/// Hyland & Wexler 1983 (paper 2), table 2, 0.1 MPa.
fn hyland_wexler_enhancement(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    Ok(Computed::of([(
        "f",
        inputs.each("T_K", |t| factor(celsius(t), p_pa))?,
    )]))
}

/// PSY-09: IAPWS G8-10 by iapws 1.5.5; PSY-10: Greenspan, J. Res. NBS 80A (1976) 41, in the ITS-90 form of Hardy 1998.
fn enhancement_by_celsius(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    Ok(Computed::of([(
        "f",
        inputs.each("T_C", |t| factor(t, p_pa))?,
    )]))
}

/// IAPWS R14-08(2011), table 3.
fn iapws_r14_08(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p = pressure_over_ice_pa(celsius(inputs.number("T_K")?));
    Ok(Computed::of([("p_MPa", (p * 1e-6).into())]))
}

/// IAPWS R6-95(2018), table 8.
fn iapws_95_saturation(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p = inputs.each("T_K", |t| pressure_over_water_pa(celsius(t)) * 1e-6)?;
    Ok(Computed::of([("p_MPa", p)]))
}

/// Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, table C1.
fn murphy_koop(inputs: &Inputs<'_>) -> Result<Computed, String> {
    Ok(Computed::of([
        (
            "ice_Pa",
            inputs.each("T_K", |t| pressure_over_ice_pa(celsius(t)))?,
        ),
        (
            "water_Pa",
            inputs.each("T_K_water", |t| pressure_over_water_pa(celsius(t)))?,
        ),
    ]))
}

/// Murphy & Koop 2005, both curves.
fn dew_point_of_frost_point(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let dew_points: Result<Vec<f64>, String> = inputs
        .list("frost_point_C")?
        .into_iter()
        .map(|frost_c| {
            let humidity = Humidity::FrostPoint(Temperature::celsius(frost_c));
            dew_point_c(&state(10.0, humidity, 101_325.0)?)
        })
        .collect();
    Ok(Computed::of([("dew_point_C", json!(dew_points?))]))
}

/// ASHRAE Handbook Fundamentals 2017, ch. 1, table 1.
fn ashrae_table_1(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let pressures: Result<Vec<f64>, String> = inputs
        .list("z_m")?
        .into_iter()
        .map(|z| {
            standard_pressure(Length::metres(z))
                .map(Pressure::to_pascals)
                .map_err(|e| e.to_string())
        })
        .collect();
    Ok(Computed::of([("p_Pa", json!(pressures?))]))
}

/// ASHRAE Handbook Fundamentals 2017, ch. 1, example 1.
fn ashrae_example_1(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let humidity = wet_bulb(inputs.number("Twb_C")?);
    let air = state(inputs.number("T_C")?, humidity, inputs.number("p_Pa")?)?;
    Ok(Computed::of([
        ("W", w(&air).into()),
        (
            "RH",
            air.relative_humidity(Over::Water).to_fraction().into(),
        ),
        ("h_kJkg", air.enthalpy().to_kilojoules_per_kilogram().into()),
        (
            "v",
            air.specific_volume().to_cubic_metres_per_kilogram().into(),
        ),
        ("Tdp_C", dew_point_c(&air)?.into()),
    ]))
}

/// ASHRAE Handbook Fundamentals 2017 (I-P), ch. 1, example 1.
fn ashrae_example_1_inch_pound(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let humidity = Humidity::WetBulb(Temperature::fahrenheit(inputs.number("Twb_F")?));
    let t_c = Temperature::fahrenheit(inputs.number("T_F")?).to_celsius();
    let p_pa = Pressure::pounds_per_square_inch(inputs.number("p_psia")?).to_pascals();
    let air = state(t_c, humidity, p_pa)?;
    Ok(Computed::of([
        ("W", w(&air).into()),
        (
            "RH",
            air.relative_humidity(Over::Water).to_fraction().into(),
        ),
        (
            "h_Btu_lb",
            air.enthalpy_from_zero_fahrenheit()
                .to_btu_per_pound()
                .into(),
        ),
        (
            "v_ft3_lb",
            air.specific_volume().to_cubic_feet_per_pound().into(),
        ),
        (
            "Tdp_F",
            Temperature::celsius(dew_point_c(&air)?)
                .to_fahrenheit()
                .into(),
        ),
    ]))
}

/// psychrolib, `test_HumRatio_TWetBulb`.
fn ratio_of_wet_bulb(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    let ratios: Result<Vec<f64>, String> = inputs
        .list("T_C")?
        .into_iter()
        .zip(inputs.list("Twb_C")?)
        .map(|(t, wet)| Ok(w(&state(t, wet_bulb(wet), p_pa)?)))
        .collect();
    Ok(Computed::of([("W", json!(ratios?))]))
}

/// psychrolib, `test_TWetBulb_RelHum`.
fn wet_bulb_of_humidity(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let humidity = over_water(100.0 * inputs.number("RH")?);
    let air = state(inputs.number("T_C")?, humidity, inputs.number("p_Pa")?)?;
    Ok(Computed::of([(
        "Twb_C",
        air.wet_bulb().value.to_celsius().into(),
    )]))
}

/// psychrolib, `test_MoistAir`.
fn at_altitude(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let humidity = ratio(inputs.number("W")?);
    let air = state(inputs.number("T_C")?, humidity, inputs.number("p_Pa")?)?;
    Ok(Computed::of([
        ("h_J_kg", air.enthalpy().to_joules_per_kilogram().into()),
        (
            "v_m3_kg",
            air.specific_volume().to_cubic_metres_per_kilogram().into(),
        ),
    ]))
}

/// BS 5422:1990, dew-point table; below 0 °C the frost point.
fn bs_5422(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let points: Result<Vec<f64>, String> = inputs
        .list("T_C")?
        .into_iter()
        .zip(inputs.list("RH_pct")?)
        .map(|(t, rh)| frost_or_dew_point_c(&state(t, over_ice(rh), 101_325.0)?))
        .collect();
    Ok(Computed::of([("Tdp_C", json!(points?))]))
}

/// IAPWS G8-10, table 13.
fn iapws_g8_10(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let dry = inputs.number("dry_air_mass_fraction")?;
    let humidity = ratio((1.0 - dry) / dry);
    let air = state(
        celsius(inputs.number("T_K")?),
        humidity,
        inputs.number("p_MPa")? * 1e6,
    )?;
    let h = air.enthalpy().to_kilojoules_per_kilogram() / (1.0 + w(&air));
    Ok(Computed::of([
        ("rho", air.density().to_kilograms_per_cubic_metre().into()),
        ("h_kJkg", h.into()),
        ("cp_kJkgK", (air.heat_capacity_j_kgk() / 1000.0).into()),
    ]))
}

/// CoolProp 8.0.0, `HAPropsSI` (RP-1485): dew point from T, RH and from T and the expected W; below 0 °C over ice.
fn both_routes(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let pressures = inputs.list("p_Pa")?;
    let (humidities, expected) = (inputs.list("RH_pct")?, inputs.expected().list("W")?);
    let (mut points, mut ratios, mut by_ratio) = (Vec::new(), Vec::new(), Vec::new());
    let given = humidities.into_iter().zip(expected).zip(pressures);
    for (t, ((rh, expected_w), p_pa)) in inputs.list("T_C")?.into_iter().zip(given) {
        let air = state(t, over_ice(rh), p_pa)?;
        points.push(frost_or_dew_point_c(&air)?);
        ratios.push(w(&air));
        by_ratio.push(frost_or_dew_point_c(&state(t, ratio(expected_w), p_pa)?)?);
    }
    Ok(
        Computed::of([("Tdp_C", json!(points)), ("W", json!(ratios))]).route(
            "Tdp_C",
            "humidity ratio",
            by_ratio,
        ),
    )
}

/// CoolProp 8.0.0, `HAPropsSI`: humidity ratio of the wet bulb, and the wet bulb of the expected ratio within 0.02 K.
fn ratio_of_wet_bulb_and_back(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let pressures = inputs.list("p_Pa")?;
    let (wet_bulbs, expected) = (inputs.list("Twb_C")?, inputs.expected().list("W")?);
    let (mut ratios, mut back) = (Vec::new(), Vec::new());
    let given = wet_bulbs.iter().zip(expected).zip(pressures);
    for (t, ((wet, expected_w), p_pa)) in inputs.list("T_C")?.into_iter().zip(given) {
        ratios.push(w(&state(t, wet_bulb(*wet), p_pa)?));
        back.push(
            state(t, ratio(expected_w), p_pa)?
                .wet_bulb()
                .value
                .to_celsius(),
        );
    }
    Ok(Computed::of([("W", json!(ratios))]).also(Comparison {
        key: "Twb_C".to_owned(),
        got: json!(back),
        expected: Value::from(wet_bulbs),
        tolerance: Tolerance::absolute(0.02),
    }))
}

/// Murphy & Koop 2005, both curves.
fn over_water_and_over_ice(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (mut humidities, mut dew, mut frost) = (Vec::new(), Vec::new(), Vec::new());
    for (t, rh) in inputs
        .list("T_C")?
        .into_iter()
        .zip(inputs.list("RH_over_water_pct")?)
    {
        let air = state(t, over_water(rh), 101_325.0)?;
        humidities.push(air.relative_humidity(Over::Ice).to_percent());
        dew.push(dew_point_c(&air)?);
        frost.push(frost_or_dew_point_c(&air)?);
    }
    Ok(Computed::of([
        ("RH_over_ice_pct", json!(humidities)),
        ("dew_point_C", json!(dew)),
        ("frost_point_C", json!(frost)),
    ]))
}
