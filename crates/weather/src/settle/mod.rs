//! From raw rows to a series in SI: order in time, units, pressure, humidity, gaps; each decision a note.

mod convention;
mod humidity;
mod pressure;
mod readings;
mod spread;
mod sun;
mod time;

use dewrun_moist_air::Over;

use crate::column::Role;
use crate::error::WeatherError;
use crate::note::{Note, Topic, counted};
use crate::raw::RawTable;
use crate::series::{Gap, Series};
use crate::understanding::Understanding;
use crate::weather::Weather;

use readings::Readings;

/// What is known of the file as a whole.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FileFacts {
    pub(crate) bytes: u64,
    pub(crate) lines: u64,
    pub(crate) sha256: [u8; 32],
}

/// Makes a series of raw rows.
///
/// # Errors
/// [`WeatherError`] where there are no rows, or nothing in them is a temperature or a humidity.
pub(crate) fn settle(
    mut raw: RawTable,
    given: &Understanding,
    facts: FileFacts,
) -> Result<Weather, WeatherError> {
    if raw.stamps.is_empty() {
        return Err(WeatherError::NoReadings { lines: facts.lines });
    }
    let mut notes = core::mem::take(&mut raw.notes);
    let laid = time::lay(&raw, given, &mut notes)?;
    raw.stamps = Vec::new();
    let mut readings = Readings::of(&mut raw, &laid.kept, &mut notes);
    require_air(&raw, &readings, &mut notes)?;
    let mut columns = core::mem::take(&mut raw.understood.columns);
    columns.append(&mut readings.used);
    columns.sort_by_key(|choice| choice.column);
    let mut place = core::mem::take(&mut raw.place).plausible();
    if let Some(elevation_m) = given.elevation_m {
        place.elevation_m = Some(elevation_m);
    }
    let (pressure_pa, pressure_source) = pressure::pressures(
        &mut readings,
        place.elevation_m,
        given.pressure_pa,
        &mut notes,
    );
    let convention = convention::compare(&readings, &pressure_pa);
    let (dew_point_over, relative_over) = convention::decide(convention, given, &mut notes);
    let has_relative = readings.get(Role::RelativeHumidity).is_some();
    let leads = given
        .dew_point_leads
        .unwrap_or(raw.dew_point_leads || !has_relative);
    let air = humidity::humidities(
        &mut readings,
        &pressure_pa,
        humidity::Customs {
            dew_point_over,
            relative_over,
            dew_point_leads: leads,
        },
        &mut notes,
    );
    let mut series = Series {
        timing: laid.timing,
        start_s: laid.start_s,
        temperature_c: readings
            .take(Role::Temperature)
            .unwrap_or_else(|| vec![f64::NAN; laid.kept.len()]),
        lines: readings.lines,
        dew_point_c: air.dew_point_c,
        relative_percent: air.relative_percent,
        pressure_pa,
        dew_point_over,
        relative_over,
        wind_m_s: readings.columns.remove(&Role::Wind),
        global_w_m2: readings.columns.remove(&Role::Global),
        direct_w_m2: readings.columns.remove(&Role::Direct),
        diffuse_w_m2: readings.columns.remove(&Role::Diffuse),
        infrared_w_m2: readings.columns.remove(&Role::Infrared),
        rain_mm: readings.columns.remove(&Role::Rain),
        sky_percent: readings.columns.remove(&Role::Sky),
    };
    series.timing.gaps = gaps(&series);
    tell_gaps(&series, &mut notes);
    notes.extend(sun::check(&series, &place));
    let understood = Understanding {
        date_order: Some(laid.order),
        stamps: Some(series.timing.stamps),
        utc_offset_h: series.timing.utc_offset_h,
        elevation_m: place.elevation_m,
        pressure_pa: given.pressure_pa,
        dew_point_over: Some(dew_point_over),
        relative_over: Some(relative_over),
        dew_point_leads: Some(leads),
        columns,
        ..raw.understood
    };
    Ok(Weather {
        place,
        series,
        understood,
        notes,
        pressure_source,
        convention,
        stations: raw.stations,
        column_names: raw.column_names,
        comments: raw.comments,
        clipped: air.clipped,
        event_rows: raw.events.count(),
        blank_lines: raw.tail.count(),
        bytes: facts.bytes,
        sha256: facts.sha256,
    })
}

/// A file of one variable is read, and its series has no usable row; one of none is not.
fn require_air(
    raw: &RawTable,
    readings: &Readings,
    notes: &mut Vec<Note>,
) -> Result<(), WeatherError> {
    let has_air = readings
        .columns
        .keys()
        .any(|role| *role == Role::Temperature || role.is_humidity());
    if has_air {
        let has_temperature = readings.columns.contains_key(&Role::Temperature);
        let has_humidity = readings.columns.keys().any(|role| role.is_humidity());
        if !(has_temperature && has_humidity) {
            let (there, missing) = if has_temperature {
                ("temperature", "humidity")
            } else {
                ("humidity", "temperature")
            };
            notes.push(Note::of_file(Topic::Columns, format!("the file holds {there} and no {missing}: no row is usable alone; a file of the other must be of the same period")));
        }
        return Ok(());
    }
    let names: Vec<&str> = raw
        .column_names
        .iter()
        .map(String::as_str)
        .filter(|name| !name.is_empty())
        .collect();
    let columns = if names.is_empty() {
        "columns without names".to_owned()
    } else {
        names.join(", ")
    };
    Err(WeatherError::NoAir { columns })
}

/// Stretches without a usable row.
fn gaps(series: &Series) -> Vec<Gap> {
    let mut gaps = Vec::new();
    let mut before: Option<i64> = None;
    // A file of one variable has no usable row; there every row counts.
    let any = (0..series.len()).any(|row| series.is_usable(row));
    for (row, (start, line)) in series.start_s.iter().zip(&series.lines).enumerate() {
        if any && !series.is_usable(row) {
            continue;
        }
        if let Some(before) =
            before.filter(|before| series.timing.step_s * 3 < (start - before) * 2)
        {
            gaps.push(Gap {
                from_s: before,
                to_s: *start,
                line: *line,
            });
        }
        before = Some(*start);
    }
    gaps
}

fn tell_gaps(series: &Series, notes: &mut Vec<Note>) {
    let gaps = &series.timing.gaps;
    let Some(longest) = gaps.iter().max_by_key(|gap| gap.to_s - gap.from_s) else {
        return;
    };
    let text = |seconds: i64| crate::instant::civil::text(seconds).replace('T', " ");
    let sentence = format!(
        "{} without usable readings, the longest from {} to {} ({} min)",
        counted(u64::try_from(gaps.len()).unwrap_or(0), "gap"),
        text(longest.from_s),
        text(longest.to_s),
        (longest.to_s - longest.from_s) / 60,
    );
    notes.push(Note {
        topic: Topic::Time,
        sentence,
        lines: gaps.iter().take(5).map(|gap| u64::from(gap.line)).collect(),
        count: u64::try_from(gaps.len()).unwrap_or(0),
    });
}

/// The other custom is named in a note.
const fn over_name(over: Over) -> &'static str {
    match over {
        Over::Water => "water",
        Over::Ice => "ice",
    }
}
