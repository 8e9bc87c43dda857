//! `dewrun air`: one state of moist air from any two of its quantities.

use std::io::{self, Write};

use clap::CommandFactory;
use clap::error::ErrorKind;
use comfy_table::{CellAlignment, Table, presets};
use dewrun_document::air_answer;
use dewrun_quantity::measure::{
    ABSOLUTE_PRESSURE, ENTHALPY, HUMIDITY_RATIO, Measure, RELATIVE_HUMIDITY, TEMPERATURE,
    TUBE_LENGTH,
};
use dewrun_quantity::{Noted, Pressure, Style, Temperature, format};
use dewrun_run::air::{AirError, AirNote, Humidity, MoistAir, Over, Pair, Part, standard_pressure};
use dewrun_run::figure::Figure;

use crate::args::{Air, Cli, Surface};
use crate::exit::Ending;

/// Pressure of the standard atmosphere at sea level, ISO 2533.
const SEA_LEVEL: Pressure = Pressure::pascals(101_325.0);

pub(crate) fn air(args: &Air, out: &mut impl Write) -> io::Result<Ending> {
    let (parts, place) = match typed(args) {
        Ok(typed) => typed,
        Err(sentence) => return Ok(wrong(&sentence)),
    };
    if parts.len() != 2 {
        let given = parts.len();
        return Ok(wrong(&format!(
            "give two quantities of the air, such as --temperature 20C --dew-point 9C; {given} given"
        )));
    }
    let state = match state(&parts, place) {
        Ok(state) => state,
        Err(error) => {
            eprintln!("dewrun: {error}");
            return Ok(Ending::Failed);
        }
    };
    if !args.json {
        write_text(&state, args.units.style(), out)?;
        return Ok(Ending::Dry);
    }
    match air_answer(&state).to_json() {
        Ok(json) => writeln!(out, "{json}").map(|()| Ending::Dry),
        Err(error) => {
            eprintln!("dewrun: {}", error.sentence());
            Ok(Ending::Failed)
        }
    }
}

/// Says how the command is used, and what of it is wrong.
fn wrong(sentence: &str) -> Ending {
    let mut command = Cli::command();
    command.build();
    let error = match command.find_subcommand_mut("air") {
        Some(air) => air.error(ErrorKind::ValueValidation, sentence),
        None => command.error(ErrorKind::ValueValidation, sentence),
    };
    eprint!("{error}");
    Ending::WrongCommandLine
}

/// Where the air is: at a pressure, or at an altitude that gives one.
enum Place {
    Pressure(Pressure),
    Altitude(dewrun_quantity::Length),
}

/// The quantities typed and the pressure or altitude; a sentence where one of them is not to be read.
fn typed(args: &Air) -> Result<(Vec<Part>, Place), String> {
    let over = match args.over {
        Surface::Water => Over::Water,
        Surface::Ice => Over::Ice,
    };
    let parts = [
        read(
            args,
            "--temperature",
            args.temperature.as_ref(),
            &TEMPERATURE,
        )?
        .map(Part::Temperature),
        read(
            args,
            "--relative-humidity",
            args.relative_humidity.as_ref(),
            &RELATIVE_HUMIDITY,
        )?
        .map(|value| Part::Humidity(Humidity::Relative { value, over })),
        read(args, "--dew-point", args.dew_point.as_ref(), &TEMPERATURE)?
            .map(|point| Part::Humidity(Humidity::DewPoint(point))),
        read(
            args,
            "--frost-point",
            args.frost_point.as_ref(),
            &TEMPERATURE,
        )?
        .map(|point| Part::Humidity(Humidity::FrostPoint(point))),
        read(
            args,
            "--humidity-ratio",
            args.humidity_ratio.as_ref(),
            &HUMIDITY_RATIO,
        )?
        .map(|ratio| Part::Humidity(Humidity::Ratio(ratio))),
        read(args, "--wet-bulb", args.wet_bulb.as_ref(), &TEMPERATURE)?
            .map(|wet_bulb| Part::Humidity(Humidity::WetBulb(wet_bulb))),
        read(args, "--enthalpy", args.enthalpy.as_ref(), &ENTHALPY)?
            .map(|enthalpy| Part::Humidity(Humidity::Enthalpy(enthalpy))),
    ];
    let pressure = read(
        args,
        "--pressure",
        args.pressure.as_ref(),
        &ABSOLUTE_PRESSURE,
    )?;
    let altitude = read(args, "--altitude", args.altitude.as_ref(), &TUBE_LENGTH)?;
    let place = match altitude {
        Some(altitude) => Place::Altitude(altitude),
        None => Place::Pressure(pressure.unwrap_or(SEA_LEVEL)),
    };
    Ok((parts.into_iter().flatten().collect(), place))
}

fn read<Q: Copy>(
    args: &Air,
    option: &str,
    text: Option<&String>,
    measure: &Measure<Q>,
) -> Result<Option<Q>, String> {
    let read = |text: &String| measure.parse(text, args.units.style().units);
    text.map(read)
        .transpose()
        .map_err(|error| format!("{option}: {error}"))
}

fn state(parts: &[Part], place: Place) -> Result<Noted<MoistAir, AirNote>, AirError> {
    let pair = Pair::from_parts(parts)?;
    let pressure = match place {
        Place::Pressure(pressure) => pressure,
        Place::Altitude(altitude) => standard_pressure(altitude)?,
    };
    MoistAir::new(pair, pressure)
}

fn write_text(
    state: &Noted<MoistAir, AirNote>,
    style: Style,
    out: &mut impl Write,
) -> io::Result<()> {
    let wet_bulb = state.value.wet_bulb();
    let mut table = Table::new();
    table.load_style(presets::NOTHING);
    for (figure, number) in rows(&state.value, wet_bulb.value) {
        let (number, unit) = number.map_or_else(
            || (format::DOES_NOT_APPLY.to_owned(), ""),
            |number| {
                let shown = figure.kind().show(number, style);
                (shown.number, shown.unit)
            },
        );
        table.add_row([figure.name().to_owned(), number, unit.to_owned()]);
    }
    if let Some(numbers) = table.column_mut(1) {
        numbers.set_cell_alignment(CellAlignment::Right);
    }
    for line in table.lines() {
        writeln!(out, "{}", line.trim_end())?;
    }
    for note in state.notes.iter().chain(&wet_bulb.notes) {
        writeln!(out, "Note: {note}.")?;
    }
    Ok(())
}

/// Every quantity of a state, in the order of a handbook's table.
fn rows(air: &MoistAir, wet_bulb: Temperature) -> [(Figure, Option<f64>); 13] {
    let percent = |over| Some(air.relative_humidity(over).to_percent());
    let celsius = |point: Option<Temperature>| point.map(Temperature::to_celsius);
    [
        (Figure::StateTemperature, celsius(Some(air.temperature()))),
        (Figure::Pressure, Some(air.pressure().to_pascals())),
        (Figure::DewPoint, celsius(air.dew_point())),
        (Figure::FrostPoint, celsius(air.frost_point())),
        (Figure::HumidityOverWater, percent(Over::Water)),
        (Figure::HumidityOverIce, percent(Over::Ice)),
        (
            Figure::SaturationDegree,
            Some(air.degree_of_saturation(Over::Water) * 100.0),
        ),
        (
            Figure::HumidityRatio,
            Some(air.humidity_ratio().to_kilograms_per_kilogram()),
        ),
        (
            Figure::VapourPressure,
            Some(air.vapour_pressure().to_pascals()),
        ),
        (Figure::WetBulb, celsius(Some(wet_bulb))),
        (
            Figure::Enthalpy,
            Some(air.enthalpy().to_kilojoules_per_kilogram()),
        ),
        (
            Figure::SpecificVolume,
            Some(air.specific_volume().to_cubic_metres_per_kilogram()),
        ),
        (
            Figure::Density,
            Some(air.density().to_kilograms_per_cubic_metre()),
        ),
    ]
}
