//! The answer to a run as text: the sentence, the legs, the sensor, the notes.

use std::io::{self, Write};

use dewrun_document::{Project, note, whole_notes};
use dewrun_quantity::Style;
use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot, value};

use crate::evaluate::Answered;
use crate::table::legs;
use crate::whole::whole;

/// What stands under every answer.
pub(crate) const CAUTIONS: &str = "Advice for competent people: the device's listing and instructions, the local code and the authority having \
jurisdiction come first; impair a detector only under the site's procedure; after any change to tube, trap or filter \
measure the airflow again and test with smoke; never widen an airflow limit to cure water.";

/// Writes the answer to a run, the sentence first.
pub(crate) fn write_run(
    answered: &Answered,
    project: &Project,
    style: Style,
    out: &mut impl Write,
) -> io::Result<()> {
    let outcome = &answered.outcome.value;
    let rests = answered.rests(style);
    writeln!(out, "{} {}", answered.told(style).plain(), rests.plain())?;
    writeln!(out, "\n{} \u{2013} {}", project.name, answered.names.run)?;
    if !project.note.is_empty() {
        writeln!(out, "{}", project.note)?;
    }
    writeln!(out, "\nIntake tube, from the duct to the detector")?;
    write!(out, "{}", legs(answered, Tube::Intake, style))?;
    if outcome.exhaust.is_some() {
        writeln!(out, "\nExhaust tube, from the detector back to the duct")?;
        write!(out, "{}", legs(answered, Tube::Exhaust, style))?;
    }
    if let Ok((found, _)) = &answered.whole {
        write!(out, "{}", whole(answered, found, style))?;
    }
    let shown = |figure: Figure| {
        let found = value(&answered.run, outcome, figure, Spot::tube(Tube::Intake));
        let shown = found.map(|found| figure.kind().show(found, style).to_string());
        shown.unwrap_or_else(|| DOES_NOT_APPLY.to_owned())
    };
    writeln!(
        out,
        "\nAt the sensor: {}, {} relative humidity, mist {}.",
        shown(Figure::SensorTemperature),
        shown(Figure::SensorHumidity),
        shown(Figure::SensorMist),
    )?;
    if let Some(staying) = &answered.staying {
        writeln!(out, "\nWhat would stay dry, by one change at a time")?;
        for one in answered.dry_limits(staying, style) {
            write!(out, "{}: {}, {}", one.name, one.limit, one.words)?;
            if !one.now.is_empty() {
                write!(out, " ({})", one.now)?;
            }
            writeln!(out, ".")?;
        }
    }
    for one in &answered.outcome.notes {
        let note = note(answered.run_index, one);
        writeln!(out, "Note on {}: {}.", note.path, note.sentence)?;
    }
    if let Ok((found, _)) = &answered.whole {
        for note in whole_notes(answered.run_index, found) {
            writeln!(out, "Note on {}: {}.", note.path, note.sentence)?;
        }
    }
    if !rests.how.is_empty() {
        writeln!(out, "\nHow to measure what the answer rests on")?;
        for how in &rests.how {
            writeln!(out, "{how}")?;
        }
    }
    Ok(())
}
