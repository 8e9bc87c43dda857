//! The answer about troubles as text: the likeliest cause, what speaks for and against, the next check.

use std::io::{self, Write};

use dewrun_document::output::{Figure, TroubleCauseOutput, TroublesOutput};
use dewrun_quantity::format::{DecimalMark, fixed};

/// Causes below this share of a hundred are told by name alone.
const TOLD: f64 = 2.0;
/// A share from which on none is told any finer.
const SURE: f64 = 99.0;
/// So many checks are told; of the first, what may be seen.
const CHECKS: usize = 4;

/// Writes what is said of troubles.
pub(super) fn write(told: &TroublesOutput, project: &str, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "{}", sentence(told))?;
    if let Some(contradiction) = &told.contradiction {
        writeln!(out, "{contradiction}")?;
    }
    for sentence in &told.cannot_tell {
        writeln!(out, "{sentence}")?;
    }
    writeln!(out, "\n{project} \u{2013} {}", told.run)?;
    writeln!(
        out,
        "Weather: {}; {} members",
        told.weather_file, told.members
    )?;
    for sentence in &told.read {
        writeln!(out, "{sentence}")?;
    }
    writeln!(out, "\nCauses, of 100")?;
    let (likely, rest): (Vec<_>, Vec<_>) =
        (told.causes.iter()).partition(|one| TOLD <= one.share.0);
    for cause in likely {
        write_cause(cause, out)?;
    }
    let rest: Vec<&str> = rest.iter().map(|one| one.name.as_str()).collect();
    if !rest.is_empty() {
        writeln!(out, "under {}  {}", whole(Figure(TOLD)), rest.join(", "))?;
    }
    write_checks(told, out)
}

fn sentence(told: &TroublesOutput) -> String {
    let Some(first) = told.causes.first() else {
        return String::new();
    };
    let what = if told.too_few {
        "is the likeliest so far"
    } else {
        "explains this log best"
    };
    format!(
        "{} {what}, {} of 100{}.",
        first.name,
        whole(first.share),
        span(first)
    )
}

fn span(cause: &TroubleCauseOutput) -> String {
    let (least, most) = (whole(cause.share_least), whole(cause.share_most));
    if least == most {
        return String::new();
    }
    format!(" ({least} to {most})")
}

fn write_cause(cause: &TroubleCauseOutput, out: &mut impl Write) -> io::Result<()> {
    let share = format!("{}{}", whole(cause.share), span(cause));
    writeln!(out, "{share:>12}  {}", cause.name)?;
    for sentence in &cause.for_it {
        writeln!(out, "{:14}for: {sentence}", "")?;
    }
    for sentence in &cause.against {
        writeln!(out, "{:14}against: {sentence}", "")?;
    }
    Ok(())
}

fn write_checks(told: &TroublesOutput, out: &mut impl Write) -> io::Result<()> {
    let name = |id: &str| -> String {
        let cause = told.causes.iter().find(|cause| cause.id == id);
        cause.map_or_else(|| id.to_owned(), |cause| cause.name.to_ascii_lowercase())
    };
    let Some((first, others)) = told.next_checks.split_first() else {
        return Ok(());
    };
    writeln!(out, "\nNext check")?;
    writeln!(out, "{} {}", first.name, first.takes)?;
    for (number, outcome) in (1..).zip(&first.outcomes) {
        writeln!(
            out,
            "  {number}  {}: {} of 100, then {} {}",
            outcome.name,
            whole(outcome.expected),
            name(&outcome.then),
            whole(outcome.then_share)
        )?;
    }
    writeln!(out, "What is seen is entered by --seen {}=N.", first.id)?;
    let others: Vec<&str> = others
        .iter()
        .take(CHECKS)
        .map(|one| one.name.as_str())
        .collect();
    writeln!(out, "Else: {}", others.join(" "))
}

/// A share of a hundred, whole; none is sure.
fn whole(figure: Figure) -> String {
    if SURE < figure.0 {
        return "over 99".to_owned();
    }
    fixed(figure.0, 0, DecimalMark::Point)
}
