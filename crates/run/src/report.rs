//! From what the march leaves to what a run answers.

use dewrun_moist_air::fast::{SaturationCurve, dew_or_frost_point_of_c, dew_point_of_c};
use dewrun_moist_air::mixture::mole_fraction;
use dewrun_quantity::{
    HumidityRatio, Length, MassFlow, MassFlowPerLength, Power, RelativeHumidity, Temperature,
};
use dewrun_tube::{SegmentSum, Station, StreamState, Trace};

use crate::outcome::{
    AirPoint, LegOutcome, NearWallMist, ProfilePoint, Stretch, TubeOutcome, WallPoint,
};

/// Moist air at one place.
pub(crate) fn air_point(state: &StreamState, p_pa: f64) -> AirPoint {
    let x = mole_fraction(state.w);
    AirPoint {
        temperature: Temperature::celsius(state.t_c),
        humidity_ratio: HumidityRatio::kilograms_per_kilogram(state.w),
        mist: HumidityRatio::kilograms_per_kilogram(state.mist),
        relative_humidity: relative_humidity(state.t_c, state.w, p_pa),
        dew_point: dew_point_of_c(x, p_pa).map(Temperature::celsius),
    }
}

/// Relative humidity over water of an air at `t_c` that holds `w` of vapour.
pub(crate) fn relative_humidity(t_c: f64, w: f64, p_pa: f64) -> RelativeHumidity {
    let saturated = SaturationCurve::at(p_pa).mole_fraction_over_water(t_c).0;
    RelativeHumidity::fraction(mole_fraction(w) / saturated)
}

/// One tube.
pub(crate) fn tube_outcome(trace: &Trace, p_pa: f64) -> TubeOutcome {
    let legs = trace
        .segments
        .iter()
        .map(|sum| leg_outcome(sum, &trace.wet, p_pa))
        .collect();
    let mut profile: Vec<ProfilePoint> = Vec::with_capacity(trace.stations.len());
    for station in &trace.stations {
        profile.push(profile_point(station, profile.last(), p_pa));
    }
    TubeOutcome {
        legs,
        outlet: air_point(&trace.end.state(), p_pa),
        condensate: MassFlow::kilograms_per_second(trace.condensate_kg_s()),
        sweat: MassFlow::kilograms_per_second(trace.sweat_kg_s()),
        wet: trace
            .wet
            .iter()
            .map(|&(from, to)| Stretch {
                from: Length::metres(from),
                to: Length::metres(to),
            })
            .collect(),
        coldest_wall: trace.coldest_wall.map(|(x, t)| WallPoint {
            x: Length::metres(x),
            temperature: Temperature::celsius(t),
        }),
        most_mist: HumidityRatio::kilograms_per_kilogram(trace.most_mist),
        near_wall_mist: trace.near_wall.map(|near| NearWallMist {
            x: Length::metres(near.x_m),
            saturation_ratio: near.saturation_ratio,
            upper_bound: MassFlow::kilograms_per_second(near.bound_kg_s),
        }),
        profile,
    }
}

fn leg_outcome(sum: &SegmentSum, wet: &[(f64, f64)], p_pa: f64) -> LegOutcome {
    let end = StreamState {
        t_c: sum.end_c,
        w: sum.end_w,
        mist: sum.end_mist,
        enthalpy_j_kg: 0.0,
    };
    let first_wet = wet
        .iter()
        .find(|&&(from, to)| from < sum.to_m && sum.from_m < to)
        .map(|&(from, _)| Length::metres(from.max(sum.from_m)));
    LegOutcome {
        from: Length::metres(sum.from_m),
        to: Length::metres(sum.to_m),
        condensate: MassFlow::kilograms_per_second(sum.condensate_kg_s),
        frost: MassFlow::kilograms_per_second(sum.frost_kg_s),
        sweat: MassFlow::kilograms_per_second(sum.sweat_kg_s),
        rime: MassFlow::kilograms_per_second(sum.rime_kg_s),
        first_wet,
        lowest_wall: Temperature::celsius(sum.lowest_wall_c),
        air_at_end: air_point(&end, p_pa),
        heat_to_space: Power::watts(sum.loss_w),
    }
}

/// One place; where no water has left the air since the last one the dew point is the same.
fn profile_point(station: &Station, last: Option<&ProfilePoint>, p_pa: f64) -> ProfilePoint {
    let is_frozen = station.wall_c < 0.0;
    let alike = last.filter(|last| {
        last.humidity_ratio.to_kilograms_per_kilogram() == station.w
            && (last.inner_wall.to_celsius() < 0.0) == is_frozen
    });
    let x = mole_fraction(station.w);
    let dew_point = match alike {
        Some(last) => last.dew_point,
        None if is_frozen => dew_or_frost_point_of_c(x, p_pa).map(Temperature::celsius),
        None => dew_point_of_c(x, p_pa).map(Temperature::celsius),
    };
    ProfilePoint {
        x: Length::metres(station.x_m),
        leg: station.segment,
        air: Temperature::celsius(station.air_c),
        inner_wall: Temperature::celsius(station.wall_c),
        outer_surface: Temperature::celsius(station.surface_c),
        dew_point,
        humidity_ratio: HumidityRatio::kilograms_per_kilogram(station.w),
        mist: HumidityRatio::kilograms_per_kilogram(station.mist),
        deposit: MassFlowPerLength::kilograms_per_second_metre(station.deposit_kg_sm),
        frozen_share: station.frozen_share,
        sweat: MassFlowPerLength::kilograms_per_second_metre(station.sweat_kg_sm),
    }
}
