//! Whether a project keeps within its limits and its ids and references fit.

mod air_path;
mod target;
mod troubles;
mod visit;
mod year;

use std::collections::BTreeSet;

use dewrun_quantity::Limits;

use air_path::{air_path, traps};
use visit::visits;

pub(super) use target::target;
pub(super) use troubles::troubles;
pub(super) use year::{fan_off, source, space_year, weather};

use super::{
    AirPair, Detector, Duct, Fitting, Humidity, Input, Leg, Origin, Pressure, Project, Relative,
    Route, Run, Space,
};
use crate::field_path::Here;
use crate::{DocumentError, limits};

/// An error in a box: it is carried past every field.
type Checked = Result<(), Box<DocumentError>>;

/// Checks every limit, id and reference of a project.
///
/// How lengths, rises and humidities fit together is left to the engine, so that a half-finished project can be opened.
///
/// # Errors
/// The first [`DocumentError`] in the order of the file.
pub fn check(project: &Project) -> Result<(), DocumentError> {
    whole(project).map_err(|error| *error)
}

fn whole(project: &Project) -> Checked {
    text(&Here::at("name"), &project.name, 0, limits::NAME)?;
    text(&Here::at("note"), &project.note, 0, limits::NOTE)?;
    let at = Here::at("pressure");
    match &project.pressure {
        Pressure::AbsolutePa(value) => {
            number(&at.field("absolute_pa"), value, &limits::ABSOLUTE_PA)?
        }
        Pressure::AltitudeM(value) => number(&at.field("altitude_m"), value, &limits::ALTITUDE_M)?,
    }
    let at = Here::at("spaces");
    let spaces = list(
        &at,
        &project.spaces,
        limits::SPACES,
        |space| &space.id,
        space,
    )?;
    let at = Here::at("runs");
    list(
        &at,
        &project.runs,
        limits::RUNS,
        |run| &run.id,
        |at, one| run(at, one, &spaces),
    )?;
    for (position, run) in project.runs.iter().enumerate() {
        variant(&at.index(position).field("variant_of"), run, &project.runs)?;
    }
    Ok(())
}

/// A variant names a run that is none itself.
fn variant(at: &Here<'_>, run: &Run, runs: &[Run]) -> Checked {
    let Some(original) = &run.variant_of else {
        return Ok(());
    };
    let is_it = |run: &Run| run.id == *original && run.variant_of.is_none();
    if runs.iter().any(is_it) {
        return Ok(());
    }
    Err(Box::new(DocumentError::NoSuchOriginal {
        path: at.path(),
        id: original.clone(),
    }))
}

fn space(at: &Here<'_>, space: &Space) -> Checked {
    text(&at.field("name"), &space.name, 0, limits::NAME)?;
    number(
        &at.field("temperature_c"),
        &space.temperature_c,
        &limits::TEMPERATURE_C,
    )?;
    humidity(&at.field("humidity"), &space.humidity)?;
    optional(
        &at.field("radiant_c"),
        space.radiant_c.as_ref(),
        &limits::RADIANT_C,
    )?;
    number(&at.field("wind_m_s"), &space.wind_m_s, &limits::WIND_M_S)?;
    each(at, &[("pressure_pa", &space.pressure_pa)])
}

fn run(at: &Here<'_>, run: &Run, spaces: &BTreeSet<&str>) -> Checked {
    text(&at.field("name"), &run.name, 0, limits::NAME)?;
    duct(&at.field("duct"), &run.duct)?;
    let flow = at.field("flow");
    number(
        &flow.field("volume_l_min"),
        &run.flow.volume_l_min,
        &limits::VOLUME_L_MIN,
    )?;
    if let Some(path) = &run.air_path {
        air_path(&at.field("air_path"), path)?;
    }
    visits(&at.field("visits"), &run.visits)?;
    let intake = route(&at.field("intake"), &run.intake, spaces)?;
    detector(&at.field("detector"), &run.detector)?;
    let Some(exhaust) = &run.exhaust else {
        return Ok(());
    };
    route(&at.field("exhaust"), exhaust, spaces)?;
    let legs = at.field("exhaust");
    let legs = legs.field("legs");
    for (position, leg) in exhaust.legs.iter().enumerate() {
        if intake.contains(leg.id.as_str()) {
            return Err(doubled(&legs.index(position).field("id"), &leg.id));
        }
    }
    Ok(())
}

fn duct(at: &Here<'_>, duct: &Duct) -> Checked {
    text(&at.field("name"), &duct.name, 0, limits::NAME)?;
    air(&at.field("air"), &duct.air)?;
    number(&at.field("static_pa"), &duct.static_pa, &limits::STATIC_PA)?;
    number(
        &at.field("velocity_pa"),
        &duct.velocity_pa,
        &limits::VELOCITY_PA,
    )
}

fn air(at: &Here<'_>, pair: &AirPair) -> Checked {
    match pair {
        AirPair::Temperature {
            temperature_c,
            humidity: wet,
        } => {
            let at = at.field("temperature");
            number(
                &at.field("temperature_c"),
                temperature_c,
                &limits::TEMPERATURE_C,
            )?;
            humidity(&at.field("humidity"), wet)
        }
        AirPair::DewPointAndRelative {
            dew_point_c,
            relative: wet,
        } => {
            let at = at.field("dew_point_and_relative");
            number(&at.field("dew_point_c"), dew_point_c, &limits::DEW_POINT_C)?;
            relative(&at.field("relative"), wet)
        }
        AirPair::FrostPointAndRelative {
            frost_point_c,
            relative: wet,
        } => {
            let at = at.field("frost_point_and_relative");
            number(
                &at.field("frost_point_c"),
                frost_point_c,
                &limits::FROST_POINT_C,
            )?;
            relative(&at.field("relative"), wet)
        }
        AirPair::RatioAndRelative {
            ratio_kg_kg,
            relative: wet,
        } => {
            let at = at.field("ratio_and_relative");
            number(&at.field("ratio_kg_kg"), ratio_kg_kg, &limits::RATIO_KG_KG)?;
            relative(&at.field("relative"), wet)
        }
    }
}

fn humidity(at: &Here<'_>, humidity: &Humidity) -> Checked {
    match humidity {
        Humidity::Relative(value) => relative(&at.field("relative"), value),
        Humidity::DewPoint(value) => number(&at.field("dew_point_c"), value, &limits::DEW_POINT_C),
        Humidity::FrostPoint(value) => {
            number(&at.field("frost_point_c"), value, &limits::FROST_POINT_C)
        }
        Humidity::Ratio(value) => number(&at.field("ratio_kg_kg"), value, &limits::RATIO_KG_KG),
        Humidity::WetBulb(value) => number(&at.field("wet_bulb_c"), value, &limits::WET_BULB_C),
        Humidity::Enthalpy(value) => {
            number(&at.field("enthalpy_kj_kg"), value, &limits::ENTHALPY_KJ_KG)
        }
    }
}

fn relative(at: &Here<'_>, relative: &Relative) -> Checked {
    number(
        &at.field("percent"),
        &relative.percent,
        &limits::RELATIVE_PERCENT,
    )
}

fn detector(at: &Here<'_>, detector: &Detector) -> Checked {
    number(&at.field("heat_w"), &detector.heat_w, &limits::HEAT_W)?;
    let rating = detector.humidity_rating_percent.as_ref();
    optional(
        &at.field("humidity_rating_percent"),
        rating,
        &limits::HUMIDITY_RATING_PERCENT,
    )
}

fn route<'a>(
    at: &Here<'_>,
    route: &'a Route,
    spaces: &BTreeSet<&str>,
) -> Result<BTreeSet<&'a str>, Box<DocumentError>> {
    text(
        &at.field("entry").field("place"),
        &route.entry.place,
        0,
        limits::NAME,
    )?;
    traps(&at.field("traps"), &route.traps)?;
    let at = at.field("legs");
    list(
        &at,
        &route.legs,
        limits::LEGS,
        |leg| &leg.id,
        |at, one| leg(at, one, spaces),
    )
}

/// Checks numbers that may be left out, by the limits that stand in the table under their names.
fn each(at: &Here<'_>, inputs: &[(&'static str, &Option<Input<f64>>)]) -> Checked {
    each_of(&limits::FIELDS, at, inputs)
}

/// As [`each`], by the limits of another table.
fn each_of(
    table: &[(&str, Limits)],
    at: &Here<'_>,
    inputs: &[(&'static str, &Option<Input<f64>>)],
) -> Checked {
    for (name, input) in inputs {
        let found = table.iter().find(|(known, _)| known == name);
        if let (Some((_, limits)), Some(input)) = (found, input) {
            number(&at.field(name), input, limits)?;
        }
    }
    Ok(())
}

fn leg(at: &Here<'_>, leg: &Leg, spaces: &BTreeSet<&str>) -> Checked {
    if !spaces.contains(leg.space.as_str()) {
        let known: Vec<&str> = spaces.iter().copied().collect();
        return Err(Box::new(DocumentError::NoSuchSpace {
            path: at.field("space").path(),
            id: leg.space.clone(),
            known: if known.is_empty() {
                "none".to_owned()
            } else {
                known.join(", ")
            },
        }));
    }
    number(&at.field("length_m"), &leg.length_m, &limits::LENGTH_M)?;
    number(&at.field("rise_m"), &leg.rise_m, &limits::RISE_M)?;
    let tube = at.field("tube");
    number(&tube.field("bore_mm"), &leg.tube.bore_mm, &limits::BORE_MM)?;
    number(
        &tube.field("outside_diameter_mm"),
        &leg.tube.outside_diameter_mm,
        &limits::OUTSIDE_DIAMETER_MM,
    )?;
    number(
        &tube.field("conductivity_w_mk"),
        &leg.tube.conductivity_w_mk,
        &limits::TUBE_CONDUCTIVITY_W_MK,
    )?;
    number(
        &at.field("emissivity"),
        &leg.emissivity,
        &limits::EMISSIVITY,
    )?;
    if let Some(insulation) = &leg.insulation {
        let at = at.field("insulation");
        number(
            &at.field("thickness_mm"),
            &insulation.thickness_mm,
            &limits::THICKNESS_MM,
        )?;
        number(
            &at.field("conductivity_w_mk"),
            &insulation.conductivity_w_mk,
            &limits::INSULATION_CONDUCTIVITY_W_MK,
        )?;
    }
    optional(
        &at.field("heat_tracing_w_m"),
        leg.heat_tracing_w_m.as_ref(),
        &limits::HEAT_TRACING_W_M,
    )?;
    each(at, &[("hanger_spacing_m", &leg.hanger_spacing_m)])?;
    if let Some(stuff) = &leg.tube.stuff {
        each(
            &tube.field("stuff"),
            &[
                ("roughness_mm", &stuff.roughness_mm),
                ("long_term_modulus_mpa", &stuff.long_term_modulus_mpa),
                ("density_kg_m3", &stuff.density_kg_m3),
            ],
        )?;
    }
    let at = at.field("fittings");
    many(&at, leg.fittings.len(), limits::FITTINGS)?;
    for (position, one) in leg.fittings.iter().enumerate() {
        fitting(&at.index(position), one)?;
    }
    Ok(())
}

fn fitting(at: &Here<'_>, fitting: &Fitting) -> Checked {
    number(&at.field("at_m"), &fitting.at_m, &limits::FITTING_AT_M)?;
    number(
        &at.field("loss_coefficient"),
        &fitting.loss_coefficient,
        &limits::LOSS_COEFFICIENT,
    )
}

/// Checks the length of a list, the ids of its entries and each entry; gives the ids.
fn list<'a, T>(
    at: &Here<'_>,
    entries: &'a [T],
    max: usize,
    id_of: impl Fn(&'a T) -> &'a String,
    check: impl Fn(&Here<'_>, &'a T) -> Checked,
) -> Result<BTreeSet<&'a str>, Box<DocumentError>> {
    many(at, entries.len(), max)?;
    let mut ids = BTreeSet::new();
    for (position, entry) in entries.iter().enumerate() {
        let at = at.index(position);
        let id = id_of(entry);
        text(&at.field("id"), id, 1, limits::ID)?;
        if !ids.insert(id.as_str()) {
            return Err(doubled(&at.field("id"), id));
        }
        check(&at, entry)?;
    }
    Ok(ids)
}

fn doubled(at: &Here<'_>, id: &str) -> Box<DocumentError> {
    Box::new(DocumentError::DoubledId {
        path: at.path(),
        id: id.to_owned(),
    })
}

fn many(at: &Here<'_>, count: usize, max: usize) -> Checked {
    if count <= max {
        return Ok(());
    }
    Err(Box::new(DocumentError::TooMany {
        path: at.path(),
        count,
        max,
    }))
}

fn text(at: &Here<'_>, text: &str, min: usize, max: usize) -> Checked {
    let count = text.chars().count();
    if (min..=max).contains(&count) {
        return Ok(());
    }
    Err(Box::new(DocumentError::TextLength {
        path: at.path(),
        count,
        min,
        max,
    }))
}

fn optional(at: &Here<'_>, input: Option<&Input<f64>>, limits: &Limits) -> Checked {
    input.map_or(Ok(()), |input| number(at, input, limits))
}

fn number(at: &Here<'_>, input: &Input<f64>, limits: &Limits) -> Checked {
    within(at, input.value, limits)?;
    let at = at.field("origin");
    match &input.origin {
        Origin::Typed => Ok(()),
        Origin::Assumed { row, low, high } => {
            let at = at.field("assumed");
            text(&at.field("row"), row, 1, limits::ID)?;
            within(&at.field("low"), *low, limits)?;
            within(&at.field("high"), *high, limits)?;
            if *low <= input.value && input.value <= *high {
                return Ok(());
            }
            Err(Box::new(DocumentError::OutsideSpan {
                path: at.path(),
                value: input.value,
                low: *low,
                high: *high,
            }))
        }
        Origin::Measured { on, by } => {
            let at = at.field("measured");
            day(&at.field("on"), on)?;
            text(&at.field("by"), by, 0, limits::NAME)
        }
    }
}

fn within(at: &Here<'_>, value: f64, limits: &Limits) -> Checked {
    match limits.check(value) {
        Ok(_) => Ok(()),
        Err(source) => Err(Box::new(DocumentError::OutOfRange {
            path: at.path(),
            source,
        })),
    }
}

/// A day of the calendar, written as 2026-08-30.
fn day(at: &Here<'_>, text: &str) -> Checked {
    let mut parts = text.split('-').map(|part| {
        let digits = part.bytes().all(|sign| sign.is_ascii_digit());
        (
            part.len(),
            digits.then(|| part.parse::<u32>().ok()).flatten(),
        )
    });
    let date = (parts.next(), parts.next(), parts.next(), parts.next());
    let (Some((4, Some(year))), Some((2, Some(month))), Some((2, Some(day))), None) = date else {
        return Err(no_day(at, text));
    };
    let leaps = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let last = match month {
        4 | 6 | 9 | 11 => 30,
        2 if leaps => 29,
        2 => 28,
        1..=12 => 31,
        _ => 0,
    };
    if (1..=last).contains(&day) {
        return Ok(());
    }
    Err(no_day(at, text))
}

fn no_day(at: &Here<'_>, text: &str) -> Box<DocumentError> {
    Box::new(DocumentError::NoSuchDay {
        path: at.path(),
        found: text.chars().take(limits::ID).collect(),
    })
}
