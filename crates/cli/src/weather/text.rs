//! What was understood of a weather file, as text, and its rows as CSV.

use std::io::{self, Write};

use comfy_table::{Table, presets};
use dewrun_document::output::{RangeOutput, WeatherNoteOutput, WeatherOutput};
use dewrun_document::weather_answer;
use dewrun_quantity::format::entered;
use dewrun_quantity::measure::{
    ABSOLUTE_PRESSURE, Measure, RELATIVE_HUMIDITY, TEMPERATURE, TUBE_LENGTH,
};
use dewrun_quantity::{Length, Pressure, RelativeHumidity, Style, Temperature};
use dewrun_weather::{Series, Weather};

/// A table of what was understood, then the notes.
pub(super) fn write(
    name: &str,
    weather: &Weather,
    style: Style,
    out: &mut impl Write,
) -> io::Result<()> {
    let answer = weather_answer(name, weather);
    let mut table = Table::new();
    table.load_style(presets::NOTHING);
    for (what, value) in rows(&answer, style) {
        table.add_row([what.to_owned(), value]);
    }
    for line in table.lines() {
        writeln!(out, "{}", line.trim_end())?;
    }
    if !answer.notes.is_empty() {
        writeln!(out)?;
    }
    for note in &answer.notes {
        writeln!(out, "- {}", sentence(note))?;
    }
    Ok(())
}

fn rows(answer: &WeatherOutput, style: Style) -> Vec<(&'static str, String)> {
    let understood = &answer.understood;
    let timing = &answer.timing;
    let mut rows = vec![
        ("file", format!("{}, {} bytes", answer.file, answer.bytes)),
        ("SHA-256", answer.sha256.clone()),
        ("form", form(answer)),
        ("place", place(answer, style)),
        (
            "rows",
            format!("{}, {} usable", answer.rows, answer.usable_rows),
        ),
        ("from, to", format!("{}, {}", timing.first, timing.last)),
        (
            "step",
            format!("{} s; a stamp is the {}", timing.step_s, understood.stamps),
        ),
        (
            "covered",
            format!(
                "{} h, {} % of a year",
                entered((timing.covered_hours.0 * 100.0).round() / 100.0),
                entered((timing.covered_share_percent.0 * 100.0).round() / 100.0)
            ),
        ),
        ("pressure", answer.pressure_source.clone()),
        (
            "humidity",
            format!(
                "{} leads; below freezing dew points over {}, relative humidities over {}",
                understood.leading_humidity,
                understood.dew_point_over,
                understood.relative_humidity_over
            ),
        ),
    ];
    let ranges = &answer.ranges;
    rows.extend(range(
        "temperature",
        ranges.temperature_c.as_ref(),
        &TEMPERATURE,
        Temperature::celsius,
        style,
    ));
    rows.extend(range(
        "dew point",
        ranges.dew_point_c.as_ref(),
        &TEMPERATURE,
        Temperature::celsius,
        style,
    ));
    rows.extend(range(
        "relative humidity",
        ranges.relative_humidity_percent.as_ref(),
        &RELATIVE_HUMIDITY,
        RelativeHumidity::percent,
        style,
    ));
    rows.extend(range(
        "air pressure",
        ranges.pressure_pa.as_ref(),
        &ABSOLUTE_PRESSURE,
        Pressure::pascals,
        style,
    ));
    rows.extend(design(answer, style));
    rows
}

fn form(answer: &WeatherOutput) -> String {
    let understood = &answer.understood;
    let mut parts = vec![understood.form.clone(), understood.encoding.clone()];
    if !understood.delimiter.is_empty() {
        parts.push(format!("{} between cells", understood.delimiter));
    }
    parts.push(format!("decimal {}", understood.decimal_mark));
    parts.join(", ")
}

fn place(answer: &WeatherOutput, style: Style) -> String {
    let place = &answer.place;
    let mut parts: Vec<String> = place.name.clone().into_iter().collect();
    if let Some((north, east)) = place.latitude_deg.zip(place.longitude_deg) {
        parts.push(format!("{}° N, {}° E", entered(north.0), entered(east.0)));
    }
    parts.extend(place.elevation_m.map(|metres| {
        TUBE_LENGTH
            .show(Length::metres(metres.0), style)
            .to_string()
    }));
    parts.extend(answer.understood.utc_offset_h.map(|hours| {
        format!(
            "stamps UTC{}{}",
            if hours.0 < 0.0 { "" } else { "+" },
            entered(hours.0)
        )
    }));
    if parts.is_empty() {
        return "not said".to_owned();
    }
    parts.join(", ")
}

fn range<Q: Copy>(
    what: &'static str,
    range: Option<&RangeOutput>,
    measure: &Measure<Q>,
    of: fn(f64) -> Q,
    style: Style,
) -> Option<(&'static str, String)> {
    let range = range?;
    let show = |value: f64| measure.show(of(value), style).to_string();
    Some((
        what,
        format!(
            "{} to {}, mean {}",
            show(range.min.0),
            show(range.max.0),
            show(range.mean.0)
        ),
    ))
}

/// Design conditions, as far as the file covers a year.
fn design(answer: &WeatherOutput, style: Style) -> Vec<(&'static str, String)> {
    let Some(design) = &answer.design else {
        return Vec::new();
    };
    let show = |value: f64| {
        TEMPERATURE
            .show(Temperature::celsius(value), style)
            .to_string()
    };
    let humid = design.humid.iter().map(|humid| {
        format!(
            "{} with {} ({} %)",
            show(humid.dew_point_c.0),
            show(humid.mean_coincident_dry_bulb_c.0),
            entered(humid.exceeded_percent.0)
        )
    });
    let cold = design.cold.iter().map(|cold| {
        format!(
            "{} ({} %)",
            show(cold.dry_bulb_c.0),
            entered(cold.exceeded_percent.0)
        )
    });
    vec![
        ("humid design", humid.collect::<Vec<_>>().join(", ")),
        ("cold design", cold.collect::<Vec<_>>().join(", ")),
    ]
}

fn sentence(note: &WeatherNoteOutput) -> String {
    if note.lines.is_empty() {
        return note.sentence.clone();
    }
    let lines: Vec<String> = note.lines.iter().map(ToString::to_string).collect();
    let shown = u64::try_from(lines.len()).unwrap_or(u64::MAX);
    let more = if shown < note.count { ", .." } else { "" };
    let word = if note.count == 1 { "line" } else { "lines" };
    format!("{} ({word} {}{more})", note.sentence, lines.join(", "))
}

/// The rows as CSV, with a head that names the units; what is missing is empty.
pub(super) fn write_rows(series: &Series, out: &mut impl Write) -> io::Result<()> {
    writeln!(
        out,
        "stamp,line,temperature_c,dew_point_c,relative_humidity_percent,pressure_pa"
    )?;
    for (row, line) in series.lines.iter().enumerate() {
        let stamp = series
            .stamp(row)
            .map_or_else(String::new, |stamp| stamp.to_string());
        write!(out, "{stamp},{line}")?;
        let columns = [
            &series.temperature_c,
            &series.dew_point_c,
            &series.relative_percent,
            &series.pressure_pa,
        ];
        for column in columns {
            match column.get(row).filter(|value| value.is_finite()) {
                Some(value) => write!(out, ",{value}")?,
                None => write!(out, ",")?,
            }
        }
        writeln!(out)?;
    }
    Ok(())
}
