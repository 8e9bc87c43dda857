//! Limits of a project's year.

use super::{Checked, each_of, many, text, within};
use crate::field_path::Here;
use crate::v1::{
    AirFrom, AirSource, AirStep, AirStepKind, FileReading, Follows, Input, Period, Setting,
    SpaceYear, WeatherReference,
};
use crate::{DocumentError, limits};

pub(in crate::v1) fn weather(at: &Here<'_>, file: &WeatherReference) -> Checked {
    text(&at.field("file"), &file.file, 1, limits::NAME)?;
    text(&at.field("place"), &file.place, 0, limits::NAME)?;
    plain(at, &[("rows", file.rows), ("step_s", file.step_s)])?;
    sha256(at, &file.sha256)?;
    if let Some(said) = &file.reading {
        reading(&at.field("reading"), said)?;
    }
    let at = at.field("design");
    many(&at, file.design.len(), limits::PERIODS)?;
    for (position, state) in file.design.iter().enumerate() {
        plain(
            &at.index(position),
            &[
                ("exceeded_percent", state.exceeded_percent),
                ("outdoor_c", state.outdoor_c),
                ("outdoor_dew_point_c", state.outdoor_dew_point_c),
            ],
        )?;
    }
    Ok(())
}

/// The hash of a file in letters.
pub(super) fn sha256(at: &Here<'_>, digits: &str) -> Checked {
    let is_digit = |sign: u8| matches!(sign, b'0'..=b'9' | b'a'..=b'f');
    if digits.len() == 64 && digits.bytes().all(is_digit) {
        return Ok(());
    }
    told(
        &at.field("sha256"),
        "is no SHA-256, must have 64 digits from 0 to 9 and a to f".to_owned(),
    )
}

fn reading(at: &Here<'_>, said: &FileReading) -> Checked {
    let numbers = [
        ("first_reading", said.first_reading),
        ("utc_offset_h", said.utc_offset_h),
        ("elevation_m", said.elevation_m),
        ("pressure_pa", said.pressure_pa),
    ];
    for (name, number) in numbers {
        plain(at, number.map(|number| (name, number)).as_slice())?;
    }
    if let Some(line) = said.first_reading {
        is_whole(&at.field("first_reading"), line, "number")?;
    }
    if let Some(station) = &said.station {
        text(&at.field("station"), station, 0, limits::NAME)?;
    }
    let at = at.field("columns");
    many(&at, said.columns.len(), limits::COLUMNS)?;
    for (position, column) in said.columns.iter().enumerate() {
        let at = at.index(position);
        within(&at.field("number"), column.number, &limits::COLUMN)?;
        is_whole(&at.field("number"), column.number, "number")?;
        text(&at.field("holds"), &column.holds, 1, limits::NAME)?;
        if let Some(unit) = &column.unit {
            text(&at.field("unit"), unit, 0, limits::NAME)?;
        }
    }
    Ok(())
}

pub(in crate::v1) fn source(at: &Here<'_>, source: &AirSource) -> Checked {
    each(
        at,
        &[
            ("temperature_c", &source.temperature_c),
            ("percent", &source.percent),
        ],
    )?;
    settings(&at.field("settings"), &source.settings)?;
    if let Some(file) = &source.file {
        weather(&at.field("file"), file)?;
    } else if source.from == AirFrom::Measured {
        return missing(&at.field("file"), "air that was measured");
    }
    let at = at.field("steps");
    many(&at, source.steps.len(), limits::PERIODS)?;
    for (position, one) in source.steps.iter().enumerate() {
        step(&at.index(position), one)?;
    }
    Ok(())
}

fn step(at: &Here<'_>, step: &AirStep) -> Checked {
    let fields = [
        ("temperature_c", &step.temperature_c),
        ("percent", &step.percent),
        ("share", &step.share),
        ("moisture_share", &step.moisture_share),
    ];
    each(at, &fields)?;
    periods(&at.field("when"), &step.when)?;
    // In the order of the fields.
    let (what, needed) = match step.kind {
        AirStepKind::Heated => ("air that is heated", [true, false, false, false]),
        AirStepKind::Cooled => ("air that is cooled", [true, false, true, false]),
        AirStepKind::Mixed => ("air that is mixed", [true, true, true, false]),
        AirStepKind::Humidified => ("air that is humidified", [false, true, false, false]),
        AirStepKind::Recovered => ("a recovery of heat", [true, true, true, true]),
    };
    for ((name, input), needed) in fields.into_iter().zip(needed) {
        if needed && input.is_none() {
            return missing(&at.field(name), what);
        }
    }
    Ok(())
}

pub(in crate::v1) fn space_year(at: &Here<'_>, year: &SpaceYear) -> Checked {
    let numbers: [(_, &Option<Input<f64>>); 6] = [
        ("share", &year.share),
        ("room_c", &year.room_c),
        ("room_percent", &year.room_percent),
        ("roof_absorbs", &year.roof_absorbs),
        ("sky_share", &year.sky_share),
        ("wind_share", &year.wind_share),
    ];
    each(at, &numbers)?;
    settings(&at.field("settings"), &year.settings)?;
    if year.follows == Follows::Partly && year.share.is_none() {
        return missing(&at.field("share"), "a space that follows outdoors partly");
    }
    Ok(())
}

fn settings(at: &Here<'_>, settings: &[Setting]) -> Checked {
    many(at, settings.len(), limits::PERIODS)?;
    for (position, one) in settings.iter().enumerate() {
        let at = at.index(position);
        period(&at.field("when"), &one.when)?;
        each(
            &at,
            &[
                ("temperature_c", &one.temperature_c),
                ("percent", &one.percent),
            ],
        )?;
    }
    Ok(())
}

/// The periods in which a duct's fan is off.
pub(in crate::v1) fn fan_off(at: &Here<'_>, off: &[Period]) -> Checked {
    periods(at, off)
}

fn periods(at: &Here<'_>, periods: &[Period]) -> Checked {
    many(at, periods.len(), limits::PERIODS)?;
    for (position, one) in periods.iter().enumerate() {
        period(&at.index(position), one)?;
    }
    Ok(())
}

fn period(at: &Here<'_>, period: &Period) -> Checked {
    for (name, hour) in [("from_h", period.from_h), ("until_h", period.until_h)] {
        let Some(hour) = hour else {
            continue;
        };
        plain(at, &[(name, hour)])?;
        is_whole(&at.field(name), hour, "hour")?;
    }
    Ok(())
}

fn each(at: &Here<'_>, inputs: &[(&'static str, &Option<Input<f64>>)]) -> Checked {
    each_of(&limits::YEAR, at, inputs)
}

/// Checks numbers without an origin, by the limits that stand in the table under their names.
fn plain(at: &Here<'_>, numbers: &[(&'static str, f64)]) -> Checked {
    for (name, number) in numbers {
        let found = limits::YEAR_PLAIN.iter().find(|(known, _)| known == name);
        if let Some((_, limits)) = found {
            within(&at.field(name), *number, limits)?;
        }
    }
    Ok(())
}

pub(super) fn is_whole(at: &Here<'_>, number: f64, what: &str) -> Checked {
    if number.floor() < number {
        return told(at, format!("must be a whole {what}"));
    }
    Ok(())
}

fn missing(at: &Here<'_>, what: &str) -> Checked {
    told(at, format!("is missing, {what} must have it"))
}

pub(super) fn told(at: &Here<'_>, sentence: String) -> Checked {
    Err(Box::new(DocumentError::Told {
        path: at.path(),
        sentence,
    }))
}
