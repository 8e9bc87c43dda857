//! The route of the figure `year`: that of `steady`, through the invented year of a warm and humid coast.

use core::f64::consts::TAU;

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio};
use dewrun_numeric::elementary::cos;
use dewrun_quantity::MassPerArea;
use dewrun_run::{Run, evaluate, water_and_air};
use dewrun_year::{Around, Hour, Hours, Route, Visits, Water};

use crate::full_route::full_route;
use crate::steady_route::steady_route;

/// Hours of a year.
const HOURS: u32 = 8760;
const LITRES_PER_MINUTE: f64 = 30.0;

/// The route and its hours; none where the route could not be evaluated, which a test rules out.
#[must_use]
pub fn year_route() -> Option<(Route, Hours)> {
    hours_of(&steady_route())
}

/// The ten legs of `steady_full` through the same year, with their water and their air.
#[must_use]
pub fn year_full_route() -> Option<(Route, Hours, Water)> {
    let (run, installation) = full_route().ok()?;
    let steady = evaluate(&run).ok()?.value;
    let whole = water_and_air(&run, &installation, &steady).ok()?;
    let visits = Visits::Every(installation.drain_interval);
    let water = Water::of_run(&run, &installation, &steady, &whole, visits).ok()?;
    let (route, hours) = hours_of(&run)?;
    Some((route, hours, water))
}

fn hours_of(run: &Run) -> Option<(Route, Hours)> {
    let route = Route::of_run(run, MassPerArea::grams_per_square_metre(50.0)).ok()?;
    let mut hours = Hours::of_spaces(run.spaces.len());
    for h in 0..HOURS {
        let hour = hour(f64::from(h));
        let spaces = run.spaces.iter().map(|space| {
            let air_c = space.temperature.to_celsius();
            Around {
                air_c,
                w: humidity_ratio(0.5 * saturated_over_water(air_c, hour.p_pa)),
                radiant_c: air_c,
                wind_m_s: 0.0,
            }
        });
        hours.push(hour, spaces);
    }
    Some((route, hours))
}

/// Seasons, fronts every few days, and days: 22 °C and a dew point of 17 °C in the mean.
fn hour(h: f64) -> Hour {
    let wave = |period: f64, peak: f64| cos(TAU * ((h - peak) / period).rem_euclid(1.0));
    let air_c =
        22.3 + 6.0 * wave(8760.0, 4700.0) + 3.0 * wave(131.0, 20.0) + 4.0 * wave(24.0, 15.0);
    let dew_c = 17.2 + 6.0 * wave(8760.0, 4900.0) + 4.0 * wave(131.0, 10.0) + 0.7 * wave(24.0, 9.0);
    let p_pa = 101_700.0 + 500.0 * wave(187.0, 0.0);
    let w = humidity_ratio(saturated_over_water(dew_c.min(air_c), p_pa));
    let density = density_kg_m3(air_c, w, p_pa);
    Hour {
        seconds: 3600.0,
        air_c,
        w,
        p_pa,
        dry_air_kg_s: LITRES_PER_MINUTE / 60_000.0 * density / (1.0 + w),
    }
}

#[cfg(test)]
mod tests {
    use dewrun_year::{Grid, March, Steps, water_balance, water_sum};

    use super::*;

    #[test]
    fn the_full_year_fills_its_trap() {
        let (route, hours, water) = year_full_route().expect("the route can be evaluated");
        let how = (Grid::PRODUCT, Steps::QuartersWhereDrying);
        let mut march = March::with_water(&route, &hours, how, water);
        assert!(march.advance(&hours, usize::MAX), "all hours");
        let sum = water_sum(march.water_hours());
        let balance = water_balance(&march);
        assert!(
            balance.off_kg.abs() <= 1e-9 * balance.entered_kg,
            "{balance:?}"
        );
        assert!(0 < sum.emptyings && 0.0 < sum.went.let_out_kg, "{sum:?}");
    }

    #[test]
    fn the_year_wets_and_dries() {
        let (route, hours) = year_route().expect("the route can be evaluated");
        let mut march = March::new(&route, &hours, Grid::PRODUCT, Steps::Whole);
        assert!(march.advance(&hours, usize::MAX), "all hours");
        let sum = |of: fn(&dewrun_year::HourSum) -> f64| march.hours().iter().map(of).sum::<f64>();
        let (drained, dried) = (sum(|hour| hour.drained_kg), sum(|hour| hour.evaporated_kg));
        assert!(
            10.0 < drained && 0.5 < dried,
            "{drained} kg run off, {dried} kg dry"
        );
    }
}
