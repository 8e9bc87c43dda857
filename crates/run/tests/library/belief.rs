//! The rows can be believed: tubes have walls, airs exist, skies and spaces are as others measured them.

use dewrun_quantity::{Pressure, RelativeHumidity, Temperature};
use dewrun_run::air::{Humidity, MoistAir, Pair};
use dewrun_run::{
    library::{self, Cells},
    range,
};

#[test]
fn a_tube_is_a_tube() {
    for tube in library::tubes() {
        let (bore, outside) = (tube.bore, tube.outside_diameter);
        for (bore, outside) in [(bore.high, outside.low), (bore.low, outside.high)] {
            let wall_mm = (outside - bore).to_millimetres() / 2.0;
            assert!(
                (range::WALL.min..=range::WALL.max).contains(&wall_mm),
                "{}: a wall of {wall_mm} mm",
                tube.id
            );
        }
        let (short, long) = (tube.short_term_modulus, tube.long_term_modulus);
        assert!(
            long.low <= short.low && long.usual <= short.usual && long.high <= short.high,
            "{}: creep makes nothing stiffer",
            tube.id
        );
        let relative = tube.roughness.high / tube.bore.low;
        assert!(
            relative <= 0.2,
            "{}: a roughness of {relative} of the bore is no roughness",
            tube.id
        );
    }
}

#[test]
fn insulation_is_sold_in_rising_thicknesses() {
    for row in library::insulation() {
        let mm: Vec<f64> = row.thicknesses.iter().map(|t| t.to_millimetres()).collect();
        assert!(mm.is_sorted_by(|a, b| a < b), "{}: {mm:?}", row.id);
        assert!(
            mm.iter()
                .all(|mm| (3.0..=range::INSULATION.max).contains(mm)),
            "{}: {mm:?}",
            row.id
        );
    }
    let wool = library::find(library::insulation(), "insulation-glass-wool");
    assert!(
        wool.is_some_and(|wool| wool.cells == Cells::Open),
        "fibres let vapour in"
    );
}

#[test]
fn every_corner_of_a_span_is_an_air_that_exists() {
    let pressure = Pressure::pascals(101_325.0);
    let spaces = library::spaces().iter();
    let spaces = spaces.map(|row| (row.id, row.temperature, row.humidity.span()));
    let ducts = library::duct_air().iter();
    let ducts = ducts.map(|row| (row.id, row.temperature, row.humidity.span()));
    for (id, temperature, humidity) in spaces.chain(ducts) {
        for temperature in [temperature.low, temperature.usual, temperature.high] {
            for humidity in [humidity.low, humidity.usual, humidity.high] {
                let air = MoistAir::new(Pair::Temperature(temperature, humidity), pressure);
                assert!(
                    air.is_ok(),
                    "{id}: {temperature:?} with {humidity:?}: {air:?}"
                );
            }
        }
    }
}

#[test]
fn pool_air_is_as_humid_as_pools_are() {
    // ASHRAE Handbook HVAC Applications (2019), natatoriums: 50 to 60 % relative humidity,
    // which by its chapter on psychrometrics is 11.8 g/kg at 28 °C and 50 %, 18.1 g/kg at 32 °C and 60 %.
    let pool = library::find(library::duct_air(), "pool-hall").expect("it is in the list");
    let usual = Pair::Temperature(pool.temperature.usual, pool.humidity.span().usual);
    let air = MoistAir::new(usual, Pressure::pascals(101_325.0))
        .expect("it exists")
        .value;
    let ratio_g_kg = air.humidity_ratio().to_grams_per_kilogram();
    assert!((11.8..=18.1).contains(&ratio_g_kg), "{ratio_g_kg} g/kg");
}

#[test]
fn a_clear_sky_is_as_cold_as_swinbank_measured() {
    // W. C. Swinbank, Q. J. R. Meteorol. Soc. 89 (1963) 339-348: sky temperature 0.0552 T^1.5, K;
    // half of it in sight: the mean of the fourth powers.
    for id in ["roof-winter-night", "roof-humid-night"] {
        let roof = library::find(library::spaces(), id).expect("it is in the list");
        let t_k = roof.temperature.usual.to_kelvin();
        let sky_k = 0.0552 * t_k * t_k.sqrt();
        let fourth = |t_k: f64| t_k * t_k * t_k * t_k;
        let half_k = (f64::midpoint(fourth(t_k), fourth(sky_k))).sqrt().sqrt();
        let radiant = roof.radiant_minus_air.expect("roofs have it");
        let (low_k, usual_k) = (radiant.low.to_kelvins(), radiant.usual.to_kelvins());
        assert!(
            (half_k - t_k - usual_k).abs() <= 1.0,
            "{id}: half the sky is {} K below the air, not {usual_k}",
            t_k - half_k
        );
        assert!(
            (sky_k - t_k - low_k).abs() <= 1.0,
            "{id}: the whole sky is {} K below the air, not {low_k}",
            t_k - sky_k
        );
    }
}

#[test]
fn a_space_couples_as_the_standard_has_it() {
    // EN 12831-1:2017, annex B, table B.2.
    for (id, usual) in [
        ("corridor", 0.0),            // inside, without external walls
        ("shaft", 0.4),               // one external wall
        ("plant-room-unheated", 0.6), // two external walls with doors
        ("loft-insulated", 0.7),      // insulated roof
        ("loft-ventilated", 1.0),     // high ventilation rate
    ] {
        let space = library::find(library::spaces(), id).expect("it is in the list");
        assert_eq!(space.coupling.usual, usual, "{id}");
    }
    // With that temperature outdoors and 20 °C inside, the usual temperature is the one that the coupling gives.
    for (id, outdoors_c) in [
        ("loft-insulated", -10.0),
        ("shaft-heating", -10.0),
        ("plant-room-unheated", -10.0),
        ("loft-ventilated", -10.0),
        ("loft-ventilated-fog", 8.0),
        ("shaft-fog", 8.0),
        ("plant-room-unheated-fog", 8.0),
    ] {
        let space = library::find(library::spaces(), id).expect("it is in the list");
        let t_c = 20.0 + (outdoors_c - 20.0) * space.coupling.usual;
        let usual_c = space.temperature.usual.to_celsius();
        assert!(
            (t_c - usual_c).abs() <= 2.0,
            "{id}: {usual_c} °C, by coupling {t_c} °C"
        );
    }
}

#[test]
fn droplets_are_possible_where_water_is_sprayed_or_condensed() {
    let possible = |id: &str| {
        let air = library::find(library::duct_air(), id).expect("it is in the list");
        air.droplets_possible
    };
    for id in [
        "make-up-untreated",
        "make-up-fog",
        "after-coil",
        "after-humidifier",
        "shower",
    ] {
        assert!(possible(id), "{id}: they are");
    }
    for id in ["make-up-heated", "return", "pool-hall"] {
        assert!(!possible(id), "{id}: they are not");
    }
}

#[test]
fn a_humidity_is_what_the_engine_takes() {
    let fog = library::find(library::duct_air(), "make-up-fog").expect("it is in the list");
    let Humidity::Relative { value, .. } = fog.humidity.span().usual else {
        panic!("fog is given by its relative humidity");
    };
    assert_eq!(value, RelativeHumidity::percent(100.0), "fog is saturated");
    let muggy = library::find(library::duct_air(), "make-up-untreated").expect("it is in the list");
    assert_eq!(
        muggy.humidity.span().usual,
        Humidity::DewPoint(Temperature::celsius(24.0)),
        "muggy air by its dew point"
    );
}
