//! Random hours for a random route: days and fronts about a state that the seed draws, walls above and below 0 °C.

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio};
use dewrun_quantity::{MassPerArea, Time};
use dewrun_run::{Run, evaluate, water_and_air};
use dewrun_year::{Around, Hour, Hours, Route, Visits, Water};

use crate::installations::installation;
use crate::routes::{Draw, route};

/// A random route and so many hours of weather.
///
/// # Errors
/// A sentence where the route can't be evaluated.
pub fn route_and_hours(seed: u64, count: usize) -> Result<(Route, Hours), String> {
    let run = route(seed);
    let retained = MassPerArea::grams_per_square_metre(50.0);
    let route = Route::of_run(&run, retained).map_err(|error| error.to_string())?;
    Ok((route, weather(&run, seed, count)))
}

/// The same with the water of a random installation, visited each week; every third day the duct's fan stands.
///
/// # Errors
/// A sentence where the route or its installation can't be evaluated.
pub fn route_hours_and_water(seed: u64, count: usize) -> Result<(Route, Hours, Water), String> {
    let said = |error: &dyn core::fmt::Display| error.to_string();
    let run = route(seed);
    let installation = installation(&run, seed);
    let steady = evaluate(&run).map_err(|error| said(&error))?.value;
    let whole = water_and_air(&run, &installation, &steady).map_err(|error| said(&error))?;
    let visits = Visits::Every(Time::days(7.0));
    let water = Water::of_run(&run, &installation, &steady, &whole, visits);
    let (route, hours) = route_and_hours(seed, count)?;
    let mut with_fan = Hours::of_spaces(hours.spaces());
    for h in 0..hours.len() {
        let spaces = (0..hours.spaces()).filter_map(|space| hours.around(h, space).copied());
        if let Some(hour) = hours.hour(h) {
            with_fan.push(*hour, spaces);
        }
        if h / 24 % 3 == 2 {
            with_fan.duct_stands();
        }
    }
    Ok((route, with_fan, water.map_err(|error| said(&error))?))
}

fn weather(run: &Run, seed: u64, count: usize) -> Hours {
    let mut draw = Draw::new(seed ^ 0x5eed);
    let p_pa = run.pressure.to_pascals();
    let litres = run.flow.volume.to_litres_per_minute();
    let mut hours = Hours::of_spaces(run.spaces.len());
    let (mut air_c, mut rh) = (draw.between(0.0, 32.0), 0.7);
    for h in 0..count {
        if draw.chance(0.03) {
            (air_c, rh) = (draw.between(-5.0, 35.0), draw.between(0.2, 1.0));
        }
        let turn = f64::from(u32::try_from(h % 24).unwrap_or(0)) / 24.0;
        let swing = 1.0 - (4.0 * turn - 2.0).abs();
        let air_c = air_c + 4.0 * swing;
        let humidity = (rh - 0.1 * swing).clamp(0.05, 1.0);
        let w = humidity_ratio(humidity * saturated_over_water(air_c, p_pa));
        let hour = Hour {
            seconds: 3600.0,
            air_c,
            w,
            p_pa,
            dry_air_kg_s: litres / 60_000.0 * density_kg_m3(air_c, w, p_pa) / (1.0 + w),
        };
        let spaces = run.spaces.iter().map(|space| {
            let space_c = space.temperature.to_celsius() + 3.0 * swing;
            Around {
                air_c: space_c,
                w: humidity_ratio(0.5 * saturated_over_water(space_c, p_pa)),
                radiant_c: space_c,
                wind_m_s: space.wind.to_metres_per_second(),
            }
        });
        hours.push(hour, spaces);
    }
    hours
}
