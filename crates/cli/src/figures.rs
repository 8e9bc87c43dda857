//! `dewrun figures`: what a figure is and how it follows from what.

use std::io::{self, Write};

use comfy_table::{Table, presets};
use dewrun_document::output::FigureOutput;
use dewrun_document::{figure_entry_in, figures_json, year_figures};
use dewrun_run::figure::Figure;

use crate::args::Figures;
use crate::exit::Ending;

pub(crate) fn figures(args: &Figures, out: &mut impl Write) -> io::Result<Ending> {
    let style = args.units.style();
    let of_runs = Figure::ALL.iter();
    let of_runs = of_runs.map(|figure| figure_entry_in(*figure, style));
    let all: Vec<FigureOutput> = of_runs.chain(year_figures()).collect();
    let mut asked = Vec::new();
    for id in &args.ids {
        let Some(figure) = all.iter().find(|entry| entry.id == *id) else {
            eprintln!("dewrun: there is no figure `{id}`; `dewrun figures` lists them all");
            return Ok(Ending::WrongCommandLine);
        };
        asked.push(figure.clone());
    }
    if args.json {
        let entries = if asked.is_empty() { &all } else { &asked };
        return match figures_json(entries) {
            Ok(json) => writeln!(out, "{json}").map(|()| Ending::Dry),
            Err(error) => {
                eprintln!("dewrun: {}", error.sentence());
                Ok(Ending::Failed)
            }
        };
    }
    if asked.is_empty() {
        list(&all, out)?;
        return Ok(Ending::Dry);
    }
    for (at, figure) in asked.iter().enumerate() {
        if 0 < at {
            writeln!(out)?;
        }
        write_entry(figure, &all, out)?;
    }
    Ok(Ending::Dry)
}

/// Every figure on a line.
fn list(figures: &[FigureOutput], out: &mut impl Write) -> io::Result<()> {
    let mut table = Table::new();
    table.load_style(presets::NOTHING);
    for figure in figures {
        table.add_row([&figure.id, &figure.name, &figure.unit]);
    }
    for line in table.lines() {
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}

fn write_entry(
    figure: &FigureOutput,
    all: &[FigureOutput],
    out: &mut impl Write,
) -> io::Result<()> {
    let FigureOutput {
        id,
        name,
        symbol,
        unit,
        ..
    } = figure;
    let between = |before: &str, text: &str, after: &str| match text {
        "" => String::new(),
        text => format!("{before}{text}{after}"),
    };
    let (symbol, unit) = (between(" (", symbol, ")"), between(", ", unit, ""));
    writeln!(out, "{id}{symbol}: {name}{unit}")?;
    let mut line = |name: &str, text: &str| match text {
        "" => Ok(()),
        text => writeln!(out, "  {name}: {text}"),
    };
    line("relation", &figure.relation)?;
    line("holds for", &figure.holds)?;
    line("known spread", &figure.spread)?;
    line("source", &figure.source)?;
    line("how to measure", &figure.how_to_measure)?;
    let name_of = |id: &String| all.iter().find(|entry| entry.id == *id);
    let inputs = figure.inputs.iter().filter_map(name_of);
    let inputs: Vec<String> = inputs
        .map(|input| format!("{} ({})", input.id, input.name))
        .collect();
    line("follows from", &inputs.join(", "))
}
