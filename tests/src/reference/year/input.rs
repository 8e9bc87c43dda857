//! What a case of `year.json` says, as a route and its hours.

use std::fs;
use std::path::Path;

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio};
use dewrun_numeric::elementary::cos;
use dewrun_year::{Around, Hour, Hours, Leg, Route};
use serde_json::Value;

use crate::reference::inputs::Inputs;

/// A case, ready to be marched.
pub(super) struct Input {
    pub(super) route: Route,
    pub(super) hours: Hours,
}

/// Dry bulb °C, dew point °C, pressure Pa.
type Row = (f64, f64, f64);

/// Hours of a weather file as they are, of dry air that flows at a rate, kg/s, in one space.
pub(super) fn of_weather(file: &Path, dry_air_kg_s: f64, around: Around) -> Result<Hours, String> {
    let mut hours = Hours::of_spaces(1);
    for (air_c, dew_c, p_pa) in weather_rows(file)? {
        let hour = Hour {
            seconds: 3600.0,
            air_c,
            w: humidity_ratio(saturated_over_water(dew_c, p_pa)),
            p_pa,
            dry_air_kg_s,
        };
        hours.push(hour, [around]);
    }
    Ok(hours)
}

/// Reads a case.
pub(super) fn of(case: &Value, folder: &Path) -> Result<Input, String> {
    let segments = case["segments"].as_array().ok_or("segments are missing")?;
    let retained = Inputs::of(case).number("retained_kg_m2")?;
    let legs = segments
        .iter()
        .enumerate()
        .map(|(space, segment)| leg(&Inputs::of(segment), space, retained))
        .collect::<Result<Vec<_>, String>>()?;
    let count = case["hours"].as_u64().ok_or("hours are missing")?;
    let count = usize::try_from(count).map_err(|error| error.to_string())?;
    let rows = rows(&case["air"], folder, count)?;
    let mut hours = Hours::of_spaces(segments.len());
    for (h, &(air_c, dew_c, p_pa)) in rows.iter().enumerate() {
        let w = humidity_ratio(saturated_over_water(dew_c, p_pa));
        let litres = series(&case["q_lpm"], h)?;
        let hour = Hour {
            seconds: 3600.0,
            air_c,
            w,
            p_pa,
            dry_air_kg_s: litres / 60_000.0 * density_kg_m3(air_c, w, p_pa) / (1.0 + w),
        };
        let spaces = segments
            .iter()
            .map(|segment| around(segment, h, p_pa))
            .collect::<Result<Vec<_>, String>>()?;
        hours.push(hour, spaces);
    }
    let route = Route {
        intake: legs,
        detector_w: 0.0,
        exhaust: Vec::new(),
    };
    Ok(Input { route, hours })
}

fn leg(segment: &Inputs<'_>, space: usize, retained_kg_m2: f64) -> Result<Leg, String> {
    let length_m = segment.number("length")?;
    let steep = segment.raw()["vertical"].as_bool();
    Ok(Leg {
        length_m,
        bore_m: segment.number("d_in")?,
        tube_outside_m: segment.number("d_out")?,
        tube_w_mk: segment.number("k_wall")?,
        insulation_m: segment.number("ins")?,
        insulation_w_mk: segment.number("k_ins")?,
        emissivity: segment.number("emis")?,
        tracing_w_m: segment.number("trace")?,
        riser_m: steep.ok_or("vertical is missing")?.then_some(length_m),
        space,
        retained_kg_m2,
    })
}

fn around(segment: &Value, h: usize, p_pa: f64) -> Result<Around, String> {
    let number = |name: &str| Inputs::of(segment).number(name);
    let air_c = match segment["t_amb_sine"].as_array() {
        Some(sine) => swing(sine, 24.0, h)?,
        None => number("t_amb")?,
    };
    Ok(Around {
        air_c,
        w: humidity_ratio(number("rh_amb")? * saturated_over_water(air_c, p_pa)),
        radiant_c: air_c,
        wind_m_s: number("wind")?,
    })
}

fn rows(air: &Value, folder: &Path, count: usize) -> Result<Vec<Row>, String> {
    let Some(file) = air["weather"].as_str() else {
        return (0..count)
            .map(|h| {
                Ok((
                    series(&air["t_c"], h)?,
                    series(&air["td_c"], h)?,
                    series(&air["p_pa"], h)?,
                ))
            })
            .collect();
    };
    let least = air["t_min_c"].as_f64().unwrap_or(f64::NEG_INFINITY);
    let from = air["rows"][0].as_u64().unwrap_or(0);
    let from = usize::try_from(from).map_err(|error| error.to_string())?;
    let rows = weather_rows(&folder.join("weather").join(file))?;
    let rows: Vec<Row> = rows.into_iter().skip(from).take(count).collect();
    if rows.len() == count {
        let raised = |(air_c, dew_c, p_pa): Row| (air_c.max(least), dew_c, p_pa);
        Ok(rows.into_iter().map(raised).collect())
    } else {
        Err(format!("{file} has {} rows", rows.len()))
    }
}

/// The rows of an EPW file as they stand.
fn weather_rows(file: &Path) -> Result<Vec<Row>, String> {
    let text = fs::read(file).map_err(|error| format!("{}: {error}", file.display()))?;
    let text = String::from_utf8_lossy(&text);
    let row = |line: &str| {
        let parts: Vec<&str> = line.split(',').collect();
        let part = |at: usize| {
            let word = parts.get(at).ok_or("a row is short")?;
            word.trim()
                .parse::<f64>()
                .map_err(|error| error.to_string())
        };
        Ok((part(6)?, part(7)?, part(9)?))
    };
    text.lines().skip(8).map(row).collect()
}

/// A value of an hour: a number, a cycle of spans, a sine or a list.
fn series(value: &Value, h: usize) -> Result<f64, String> {
    if let Some(number) = value.as_f64() {
        return Ok(number);
    }
    if let Some(list) = value["hourly"].as_array() {
        return list
            .get(h)
            .and_then(Value::as_f64)
            .ok_or_else(|| "the list is short".to_owned());
    }
    if let Some(sine) = value["sine"].as_array() {
        let period = sine
            .get(2)
            .and_then(Value::as_f64)
            .ok_or("a sine without period")?;
        let without: Vec<Value> = [0, 1, 3]
            .iter()
            .filter_map(|&at| sine.get(at).cloned())
            .collect();
        return swing(&without, period, h);
    }
    let cycle = value["cycle"]
        .as_array()
        .ok_or("a series of no known form")?;
    let span = |pair: &Value| pair[0].as_f64().unwrap_or(0.0);
    let all: f64 = cycle.iter().map(span).sum();
    let mut left = hour(h) % all;
    for pair in cycle {
        if left < span(pair) {
            return pair[1]
                .as_f64()
                .ok_or_else(|| "a cycle without value".to_owned());
        }
        left -= span(pair);
    }
    Err("an empty cycle".to_owned())
}

/// `mean + amp cos(2 pi (h - peak)/period)`.
fn swing(sine: &[Value], period: f64, h: usize) -> Result<f64, String> {
    let [mean, amp, peak] = sine else {
        return Err("a sine of no known form".to_owned());
    };
    let number = |value: &Value| value.as_f64().ok_or("a sine holds numbers");
    let turns = (hour(h) - number(peak)?) / period;
    let turns = turns - turns.floor();
    Ok(number(mean)? + number(amp)? * cos(2.0 * core::f64::consts::PI * turns))
}

fn hour(h: usize) -> f64 {
    u32::try_from(h).map_or(f64::NAN, f64::from)
}
