//! The rebuilt faults of weather files.

use dewrun_moist_air::{Humidity, MoistAir, Over, Pair};
use dewrun_quantity::{Pressure, Temperature};
use dewrun_weather::{Civil, PressureSource, Understanding};

use super::numbers::{at, count, first_air};
use super::{Files, Held, says};
use crate::reference::compare::Tolerance;
use crate::reference::inputs::Inputs;
use crate::reference::report::Answer;

type Answered = Result<Answer, String>;

pub(super) fn leap_february(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let hour = |row: usize| {
        series
            .start_s
            .get(row)
            .and_then(|start| Civil::of(*start))
            .map_or(0, |civil| civil.hour_of_year() + 1)
    };
    let has_leap_day = series
        .start_s
        .iter()
        .filter_map(|start| Civil::of(*start))
        .any(|civil| (civil.month, civil.day) == (2, 29));
    let mut held = Held::default();
    held.same(expected, "rows", count(series.len()));
    held.same(expected, "hour_of_year_first", hour(0));
    held.same(expected, "hour_of_year_of_28Feb_h24", hour(47));
    held.same(expected, "hour_of_year_of_1Mar_h1", hour(48));
    held.same(expected, "feb29_created", has_leap_day);
    held.done()
}

pub(super) fn fillers(expected: &Inputs<'_>, files: &Files) -> Answered {
    let tolerance = Tolerance::absolute(expected.number("tolerance_K")?);
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let unusable: Vec<String> = (0..series.len())
        .filter(|row| !series.is_usable(*row))
        .map(|row| format!("h{}", row + 1))
        .collect();
    let warmest = series
        .temperature_c
        .iter()
        .copied()
        .fold(f64::MIN, f64::max);
    let mut held = Held::default();
    held.same(expected, "usable_rows", count(series.usable()));
    held.same(expected, "unusable_rows", unusable);
    held.value(
        expected,
        "h3_dew_point_C",
        at(&series.dew_point_c, 2),
        tolerance,
    );
    held.value(
        expected,
        "h4_RH_pct",
        at(&series.relative_percent, 3),
        Tolerance::absolute(0.05),
    );
    held.value(
        expected,
        "h5_pressure_Pa",
        at(&series.pressure_pa, 4),
        Tolerance::absolute(1.0),
    );
    held.fact(
        "h5_pressure_source",
        weather.pressure_source == PressureSource::FileAndStandard { filled: 1 }
            && says(&weather, "standard atmosphere at 1\u{2009}829 m"),
    );
    held.fact(
        "max_Tdb_used_C_below",
        warmest < expected["max_Tdb_used_C_below"].as_f64().unwrap_or(0.0),
    );
    held.done()
}

pub(super) fn hectopascals(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    // The case gives W from relative humidity, as its formula says.
    let by_relative = files.read(
        0,
        Understanding {
            dew_point_leads: Some(false),
            ..Understanding::default()
        },
    )?;
    let w = by_relative
        .series
        .humidity_ratio(0)
        .ok_or("no humidity ratio")?;
    let mut held = Held::default();
    held.value(
        expected,
        "pressure_used_Pa",
        at(&series.pressure_pa, 0),
        Tolerance::absolute(1.0e-6),
    );
    held.fact(
        "warning",
        says(&weather, "looks like hPa") && says(&weather, "31000 to 120000 Pa"),
    );
    held.value(
        expected,
        "humidity_ratio_kg_per_kg",
        w,
        Tolerance::relative(0.005),
    );
    held.done()
}

pub(super) fn dew_point_above_dry_bulb(expected: &Inputs<'_>, files: &Files) -> Answered {
    let tolerance = Tolerance::relative(expected.number("tolerance_rel")?);
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let saturated = |t_c: f64| {
        let pair = Pair::Temperature(
            Temperature::celsius(t_c),
            Humidity::DewPoint(Temperature::celsius(t_c)),
        );
        let air =
            MoistAir::new(pair, Pressure::pascals(100_000.0)).map_err(|error| error.to_string())?;
        Ok::<_, String>(air.value.humidity_ratio().to_kilograms_per_kilogram())
    };
    let mut held = Held::default();
    held.near(
        "h10",
        at(&series.dew_point_c, 9),
        15.0,
        Tolerance::absolute(1.0e-9),
    );
    held.fact("h10 is noted", says(&weather, "by up to 0.5 K"));
    held.fact(
        "h14",
        !series.is_usable(13)
            && series.humidity_ratio(13).is_none()
            && says(&weather, "inconsistent"),
    );
    held.value(
        expected,
        "W_sat_15C",
        series.humidity_ratio(9).unwrap_or(f64::NAN),
        tolerance,
    );
    held.value(expected, "W_of_20C_dew", saturated(20.0)?, tolerance);
    held.done()
}

pub(super) fn latin_name(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let mut held = Held::default();
    held.same(expected, "location_name", weather.place.name.clone());
    held.same(expected, "rows", count(weather.series.len()));
    held.same(
        expected,
        "comment_comma_kept",
        weather
            .comments
            .first()
            .is_some_and(|comment| comment == "São João, dados sintéticos"),
    );
    held.done()
}

pub(super) fn tail(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let mut held = Held::default();
    held.same(expected, "rows", count(weather.series.len()));
    held.same(expected, "ignored_tail_lines", weather.blank_lines);
    held.done()
}

pub(super) fn quarters(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let mut held = Held::default();
    held.same(expected, "rows", count(series.len()));
    held.same(expected, "step_s", series.timing.step_s);
    held.same(expected, "covered_hours", series.covered_hours());
    held.same(expected, "duplicate_stamps", series.timing.repeated);
    held.same(expected, "each_row_weight_h", series.row_hours());
    held.done()
}

pub(super) fn one_day(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let mut held = Held::default();
    held.same(expected, "rows", count(series.len()));
    held.value(
        expected,
        "covered_fraction_of_year_pct",
        series.covered_share_percent(),
        Tolerance::absolute(0.005),
    );
    held.same(
        expected,
        "annual_extrapolation",
        dewrun_weather::design_conditions(series).is_some(),
    );
    held.done()
}

pub(super) fn daylight_saving(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let on_the_day = series
        .start_s
        .iter()
        .filter_map(|start| Civil::of(*start))
        .filter(|civil| (civil.month, civil.day) == (3, 31))
        .count();
    let mut held = Held::default();
    held.same(expected, "rows", count(series.len()));
    held.same(expected, "rows_on_3/31", count(on_the_day));
    held.same(expected, "shifted_rows", series.timing.irregular_steps);
    held.done()
}

pub(super) fn two_midnights(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (one, other) = (files.first()?, files.read(1, Understanding::default())?);
    let expected = expected.raw();
    let mut held = Held::default();
    held.same(expected, "rows_each", count(one.series.len()));
    held.same(expected, "identical_series", one.series == other.series);
    let end = one.series.stamp(23).map(|stamp| stamp.to_string());
    held.fact("row24_instant", end.as_deref() == Some("1988-01-02T00:00"));
    let series = &one.series;
    let first = [
        &series.temperature_c,
        &series.dew_point_c,
        &series.relative_percent,
        &series.pressure_pa,
    ]
    .map(|column| at(column, 0));
    held.value(
        expected,
        "row1_Tdb_Tdp_RH_p",
        first.to_vec(),
        Tolerance::absolute(1.0e-9),
    );
    held.done()
}

pub(super) fn column_counts(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let cut = weather
        .notes
        .iter()
        .find(|note| note.sentence.contains("a cut row is not used"));
    let long = weather
        .notes
        .iter()
        .filter(|note| note.sentence.contains("more than 35 columns"))
        .count();
    let mut held = Held::default();
    held.same(expected, "usable_rows", count(weather.series.usable()));
    held.fact(
        "rejected",
        cut.is_some_and(|note| {
            note.lines == [32] && note.sentence.contains("after relative humidity")
        }),
    );
    held.fact("extra_columns", long == 1);
    held.done()
}

pub(super) fn tenths(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let exact = Tolerance::absolute(1.0e-9);
    let air = first_air(series)?;
    let mut held = Held::default();
    held.value(expected, "row1_Tdb_C", at(&series.temperature_c, 0), exact);
    held.value(expected, "row1_Tdp_C", at(&series.dew_point_c, 0), exact);
    held.value(
        expected,
        "row1_RH_pct",
        at(&series.relative_percent, 0),
        exact,
    );
    held.value(expected, "row1_p_Pa", at(&series.pressure_pa, 0), exact);
    held.value(
        expected,
        "RH_from_Tdb_and_Tdp_pct",
        air.relative_humidity(Over::Water).to_percent(),
        Tolerance::absolute(0.05),
    );
    held.done()
}
