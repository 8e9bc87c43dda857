//! What a year comes to: wet hours, litres, months, the worst day, the hours that a route is to be designed for, and those that need no tube relation.

mod design;
mod months;
mod proof;
mod water;

pub use design::{RouteDesign, route_design};
pub use months::{Month, months};
pub use proof::{COLDER_BY_K, dry_by_bound};
pub use water::{CriticalWeek, WaterBalance, WaterSum, WaterTrouble, water_balance, water_sum};

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::mixture::mole_fraction;

use crate::hours::Hours;
use crate::sums::HourSum;

/// An hour that deposits more than this, kg, over both tubes is wet; a part of an hour that part of it.
///
/// The bare sign of the flux depends on the cells.
const WET_KG_H: f64 = 1e-5;
/// Suspended water at the sensor or the outlet from which on an hour is misty, kg per kg of dry air.
const MISTY: f64 = 1e-5;
/// Seconds of an hour.
const HOUR_S: f64 = 3600.0;
/// Hours of a day.
const DAY: usize = 24;

/// A year, or any row of hours, in a few numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct YearSum {
    /// All of it, h.
    pub hours: f64,
    /// Time in which more than 0.01 g an hour deposits over both tubes, h.
    pub wet_hours: f64,
    /// Time in which mist reaches the sensor, h.
    pub mist_hours: f64,
    /// Time in which mist leaves the exhaust, h.
    pub outlet_mist_hours: f64,
    /// Time in which ice lies on a wall, h.
    pub frost_hours: f64,
    /// Time in which the chamber's relative humidity is above the device's rating, h; none where no rating is known.
    pub hours_above_rating: Option<f64>,
    /// Highest relative humidity over water in the chamber.
    pub most_humid_chamber: f64,
    /// What deposited on the walls, kg.
    pub condensed_kg: f64,
    /// What dried off them, kg.
    pub evaporated_kg: f64,
    /// What ran off, kg.
    pub drained_kg: f64,
    /// What passed the sensor as mist, kg.
    pub mist_kg: f64,
    /// Coldest wall from one bore behind an inlet on, °C.
    pub coldest_wall_c: f64,
    /// The first hour that is wet.
    pub first_wet_hour: Option<usize>,
    /// First hour of the day, counted from the start, on which most deposited, and how much, kg.
    pub worst_day: Option<(usize, f64)>,
    /// What ran off of ice that thawed, kg.
    pub slug_kg: f64,
    /// Times that the last ice thawed or was taken up.
    pub thaws: u32,
}

/// Whether an hour is wet.
#[must_use]
pub fn is_wet(hour: &HourSum) -> bool {
    WET_KG_H * hour.seconds < hour.condensed_kg * HOUR_S
}

/// Relative humidity over water in the chamber in an hour; 1 in mist.
#[must_use]
pub fn chamber_humidity(hours: &Hours, position: usize, hour: &HourSum) -> f64 {
    let p_pa = hours.hour(position).map_or(f64::NAN, |hour| hour.p_pa);
    let chamber = &hour.chamber;
    let saturated = saturated_over_water(chamber.t_c, p_pa);
    let humidity = mole_fraction(chamber.w) / saturated;
    if 0.0 < chamber.mist && 0.0 <= chamber.t_c {
        1.0
    } else {
        humidity
    }
}

/// Sums up hours that were marched; the rating is the highest relative humidity, over water, that the device bears.
#[must_use]
pub fn year_sum(hours: &Hours, sums: &[HourSum], rating: Option<f64>) -> YearSum {
    let total = |of: fn(&HourSum) -> f64| sums.iter().map(of).sum::<f64>();
    let time = |holds: &dyn Fn(usize, &HourSum) -> bool| -> f64 {
        let held = sums
            .iter()
            .enumerate()
            .filter(|(at, hour)| holds(*at, hour));
        held.map(|(_, hour)| hour.seconds / HOUR_S).sum()
    };
    let humid = |at: usize, hour: &HourSum| chamber_humidity(hours, at, hour);
    YearSum {
        hours: total(|hour| hour.seconds) / HOUR_S,
        wet_hours: time(&|_, hour| is_wet(hour)),
        mist_hours: time(&|_, hour| MISTY < hour.chamber.mist),
        outlet_mist_hours: time(&|_, hour| MISTY < hour.outlet.mist),
        frost_hours: time(&|_, hour| 0.0 < hour.frost_kg),
        hours_above_rating: rating.map(|most| time(&|at, hour| most < humid(at, hour))),
        most_humid_chamber: sums
            .iter()
            .enumerate()
            .map(|(at, hour)| humid(at, hour))
            .fold(0.0, f64::max),
        condensed_kg: total(|hour| hour.condensed_kg),
        evaporated_kg: total(|hour| hour.evaporated_kg),
        drained_kg: total(|hour| hour.drained_kg),
        mist_kg: total(|hour| hour.dry_air_kg * hour.chamber.mist),
        coldest_wall_c: sums
            .iter()
            .map(|hour| hour.coldest_wall_c)
            .fold(f64::INFINITY, f64::min),
        first_wet_hour: sums.iter().position(is_wet),
        worst_day: worst_day(sums),
        slug_kg: total(|hour| hour.slug_kg),
        thaws: thaws(sums),
    }
}

/// The day, counted from the start in whole days of hours, on which most deposited; none where nothing did.
fn worst_day(sums: &[HourSum]) -> Option<(usize, f64)> {
    let days = sums.chunks(DAY).enumerate().map(|(day, hours)| {
        let kg: f64 = hours.iter().map(|hour| hour.condensed_kg).sum();
        (day * DAY, kg)
    });
    days.filter(|(_, kg)| 0.0 < *kg)
        .fold(None, |worst: Option<(usize, f64)>, day| match worst {
            Some(known) if day.1 <= known.1 => Some(known),
            _ => Some(day),
        })
}

fn thaws(sums: &[HourSum]) -> u32 {
    let pairs = sums.iter().zip(sums.iter().skip(1));
    let thawed = pairs.filter(|(before, after)| 0.0 < before.frost_kg && after.frost_kg == 0.0);
    u32::try_from(thawed.count()).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hours::Hour;
    use crate::sums::AirState;

    /// An hour by hand: what deposits, g, the coldest wall, °C, and the chamber, °C and kg/kg.
    fn hour(grams: f64, wall_c: f64, chamber: (f64, f64)) -> HourSum {
        let state = AirState {
            t_c: chamber.0,
            w: chamber.1,
            mist: 0.0,
        };
        HourSum {
            seconds: 3600.0,
            dry_air_kg: 2.0,
            condensed_kg: 1e-3 * grams,
            coldest_wall_c: wall_c,
            frost_kg: if wall_c < 0.0 { 1e-3 * grams } else { 0.0 },
            chamber: state,
            outlet: state,
            ..HourSum::NONE
        }
    }

    fn hours(count: usize) -> Hours {
        let mut hours = Hours::of_spaces(0);
        for _ in 0..count {
            let hour = Hour {
                seconds: 3600.0,
                air_c: 20.0,
                w: 0.01,
                p_pa: 101_325.0,
                dry_air_kg_s: 5e-4,
            };
            hours.push(hour, []);
        }
        hours
    }

    /// 48 hours: 0.02 g in hours 3 and 30, 0.009 g in hour 4, 1 g in hour 31 with the wall at −1 °C, else dry at 5 °C.
    ///
    /// Wet are 3, 30 and 31; the second day has 1.02 g; one thaw, after hour 31.
    /// The chamber is at 20 °C, 0.0133 kg/kg in hour 31: x = 0.0133/0.635245 = 0.020937 of 0.023177 is 90.3 %; 70 % else.
    #[test]
    fn two_days_by_hand() {
        let mut sums = vec![hour(0.0, 5.0, (20.0, 0.010_3)); 48];
        sums[3] = hour(0.02, 5.0, (20.0, 0.010_3));
        sums[4] = hour(0.009, 5.0, (20.0, 0.010_3));
        sums[30] = hour(0.02, 5.0, (20.0, 0.010_3));
        sums[31] = hour(1.0, -1.0, (20.0, 0.013_3));
        let year = year_sum(&hours(48), &sums, Some(0.85));
        assert_eq!((year.hours, year.wet_hours), (48.0, 3.0), "{year:?}");
        assert_eq!(year.first_wet_hour, Some(3), "{year:?}");
        assert_eq!(year.frost_hours, 1.0, "{year:?}");
        assert_eq!(year.hours_above_rating, Some(1.0), "{year:?}");
        assert_eq!(year.thaws, 1, "{year:?}");
        assert!((year.most_humid_chamber - 0.903).abs() < 2e-3, "{year:?}");
        let (day, kg) = year.worst_day.expect("a wet day");
        assert!(day == 24 && (kg - 1.02e-3).abs() < 1e-12, "{year:?}");
    }

    /// Four steps of a quarter of an hour, each with 0.003 g: above a quarter of 0.01 g, so one hour is wet.
    #[test]
    fn the_threshold_goes_with_the_step() {
        let quarter = HourSum {
            seconds: 900.0,
            ..hour(0.003, 5.0, (20.0, 0.01))
        };
        let year = year_sum(&hours(4), &[quarter; 4], None);
        assert_eq!(year.wet_hours, 1.0, "{year:?}");
        assert_eq!(year.hours_above_rating, None, "no rating is known");
    }
}
