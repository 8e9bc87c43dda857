//! From a place in the engine's run to the field of the project file.

use dewrun_run::air::Pair;
use dewrun_run::figure::Figure;
use dewrun_run::{Place, Run, RunError, Tube, range};

use crate::{DocumentError, FieldPath};

/// The part of the project file that a place in the engine's run stands for.
#[must_use]
pub fn path_of(run_index: usize, place: Place) -> FieldPath {
    let run = FieldPath::root().field("runs").index(run_index);
    match place {
        Place::Run => run,
        Place::DuctAir => run.field("duct.air"),
        Place::Space(at) => FieldPath::root().field("spaces").index(at),
        Place::Leg(Tube::Intake, at) => run.field("intake.legs").index(at),
        Place::Leg(Tube::Exhaust, at) => run.field("exhaust.legs").index(at),
        Place::Detector => run.field("detector"),
        Place::Flow => run.field("flow"),
        Place::Duct(_) => run.field("duct"),
        Place::Trap(Tube::Intake, at) => run.field("intake.traps").index(at),
        Place::Trap(Tube::Exhaust, at) => run.field("exhaust.traps").index(at),
    }
}

/// The engine's error at its field.
#[must_use]
pub fn located(run_index: usize, error: RunError) -> DocumentError {
    let path = match &error {
        RunError::OutOfRange {
            place,
            field,
            quantity,
            ..
        } => field_path(run_index, *place, field, quantity),
        RunError::NoSuchSpace { place, .. } => path_of(run_index, *place).field("space"),
        RunError::NoLegs => path_of(run_index, Place::Run).field("intake.legs"),
        RunError::Air { place, .. } | RunError::NotSolved { place, .. } => {
            path_of(run_index, *place)
        }
        _ => path_of(run_index, Place::Run),
    };
    DocumentError::Run {
        path,
        source: error,
    }
}

/// The field of the project file that holds an input of the engine's run.
#[must_use]
pub fn given_path(run_index: usize, run: &Run, figure: Figure, place: Place) -> FieldPath {
    let field = match figure {
        Figure::Pressure => return FieldPath::root().field("pressure.absolute_pa"),
        Figure::Altitude => return FieldPath::root().field("pressure.altitude_m"),
        Figure::Flow => "volume_l_min",
        Figure::SpaceTemperature => "temperature_c",
        Figure::RadiantTemperature => "radiant_c",
        Figure::Wind => "wind_m_s",
        Figure::Length => "length_m",
        Figure::Rise => "rise_m",
        Figure::Bore => "tube.bore_mm",
        Figure::OutsideDiameter => "tube.outside_diameter_mm",
        Figure::TubeConductivity => "tube.conductivity_w_mk",
        Figure::Emissivity => "emissivity",
        Figure::InsulationThickness => "insulation.thickness_mm",
        Figure::InsulationConductivity => "insulation.conductivity_w_mk",
        Figure::Tracing => "heat_tracing_w_m",
        Figure::DetectorHeat => "heat_w",
        Figure::HumidityRating => "humidity_rating_percent",
        Figure::DuctTemperature => "temperature.temperature_c",
        _ => {
            return installed_path(run_index, figure, place)
                .unwrap_or_else(|| humid_path(path_of(run_index, place), run, figure, place));
        }
    };
    path_of(run_index, place).field(field)
}

/// The field of an input of how the run is installed; none where it is no such input.
fn installed_path(run_index: usize, figure: Figure, place: Place) -> Option<FieldPath> {
    let run = path_of(run_index, Place::Run);
    let field = match (figure, place) {
        (Figure::SpacePressure, _) => "pressure_pa",
        (Figure::HangerSpacing, _) => "hanger_spacing_m",
        (Figure::Roughness, _) => "tube.stuff.roughness_mm",
        (Figure::Modulus, _) => "tube.stuff.long_term_modulus_mpa",
        (Figure::TubeDensity, _) => "tube.stuff.density_kg_m3",
        (Figure::Corrugations, _) => "tube.stuff.corrugations_g_m",
        (Figure::TrapCapacity, _) => "capacity_ml",
        (Figure::TrapSeal, _) => "seal_mm",
        (Figure::TrapDrop, _) => "outlet_drop_mm",
        (Figure::DuctStatic, Place::Duct(Tube::Intake)) => {
            return Some(run.field("duct.static_pa"));
        }
        (Figure::DuctVelocity, Place::Duct(Tube::Intake)) => {
            return Some(run.field("duct.velocity_pa"));
        }
        _ => return Some(run.field("air_path").field(line_field(figure, place)?)),
    };
    Some(path_of(run_index, place).field(field))
}

/// The field of what the air meets on its way.
fn line_field(figure: Figure, place: Place) -> Option<&'static str> {
    Some(match (figure, place) {
        (Figure::DuctStatic, _) => "exhaust_static_pa",
        (Figure::DuctVelocity, _) => "exhaust_velocity_pa",
        (Figure::Catch, Place::Duct(Tube::Exhaust)) => "exhaust_catch",
        (Figure::Catch, _) => "intake_catch",
        (Figure::HoleCount, _) => "hole_count",
        (Figure::HoleDiameter, _) => "hole_diameter_mm",
        (Figure::HoleDischarge, _) => "hole_discharge",
        (Figure::FilterResistance, _) => "filter_pa_min_l",
        (Figure::FilterDust, _) => "filter_after_year",
        (Figure::ChamberLoss, _) => "chamber_loss",
        (Figure::ChamberVolume, _) => "chamber_volume_ml",
        (Figure::FanPressure | Figure::FanFlow, _) => "fan",
        (Figure::StartSuction, _) => "start_suction_pa",
        (Figure::LimitMargin, _) => "limit_margin_percent",
        (Figure::DrainInterval, _) => "drain_interval_days",
        (Figure::RetainedFilm, _) => "film_g_m2",
        _ => return None,
    })
}

/// The field of a humidity within its air.
fn humid_path(here: FieldPath, run: &Run, figure: Figure, place: Place) -> FieldPath {
    let pair = match (place, run.duct_air) {
        (Place::DuctAir, Pair::Temperature(..)) => "temperature.humidity",
        (Place::DuctAir, Pair::DewPointAndRelative { .. }) => "dew_point_and_relative",
        (Place::DuctAir, Pair::FrostPointAndRelative { .. }) => "frost_point_and_relative",
        (Place::DuctAir, Pair::RatioAndRelative { .. }) => "ratio_and_relative",
        _ => "humidity",
    };
    let field = match figure {
        Figure::DuctRelative | Figure::SpaceRelative => "relative.percent",
        Figure::DuctDewPoint | Figure::SpaceDewPoint => "dew_point_c",
        Figure::DuctFrostPoint | Figure::SpaceFrostPoint => "frost_point_c",
        Figure::DuctRatio | Figure::SpaceRatio => "ratio_kg_kg",
        Figure::DuctWetBulb | Figure::SpaceWetBulb => "wet_bulb_c",
        Figure::DuctEnthalpy | Figure::SpaceEnthalpy => "enthalpy_kj_kg",
        _ => return here,
    };
    here.field(pair).field(field)
}

fn field_path(run_index: usize, place: Place, field: &str, quantity: &str) -> FieldPath {
    let here = path_of(run_index, place);
    match (place, field_name(place, field, quantity)) {
        (Place::Run, Some(name)) => FieldPath::root().field(name),
        (_, Some(name)) => here.field(name),
        (_, None) => here,
    }
}

/// The file's name for a field that the engine names without unit; tube and insulation are told apart by the quantity.
fn field_name(place: Place, field: &str, quantity: &str) -> Option<&'static str> {
    let is_insulation = quantity == range::INSULATION_CONDUCTIVITY.quantity;
    let name = match (place, field) {
        (Place::Run, "pressure") => "pressure",
        (Place::Leg(..), "length") => "length_m",
        (Place::Leg(..), "rise") => "rise_m",
        (Place::Leg(..), "bore") => "tube.bore_mm",
        (Place::Leg(..), "outside_diameter") => "tube.outside_diameter_mm",
        (Place::Leg(..), "conductivity") if is_insulation => "insulation.conductivity_w_mk",
        (Place::Leg(..), "conductivity") => "tube.conductivity_w_mk",
        (Place::Leg(..), "thickness") => "insulation.thickness_mm",
        (Place::Leg(..), "emissivity") => "emissivity",
        (Place::Leg(..), "tracing") => "heat_tracing_w_m",
        (Place::Space(_), "temperature") => "temperature_c",
        (Place::Space(_), "radiant") => "radiant_c",
        (Place::Space(_), "wind") => "wind_m_s",
        (Place::Detector, "heat") => "heat_w",
        (Place::Flow, "flow") => "volume_l_min",
        _ => return None,
    };
    Some(name)
}

#[cfg(test)]
mod tests {
    use dewrun_run::range::{self, Limits};
    use dewrun_run::{Place, RunError, Tube};

    use super::located;

    #[track_caller]
    fn check(place: Place, limits: &Limits, path: &str) {
        let error = RunError::OutOfRange {
            place,
            field: limits.field,
            quantity: limits.quantity,
            value: 0.0,
            unit: limits.unit,
            min: limits.min,
            max: limits.max,
        };
        let found = located(2, error).path().map(ToString::to_string);
        assert_eq!(
            found.as_deref(),
            Some(path),
            "{} at its field",
            limits.quantity
        );
    }

    #[test]
    fn every_limit_of_the_engine_is_found_in_the_file() {
        let leg = Place::Leg(Tube::Exhaust, 3);
        check(Place::Run, &range::PRESSURE, "pressure");
        check(Place::Flow, &range::FLOW, "runs[2].flow.volume_l_min");
        check(
            Place::Detector,
            &range::DETECTOR_HEAT,
            "runs[2].detector.heat_w",
        );
        check(
            Place::Space(1),
            &range::AIR_TEMPERATURE,
            "spaces[1].temperature_c",
        );
        check(
            Place::Space(1),
            &range::RADIANT_TEMPERATURE,
            "spaces[1].radiant_c",
        );
        check(Place::Space(1), &range::WIND, "spaces[1].wind_m_s");
        check(leg, &range::LENGTH, "runs[2].exhaust.legs[3].length_m");
        check(leg, &range::BORE, "runs[2].exhaust.legs[3].tube.bore_mm");
        check(
            leg,
            &range::WALL,
            "runs[2].exhaust.legs[3].tube.outside_diameter_mm",
        );
        check(
            leg,
            &range::TUBE_CONDUCTIVITY,
            "runs[2].exhaust.legs[3].tube.conductivity_w_mk",
        );
        check(
            leg,
            &range::INSULATION,
            "runs[2].exhaust.legs[3].insulation.thickness_mm",
        );
        check(
            leg,
            &range::INSULATION_CONDUCTIVITY,
            "runs[2].exhaust.legs[3].insulation.conductivity_w_mk",
        );
        check(
            leg,
            &range::EMISSIVITY,
            "runs[2].exhaust.legs[3].emissivity",
        );
        check(
            leg,
            &range::TRACING,
            "runs[2].exhaust.legs[3].heat_tracing_w_m",
        );
    }

    #[test]
    fn what_is_no_field_is_its_part() {
        let path = |error| located(0, error).path().map(ToString::to_string);
        assert_eq!(
            path(RunError::NoLegs).as_deref(),
            Some("runs[0].intake.legs"),
            "no legs"
        );
        let place = Place::Leg(Tube::Intake, 1);
        let error = RunError::NoSuchSpace {
            place,
            space: 9,
            spaces: 3,
        };
        assert_eq!(
            path(error).as_deref(),
            Some("runs[0].intake.legs[1].space"),
            "no such space"
        );
    }
}
