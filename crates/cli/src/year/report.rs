//! The year of a run as text: the sentence, the months, design hours and states, water, and what is taken for granted.

use std::io::{self, Write};

use dewrun_document::output::{Figure, YearOutput, YearSumOutput, YearWaterOutput};
use dewrun_quantity::format::{DOES_NOT_APPLY, amount, entered, fixed};
use dewrun_quantity::measure::TEMPERATURE;
use dewrun_quantity::{Style, Temperature, Units};
use dewrun_weather::MONTH_NAMES;

use crate::columns::columns;

/// An ounce, g: exact.
const OUNCE_G: f64 = 28.349_523_125;

/// Writes the year of a run, the sentence first.
pub(super) fn write(
    year: &YearOutput,
    project: &str,
    run: &str,
    style: Style,
    out: &mut impl Write,
) -> io::Result<()> {
    writeln!(out, "{}", year.sentence)?;
    for note in &year.notes {
        writeln!(out, "Note: {note}")?;
    }
    writeln!(out, "\n{project} \u{2013} {run}")?;
    if let Some(weather) = &year.weather {
        writeln!(
            out,
            "Weather: {} {}, {} rows of {} s, SHA-256 {}",
            weather.file,
            weather.place,
            entered(weather.rows.0),
            entered(weather.step_s.0),
            weather.sha256
        )?;
    }
    if let Some(whole) = &year.whole {
        write!(out, "\n{}", months(whole, style))?;
        design_hours(whole, style, out)?;
        if let Some(water) = &whole.water {
            write_water(water, style, out)?;
        }
    }
    design_states(year, style, out)?;
    for stress in &year.stress {
        writeln!(
            out,
            "With {}: {} wet hours, {} of water.",
            stress.weather,
            hours(stress.wet_hours, style),
            water(stress.condensed_g, style)
        )?;
    }
    if !year.taken_for_granted.is_empty() || !year.assumed.is_empty() {
        writeln!(out, "\nTaken for granted")?;
    }
    for said in &year.taken_for_granted {
        writeln!(out, "{said}")?;
    }
    for one in &year.assumed {
        writeln!(
            out,
            "Assumed {}: {} ({} to {}), row {}.",
            one.path,
            entered(one.value.0),
            entered(one.low.0),
            entered(one.high.0),
            one.row
        )?;
    }
    Ok(())
}

/// An amount of water, with its unit.
fn water(grams: Figure, style: Style) -> String {
    let (number, unit) = match style.units {
        Units::Si => (grams.0, "g"),
        Units::InchPound => (grams.0 / OUNCE_G, "oz"),
    };
    format!("{}\u{a0}{unit}", amount(number, 1, style.mark))
}

fn hours(hours: Figure, style: Style) -> String {
    fixed(hours.0, 0, style.mark)
}

fn months(whole: &YearSumOutput, style: Style) -> String {
    let heads = ["month", "wet hours", "formed", "dried", "ran off"].map(str::to_owned);
    let of_months = whole.months.iter().zip(MONTH_NAMES).map(|(month, name)| {
        vec![
            name.to_owned(),
            hours(month.wet_hours, style),
            water(month.condensed_g, style),
            water(month.evaporated_g, style),
            water(month.drained_g, style),
        ]
    });
    let all = vec![
        "year".to_owned(),
        hours(whole.wet_hours, style),
        water(whole.condensed_g, style),
        water(whole.evaporated_g, style),
        water(whole.drained_g, style),
    ];
    columns(heads, of_months.chain([all]), 1)
}

fn design_hours(whole: &YearSumOutput, style: Style, out: &mut impl Write) -> io::Result<()> {
    writeln!(out)?;
    for hour in &whole.design_hours {
        writeln!(
            out,
            "Design hour of the route, {} % of all are wetter: {}, {}/h.",
            entered(hour.exceeded_percent.0),
            hour.at.replace('T', " "),
            water(hour.condensed_g_h, style)
        )?;
    }
    writeln!(
        out,
        "Coldest wall {}; the most humid air in the chamber has {} % relative humidity.",
        whole.coldest_wall_c.map_or_else(
            || DOES_NOT_APPLY.to_owned(),
            |coldest| celsius(coldest, style)
        ),
        fixed(whole.most_humid_chamber_percent.0, 0, style.mark)
    )
}

fn celsius(celsius: Figure, style: Style) -> String {
    TEMPERATURE
        .show(Temperature::celsius(celsius.0), style)
        .to_string()
}

fn write_water(found: &YearWaterOutput, style: Style, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "\nWater that stands, and the airflow")?;
    let troubles = [
        ("may not be sampling the duct", found.blind_hours),
        ("a low point sealed", found.sealed_hours),
        ("a bore closed by ice", found.iced_hours),
        ("slugs of water", found.slug_hours),
        ("airflow under its low limit", found.low_flow_hours),
        ("airflow over its high limit", found.high_flow_hours),
        ("air runs backwards", found.reversed_hours),
        ("a trap full", found.trap_full_hours),
    ];
    let rows = troubles.map(|(what, held)| vec![what.to_owned(), hours(held, style)]);
    write!(
        out,
        "{}",
        columns(["trouble", "hours"].map(str::to_owned), rows, 1)
    )?;
    for store in &found.stores {
        let holds = store
            .holds_g
            .map_or_else(String::new, |holds| format!(" of {}", water(holds, style)));
        writeln!(
            out,
            "{} at {} m of the {} tube: at most {}{holds}.",
            store.kind,
            fixed(store.at_m.0, 1, style.mark),
            store.tube,
            water(store.most_g, style)
        )?;
    }
    if found.stores.iter().all(|store| store.kind != "trap") {
        return writeln!(out, "There is no trap.");
    }
    writeln!(
        out,
        "Traps became full {} times; {} visits found something to let out, {} in all.",
        entered(found.trap_fillings.0),
        entered(found.emptyings.0),
        water(found.let_out_g, style)
    )
}

fn design_states(year: &YearOutput, style: Style, out: &mut impl Write) -> io::Result<()> {
    if year.design_states.is_empty() {
        return Ok(());
    }
    let heads = [
        "design state, hours that exceed it",
        "outdoors",
        "dew point",
        "water formed",
    ];
    let rows = year.design_states.iter().map(|state| {
        vec![
            format!(
                "{} {} %",
                state.by.replace('_', " "),
                entered(state.exceeded_percent.0)
            ),
            celsius(state.outdoor_c, style),
            celsius(state.outdoor_dew_point_c, style),
            format!("{}/h", water(state.condensed_g_h, style)),
        ]
    });
    write!(out, "\n{}", columns(heads.map(str::to_owned), rows, 1))
}
