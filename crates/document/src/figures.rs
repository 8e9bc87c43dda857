//! Which figure each number of an answer is, and the entry of each figure for other programs.

use dewrun_quantity::Style;
use dewrun_run::figure::Figure;

use crate::DocumentError;
use crate::output::FigureOutput;

/// Numbers of the answer of a run, and which figure each is.
const OF_RUN: &[(&str, Figure)] = &[
    ("dry_air_kg_s", Figure::DryAir),
    ("duct_air.temperature_c", Figure::InletTemperature),
    ("duct_air.humidity_ratio_kg_kg", Figure::InletRatio),
    ("duct_air.mist_kg_kg", Figure::InletMist),
    ("duct_air.relative_humidity_percent", Figure::InletHumidity),
    ("duct_air.dew_point_c", Figure::InletDewPoint),
    ("chamber.temperature_c", Figure::SensorTemperature),
    ("chamber.humidity_ratio_kg_kg", Figure::SensorRatio),
    ("chamber.mist_kg_kg", Figure::SensorMist),
    ("chamber.relative_humidity_percent", Figure::SensorHumidity),
    ("chamber.dew_point_c", Figure::SensorDewPoint),
    ("balance.water_in_g_h", Figure::WaterIn),
    ("balance.water_left_over_g_h", Figure::WaterLeftOver),
    ("balance.energy_turned_over_w", Figure::EnergyTurnedOver),
    ("balance.energy_left_over_w", Figure::EnergyLeftOver),
    ("rests_on[].change_g_h", Figure::TubeWater),
    (
        "would_stay_dry.duct_air.temperature_c",
        Figure::InletTemperature,
    ),
    (
        "would_stay_dry.duct_air.dew_point_c",
        Figure::BoundaryDewPoint,
    ),
    ("would_stay_dry.space.temperature_c", Figure::BoundarySpace),
    ("would_stay_dry.tube.length_m", Figure::BoundaryLength),
];

/// The same of either tube.
const OF_TUBE: &[(&str, Figure)] = &[
    ("condensate_g_h", Figure::TubeWater),
    ("sweat_g_h", Figure::TubeSweat),
    ("first_wet_m", Figure::WetFrom),
    ("wet[].from_m", Figure::WetFrom),
    ("wet[].to_m", Figure::WetTo),
    ("coldest_wall.x_m", Figure::ColdestWallAt),
    ("coldest_wall.temperature_c", Figure::ColdestWall),
    ("most_mist_kg_kg", Figure::MostMist),
    ("near_wall_mist.x_m", Figure::NearWallAt),
    ("near_wall_mist.saturation_ratio", Figure::NearWallRatio),
    ("near_wall_mist.upper_bound_g_h", Figure::NearWallBound),
    ("outlet.temperature_c", Figure::AirAtEnd),
    ("outlet.humidity_ratio_kg_kg", Figure::RatioAtEnd),
    ("outlet.mist_kg_kg", Figure::MistAtEnd),
    ("outlet.relative_humidity_percent", Figure::HumidityAtEnd),
    ("outlet.dew_point_c", Figure::DewPointAtEnd),
    ("legs[].from_m", Figure::LegFrom),
    ("legs[].to_m", Figure::LegTo),
    ("legs[].condensate_g_h", Figure::LegWater),
    ("legs[].frost_g_h", Figure::LegFrost),
    ("legs[].sweat_g_h", Figure::LegSweat),
    ("legs[].rime_g_h", Figure::LegRime),
    ("legs[].first_wet_m", Figure::LegWetFrom),
    ("legs[].lowest_wall_c", Figure::LowestWall),
    ("legs[].air_at_end.temperature_c", Figure::AirAtEnd),
    ("legs[].air_at_end.humidity_ratio_kg_kg", Figure::RatioAtEnd),
    ("legs[].air_at_end.mist_kg_kg", Figure::MistAtEnd),
    (
        "legs[].air_at_end.relative_humidity_percent",
        Figure::HumidityAtEnd,
    ),
    ("legs[].air_at_end.dew_point_c", Figure::DewPointAtEnd),
    ("legs[].heat_to_space_w", Figure::HeatToSpace),
    ("profile[].x_m", Figure::PlaceAlong),
    ("profile[].air_c", Figure::AirAlong),
    ("profile[].inner_wall_c", Figure::WallAlong),
    ("profile[].outer_surface_c", Figure::SurfaceAlong),
    ("profile[].dew_point_c", Figure::DewPointAlong),
    ("profile[].humidity_ratio_kg_kg", Figure::RatioAlong),
    ("profile[].mist_kg_kg", Figure::MistAlong),
    ("profile[].deposit_g_h_m", Figure::Deposit),
    ("profile[].frozen_share", Figure::FrozenShare),
    ("profile[].sweat_g_h_m", Figure::SweatAlong),
];

const TUBES: [&str; 2] = ["intake", "exhaust"];

/// The entries of all figures that an answer holds, and of all that they follow from, down to the inputs of a run.
#[must_use]
pub fn figures() -> Vec<FigureOutput> {
    let mut reached: Vec<Figure> = OF_RUN
        .iter()
        .chain(OF_TUBE)
        .map(|(_, figure)| *figure)
        .collect();
    let mut at = 0;
    while let Some(next) = reached.get(at) {
        for input in next.inputs() {
            if !reached.contains(&input) {
                reached.push(input);
            }
        }
        at += 1;
    }
    let all = Figure::ALL.iter().filter(|figure| reached.contains(figure));
    all.map(|figure| figure_entry(*figure)).collect()
}

/// The entry of one figure.
#[must_use]
pub fn figure_entry(figure: Figure) -> FigureOutput {
    FigureOutput {
        id: figure.id().to_owned(),
        name: figure.name().to_owned(),
        symbol: figure.symbol().to_owned(),
        unit: figure.kind().unit(Style::default()).to_owned(),
        fields: fields(figure),
        relation: figure.relation().to_owned(),
        holds: figure.holds().to_owned(),
        spread: figure.spread().to_owned(),
        inputs: figure.inputs().map(|input| input.id().to_owned()).collect(),
        source: figure.source().to_owned(),
        how_to_measure: figure.how_to_measure().to_owned(),
    }
}

/// The numbers of an answer that are this figure, with `[]` for every entry of a list.
fn fields(figure: Figure) -> Vec<String> {
    let steady = "runs[].steady";
    let is_it = |entry: &&(&str, Figure)| entry.1 == figure;
    let of_run = OF_RUN.iter().filter(is_it);
    let mut found: Vec<String> = of_run
        .map(|(field, _)| format!("{steady}.{field}"))
        .collect();
    for tube in TUBES {
        let of_tube = OF_TUBE.iter().filter(is_it);
        found.extend(of_tube.map(|(field, _)| format!("{steady}.{tube}.{field}")));
    }
    found
}

/// Entries as JSON.
///
/// # Errors
/// [`DocumentError::NotFinite`], which none of them can cause.
pub fn figures_json(entries: &[FigureOutput]) -> Result<String, DocumentError> {
    serde_json::to_string_pretty(entries).map_err(|_| DocumentError::NotFinite)
}
