//! Every number of an outcome, and one number that stands for all their bits.

use dewrun_run::{AirPoint, Outcome, ProfilePoint, TubeOutcome};

/// Every number of an outcome, in a fixed order.
#[must_use]
pub fn numbers(outcome: &Outcome) -> Vec<f64> {
    let balance = &outcome.balance;
    let mut numbers = vec![
        outcome.dry_air.to_kilograms_per_second(),
        balance.water_left_over.to_kilograms_per_second(),
        balance.water_in.to_kilograms_per_second(),
        balance.energy_left_over.to_watts(),
        balance.energy_turned_over.to_watts(),
    ];
    for point in [&outcome.duct_air, &outcome.chamber] {
        air(point, &mut numbers);
    }
    for tube in [&outcome.intake].into_iter().chain(&outcome.exhaust) {
        of_tube(tube, &mut numbers);
    }
    numbers
}

fn of_tube(tube: &TubeOutcome, numbers: &mut Vec<f64>) {
    air(&tube.outlet, numbers);
    numbers.extend([
        tube.condensate.to_kilograms_per_second(),
        tube.sweat.to_kilograms_per_second(),
        tube.most_mist.to_kilograms_per_kilogram(),
    ]);
    for stretch in &tube.wet {
        numbers.extend([stretch.from.to_metres(), stretch.to.to_metres()]);
    }
    if let Some(wall) = &tube.coldest_wall {
        numbers.extend([wall.x.to_metres(), wall.temperature.to_celsius()]);
    }
    if let Some(mist) = &tube.near_wall_mist {
        numbers.extend([
            mist.x.to_metres(),
            mist.saturation_ratio,
            mist.upper_bound.to_kilograms_per_second(),
        ]);
    }
    for leg in &tube.legs {
        numbers.extend([
            leg.from.to_metres(),
            leg.to.to_metres(),
            leg.condensate.to_kilograms_per_second(),
            leg.frost.to_kilograms_per_second(),
            leg.sweat.to_kilograms_per_second(),
            leg.rime.to_kilograms_per_second(),
            leg.lowest_wall.to_celsius(),
            leg.heat_to_space.to_watts(),
        ]);
        numbers.extend(leg.first_wet.map(dewrun_quantity::Length::to_metres));
        air(&leg.air_at_end, numbers);
    }
    for place in &tube.profile {
        profile(place, numbers);
    }
}

fn air(point: &AirPoint, numbers: &mut Vec<f64>) {
    numbers.extend([
        point.temperature.to_celsius(),
        point.humidity_ratio.to_kilograms_per_kilogram(),
        point.mist.to_kilograms_per_kilogram(),
        point.relative_humidity.to_fraction(),
    ]);
    numbers.extend(
        point
            .dew_point
            .map(dewrun_quantity::Temperature::to_celsius),
    );
}

fn profile(point: &ProfilePoint, numbers: &mut Vec<f64>) {
    numbers.extend([
        point.x.to_metres(),
        point.air.to_celsius(),
        point.inner_wall.to_celsius(),
        point.outer_surface.to_celsius(),
        point.humidity_ratio.to_kilograms_per_kilogram(),
        point.mist.to_kilograms_per_kilogram(),
        point.deposit.to_kilograms_per_second_metre(),
        point.frozen_share,
        point.sweat.to_kilograms_per_second_metre(),
    ]);
    numbers.extend(
        point
            .dew_point
            .map(dewrun_quantity::Temperature::to_celsius),
    );
}

/// One number of all bits of an outcome: the same on two machines only where every number is.
///
/// # Source
/// Fowler, Noll & Vo, FNV-1a, 64 bits, over 64-bit words.
#[must_use]
pub fn fingerprint(outcome: &Outcome) -> u64 {
    numbers(outcome)
        .into_iter()
        .fold(0xcbf2_9ce4_8422_2325, |hash, number| {
            (hash ^ number.to_bits()).wrapping_mul(0x0000_0100_0000_01b3)
        })
}
