//! The value of a figure in an answer.

use dewrun_quantity::{Length, MassFlow, Temperature};

use super::{Figure, Spot, films};
use crate::input::Run;
use crate::outcome::{AirPoint, LegOutcome, Outcome, TubeOutcome};
use crate::reading::Reading;
use crate::runs_past::runs_past;

/// The value of a computed figure at a spot, in the unit of its [`kind`](Figure::kind); none where it does not apply or the answer does not hold it.
#[must_use]
pub fn value(run: &Run, outcome: &Outcome, figure: Figure, spot: Spot) -> Option<f64> {
    of_run(outcome, figure)
        .or_else(|| of_tube(spot.answer(outcome)?, figure))
        .or_else(|| of_leg(leg(outcome, spot)?, figure))
        .or_else(|| {
            let spot = spot.looked_into(figure, run, outcome);
            if figure == Figure::RunsPast {
                return runs_past(run, outcome, spot).map(MassFlow::to_grams_per_hour);
            }
            let read = spot.reading(run, outcome)?;
            of_place(&read, figure)
                .or_else(|| films::value(run, outcome, figure, &read.point, spot.tube))
        })
}

fn leg(outcome: &Outcome, spot: Spot) -> Option<&LegOutcome> {
    let legs = &spot.answer(outcome)?.legs;
    match spot.leg {
        Some(at) => legs.get(at),
        None => legs.last(),
    }
}

fn of_run(outcome: &Outcome, figure: Figure) -> Option<f64> {
    let (duct, chamber, balance) = (&outcome.duct_air, &outcome.chamber, &outcome.balance);
    Some(match figure {
        Figure::InletTemperature => duct.temperature.to_celsius(),
        Figure::InletRatio => duct.humidity_ratio.to_kilograms_per_kilogram(),
        Figure::InletMist => duct.mist.to_kilograms_per_kilogram(),
        Figure::InletHumidity => duct.relative_humidity.to_percent(),
        Figure::InletDewPoint => return dew_point(duct),
        Figure::DryAir => outcome.dry_air.to_kilograms_per_second(),
        Figure::SensorTemperature => chamber.temperature.to_celsius(),
        Figure::SensorRatio => chamber.humidity_ratio.to_kilograms_per_kilogram(),
        Figure::SensorMist => chamber.mist.to_kilograms_per_kilogram(),
        Figure::SensorHumidity => chamber.relative_humidity.to_percent(),
        Figure::SensorDewPoint => return dew_point(chamber),
        Figure::WaterIn => balance.water_in.to_grams_per_hour(),
        Figure::WaterLeftOver => balance.water_left_over.to_grams_per_hour(),
        Figure::EnergyTurnedOver => balance.energy_turned_over.to_watts(),
        Figure::EnergyLeftOver => balance.energy_left_over.to_watts(),
        _ => return None,
    })
}

fn of_tube(tube: &TubeOutcome, figure: Figure) -> Option<f64> {
    let coldest = tube.coldest_wall;
    let near = tube.near_wall_mist;
    match figure {
        Figure::TubeWater => Some(tube.condensate.to_grams_per_hour()),
        Figure::TubeFrost => {
            let frost: MassFlow = tube.legs.iter().map(|leg| leg.frost).sum();
            Some(frost.to_grams_per_hour())
        }
        Figure::TubeSweat => Some(tube.sweat.to_grams_per_hour()),
        Figure::WetFrom => tube.first_wet().map(Length::to_metres),
        Figure::WetTo => tube.wet.last().map(|wet| wet.to.to_metres()),
        Figure::WetStretches => u32::try_from(tube.wet.len()).ok().map(f64::from),
        Figure::FrostFrom => tube.frost_from().map(Length::to_metres),
        Figure::ColdestWall => coldest.map(|wall| wall.temperature.to_celsius()),
        Figure::ColdestWallAt => coldest.map(|wall| wall.x.to_metres()),
        Figure::MostMist => Some(tube.most_mist.to_kilograms_per_kilogram()),
        Figure::NearWallRatio => near.map(|near| near.saturation_ratio),
        Figure::NearWallAt => near.map(|near| near.x.to_metres()),
        Figure::NearWallBound => near.map(|near| near.upper_bound.to_grams_per_hour()),
        _ => None,
    }
}

fn of_leg(leg: &LegOutcome, figure: Figure) -> Option<f64> {
    let air = &leg.air_at_end;
    Some(match figure {
        Figure::LegFrom => leg.from.to_metres(),
        Figure::LegTo => leg.to.to_metres(),
        Figure::LegWater => leg.condensate.to_grams_per_hour(),
        Figure::LegFrost => leg.frost.to_grams_per_hour(),
        Figure::LegSweat => leg.sweat.to_grams_per_hour(),
        Figure::LegRime => leg.rime.to_grams_per_hour(),
        Figure::LegWetFrom => return leg.first_wet.map(Length::to_metres),
        Figure::LowestWall => leg.lowest_wall.to_celsius(),
        Figure::AirAtEnd => air.temperature.to_celsius(),
        Figure::RatioAtEnd => air.humidity_ratio.to_kilograms_per_kilogram(),
        Figure::MistAtEnd => air.mist.to_kilograms_per_kilogram(),
        Figure::HumidityAtEnd => air.relative_humidity.to_percent(),
        Figure::DewPointAtEnd => return dew_point(air),
        Figure::HeatToSpace => leg.heat_to_space.to_watts(),
        _ => return None,
    })
}

fn of_place(read: &Reading, figure: Figure) -> Option<f64> {
    let point = &read.point;
    Some(match figure {
        Figure::PlaceAlong => point.x.to_metres(),
        Figure::AirAlong => point.air.to_celsius(),
        Figure::WallAlong => point.inner_wall.to_celsius(),
        Figure::SurfaceAlong => point.outer_surface.to_celsius(),
        Figure::DewPointAlong => return point.dew_point.map(Temperature::to_celsius),
        Figure::RatioAlong => point.humidity_ratio.to_kilograms_per_kilogram(),
        Figure::HumidityAlong => read.relative_humidity.to_percent(),
        Figure::FormedSoFar => read.deposited.to_grams_per_hour(),
        Figure::MistAlong => point.mist.to_kilograms_per_kilogram(),
        Figure::Deposit => point.deposit.to_grams_per_hour_metre(),
        Figure::FrozenShare => point.frozen_share,
        Figure::SweatAlong => point.sweat.to_grams_per_hour_metre(),
        _ => return None,
    })
}

fn dew_point(air: &AirPoint) -> Option<f64> {
    air.dew_point.map(Temperature::to_celsius)
}
