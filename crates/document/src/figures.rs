//! Which figure each number of an answer is, and the entry of each figure for other programs.

use dewrun_quantity::Style;
use dewrun_run::figure::Figure;
use dewrun_season::figure::{YEAR_FIGURES, YearFigure};

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
    ("doubt.cases", Figure::DoubtCases),
    ("doubt.unanswered", Figure::DoubtUnanswered),
    ("doubt.wet_of_100", Figure::DoubtWet),
    ("doubt.mist_kg_kg.p10", Figure::DoubtMist),
    ("doubt.mist_kg_kg.p50", Figure::DoubtMist),
    ("doubt.mist_kg_kg.p90", Figure::DoubtMist),
    ("doubt.shares[].share_percent", Figure::DoubtShare),
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

/// Numbers of the doubt of the answer for either tube.
const OF_DOUBT: &[(&str, Figure)] = &[
    ("water_g_h.p10", Figure::DoubtLow),
    ("water_g_h.p50", Figure::DoubtMiddle),
    ("water_g_h.p90", Figure::DoubtHigh),
    ("sweat_g_h.p10", Figure::DoubtLow),
    ("sweat_g_h.p50", Figure::DoubtMiddle),
    ("sweat_g_h.p90", Figure::DoubtHigh),
    ("wet_of_100_along[]", Figure::DoubtWet),
];

/// Numbers of the answer on water in either tube.
const OF_WATER: &[(&str, Figure)] = &[
    ("legs[].fall_percent", Figure::LegFall),
    ("legs[].drop_mm", Figure::LegDrop),
    ("legs[].holds_g", Figure::LegHolds),
    ("legs[].largest_spacing_m", Figure::HangerLargest),
    ("legs[].sag_mm", Figure::HangerSag),
    ("legs[].steepest_percent", Figure::HangerSlope),
    ("legs[].air_speed_m_s", Figure::AirSpeed),
    ("legs[].flooding_speed_m_s", Figure::FloodingSpeed),
    ("low_points[].at_m", Figure::LowPoint),
    ("low_points[].until_m", Figure::LowPoint),
    ("low_points[].water_g_h", Figure::LowPointWater),
    ("low_points[].seal_ml", Figure::SealVolume),
    ("low_points[].capacity_ml", Figure::PoolCapacity),
    ("low_points[].slug_ml", Figure::SlugVolume),
    ("low_points[].first_slugs_h", Figure::TimeToSlugs),
    ("low_points[].low_limit_h", Figure::TimeToLimit),
    ("low_points[].sealed_h", Figure::TimeToSeal),
    ("low_points[].levels[].depth_mm", Figure::PoolDepth),
    ("low_points[].levels[].flow_l_min", Figure::SensorFlow),
    ("low_points[].levels[].reading_percent", Figure::FlowReading),
    ("low_points[].standing_g", Figure::PoolStanding),
    ("low_points[].depth_mm", Figure::PoolDepth),
    ("low_points[].bubbling_pa", Figure::BubblingPressure),
    ("low_points[].freezing_h", Figure::FreezingTime),
    ("traps[].at_m", Figure::TrapPlace),
    ("traps[].water_g_h", Figure::TrapWater),
    ("traps[].full_d", Figure::TrapFull),
    ("traps[].running_pa", Figure::TrapPressure),
    ("traps[].starting_pa", Figure::TrapPressure),
    ("traps[].needs_drop_mm", Figure::TrapDropNeeded),
    ("traps[].needs_seal_mm", Figure::TrapSealNeeded),
    ("traps[].dries_out_d", Figure::TrapDries),
    ("traps[].head_mm", Figure::DrainHead),
    ("traps[].runs_out_g", Figure::DrainRunsOut),
    ("proposed_traps[].at_m", Figure::TrapProposed),
    ("proposed_traps[].low_point_m", Figure::LowPoint),
    ("proposed_traps[].water_g_h", Figure::LowPointWater),
    ("proposed_traps[].over_mm", Figure::TrapOver),
    ("proposed_traps[].leaves_ml", Figure::TrapLeaves),
    ("proposed_traps[].size_ml", Figure::TrapSize),
    ("proposed_traps[].needs_drop_mm", Figure::TrapDropNeeded),
    ("proposed_traps[].needs_seal_mm", Figure::TrapSealNeeded),
    ("out_at_start_g_h", Figure::RunsOut),
    ("out_at_end_g_h", Figure::RunsOut),
    ("troubles[].at_m", Figure::LowPoint),
    ("troubles[].after_h", Figure::TimeToTrouble),
    ("drain_interval_d", Figure::DrainIntervalProposed),
    ("ice[].frost_g_h", Figure::LegFrost),
    ("ice[].at_m", Figure::FrostMostAt),
    ("ice[].closed_h", Figure::TimeToIce),
    ("ice[].free_percent", Figure::FrostFreeShare),
    ("ice[].thaw_g", Figure::ThawSlug),
];

/// Numbers of the answer on the air through a run, and on blindness.
const OF_AIR: &[(&str, Figure)] = &[
    ("blind.at_m", Figure::LowPoint),
    ("blind.after_h", Figure::TimeToTrouble),
    ("blind.share_percent", Figure::SampleShare),
    ("airflow.flow_l_min", Figure::SensorFlow),
    ("airflow.share_percent", Figure::SampleShare),
    ("airflow.reading_percent", Figure::FlowReading),
    ("airflow.fan_speed", Figure::FanSpeed),
    ("airflow.transport.first_s", Figure::TransportFirst),
    ("airflow.transport.plug_s", Figure::TransportPlug),
    (
        "airflow.transport.ninety_percent_s",
        Figure::TransportNinety,
    ),
    ("airflow.pressures[].pressure_pa", Figure::LinePressure),
    ("airflow.budget[].pressure_pa", Figure::PressureBudget),
    ("airflow.states[].flow_l_min", Figure::SensorFlow),
    ("airflow.states[].reading_percent", Figure::FlowReading),
    ("airflow.states[].share_percent", Figure::SampleShare),
    ("airflow.faults[].at_m", Figure::FaultPlace),
    ("airflow.faults[].flow_l_min", Figure::SensorFlow),
    ("airflow.faults[].reading_percent", Figure::FlowReading),
    ("airflow.faults[].share_percent", Figure::SampleShare),
    ("airflow.unanswered", Figure::StatesOpen),
    ("airflow.recommended.low_percent", Figure::LimitLow),
    ("airflow.recommended.high_percent", Figure::LimitHigh),
    ("airflow.in_use.low_percent", Figure::AirflowLimit),
    ("airflow.in_use.high_percent", Figure::AirflowLimit),
];

const TUBES: [&str; 2] = ["intake", "exhaust"];

/// The entries of all figures that an answer holds, and of all that they follow from, down to the inputs of a run.
#[must_use]
pub fn figures() -> Vec<FigureOutput> {
    let mut reached: Vec<Figure> = OF_RUN
        .iter()
        .chain(OF_TUBE)
        .chain(OF_WATER)
        .chain(OF_DOUBT)
        .chain(OF_AIR)
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

/// The entries of all figures of a year.
#[must_use]
pub fn year_figures() -> Vec<FigureOutput> {
    let entry = |figure: &YearFigure| {
        let fields = figure.fields.iter();
        FigureOutput {
            id: figure.id.to_owned(),
            name: figure.name.to_owned(),
            symbol: String::new(),
            unit: figure.unit.to_owned(),
            fields: fields.map(|field| format!("runs[].year.{field}")).collect(),
            relation: figure.relation.to_owned(),
            holds: figure.holds.to_owned(),
            spread: String::new(),
            inputs: figure
                .inputs
                .iter()
                .map(|&input| input.to_owned())
                .collect(),
            source: figure.source.to_owned(),
            how_to_measure: String::new(),
        }
    };
    YEAR_FIGURES.iter().map(entry).collect()
}

/// The entry of one figure.
#[must_use]
pub fn figure_entry(figure: Figure) -> FigureOutput {
    figure_entry_in(figure, Style::default())
}

/// The entry of one figure, its unit in a style.
#[must_use]
pub fn figure_entry_in(figure: Figure, style: Style) -> FigureOutput {
    FigureOutput {
        id: figure.id().to_owned(),
        name: figure.name().to_owned(),
        symbol: figure.symbol().to_owned(),
        unit: figure.kind().unit(style).to_owned(),
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
    let of_run = OF_RUN.iter().chain(OF_AIR).filter(is_it);
    let mut found: Vec<String> = of_run
        .map(|(field, _)| format!("{steady}.{field}"))
        .collect();
    for tube in TUBES {
        let of_tube = OF_TUBE.iter().filter(is_it);
        found.extend(of_tube.map(|(field, _)| format!("{steady}.{tube}.{field}")));
        let of_water = OF_WATER.iter().filter(is_it);
        found.extend(of_water.map(|(field, _)| format!("{steady}.water.{tube}.{field}")));
        let of_doubt = OF_DOUBT.iter().filter(is_it);
        found.extend(of_doubt.map(|(field, _)| format!("{steady}.doubt.{tube}.{field}")));
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
