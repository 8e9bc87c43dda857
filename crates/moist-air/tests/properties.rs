//! What holds for every state: pairs go round, humidity rises with humidity, nothing that is not a number comes out.

use dewrun_moist_air::{Humidity, MoistAir, Over, Pair, humidity};
use dewrun_quantity::{HumidityRatio, Pressure, RelativeHumidity, SpecificEnthalpy, Temperature};
use proptest::prelude::*;

fn air(t_c: f64, humidity: Humidity, p_pa: f64) -> Option<MoistAir> {
    let pair = Pair::Temperature(Temperature::celsius(t_c), humidity);
    MoistAir::new(pair, Pressure::pascals(p_pa))
        .ok()
        .map(|air| air.value)
}

fn over_water(percent: f64) -> Humidity {
    Humidity::Relative {
        value: RelativeHumidity::percent(percent),
        over: Over::Water,
    }
}

/// Temperatures with more weight near freezing, where the customs part.
fn temperature() -> impl Strategy<Value = f64> {
    prop_oneof![3 => -60.0..95.0_f64, 1 => -1.0..1.0_f64, 1 => Just(0.0), 1 => Just(0.01)]
}

/// Humidities with more weight on both ends.
fn percent() -> impl Strategy<Value = f64> {
    prop_oneof![3 => 0.0..100.0_f64, 1 => 0.0..0.1_f64, 1 => 99.9..100.0_f64, 1 => Just(100.0), 1 => Just(0.0)]
}

fn pressure() -> impl Strategy<Value = f64> {
    50e3..120e3_f64
}

/// Any number at all, mostly such as somebody could type.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![4 => -150.0..200.0_f64, 1 => any::<f64>(), 1 => Just(0.0), 1 => Just(f64::NAN), 1 => Just(f64::INFINITY)]
}

fn over() -> impl Strategy<Value = Over> {
    prop_oneof![Just(Over::Water), Just(Over::Ice)]
}

fn any_humidity() -> impl Strategy<Value = Humidity> {
    (number(), over(), 0..6_u8).prop_map(|(number, over, kind)| {
        let value = RelativeHumidity::percent(number);
        let t = Temperature::celsius(number);
        match kind {
            0 => Humidity::Relative { value, over },
            1 => Humidity::DewPoint(t),
            2 => Humidity::FrostPoint(t),
            3 => Humidity::Ratio(HumidityRatio::grams_per_kilogram(number)),
            4 => Humidity::WetBulb(t),
            _ => Humidity::Enthalpy(SpecificEnthalpy::kilojoules_per_kilogram(number)),
        }
    })
}

fn any_pair() -> impl Strategy<Value = Pair> {
    let value = || (number().prop_map(RelativeHumidity::percent), over());
    prop_oneof![
        3 => (number(), any_humidity()).prop_map(|(t, humidity)| Pair::Temperature(Temperature::celsius(t), humidity)),
        1 => (number(), value()).prop_map(|(t, (value, over))| {
            Pair::DewPointAndRelative { dew_point: Temperature::celsius(t), value, over }
        }),
        1 => (number(), value()).prop_map(|(t, (value, over))| {
            Pair::FrostPointAndRelative { frost_point: Temperature::celsius(t), value, over }
        }),
        1 => (number(), value()).prop_map(|(w, (value, over))| {
            Pair::RatioAndRelative { ratio: HumidityRatio::grams_per_kilogram(w), value, over }
        }),
    ]
}

/// The same state by another pair: humidity ratio within what 1e-4 K of dew point is worth.
fn same(name: &str, air: MoistAir, again: Option<MoistAir>) -> Result<(), TestCaseError> {
    within(2e-5, name, air, again)
}

fn within(
    tolerance: f64,
    name: &str,
    air: MoistAir,
    again: Option<MoistAir>,
) -> Result<(), TestCaseError> {
    let Some(again) = again else {
        return Err(TestCaseError::fail(format!("{name} of {air:?} is refused")));
    };
    let (w, got) = (
        air.humidity_ratio().to_kilograms_per_kilogram(),
        again.humidity_ratio().to_kilograms_per_kilogram(),
    );
    let warmer = (again.temperature() - air.temperature()).to_kelvins().abs();
    prop_assert!(
        (got - w).abs() <= tolerance * w + 1e-8 && warmer < 2e-4,
        "{name}: {again:?} for {air:?}"
    );
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_humidity_leads_back_to_the_state(t_c in temperature(), percent in percent(), p_pa in pressure()) {
        let Some(state) = air(t_c, over_water(percent), p_pa) else {
            // Refused only where water boils first.
            prop_assert!(percent * 0.01 * humidity::saturated_over_water(t_c, p_pa) > 0.98, "{t_c} °C, {percent} %");
            return Ok(());
        };
        same("ratio", state, air(t_c, Humidity::Ratio(state.humidity_ratio()), p_pa))?;
        same("enthalpy", state, air(t_c, Humidity::Enthalpy(state.enthalpy()), p_pa))?;
        let wet_bulb = state.wet_bulb().value;
        // Saturation over ice and over water differ by up to 1.5e-4 at 0 °C: what a half-frozen wick cannot tell.
        let tolerance = if wet_bulb.to_celsius() == 0.0 { 1.5e-4 } else { 2e-5 };
        within(tolerance, "wet bulb", state, air(t_c, Humidity::WetBulb(wet_bulb), p_pa))?;
        let value = state.relative_humidity(Over::Ice);
        same("over ice", state, air(t_c, Humidity::Relative { value, over: Over::Ice }, p_pa))?;
        if let Some(dew_point) = state.dew_point() {
            same("dew point", state, air(t_c, Humidity::DewPoint(dew_point), p_pa))?;
            let value = state.relative_humidity(Over::Water);
            let again = |pair| MoistAir::new(pair, Pressure::pascals(p_pa)).ok().map(|air| air.value);
            same("dew point and relative", state, again(Pair::DewPointAndRelative { dew_point, value, over: Over::Water }))?;
            let ratio = state.humidity_ratio();
            same("ratio and relative", state, again(Pair::RatioAndRelative { ratio, value, over: Over::Water }))?;
        }
        if let Some(frost_point) = state.frost_point() {
            same("frost point", state, air(t_c, Humidity::FrostPoint(frost_point), p_pa))?;
        }
    }

    #[test]
    fn more_humid_air_has_more_of_everything(t_c in temperature(), percent in 0.01..99.0_f64, p_pa in pressure()) {
        let (Some(drier), Some(wetter)) = (air(t_c, over_water(percent), p_pa), air(t_c, over_water(percent + 1.0), p_pa)) else {
            return Ok(());
        };
        prop_assert!(drier.humidity_ratio() < wetter.humidity_ratio(), "humidity ratio");
        prop_assert!(drier.enthalpy() < wetter.enthalpy(), "enthalpy");
        prop_assert!(drier.density() > wetter.density(), "vapour is lighter than air");
        if let (Some(dry), Some(wet)) = (drier.dew_point(), wetter.dew_point()) {
            prop_assert!(dry < wet, "dew point");
        }
        if let (Some(dry), Some(wet)) = (drier.frost_point(), wetter.frost_point()) {
            prop_assert!(dry < wet, "frost point");
        }
    }

    #[test]
    fn the_wet_bulb_lies_between_dew_point_and_dry_bulb(t_c in 0.5..95.0_f64, percent in percent(), p_pa in pressure()) {
        let Some(state) = air(t_c, over_water(percent), p_pa) else { return Ok(()) };
        let wet_bulb = state.wet_bulb().value;
        prop_assert!(wet_bulb <= state.temperature(), "{wet_bulb:?} in {state:?}");
        let point = if wet_bulb.to_celsius() <= 0.0 { state.frost_point() } else { state.dew_point() };
        if let Some(point) = point {
            prop_assert!((point - wet_bulb).to_kelvins() <= 1e-4, "{wet_bulb:?} below {point:?} in {state:?}");
        }
    }

    #[test]
    fn saturation_rises_with_temperature(t_c in -60.0..94.0_f64, p_pa in pressure(), step in 0.001..1.0_f64) {
        prop_assert!(humidity::saturated_over_water(t_c, p_pa) < humidity::saturated_over_water(t_c + step, p_pa), "over water");
        if t_c + step <= 0.01 {
            prop_assert!(humidity::saturated_over_ice(t_c, p_pa) < humidity::saturated_over_ice(t_c + step, p_pa), "over ice");
            prop_assert!(humidity::saturated_over_ice(t_c, p_pa) < 1.0002 * humidity::saturated_over_water(t_c, p_pa), "ice holds less");
        }
    }

    #[test]
    fn only_numbers_come_out(pair in any_pair(), p_pa in prop_oneof![4 => pressure(), 1 => number()]) {
        let air = match MoistAir::new(pair, Pressure::pascals(p_pa)) {
            Ok(air) => air,
            Err(error) => {
                prop_assert!(!error.to_string().contains("NaN"), "{error}");
                return Ok(());
            }
        };
        let state = air.value;
        let numbers = [
            state.temperature().to_celsius(),
            state.humidity_ratio().to_kilograms_per_kilogram(),
            state.mole_fraction(),
            state.vapour_pressure().to_pascals(),
            state.relative_humidity(Over::Water).to_fraction(),
            state.relative_humidity(Over::Ice).to_fraction(),
            state.degree_of_saturation(Over::Water),
            state.degree_of_saturation(Over::Ice),
            state.dew_point().map_or(0.0, Temperature::to_celsius),
            state.frost_point().map_or(0.0, Temperature::to_celsius),
            state.wet_bulb().value.to_celsius(),
            state.enthalpy().to_joules_per_kilogram(),
            state.specific_volume().to_cubic_metres_per_kilogram(),
            state.density().to_kilograms_per_cubic_metre(),
            state.heat_capacity_j_kgk(),
            state.viscosity_pa_s(),
            state.conductivity_w_mk(),
            state.diffusivity_m2_s(),
        ];
        prop_assert!(numbers.iter().all(|number| number.is_finite()), "{numbers:?} of {pair:?}");
        prop_assert!(state.wet_bulb().notes.iter().all(|note| !matches!(note, dewrun_moist_air::AirNote::WetBulbBracket { .. })), "{state:?}");
        prop_assert!(state.relative_humidity(Over::Water).to_fraction() <= 1.0 + 1e-9, "over saturation: {state:?}");
        for note in air.notes {
            prop_assert!(!note.to_string().is_empty(), "a note is a sentence");
        }
    }
}
