//! Every pair of humidities makes the same air back.

use dewrun_moist_air::{Humidity, MoistAir, Over, Pair};
use dewrun_quantity::{Pressure, RelativeHumidity, Temperature};
use dewrun_tests::routes::Draw;

const STATES: u64 = 3000;

fn air(pair: Pair, pressure: Pressure, what: &str) -> MoistAir {
    match MoistAir::new(pair, pressure) {
        Ok(air) => air.value,
        Err(error) => panic!("{what}: {error}"),
    }
}

/// A random state: over water, so that it is one by every other pair too.
fn random(seed: u64) -> MoistAir {
    let mut draw = Draw::new(seed);
    let pressure = Pressure::pascals(draw.between(50e3, 120e3));
    let t_c = draw.between(-40.0, 80.0);
    let humidity = Humidity::Relative {
        value: RelativeHumidity::fraction(draw.between(0.01, 1.0)),
        over: Over::Water,
    };
    air(
        Pair::Temperature(Temperature::celsius(t_c), humidity),
        pressure,
        &format!("seed {seed}"),
    )
}

/// How near the humidity ratio comes back, as a share: a thousandth of the accuracy of a dew point of 0.01 K, some 1e-6.
const NEAR: f64 = 1e-6;

#[track_caller]
fn assert_same(back: &MoistAir, there: &MoistAir, near: f64, what: &str) {
    let off = back.humidity_ratio() / there.humidity_ratio() - 1.0;
    assert!(
        off.abs() <= near,
        "{what}: humidity ratio off by {off} of {there:?}"
    );
    let t = (back.temperature() - there.temperature()).to_kelvins();
    assert!(
        t.abs() <= 1e-4,
        "{what}: temperature off by {t} K of {there:?}"
    );
}

#[test]
fn temperature_with_each_humidity_makes_the_same_air() {
    for seed in 0..STATES {
        let there = random(seed);
        let mut humidities = vec![
            (Humidity::Ratio(there.humidity_ratio()), NEAR),
            (Humidity::Enthalpy(there.enthalpy()), NEAR),
            (relative(&there, Over::Water), NEAR),
            (relative(&there, Over::Ice), NEAR),
            // The dew point comes of a fit within 1e-5 K, some 1e-6 of vapour.
            (
                Humidity::DewPoint(there.dew_point().unwrap_or(there.temperature())),
                5e-6,
            ),
        ];
        humidities.extend(
            there
                .frost_point()
                .map(|point| (Humidity::FrostPoint(point), 5e-6)),
        );
        for (humidity, near) in humidities {
            let what = format!("seed {seed} by {}", humidity.name());
            let back = air(
                Pair::Temperature(there.temperature(), humidity),
                there.pressure(),
                &what,
            );
            assert_same(&back, &there, near, &what);
        }
    }
}

#[test]
fn temperature_with_wet_bulb_makes_the_same_air() {
    for seed in 0..STATES {
        let there = random(seed);
        let wet_bulb = Humidity::WetBulb(there.wet_bulb().value);
        let what = format!("seed {seed}");
        let back = air(
            Pair::Temperature(there.temperature(), wet_bulb),
            there.pressure(),
            &what,
        );
        // Cold dry air hardly cools a wick: there the same wet bulb is many humidities, and the amount is held instead.
        let off = (back.humidity_ratio() - there.humidity_ratio()).to_kilograms_per_kilogram();
        assert!(
            off.abs() <= 1e-8 + NEAR * there.humidity_ratio().to_kilograms_per_kilogram(),
            "{what}: {off} kg/kg of {there:?}"
        );
    }
}

#[test]
fn relative_humidity_with_each_amount_makes_the_same_air() {
    for seed in 0..STATES {
        let there = random(seed);
        let ratio = there.humidity_ratio();
        for over in [Over::Water, Over::Ice] {
            let value = there.relative_humidity(over);
            if RelativeHumidity::fraction(1.0) < value {
                continue;
            }
            let mut pairs = vec![Pair::RatioAndRelative { ratio, value, over }];
            pairs.extend(
                there
                    .dew_point()
                    .map(|dew_point| Pair::DewPointAndRelative {
                        dew_point,
                        value,
                        over,
                    }),
            );
            pairs.extend(
                there
                    .frost_point()
                    .map(|frost_point| Pair::FrostPointAndRelative {
                        frost_point,
                        value,
                        over,
                    }),
            );
            for pair in pairs {
                let what = format!("seed {seed} by {pair:?}");
                let back = air(pair, there.pressure(), &what);
                assert_same(&back, &there, 1e-5, &what);
            }
        }
    }
}

fn relative(air: &MoistAir, over: Over) -> Humidity {
    Humidity::Relative {
        value: air.relative_humidity(over),
        over,
    }
}
