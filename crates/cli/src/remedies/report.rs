//! Remedies as text: the target, what there is as drawn, and each remedy with what is left.

use std::io::{self, Write};

use dewrun_document::output::{LeftOutput, RemediesOutput, RemedyOutput};
use dewrun_quantity::format::{DOES_NOT_APPLY, amount, fixed};
use dewrun_quantity::{MassFlow, Style, measure};

use crate::columns::columns;

/// Writes the remedies of a run, the sentences first.
pub(super) fn write(
    told: &RemediesOutput,
    project: &str,
    run: &str,
    style: Style,
    out: &mut impl Write,
) -> io::Result<()> {
    writeln!(out, "{}", told.sentences.join(" "))?;
    writeln!(out, "\n{project} \u{2013} {run}")?;
    if let (Some(file), Some(sha256)) = (&told.weather_file, &told.weather_sha256) {
        writeln!(out, "Weather: {file}, SHA-256 {sha256}")?;
    }
    let unit = measure::WATER.unit(style.units).name;
    let heads = [
        String::new(),
        format!("as entered\n{unit}"),
        "wet\nh".to_owned(),
        "water\nkg".to_owned(),
        "frost\nh".to_owned(),
        "blind\nh".to_owned(),
        "chamber\n%".to_owned(),
        "a trap fills\nin days".to_owned(),
    ];
    let drawn = ("as drawn".to_owned(), &told.before);
    let numbered = told.remedies.iter().zip(1_u32..);
    let remedies = numbered.map(|(one, number)| (format!("{number}"), &one.left));
    let rows = core::iter::once(drawn).chain(remedies);
    let rows = rows.map(|(name, left)| row(name, left, style));
    write!(out, "\n{}", columns(heads, rows, 1))?;
    let mut was_cure = true;
    for (one, number) in told.remedies.iter().zip(1_u32..) {
        if number == 1 && one.meets_target {
            writeln!(out, "\nMeets the target, by the smallest size of each kind")?;
        }
        if (number == 1 || was_cure) && !one.meets_target {
            writeln!(out, "\nDoes not reach the target alone, at any size")?;
        }
        was_cure = one.meets_target;
        remedy(number, one, out)?;
    }
    Ok(())
}

fn row(name: String, left: &LeftOutput, style: Style) -> Vec<String> {
    let rate = MassFlow::grams_per_hour(left.entered.water_g_h.0);
    let year = left.year.as_ref();
    let none = || DOES_NOT_APPLY.to_owned();
    let hours = |value: Option<f64>| value.map_or_else(none, |value| fixed(value, 0, style.mark));
    let humid = year.map_or(left.entered.chamber_percent.0, |year| {
        year.most_humid_chamber_percent.0
    });
    vec![
        name,
        measure::WATER.show(rate, style).number,
        hours(year.map(|year| year.wet_hours.0)),
        year.map_or_else(none, |year| amount(year.water_kg.0, 2, style.mark)),
        hours(year.map(|year| year.frost_hours.0)),
        hours(year.and_then(|year| year.blind_hours).map(|one| one.0)),
        fixed(humid, 0, style.mark),
        hours(year.and_then(|year| year.trap_days).map(|one| one.0)),
    ]
}

fn remedy(number: u32, one: &RemedyOutput, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "{number}. {}.", one.what)?;
    writeln!(out, "   Work: {}; {}.", one.work, one.access)?;
    if !one.side_effects.is_empty() {
        writeln!(out, "   Beside it: {}.", one.side_effects.join("; "))?;
    }
    Ok(())
}
