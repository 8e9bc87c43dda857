//! States whose answer is known from outside, and inputs that must be refused in words.

use dewrun_moist_air::{
    AirError, AirNote, Humidity, MoistAir, Over, Pair, dew_point, standard_pressure,
};
use dewrun_quantity::{
    HumidityRatio, Length, Noted, Pressure, RelativeHumidity, SpecificEnthalpy, Temperature,
};

const SEA_LEVEL_PA: f64 = 101_325.0;

fn air(t_c: f64, humidity: Humidity, p_pa: f64) -> Result<Noted<MoistAir, AirNote>, AirError> {
    MoistAir::new(
        Pair::Temperature(Temperature::celsius(t_c), humidity),
        Pressure::pascals(p_pa),
    )
}

fn relative(percent: f64, over: Over) -> Humidity {
    Humidity::Relative {
        value: RelativeHumidity::percent(percent),
        over,
    }
}

fn ratio(g_kg: f64) -> Humidity {
    Humidity::Ratio(HumidityRatio::grams_per_kilogram(g_kg))
}

#[track_caller]
fn near(what: &str, got: f64, expected: f64, tolerance: f64) {
    assert!(
        (got - expected).abs() <= tolerance,
        "{what} is {got}, expected {expected} within {tolerance}"
    );
}

#[track_caller]
fn refused<T>(answer: Result<T, AirError>, sentence: &str) {
    assert_eq!(
        answer.map(|_| ()).map_err(|error| error.to_string()),
        Err(sentence.to_owned()),
        "refused in words"
    );
}

/// Case P01: psychrolib 2.5 GetTDewPointFromVapPres, no enhancement factor.
#[test]
fn p01_the_seam_of_ice_and_water_is_passed_without_bouncing() {
    let cases = [
        (610.0, -0.0229),
        (611.0, -0.0031),
        (611.15, -0.0001),
        (611.2, 0.0009),
        (611.3, 0.0029),
        (612.0, 0.0177),
    ];
    let mut last = f64::NEG_INFINITY;
    for (e_pa, expected) in cases {
        let got = dew_point::pure_vapour_c(e_pa).unwrap_or(f64::NAN);
        near("dew or frost point", got, expected, 0.02);
        assert!(last < got, "{got} after {last}");
        last = got;
    }
}

/// Case P03: missing in, missing out.
#[test]
fn p03_what_is_missing_is_named() {
    refused(
        air(25.0, relative(f64::NAN, Over::Water), SEA_LEVEL_PA),
        "relative humidity is missing",
    );
    refused(
        air(f64::NAN, ratio(10.0), SEA_LEVEL_PA),
        "temperature is missing",
    );
    refused(
        air(25.0, ratio(f64::NAN), SEA_LEVEL_PA),
        "humidity ratio is missing",
    );
    refused(air(25.0, ratio(10.0), f64::NAN), "pressure is missing");
    let nan = Temperature::celsius(f64::NAN);
    refused(
        air(25.0, Humidity::WetBulb(nan), SEA_LEVEL_PA),
        "wet bulb is missing",
    );
    refused(
        air(25.0, Humidity::DewPoint(nan), SEA_LEVEL_PA),
        "dew point is missing",
    );
    refused(
        air(25.0, Humidity::FrostPoint(nan), SEA_LEVEL_PA),
        "frost point is missing",
    );
    let enthalpy = SpecificEnthalpy::joules_per_kilogram(f64::NAN);
    refused(
        air(25.0, Humidity::Enthalpy(enthalpy), SEA_LEVEL_PA),
        "enthalpy is missing",
    );
}

/// Case P05: by definition; the dew point is never above the dry bulb.
#[test]
fn p05_a_little_over_saturation_is_clipped_and_counted() {
    for (percent, saturated_sensor) in [(101.0, false), (104.1, true)] {
        let Ok(Noted { value, notes }) = air(20.0, relative(percent, Over::Water), SEA_LEVEL_PA)
        else {
            panic!("{percent} % is clipped, not refused");
        };
        match notes[..] {
            [AirNote::Clipped { percent: noted }] => {
                assert!(!saturated_sensor, "{percent} % flags the sensor");
                near("percent noted", noted, percent, 1e-9);
            }
            [AirNote::SaturatedSensor { percent: noted }] => {
                assert!(saturated_sensor, "{percent} % is clipped only");
                near("percent noted", noted, percent, 1e-9);
            }
            _ => panic!("{percent} % has the notes {notes:?}"),
        }
        let dew_point = value.dew_point().map_or(f64::NAN, Temperature::to_celsius);
        near("dew point", dew_point, 20.0, 1e-4);
        assert!(
            dew_point <= 20.0,
            "dew point {dew_point} above the dry bulb"
        );
        near(
            "relative humidity",
            value.relative_humidity(Over::Water).to_percent(),
            100.0,
            1e-9,
        );
    }
    refused(
        air(20.0, relative(120.0, Over::Water), SEA_LEVEL_PA),
        "relative humidity is 120 %, over 105 %: its sensor is at fault",
    );
}

/// Case P07: dew point 16 °C in air of 12 °C.
#[test]
fn p07_a_dew_point_above_the_dry_bulb_is_refused() {
    let dew_point = |t_c| Humidity::DewPoint(Temperature::celsius(t_c));
    refused(
        air(12.0, dew_point(16.0), 95_000.0),
        "dew point of 16 °C is above the air's temperature of 12 °C: one of them is wrong",
    );
    let Ok(Noted { value, notes }) = air(12.0, dew_point(12.4), 95_000.0) else {
        panic!("up to half a kelvin is lowered");
    };
    assert!(
        matches!(notes[..], [AirNote::PointLowered { .. }]),
        "noted, got {notes:?}"
    );
    near(
        "relative humidity",
        value.relative_humidity(Over::Water).to_percent(),
        100.0,
        1e-3,
    );
}

/// Case P09: handbook ice-bulb formula with the real gas; CoolProp 8.0.0 gives 0.001033.
#[test]
fn p09_a_wet_bulb_below_zero_has_ice_on_the_wick() {
    let wet_bulb = Humidity::WetBulb(Temperature::celsius(-1.5));
    let Ok(Noted { value, .. }) = air(5.0, wet_bulb, SEA_LEVEL_PA) else {
        panic!("a wet bulb below zero in air above it is ordinary");
    };
    near(
        "humidity ratio",
        value.humidity_ratio().to_kilograms_per_kilogram(),
        0.00103,
        0.00103 * 0.005,
    );
    near(
        "frost point",
        value
            .frost_point()
            .map_or(f64::NAN, Temperature::to_celsius),
        -14.9,
        0.1,
    );
    near(
        "dew point",
        value.dew_point().map_or(f64::NAN, Temperature::to_celsius),
        -16.7,
        0.1,
    );
}

/// Case P11: own bisection on the saturation curve and CoolProp 8.0.0 give 13.333 to 13.334 °C.
#[test]
fn p11_temperature_follows_from_dew_point_and_relative_humidity() {
    let pair = Pair::DewPointAndRelative {
        dew_point: Temperature::celsius(9.0),
        value: RelativeHumidity::percent(75.0),
        over: Over::Water,
    };
    let t_c = MoistAir::new(pair, Pressure::pascals(SEA_LEVEL_PA))
        .map_or(f64::NAN, |air| air.value.temperature().to_celsius());
    near("dry bulb", t_c, 13.334, 0.01);
}

/// Case P13: CoolProp 8.0.0, real gas.
#[test]
fn p13_the_same_humidity_ratio_means_more_or_less_by_pressure() {
    let cases = [
        (101_325.0, 50.37, 13.98, 17.94),
        (84_000.0, 41.78, 11.13, 15.95),
        (61_303.0, 30.51, 6.49, 12.55),
    ];
    for (p_pa, percent, dew_point, wet_bulb) in cases {
        let Ok(Noted { value, .. }) = air(25.0, ratio(10.0), p_pa) else {
            panic!("an ordinary state at {p_pa} Pa");
        };
        near(
            "relative humidity",
            value.relative_humidity(Over::Water).to_percent(),
            percent,
            0.05,
        );
        near(
            "dew point",
            value.dew_point().map_or(f64::NAN, Temperature::to_celsius),
            dew_point,
            0.02,
        );
        near(
            "wet bulb",
            value.wet_bulb().value.to_celsius(),
            wet_bulb,
            0.02,
        );
    }
}

/// PSY-52: CoolProp 8.0.0, HAPropsSI; wet bulb from the humidity ratio and back.
#[test]
fn wet_bulbs_follow_the_real_gas() {
    let cases = [
        (30.0, 25.0, 95_461.0, 0.019_314_3),
        (40.0, 20.0, SEA_LEVEL_PA, 0.006_452_5),
        (10.0, 6.0, SEA_LEVEL_PA, 0.004_187),
        (25.0, 18.0, 84_000.0, 0.012_795_3),
        (5.0, -1.5, SEA_LEVEL_PA, 0.001_033_5),
        (-1.0, -5.0, 95_461.0, 0.001_216_9),
        (-10.0, -11.0, SEA_LEVEL_PA, 0.001_113_6),
        (60.0, 45.0, SEA_LEVEL_PA, 0.058_393_1),
    ];
    for (t_c, wet_bulb_c, p_pa, w) in cases {
        let wet_bulb = Humidity::WetBulb(Temperature::celsius(wet_bulb_c));
        let from_wet_bulb = air(t_c, wet_bulb, p_pa).map_or(f64::NAN, |air| {
            air.value.humidity_ratio().to_kilograms_per_kilogram()
        });
        near("humidity ratio", from_wet_bulb, w, 5e-3 * w);
        let from_ratio = air(t_c, ratio(1000.0 * w), p_pa)
            .map_or(f64::NAN, |air| air.value.wet_bulb().value.to_celsius());
        near("wet bulb", from_ratio, wet_bulb_c, 0.02);
    }
}

/// PSY-53: Murphy & Koop 2005, both curves.
#[test]
fn below_zero_both_customs_are_told_apart() {
    let cases = [
        (-5.0, 95.0, 99.73, -5.675, -5.031),
        (-10.0, 80.0, 88.18, -12.79, -11.409),
        (-20.0, 70.0, 85.09, -24.064, -21.67),
    ];
    for (t_c, over_water, over_ice, dew_point, frost_point) in cases {
        let Ok(Noted { value, .. }) = air(t_c, relative(over_water, Over::Water), SEA_LEVEL_PA)
        else {
            panic!("an ordinary winter state at {t_c} °C");
        };
        near(
            "over ice",
            value.relative_humidity(Over::Ice).to_percent(),
            over_ice,
            0.15,
        );
        near(
            "dew point",
            value.dew_point().map_or(f64::NAN, Temperature::to_celsius),
            dew_point,
            0.05,
        );
        near(
            "frost point",
            value
                .frost_point()
                .map_or(f64::NAN, Temperature::to_celsius),
            frost_point,
            0.05,
        );
    }
}

#[test]
fn a_band_near_zero_has_both_wet_bulbs() {
    let Ok(Noted { value, .. }) = air(5.0, ratio(1.9), SEA_LEVEL_PA) else {
        panic!("an ordinary state");
    };
    let wet_bulb = value.wet_bulb();
    assert!(
        0.0 < wet_bulb.value.to_celsius(),
        "the answer with water is taken"
    );
    assert!(
        matches!(wet_bulb.notes[..], [AirNote::IceOnWickReads { wet_bulb_c }] if wet_bulb_c <= 0.0),
        "the other is noted, got {:?}",
        wet_bulb.notes
    );
}

#[test]
fn bone_dry_air_has_no_dew_point() {
    let Ok(Noted { value, notes }) = air(20.0, ratio(0.0), SEA_LEVEL_PA) else {
        panic!("bone-dry air is a state");
    };
    assert_eq!(notes, [], "nothing to note");
    assert_eq!(value.dew_point(), None, "no dew point");
    assert_eq!(value.frost_point(), None, "no frost point");
    assert_eq!(
        value.relative_humidity(Over::Water).to_percent(),
        0.0,
        "bone-dry"
    );
    assert_eq!(value.vapour_pressure().to_pascals(), 0.0, "no vapour");
    let wet_bulb = value.wet_bulb().value.to_celsius();
    assert!(
        5.0 < wet_bulb && wet_bulb < 6.5,
        "a wet bulb of {wet_bulb} °C all the same"
    );
}

#[test]
fn more_vapour_than_ice_allows_is_noted_where_it_was_given_over_ice() {
    let Ok(Noted { value, notes }) = air(-20.0, relative(110.0, Over::Ice), SEA_LEVEL_PA) else {
        panic!("air between the two saturations is found in every winter");
    };
    assert!(
        matches!(notes[..], [AirNote::AboveIceSaturation { .. }]),
        "noted, got {notes:?}"
    );
    assert!(
        value.relative_humidity(Over::Water).to_percent() < 100.0,
        "water does not condense yet"
    );
    refused(
        air(-1.0, relative(115.0, Over::Ice), SEA_LEVEL_PA),
        "relative humidity is 115 %, over 105 %: its sensor is at fault",
    );
}

#[test]
fn out_of_range_is_said_with_the_limits() {
    refused(
        air(96.0, ratio(1.0), SEA_LEVEL_PA),
        "temperature is 96 °C, must be from \u{2212}60 to 95 °C",
    );
    refused(
        air(20.0, ratio(1.0), 40_000.0),
        "pressure is 40 kPa, must be from 50 to 120 kPa",
    );
    refused(
        air(20.0, relative(-1.0, Over::Water), SEA_LEVEL_PA),
        "relative humidity is \u{2212}1 %, must be from 0 to 100 %",
    );
    refused(
        air(90.0, relative(90.0, Over::Water), 60_000.0),
        "at 60 kPa water boils before air at 90 °C is that humid",
    );
    assert!(
        matches!(
            air(20.0, ratio(30.0), SEA_LEVEL_PA),
            Err(AirError::OutOfRange { quantity: "humidity ratio", max, .. }) if (max - 14.76).abs() < 0.01
        ),
        "the limit is saturation, 14.76 g/kg (PSY-06)"
    );
    assert!(
        matches!(
            air(40.0, Humidity::WetBulb(Temperature::celsius(5.0)), SEA_LEVEL_PA),
            Err(AirError::OutOfRange { quantity: "wet bulb", min, max: 40.0, .. }) if 12.0 < min && min < 15.0
        ),
        "no air is so dry"
    );
}

#[test]
fn no_temperature_for_a_dew_point_in_air_too_dry() {
    let pair = Pair::DewPointAndRelative {
        dew_point: Temperature::celsius(60.0),
        value: RelativeHumidity::percent(1.0),
        over: Over::Water,
    };
    refused(
        MoistAir::new(pair, Pressure::pascals(SEA_LEVEL_PA)),
        "no temperature from \u{2212}60 to 95 °C has a dew point of 60 °C at a relative humidity of 1 %",
    );
}

/// ASHRAE Handbook Fundamentals 2017, ch. 1, table 1 (PSY-16).
#[test]
fn the_standard_atmosphere_is_met() {
    let cases = [
        (-500.0, 107_478.0),
        (0.0, 101_325.0),
        (500.0, 95_461.0),
        (4000.0, 61_640.0),
        (10_000.0, 26_436.0),
    ];
    for (altitude_m, p_pa) in cases {
        let got =
            standard_pressure(Length::metres(altitude_m)).map_or(f64::NAN, Pressure::to_pascals);
        near("pressure", got, p_pa, 1.0);
    }
    refused(
        standard_pressure(Length::metres(f64::NAN)),
        "altitude is missing",
    );
    refused(
        standard_pressure(Length::metres(20_000.0)),
        "altitude is 20\u{2009}000 m, must be from \u{2212}1\u{2009}000 to 11\u{2009}000 m",
    );
}
