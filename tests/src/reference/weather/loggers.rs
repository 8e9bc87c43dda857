//! The rebuilt faults of logger files.

use dewrun_quantity::measure::TEMPERATURE;
use dewrun_quantity::{Style, Temperature};
use dewrun_weather::{DateOrder, Series, Understanding};

use super::numbers::{at, count, first_air};
use super::{Files, Held, says};
use crate::reference::compare::Tolerance;
use crate::reference::inputs::Inputs;
use crate::reference::report::Answer;

type Answered = Result<Answer, String>;

/// Units are converted, so that a binary digit may differ.
const EXACT: Tolerance = Tolerance::absolute(1.0e-9);

fn stamp(series: &Series, row: usize) -> String {
    series
        .stamp(row)
        .map_or_else(String::new, |stamp| stamp.to_string())
}

fn is_rising(series: &Series) -> bool {
    series.timing.backward == 0
        && series
            .start_s
            .windows(2)
            .all(|pair| matches!(pair, [one, next] if one < next))
}

pub(super) fn semicolon_and_comma(expected: &Inputs<'_>, files: &Files) -> Answered {
    let tolerance = Tolerance::absolute(expected.number("tolerance_K")?);
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let mut held = Held::default();
    held.same(expected, "rows", count(series.len()));
    held.same(expected, "first", stamp(series, 0));
    held.value(expected, "first_T_C", at(&series.temperature_c, 0), EXACT);
    held.value(
        expected,
        "first_RH_pct",
        at(&series.relative_percent, 0),
        EXACT,
    );
    held.value(
        expected,
        "first_dew_point_C",
        at(&series.dew_point_c, 0),
        tolerance,
    );
    held.same(expected, "last", stamp(series, series.len() - 1));
    held.done()
}

pub(super) fn byte_order_mark(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let mut held = Held::default();
    held.same(expected, "rows", count(weather.series.len()));
    held.same(expected, "first", stamp(&weather.series, 0));
    held.done()
}

pub(super) fn one_order_of_dates(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let dates: Vec<String> = (0..series.len())
        .map(|row| stamp(series, row).trim_end_matches("T00:00").to_owned())
        .collect();
    let mut held = Held::default();
    held.fact(
        "order",
        weather.understood.date_order == Some(DateOrder::DayMonthYear)
            && says(&weather, "day-month-year for the whole column"),
    );
    held.same(expected, "dates", dates);
    held.same(expected, "monotonic", is_rising(series));
    held.done()
}

pub(super) fn twelve_hours(expected: &Inputs<'_>, files: &Files) -> Answered {
    let tolerance = Tolerance::absolute(expected.number("tolerance_K")?);
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let mut held = Held::default();
    held.same(expected, "third_row", stamp(series, 2));
    held.fact(
        "sixth_row",
        expected["sixth_row"]
            .as_str()
            .is_some_and(|text| text.trim_end_matches(":00") == stamp(series, 5)),
    );
    held.same(expected, "increasing", is_rising(series));
    held.value(
        expected,
        "sixth_row_T_C",
        at(&series.temperature_c, 5),
        EXACT,
    );
    held.value(
        expected,
        "sixth_row_dew_point_C",
        at(&series.dew_point_c, 5),
        tolerance,
    );
    held.done()
}

pub(super) fn over_saturation(expected: &Inputs<'_>, files: &Files) -> Answered {
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let mut held = Held::default();
    held.value(expected, "T_C", at(&series.temperature_c, 0), EXACT);
    held.value(
        expected,
        "RH_used_pct",
        at(&series.relative_percent, 0),
        EXACT,
    );
    held.value(expected, "dew_point_C", at(&series.dew_point_c, 0), EXACT);
    held.same(expected, "clipped_rows", weather.clipped);
    held.fact(
        "flag",
        says(
            &weather,
            "sensor saturated; readings are not trustworthy until it dries",
        ),
    );
    held.value(expected, "UTC_offset_h", series.timing.utc_offset_h, EXACT);
    held.done()
}

pub(super) fn events(expected: &Inputs<'_>, files: &Files) -> Answered {
    let tolerance = Tolerance::absolute(expected.number("tolerance_K")?);
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let usable = series.usable();
    let mut held = Held::default();
    held.same(expected, "rows_with_readings", count(usable));
    // One row has a temperature and no humidity.
    held.same(expected, "missing_rows", count(series.len() - usable));
    held.same(expected, "event_rows", weather.event_rows);
    held.value(expected, "first_T_C", at(&series.temperature_c, 0), EXACT);
    held.value(
        expected,
        "first_dew_point_C",
        at(&series.dew_point_c, 0),
        tolerance,
    );
    let gap: Vec<i64> = series
        .timing
        .gaps
        .iter()
        .map(|gap| (gap.to_s - gap.from_s) / 60)
        .collect();
    held.fact(
        "gap_reported",
        gap == [80] && says(&weather, "06:20 to 2024-06-10 07:40 (80 min)"),
    );
    held.value(expected, "UTC_offset_h", series.timing.utc_offset_h, EXACT);
    held.done()
}

pub(super) fn headings_below_the_first_line(expected: &Inputs<'_>, files: &Files) -> Answered {
    let tolerance = Tolerance::absolute(expected.number("tolerance_K")?);
    let (weather, expected) = (files.first()?, expected.raw());
    let series = &weather.series;
    let air = first_air(series)?;
    let mut held = Held::default();
    held.same(expected, "rows_usable", count(series.usable()));
    held.value(expected, "p_Pa", at(&series.pressure_pa, 0), EXACT);
    held.value(expected, "T_C", at(&series.temperature_c, 0), EXACT);
    held.value(expected, "RH_pct", at(&series.relative_percent, 0), EXACT);
    held.value(
        expected,
        "dew_point_over_water_C",
        at(&series.dew_point_c, 0),
        tolerance,
    );
    held.value(
        expected,
        "frost_point_C",
        air.frost_point().map(Temperature::to_celsius),
        tolerance,
    );
    // The case prints three digits.
    held.value(
        expected,
        "W",
        series.humidity_ratio(0),
        Tolerance::absolute(5.0e-6),
    );
    held.done()
}

/// The readings of the case, which has no file: none; 10 °C with 49.773 %; 17.3 °C with 100 %.
pub(super) fn nothing_is_not_zero(expected: &Inputs<'_>, _: &Files) -> Answered {
    let text = "time,temperature (C),relative humidity (%)\n2024-06-01 00:00,,\n2024-06-01 01:00,10,49.773\n2024-06-01 02:00,17.3,100\n";
    let series = super::read_bytes(text.as_bytes(), Understanding::default())?.series;
    let expected = expected.raw();
    let points = &series.dew_point_c;
    let shown = TEMPERATURE
        .show(Temperature::celsius(at(points, 1)), Style::default())
        .number;
    let mut held = Held::default();
    let missing = if at(points, 0).is_nan() && !series.is_usable(0) {
        "missing"
    } else {
        "a value"
    };
    held.same(expected, "missing", missing);
    // The case states no tolerance; the other logger cases allow 0.01 K.
    let printed = Tolerance::absolute(0.01);
    held.value(
        expected,
        "10C_49.773pct_dew_point_C",
        at(points, 1),
        printed,
    );
    held.value(expected, "17.3C_100pct", at(points, 2), EXACT);
    held.fact("shown_as", shown == "0.0");
    held.done()
}
