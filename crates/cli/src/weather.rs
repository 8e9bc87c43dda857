//! `dewrun weather`: what is understood of a weather or logger file.

use std::fs::File;
use std::io::{self, Read, Write};
use std::path::Path;

use dewrun_document::weather_answer;
use dewrun_quantity::measure::{ABSOLUTE_PRESSURE, TUBE_LENGTH};
use dewrun_quantity::{DecimalMark, parse};
use dewrun_run::air::Over;
use dewrun_weather::{
    ColumnChoice, DateOrder, Delimiter, Form, Reader, Role, Stamps, Understanding, Unit, Weather,
};

use crate::answer_json::write_answer;
use crate::args::{
    Between, FileForm, Lead, Mark, Meaning, Order, Said, Surface, System, Weather as Args,
};
use crate::exit::Ending;

mod text;

/// A file is read in pieces of this many bytes.
const PIECE: usize = 1 << 16;

pub(crate) fn weather(args: &Args, out: &mut impl Write) -> io::Result<Ending> {
    let given = match given(&args.said, args.units) {
        Ok(given) => given,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    let name = args.file.display().to_string();
    let weather = match read(&args.file, given) {
        Ok(weather) => weather,
        Err(sentence) => {
            eprintln!("dewrun: {name}: {sentence}");
            return Ok(Ending::Failed);
        }
    };
    if args.rows {
        text::write_rows(&weather.series, out)?;
    } else if args.json {
        let json = weather_answer(&name, &weather).to_json();
        return write_answer(&name, json, Ending::Dry, out);
    } else {
        text::write(&name, &weather, args.units.style(), out)?;
    }
    Ok(Ending::Dry)
}

/// Reads a file piece by piece; a sentence where it can't be.
pub(crate) fn read(path: &Path, given: Understanding) -> Result<Weather, String> {
    let mut source: Box<dyn Read> = if path == Path::new("-") {
        Box::new(io::stdin().lock())
    } else {
        Box::new(File::open(path).map_err(|error| format!("the file can't be read: {error}"))?)
    };
    let mut reader = Reader::new(given);
    let mut piece = vec![0; PIECE];
    loop {
        let read = source
            .read(&mut piece)
            .map_err(|error| format!("the file can't be read: {error}"))?;
        let Some(bytes) = piece.get(..read).filter(|bytes| !bytes.is_empty()) else {
            break;
        };
        reader.push(bytes).map_err(|error| error.to_string())?;
    }
    reader.finish().map_err(|error| error.to_string())
}

/// What the command line says of the file.
pub(crate) fn given(said: &Said, units: System) -> Result<Understanding, String> {
    let units = units.style().units;
    let elevation = said
        .elevation
        .as_ref()
        .map(|text| TUBE_LENGTH.parse(text, units));
    let pressure = said
        .pressure
        .as_ref()
        .map(|text| ABSOLUTE_PRESSURE.parse(text, units));
    let offset = said.utc_offset.as_ref().map(|text| parse::number(text));
    let columns = said.columns.iter().map(|text| column(text));
    Ok(Understanding {
        form: said.form.map(|form| match form {
            FileForm::Epw => Form::Epw,
            FileForm::Tmy3 => Form::Tmy3,
            FileForm::Tm2 => Form::Tm2,
            FileForm::Table => Form::Table,
        }),
        encoding: None,
        delimiter: said.delimiter.map(delimiter),
        decimal_mark: said.decimal_mark.map(|mark| match mark {
            Mark::Point => DecimalMark::Point,
            Mark::Comma => DecimalMark::Comma,
        }),
        first_reading: said.first_reading,
        date_order: said.date_order.map(|order| match order {
            Order::Dmy => DateOrder::DayMonthYear,
            Order::Mdy => DateOrder::MonthDayYear,
            Order::Ymd => DateOrder::YearMonthDay,
        }),
        columns: columns.collect::<Result<_, _>>()?,
        station: said.station.clone(),
        stamps: said.stamps.map(|stamps| match stamps {
            Meaning::Start => Stamps::Start,
            Meaning::End => Stamps::End,
            Meaning::Moment => Stamps::Moment,
        }),
        utc_offset_h: offset
            .transpose()
            .map_err(|error| format!("--utc-offset: {error}"))?,
        elevation_m: elevation
            .transpose()
            .map_err(|error| format!("--elevation: {error}"))?
            .map(dewrun_quantity::Length::to_metres),
        pressure_pa: pressure
            .transpose()
            .map_err(|error| format!("--pressure: {error}"))?
            .map(dewrun_quantity::Pressure::to_pascals),
        dew_point_over: said.dew_point_over.map(over),
        relative_over: said.relative_humidity_over.map(over),
        dew_point_leads: leads(said),
    })
}

fn leads(said: &Said) -> Option<bool> {
    said.lead.map(|lead| matches!(lead, Lead::DewPoint))
}

const fn over(surface: Surface) -> Over {
    match surface {
        Surface::Water => Over::Water,
        Surface::Ice => Over::Ice,
    }
}

const fn delimiter(between: Between) -> Delimiter {
    match between {
        Between::Comma => Delimiter::Comma,
        Between::Semicolon => Delimiter::Semicolon,
        Between::Tab => Delimiter::Tab,
        Between::Bar => Delimiter::Bar,
        Between::Spaces => Delimiter::Spaces,
    }
}

/// `3=temperature` or `4=pressure:hPa`.
fn column(text: &str) -> Result<ColumnChoice, String> {
    let wrong = || format!("--column: `{text}` is not like 3=temperature or 4=pressure:hPa");
    let (number, what) = text.split_once('=').ok_or_else(wrong)?;
    let column: usize = number.trim().parse().map_err(|_| wrong())?;
    let (what, unit) = what
        .split_once(':')
        .map_or((what, None), |(what, unit)| (what, Some(unit)));
    let what = what.trim().replace(['-', '_'], " ");
    let role = Role::named(&what)
        .ok_or_else(|| format!("--column: `{what}` is none of {}", Role::names().join(", ")))?;
    let unit = unit
        .map(|unit| {
            Unit::named(unit.trim()).ok_or_else(|| format!("--column: there is no unit `{unit}`"))
        })
        .transpose()?;
    Ok(ColumnChoice { column, role, unit })
}
