//! Every number of an outcome, and one number that stands for all their bits.

use dewrun_run::{AirPoint, HangerAdvice, Outcome, ProfilePoint, TubeOutcome, TubeWater, Whole};

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
    fingerprint_of(&numbers(outcome))
}

/// The same of any numbers.
#[must_use]
pub fn fingerprint_of(numbers: &[f64]) -> u64 {
    numbers.iter().fold(0xcbf2_9ce4_8422_2325, |hash, number| {
        (hash ^ number.to_bits()).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

/// The numbers of an answer on water and air that everything else there follows from, in a fixed order.
#[must_use]
pub fn whole_numbers(whole: &Whole) -> Vec<f64> {
    let mut numbers = vec![whole.airflow.fan_speed];
    let states = whole.airflow.states.iter();
    let states = states.map(|state| (&state.airflow, state.reading));
    let faults = whole.airflow.faults.iter();
    let faults = faults.map(|fault| (&fault.airflow, fault.reading));
    for (flow, reading) in states.chain(faults) {
        numbers.extend([
            flow.sensor.to_cubic_metres_per_second(),
            flow.share,
            reading,
            flow.imbalance.to_pascals(),
        ]);
        numbers.extend(flow.transport.map(|band| band.ninety_percent.to_seconds()));
    }
    for water in [&whole.intake].into_iter().chain(&whole.exhaust) {
        of_water(water, &mut numbers);
    }
    numbers
}

fn of_water(water: &TubeWater, numbers: &mut Vec<f64>) {
    for leg in &water.legs {
        numbers.extend([
            leg.report.holds.to_kilograms(),
            leg.air_speed.to_metres_per_second(),
        ]);
        if let HangerAdvice::Spacing { largest, .. } = leg.hangers {
            numbers.push(largest.to_metres());
        }
    }
    for low in &water.low_points {
        numbers.extend([
            low.at.to_metres(),
            low.rate.to_kilograms_per_second(),
            low.slug_volume.to_cubic_metres(),
            low.stand.depth.to_metres(),
            low.bubbling.to_pascals(),
        ]);
    }
    for trap in &water.traps {
        numbers.extend([
            trap.running.to_pascals(),
            trap.needs.seal.to_metres(),
            trap.opened.runs_out.to_kilograms(),
        ]);
        numbers.extend(trap.dries_out.map(dewrun_quantity::Time::to_seconds));
    }
    let times = water.troubles.iter().map(|one| one.after.to_seconds());
    numbers.extend(times);
    for ice in &water.ice {
        numbers.extend([ice.at.to_metres(), ice.free_share, ice.thaw.to_kilograms()]);
    }
    let after = water.drainage.after(dewrun_quantity::Time::hours(100.0));
    numbers.extend([
        after.standing.to_kilograms(),
        after.carried_off.to_kilograms(),
    ]);
}
