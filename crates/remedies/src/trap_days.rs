//! How soon a trap that is emptied by hand fills in the worst part of a year.

use dewrun_season::WaterYear;
use dewrun_season::told::StoreKind;

/// Hours of a day.
const DAY_H: f64 = 24.0;
/// Seconds of an hour.
const HOUR_S: f64 = 3600.0;

/// The shortest time in which a trap of some capacity fills, days; none where none does.
///
/// Of each trap's inflow, hour by hour, the shortest row of hours that brings its capacity; what passes a full trap counts for all that are full.
pub(crate) fn trap_days(water: &WaterYear) -> Option<f64> {
    let count = water.stores.len();
    let traps = water.stores.iter().enumerate().filter(|(_, store)| {
        matches!(store.kind, StoreKind::Trap(_))
            && 0.0 < store.capacity_kg
            && store.capacity_kg.is_finite()
    });
    traps
        .filter_map(|(at, store)| {
            let levels = water.levels_kg.iter().skip(at).step_by(count).copied();
            let mut before_kg = 0.0;
            let inflow: Vec<(f64, f64)> = (water.hours.iter().zip(levels))
                .map(|(hour, level_kg)| {
                    let mut came_kg: f64 = (level_kg - before_kg).max(0.0);
                    if store.capacity_kg <= level_kg + 1e-9 {
                        came_kg += hour.went.overflowed_kg;
                    }
                    before_kg = level_kg;
                    (hour.seconds / HOUR_S, came_kg)
                })
                .collect();
            shortest_h(&inflow, store.capacity_kg)
        })
        .map(|hours| hours / DAY_H)
        .min_by(f64::total_cmp)
}

/// The shortest row of hours that brings so much; none where all of them bring less.
fn shortest_h(inflow: &[(f64, f64)], wanted_kg: f64) -> Option<f64> {
    let mut shortest: Option<f64> = None;
    let (mut sum_kg, mut long_h) = (0.0, 0.0);
    let mut from = inflow.iter();
    for (hours, came_kg) in inflow {
        sum_kg += came_kg;
        long_h += hours;
        while wanted_kg <= sum_kg {
            shortest = Some(shortest.map_or(long_h, |one: f64| one.min(long_h)));
            let Some((first_h, first_kg)) = from.next() else {
                break;
            };
            sum_kg -= first_kg;
            long_h -= first_h;
        }
    }
    shortest
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 10 g an hour for 20 h, then nothing for a day, then 50 g an hour for 3 h: 120 g come soonest in the last three hours.
    #[test]
    fn the_worst_hours_fill_it_first() {
        let mut inflow = vec![(1.0, 0.010); 20];
        inflow.extend([(1.0, 0.0); 24]);
        inflow.extend([(1.0, 0.050); 3]);
        assert_eq!(shortest_h(&inflow, 0.115), Some(3.0), "three hours of 50 g");
        assert_eq!(
            shortest_h(&inflow, 0.185),
            Some(19.0),
            "19 of the first 20 hours"
        );
        assert_eq!(
            shortest_h(&inflow, 0.245),
            Some(37.0),
            "150 g, and before the day 95 g in ten hours"
        );
        assert_eq!(shortest_h(&inflow, 0.4), None, "350 g are all there is");
    }
}
