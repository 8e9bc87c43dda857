//! Every figure is in order, within its limits, has its unit in its name and says where it is from.

use dewrun_run::library::{self, Row};
use dewrun_run::range::{self, Limits};

/// What stands as the source of a figure that has none in print.
const WITHOUT_PRINT: [&str; 2] = ["common practice, no source", "from memory"];

/// Limits of each field: the engine's own, and for the rest what no material or building goes beyond.
fn limits(row: &dyn Row, field: &str) -> (f64, f64) {
    let of = |limits: Limits| (limits.min, limits.max);
    match field {
        "absolute_pa" => of(range::PRESSURE),
        "temperature_c" | "dew_point_c" => of(range::AIR_TEMPERATURE),
        "wind_m_s" => of(range::WIND),
        "length_m" => of(range::LENGTH),
        // No building is entered with a drop of more than a few storeys.
        "rise_m" => (-10.0, 10.0),
        "volume_l_min" => of(range::FLOW),
        "bore_mm" | "outside_diameter_mm" => of(range::BORE),
        "conductivity_w_mk" if row.id().starts_with("insulation-") => {
            of(range::INSULATION_CONDUCTIVITY)
        }
        "conductivity_w_mk" => of(range::TUBE_CONDUCTIVITY),
        "emissivity" => of(range::EMISSIVITY),
        "heat_w" => of(range::DETECTOR_HEAT),
        "percent" | "humidity_rating_percent" => (0.0, 100.0),
        "coupling" => (0.0, 1.0),
        "radiant_minus_air_k" => (-35.0, 40.0),
        "static_pa" => (-1000.0, 1000.0),
        "velocity_pa" => (0.0, 200.0),
        "loss_coefficient" => (0.0, 10.0),
        "roughness_mm" => (1e-4, 5.0),
        "density_kg_m3" => (800.0, 9000.0),
        "short_term_modulus_mpa" | "long_term_modulus_mpa" => (50.0, 220e3),
        "highest_temperature_c" => (40.0, 300.0),
        "chamber_volume_l" => (0.01, 10.0),
        other => panic!("{}: no limits are known for `{other}`", row.id()),
    }
}

#[test]
fn low_usual_and_high_rise_and_keep_within_their_limits() {
    for row in library::rows() {
        for entry in row.entries() {
            let (span, place) = (entry.span, format!("{}, {}", row.id(), entry.field));
            assert!(
                span.low <= span.usual && span.usual <= span.high,
                "{place}: {span:?} falls"
            );
            let (min, max) = limits(row, entry.field);
            assert!(
                min <= span.low && span.high <= max,
                "{place}: {span:?} leaves {min} to {max}"
            );
        }
    }
}

#[test]
fn every_figure_says_where_it_is_from() {
    for row in library::rows() {
        for entry in row.entries() {
            let source = entry.span.source;
            let place = format!("{}, {}: `{source}`", row.id(), entry.field);
            let has_year = source
                .split(|c: char| !c.is_ascii_digit())
                .any(|word| word.len() == 4 && ("1900".."2100").contains(&word));
            let has_place = ["table", "figure", "equation", "as defined"]
                .iter()
                .any(|word| source.contains(word));
            assert!(
                WITHOUT_PRINT.contains(&source) || has_year && has_place,
                "{place} is neither in print with year and place nor one of {WITHOUT_PRINT:?}"
            );
        }
    }
}

#[test]
fn the_unit_of_every_column_of_numbers_is_in_its_name() {
    const UNITS: [&str; 16] = [
        "_mm",
        "_w_mk",
        "_mpa",
        "_kg_m3",
        "_c",
        "_percent",
        "_m_s",
        "_k",
        "_w",
        "_l_min",
        "_l",
        "_pa",
        "emissivity",
        "coupling",
        "loss_coefficient",
        "thicknesses_mm",
    ];
    let files = [
        include_str!("../../src/library/materials.csv"),
        include_str!("../../src/library/tubes.csv"),
        include_str!("../../src/library/insulation.csv"),
        include_str!("../../src/library/spaces.csv"),
        include_str!("../../src/library/duct-air.csv"),
        include_str!("../../src/library/detectors.csv"),
        include_str!("../../src/library/fittings.csv"),
        include_str!("../../src/library/ducts.csv"),
        include_str!("../../src/library/sites.csv"),
    ];
    for file in files {
        let head = file.lines().next().expect("a list has a head");
        for quantity in head
            .split(',')
            .filter_map(|column| column.strip_suffix("_low"))
        {
            assert!(
                UNITS.iter().any(|unit| quantity.ends_with(unit)),
                "`{quantity}` ends in no unit and is no bare number that is known"
            );
        }
    }
}

#[test]
fn figures_are_those_of_the_file_and_quantities_the_same() {
    let tube = library::find(library::tubes(), "tube-cpvc-1-2-in").expect("it is in the list");
    let text = include_str!("../../src/library/tubes.csv");
    let line = text.lines().find(|line| line.starts_with(tube.id));
    let line = line.expect("it has a line");
    for field in ["bore_mm", "outside_diameter_mm"] {
        let span = tube.entry(field).expect("tubes have it").span;
        for value in [span.low, span.usual, span.high] {
            assert!(
                line.split(',').any(|cell| cell.parse() == Ok(value)),
                "{field}: {value} is not what stands in `{line}`"
            );
        }
    }
    for tube in library::tubes() {
        let usual = |field| tube.entry(field).map(|entry| entry.span.usual);
        let near = |field, value: f64| {
            usual(field).is_some_and(|usual| (value / usual - 1.0).abs() < 1e-12)
        };
        assert!(
            near("bore_mm", tube.bore.usual.to_millimetres()),
            "{}: bore",
            tube.id
        );
        let modulus = tube.long_term_modulus.usual.to_pascals();
        assert!(
            near("long_term_modulus_mpa", modulus / 1e6),
            "{}: modulus",
            tube.id
        );
        let roughness = tube.roughness.usual.to_millimetres();
        assert!(near("roughness_mm", roughness), "{}: roughness", tube.id);
    }
}
