//! The doubt of a year as text: sentences, what its numbers lie between, what makes that, where it is wet, what was measured.

use std::io::{self, Write};

use dewrun_document::output::{
    EnsembleOutput, Figure, MeasuredOutput, QuantityOutput, SpanOutput, SpreadOutput,
};
use dewrun_quantity::format::{DOES_NOT_APPLY, amount, entered, fixed};
use dewrun_quantity::{Style, Units};

use crate::columns::columns;

/// An ounce of water, kg: exact.
const OUNCE_KG: f64 = 0.028_349_523_125;
/// So many parts of a spread are listed.
const LISTED: usize = 8;
/// Places of a metre.
const PLACES_A_METRE: usize = 10;

/// Writes the doubt of a run's year, the sentences first.
pub(super) fn write(
    doubt: &EnsembleOutput,
    project: &str,
    run: &str,
    style: Style,
    out: &mut impl Write,
) -> io::Result<()> {
    writeln!(out, "{}", doubt.sentences.join(" "))?;
    writeln!(out, "\n{project} \u{2013} {run}")?;
    writeln!(
        out,
        "Weather: {}, SHA-256 {}",
        doubt.weather_file, doubt.weather_sha256
    )?;
    write!(out, "\n{}", quantities(&doubt.quantities, style))?;
    write_shares(doubt, style, out)?;
    write_deciding(doubt, out)?;
    write_along(doubt, style, out)?;
    if let Some(measured) = &doubt.measured {
        write_measured(doubt, measured, style, out)?;
    }
    writeln!(out, "\nTaken for granted")?;
    writeln!(
        out,
        "What is typed stands. The hours of {} members take {} MB.",
        doubt.members,
        fixed(bytes(doubt) / 1e6, 0, style.mark)
    )?;
    if 0 < doubt.unanswered {
        writeln!(
            out,
            "{} members have no answer: their values leave what the relations hold for.",
            doubt.unanswered
        )?;
    }
    Ok(())
}

#[expect(clippy::cast_precision_loss, reason = "far below 2^52 bytes")]
const fn bytes(doubt: &EnsembleOutput) -> f64 {
    doubt.bytes as f64
}

/// What a number of the year is called, and how it is shown.
fn shown(id: &str, style: Style) -> (&'static str, f64, usize) {
    let (mass, words) = match style.units {
        Units::Si => (1.0, ["water formed, kg", "water that ran off, kg"]),
        Units::InchPound => (OUNCE_KG, ["water formed, oz", "water that ran off, oz"]),
    };
    match id {
        "water_kg" => (words[0], mass, 2),
        "ran_off_kg" => (words[1], mass, 2),
        "wet_hours" => ("wet hours", 1.0, 0),
        "mist_hours" => ("hours with mist at the sensor", 1.0, 0),
        "frost_hours" => ("hours with ice on a wall", 1.0, 0),
        "blind_hours" => ("hours that may not sample the duct", 1.0, 0),
        "limit_hours" => ("hours outside the airflow limits", 1.0, 0),
        "humid_hours" => ("hours over the humidity rating", 1.0, 0),
        _ => ("times a trap is full", 1.0, 0),
    }
}

fn quantities(all: &[QuantityOutput], style: Style) -> String {
    let heads = ["in the year", "as entered", "P10", "middle", "P90", "moved"];
    let rows = all.iter().map(|one| {
        let (name, unit, decimals) = shown(&one.id, style);
        let show = |figure: Figure| amount(figure.0 / unit, decimals, style.mark);
        let moved = one.moved_percent.map(|moved| percent(moved, style));
        vec![
            name.to_owned(),
            one.as_entered
                .map_or_else(|| DOES_NOT_APPLY.to_owned(), show),
            show(one.spread.p10),
            show(one.spread.p50),
            show(one.spread.p90),
            moved.unwrap_or_else(|| DOES_NOT_APPLY.to_owned()),
        ]
    });
    columns(heads.map(str::to_owned), rows, 1)
}

fn percent(figure: Figure, style: Style) -> String {
    format!("{}\u{a0}%", fixed(figure.0, 0, style.mark))
}

/// The span at a position in the answer.
fn span_of(doubt: &EnsembleOutput, at: u64) -> Option<&SpanOutput> {
    doubt.spans.get(usize::try_from(at).ok()?)
}

/// A span by its name and the field that holds it.
fn named(span: &SpanOutput) -> String {
    match span.paths.as_slice() {
        [] => span.name.clone(),
        [path] => format!("{} ({path})", span.name),
        [path, more @ ..] => format!("{} ({path} and {} more)", span.name, more.len()),
    }
}

fn write_shares(doubt: &EnsembleOutput, style: Style, out: &mut impl Write) -> io::Result<()> {
    for id in ["water_kg", "blind_hours"] {
        let found = doubt.quantities.iter().find(|one| one.id == id);
        let Some(one) = found.filter(|one| !one.shares.is_empty()) else {
            continue;
        };
        let (name, ..) = shown(id, style);
        let rows = one.shares.iter().take(LISTED).filter_map(|share| {
            let span = span_of(doubt, share.span)?;
            Some(vec![
                named(span),
                span_words(span),
                percent(share.share_percent, style),
            ])
        });
        let head = format!("what makes the spread: {name}");
        let heads = [head, "usual (low to high)".to_owned(), "part".to_owned()];
        write!(out, "\n{}", columns(heads, rows, 2))?;
    }
    Ok(())
}

fn span_words(span: &SpanOutput) -> String {
    let show = |figure: Figure| entered((1e4 * figure.0).round() / 1e4);
    format!(
        "{} ({} to {})",
        show(span.usual),
        show(span.low),
        show(span.high)
    )
}

fn write_deciding(doubt: &EnsembleOutput, out: &mut impl Write) -> io::Result<()> {
    if doubt.deciding.is_empty() {
        return Ok(());
    }
    writeln!(out, "\nWhat decides, and how to measure it")?;
    for one in &doubt.deciding {
        if let Some(span) = span_of(doubt, one.span) {
            writeln!(out, "{}: {}", named(span), one.how_to_measure)?;
        }
    }
    Ok(())
}

fn write_along(doubt: &EnsembleOutput, style: Style, out: &mut impl Write) -> io::Result<()> {
    let tubes = [
        ("intake", &doubt.wet_along.intake_of_100),
        ("exhaust", &doubt.wet_along.exhaust_of_100),
    ];
    for (tube, places) in tubes {
        if places.is_empty() {
            continue;
        }
        let metres = places.chunks(PLACES_A_METRE).zip(1_u32..);
        let rows = metres.map(|(places, metre)| {
            let most = places.iter().map(|place| place.0).fold(0.0, f64::max);
            vec![
                format!("{} to {metre} m", metre - 1),
                fixed(most, 0, style.mark),
            ]
        });
        let heads = [
            format!("along the {tube}"),
            "of 100 wet in the wettest hour of a month".to_owned(),
        ];
        write!(out, "\n{}", columns(heads, rows, 1))?;
    }
    Ok(())
}

fn write_measured(
    doubt: &EnsembleOutput,
    measured: &MeasuredOutput,
    style: Style,
    out: &mut impl Write,
) -> io::Result<()> {
    let show = |figure: Figure| amount(figure.0, 1, style.mark);
    let span = |spread: &Option<SpreadOutput>| match spread {
        Some(spread) => format!("{} to {}", show(spread.p10), show(spread.p90)),
        None => DOES_NOT_APPLY.to_owned(),
    };
    let rows = measured.readings.iter().map(|one| {
        vec![
            one.what.clone(),
            format!("{} \u{b1} {}", show(one.value), show(one.error)),
            span(&one.before),
            span(&one.after),
        ]
    });
    let heads = ["reading", "read", "expected before", "after"].map(str::to_owned);
    write!(out, "\n{}", columns(heads, rows, 1))?;
    writeln!(
        out,
        "The members left are worth {} of {} alike.",
        fixed(measured.worth.0, 0, style.mark),
        doubt.members
    )?;
    write!(out, "\n{}", quantities(&measured.quantities, style))?;
    write!(out, "\n{}", revised(doubt, measured))
}

/// Spans that readings have moved or narrowed, before and after.
fn revised(doubt: &EnsembleOutput, measured: &MeasuredOutput) -> String {
    /// Less than this part of a span is noise.
    const LEAST: f64 = 0.1;
    let show = |spread: &SpreadOutput| {
        let number = |figure: Figure| entered((1e3 * figure.0).round() / 1e3);
        format!("{} to {}", number(spread.p10), number(spread.p90))
    };
    let pairs = doubt.spans.iter().zip(&measured.spans);
    let rows = pairs.filter_map(|(span, one)| {
        let (before, after) = (&one.before, &one.after);
        let width = before.p90.0 - before.p10.0;
        let moved = (after.p10.0 - before.p10.0)
            .abs()
            .max((after.p90.0 - before.p90.0).abs());
        (LEAST * width <= moved).then(|| vec![named(span), show(before), show(after)])
    });
    let heads = [
        "what readings say of the inputs",
        "P10 to P90 before",
        "after",
    ];
    columns(heads.map(str::to_owned), rows, 3)
}
