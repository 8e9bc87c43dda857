//! The limits of every number, text and list of a project file.
//!
//! They keep out slips of the pen and hostile files; what the physics can answer within them is for the engine to say.

use dewrun_quantity::Limits;
use dewrun_run::range;

/// The longest text that is read, bytes.
pub const TEXT_BYTES: usize = 8 * 1024 * 1024;
/// The longest link that is written and read, letters; browsers take addresses of about this length.
pub const LINK_LETTERS: usize = 1_000_000;
/// The most spaces of a project.
pub const SPACES: usize = 500;
/// The most runs of a project.
pub const RUNS: usize = 500;
/// The most legs of a tube.
pub const LEGS: usize = 200;
/// The most fittings of a leg.
pub const FITTINGS: usize = 50;
/// The most traps of a tube.
pub const TRAPS: usize = 50;
/// The most points of a fan's curve.
pub const FAN_POINTS: usize = 50;
/// The most visits of a run.
pub const VISITS: usize = 1_000;
/// The most periods, settings, steps or design states of one list.
pub const PERIODS: usize = 50;
/// The most outcomes of checks of a run.
pub const CHECKS_SEEN: usize = 100;
/// The most words of a log of which it is said what they mean.
pub const LOG_WORDS: usize = 100;
/// Columns of a file of which something is said.
pub const COLUMNS: usize = 500;
/// The longest id, characters.
pub const ID: usize = 64;
/// The longest name, characters.
pub const NAME: usize = 200;
/// The longest note, characters.
pub const NOTE: usize = 10_000;

/// Temperature of an air.
pub const TEMPERATURE_C: Limits = engines("temperature", &range::AIR_TEMPERATURE);
/// Temperature of surfaces around a tube, a clear sky and a hot roof included.
pub const RADIANT_C: Limits = engines("radiant temperature", &range::RADIANT_TEMPERATURE);
/// Dew point, over water.
pub const DEW_POINT_C: Limits = Limits::new("dew point", "°C", -100.0, 95.0);
/// Frost point, over ice.
pub const FROST_POINT_C: Limits = Limits::new("frost point", "°C", -100.0, 0.01);
/// Wet bulb.
pub const WET_BULB_C: Limits = Limits::new("wet bulb", "°C", -60.0, 95.0);
/// Relative humidity; a sensor near saturation may read up to 105 %.
pub const RELATIVE_PERCENT: Limits = Limits::new("relative humidity", "%", 0.0, 105.0);
/// Humidity ratio.
pub const RATIO_KG_KG: Limits = Limits::new("humidity ratio", "kg/kg", 0.0, 10.0);
/// Enthalpy per dry air.
pub const ENTHALPY_KJ_KG: Limits = Limits::new("enthalpy", "kJ/kg", -100.0, 30_000.0);
/// Absolute pressure.
pub const ABSOLUTE_PA: Limits = engines("pressure", &range::PRESSURE);
/// Altitude that gives such a pressure.
pub const ALTITUDE_M: Limits = Limits::new("altitude", "m", -1_000.0, 5_500.0);
/// Air speed across a tube.
pub const WIND_M_S: Limits = engines("wind", &range::WIND);
/// Static pressure in a duct against the room.
pub const STATIC_PA: Limits = Limits::new("static pressure", "Pa", -10_000.0, 10_000.0);
/// Velocity pressure in a duct.
pub const VELOCITY_PA: Limits = Limits::new("velocity pressure", "Pa", 0.0, 5_000.0);
/// Flow through a tube.
pub const VOLUME_L_MIN: Limits = engines("flow", &range::FLOW);
/// Length of a leg.
pub const LENGTH_M: Limits = engines("length", &range::LENGTH);
/// Rise of a leg.
pub const RISE_M: Limits = Limits::new("rise", "m", -1_000.0, 1_000.0);
/// Inside diameter of a tube.
pub const BORE_MM: Limits = engines("bore", &range::BORE);
/// Outside diameter of a tube.
pub const OUTSIDE_DIAMETER_MM: Limits = Limits::new("outside diameter", "mm", 2.0, 300.0);
/// Conductivity of a tube.
pub const TUBE_CONDUCTIVITY_W_MK: Limits =
    engines("conductivity of the tube", &range::TUBE_CONDUCTIVITY);
/// Conductivity of insulation.
pub const INSULATION_CONDUCTIVITY_W_MK: Limits = engines(
    "conductivity of the insulation",
    &range::INSULATION_CONDUCTIVITY,
);
/// Thickness of insulation.
pub const THICKNESS_MM: Limits = engines("insulation thickness", &range::INSULATION);
/// Emissivity of a surface.
pub const EMISSIVITY: Limits = engines("emissivity", &range::EMISSIVITY);
/// Heat tracing.
pub const HEAT_TRACING_W_M: Limits = engines("heat tracing", &range::TRACING);
/// Place of a fitting along its leg.
pub const FITTING_AT_M: Limits = Limits::new("distance from the leg's start", "m", 0.0, 1_000.0);
/// Loss coefficient of a fitting.
pub const LOSS_COEFFICIENT: Limits = Limits::new("loss coefficient", "", 0.0, 10_000.0);
/// Distance between hangers.
pub const HANGER_SPACING_M: Limits = Limits::new("hanger spacing", "m", 0.01, 100.0);
/// Place along a tube, of a trap or of what was found.
pub const TRAP_AT_M: Limits = Limits::new("distance from the tube's start", "m", 0.0, 1_000.0);
/// Capacity of a trap.
pub const CAPACITY_ML: Limits = Limits::new("capacity of the trap", "mL", 0.0, 100_000.0);
/// Height of the water that seals a trap.
pub const SEAL_MM: Limits = Limits::new("seal of the trap", "mm", 0.0, 5_000.0);
/// Height of a tube's floor over the outlet of a trap.
pub const OUTLET_DROP_MM: Limits = Limits::new("drop of the trap's outlet", "mm", 0.0, 20_000.0);
/// Pressure of a space or a fan's point.
pub const PRESSURE_PA: Limits = Limits::new("pressure", "Pa", -10_000.0, 10_000.0);
/// How many sampling holes.
pub const HOLE_COUNT: Limits = Limits::new("number of sampling holes", "", 1.0, 200.0);
/// Diameter of a sampling hole.
pub const HOLE_DIAMETER_MM: Limits = Limits::new("diameter of a hole", "mm", 0.1, 200.0);
/// Discharge coefficient of a hole.
pub const HOLE_DISCHARGE: Limits = Limits::new("discharge coefficient", "", 0.05, 1.0);
/// Share of a velocity pressure.
pub const CATCH: Limits = Limits::new("share of the velocity pressure", "", -1.0, 1.5);
/// Resistance of a filter.
pub const FILTER_PA_MIN_L: Limits =
    Limits::new("resistance of the filter", "Pa per L/min", 0.0, 1_000.0);
/// Volume of a chamber.
pub const CHAMBER_VOLUME_ML: Limits = Limits::new("volume of the chamber", "mL", 0.0, 100_000.0);
/// Suction of a fan as it starts.
pub const START_SUCTION_PA: Limits = Limits::new("suction at start", "Pa", 0.0, 10_000.0);
/// Airflow limit.
pub const LIMIT_PERCENT: Limits = Limits::new("airflow limit", "%", 0.0, 1_000.0);
/// Margin of airflow limits.
pub const LIMIT_MARGIN_PERCENT: Limits = Limits::new("margin of the limits", "%", 0.0, 100.0);
/// Drain interval.
pub const DRAIN_INTERVAL_DAYS: Limits = Limits::new("drain interval", "days", 0.01, 3_650.0);
/// Time that smoke takes through a tube.
pub const SMOKE_S: Limits = Limits::new("transport time", "s", 0.0, 36_000.0);
/// Water found at a visit.
pub const WATER_G: Limits = Limits::new("water found", "g", 0.0, 1_000_000.0);
/// Anything that was expected: only that it is a number.
pub const EXPECTED: Limits = Limits::new("expected value", "", -1e9, 1e9);
/// Roughness of a bore.
pub const ROUGHNESS_MM: Limits = Limits::new("roughness of the bore", "mm", 0.0, 20.0);
/// Modulus of elasticity.
pub const MODULUS_MPA: Limits = Limits::new("long-term modulus", "MPa", 1.0, 1_000_000.0);
/// Density of a tube's wall.
pub const DENSITY_KG_M3: Limits = Limits::new("density of the tube", "kg/m³", 100.0, 25_000.0);
/// A share of a whole.
pub const SHARE: Limits = Limits::new("share", "", 0.0, 1.0);
/// Rows of a weather file.
pub const ROWS: Limits = Limits::new("number of rows", "", 1.0, 1e9);
/// Time from row to row of a weather file.
pub const STEP_S: Limits = Limits::new("step", "s", 1.0, 2_678_400.0);
/// Number of a line of a file.
pub const LINE: Limits = Limits::new("line", "", 1.0, 1e9);
/// Number of a column of a file.
pub const COLUMN: Limits = Limits::new("column", "", 1.0, 10_000.0);
/// Rows of a log of troubles.
pub const LOG_ROWS: Limits = Limits::new("rows", "", 0.0, 1e6);
/// Which of the same days of the week in a month; 5 is the last.
pub const WHICH_DAY: Limits = Limits::new("which day of the week", "", 1.0, 5.0);
/// Hour at which a clock is changed.
pub const CHANGE_HOUR: Limits = Limits::new("hour", "h", 0.0, 23.0);
/// Hours that times are ahead of UTC.
pub const UTC_OFFSET_H: Limits = Limits::new("offset from UTC", "h", -24.0, 24.0);
/// Share of the hours that exceed a design state.
pub const EXCEEDED_PERCENT: Limits = Limits::new("share of the hours", "%", 0.0, 100.0);
/// Hour of the day.
pub const HOUR: Limits = Limits::new("hour of the day", "", 0.0, 24.0);
/// Hours of a year; a leap year has the most.
pub const HOURS_OF_YEAR: Limits = Limits::new("number of hours", "h", 0.0, 8784.0);
/// Water of a year.
pub const LITRES_OF_YEAR: Limits = Limits::new("water of a year", "L", 0.0, 1e6);
/// By how much the air around a sensor stays below its rating.
pub const CHAMBER_MARGIN_PERCENT: Limits = Limits::new("margin of humidity", "%", 0.0, 100.0);
/// Days between two emptyings of a trap.
pub const TRAP_DAYS: Limits = Limits::new("days between emptyings", "d", 0.0, 3650.0);
/// Heat of a detector.
pub const HEAT_W: Limits = engines("heat", &range::DETECTOR_HEAT);
/// Humidity rating of a detector.
pub const HUMIDITY_RATING_PERCENT: Limits = Limits::new("humidity rating", "%", 0.0, 100.0);

/// The limits of each number by the name of its field, with that of its owner where others share the name.
pub const FIELDS: [(&str, Limits); 53] = [
    ("temperature_c", TEMPERATURE_C),
    ("radiant_c", RADIANT_C),
    ("dew_point_c", DEW_POINT_C),
    ("frost_point_c", FROST_POINT_C),
    ("wet_bulb_c", WET_BULB_C),
    ("percent", RELATIVE_PERCENT),
    ("ratio_kg_kg", RATIO_KG_KG),
    ("enthalpy_kj_kg", ENTHALPY_KJ_KG),
    ("absolute_pa", ABSOLUTE_PA),
    ("altitude_m", ALTITUDE_M),
    ("wind_m_s", WIND_M_S),
    ("static_pa", STATIC_PA),
    ("velocity_pa", VELOCITY_PA),
    ("volume_l_min", VOLUME_L_MIN),
    ("length_m", LENGTH_M),
    ("rise_m", RISE_M),
    ("bore_mm", BORE_MM),
    ("outside_diameter_mm", OUTSIDE_DIAMETER_MM),
    ("TubeWall.conductivity_w_mk", TUBE_CONDUCTIVITY_W_MK),
    ("Insulation.conductivity_w_mk", INSULATION_CONDUCTIVITY_W_MK),
    ("thickness_mm", THICKNESS_MM),
    ("emissivity", EMISSIVITY),
    ("heat_tracing_w_m", HEAT_TRACING_W_M),
    ("Fitting.at_m", FITTING_AT_M),
    ("hanger_spacing_m", HANGER_SPACING_M),
    ("Trap.at_m", TRAP_AT_M),
    ("capacity_ml", CAPACITY_ML),
    ("seal_mm", SEAL_MM),
    ("outlet_drop_mm", OUTLET_DROP_MM),
    ("pot_bore_mm", BORE_MM),
    ("pressure_pa", PRESSURE_PA),
    ("flow_l_min", VOLUME_L_MIN),
    ("hole_count", HOLE_COUNT),
    ("hole_diameter_mm", HOLE_DIAMETER_MM),
    ("hole_discharge", HOLE_DISCHARGE),
    ("intake_catch", CATCH),
    ("exhaust_catch", CATCH),
    ("exhaust_static_pa", STATIC_PA),
    ("exhaust_velocity_pa", VELOCITY_PA),
    ("filter_pa_min_l", FILTER_PA_MIN_L),
    ("chamber_loss", LOSS_COEFFICIENT),
    ("chamber_volume_ml", CHAMBER_VOLUME_ML),
    ("start_suction_pa", START_SUCTION_PA),
    ("low_limit_percent", LIMIT_PERCENT),
    ("high_limit_percent", LIMIT_PERCENT),
    ("limit_margin_percent", LIMIT_MARGIN_PERCENT),
    ("drain_interval_days", DRAIN_INTERVAL_DAYS),
    ("roughness_mm", ROUGHNESS_MM),
    ("long_term_modulus_mpa", MODULUS_MPA),
    ("density_kg_m3", DENSITY_KG_M3),
    ("loss_coefficient", LOSS_COEFFICIENT),
    ("heat_w", HEAT_W),
    ("humidity_rating_percent", HUMIDITY_RATING_PERCENT),
];

/// As [`FIELDS`], for numbers that carry no origin.
pub const PLAIN: [(&str, Limits); 3] = [
    ("suction_at_m", TRAP_AT_M),
    ("WaterFound.at_m", TRAP_AT_M),
    ("water_g", WATER_G),
];

/// The limits of readings at a visit, by the names of their fields.
pub const READINGS: [(&str, Limits); 5] = [
    ("airflow_l_min", VOLUME_L_MIN),
    ("duct_static_pa", STATIC_PA),
    ("suction_pa", PRESSURE_PA),
    ("first_smoke_s", SMOKE_S),
    ("ninety_percent_s", SMOKE_S),
];

/// As [`FIELDS`], for what a project says of its year; a table of its own, as the page's first module knows nothing of it.
pub const YEAR: [(&str, Limits); 9] = [
    ("temperature_c", TEMPERATURE_C),
    ("percent", RELATIVE_PERCENT),
    ("share", SHARE),
    ("moisture_share", SHARE),
    ("roof_absorbs", SHARE),
    ("sky_share", SHARE),
    ("wind_share", SHARE),
    ("room_c", TEMPERATURE_C),
    ("room_percent", RELATIVE_PERCENT),
];

/// As [`PLAIN`], for what a project says of its year.
pub const YEAR_PLAIN: [(&str, Limits); 12] = [
    ("rows", ROWS),
    ("step_s", STEP_S),
    ("exceeded_percent", EXCEEDED_PERCENT),
    ("outdoor_c", TEMPERATURE_C),
    ("outdoor_dew_point_c", DEW_POINT_C),
    ("from_h", HOUR),
    ("until_h", HOUR),
    ("first_reading", LINE),
    ("FileColumn.number", COLUMN),
    ("utc_offset_h", UTC_OFFSET_H),
    ("elevation_m", ALTITUDE_M),
    ("pressure_pa", ABSOLUTE_PA),
];

/// The engine's own limits, under the name that people know.
const fn engines(quantity: &'static str, limits: &range::Limits) -> Limits {
    Limits::new(quantity, limits.unit, limits.min, limits.max)
}
