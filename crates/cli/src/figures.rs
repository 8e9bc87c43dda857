//! `dewrun figures`: what a figure is and how it follows from what.

use std::io::{self, Write};

use comfy_table::{Table, presets};
use dewrun_document::{figure_entry, figures_json};
use dewrun_quantity::Style;
use dewrun_run::figure::Figure;

use crate::args::Figures;
use crate::exit::Ending;

pub(crate) fn figures(args: &Figures, out: &mut impl Write) -> io::Result<Ending> {
    let mut asked = Vec::new();
    for id in &args.ids {
        let Some(figure) = Figure::from_id(id) else {
            eprintln!("dewrun: there is no figure `{id}`; `dewrun figures` lists them all");
            return Ok(Ending::WrongCommandLine);
        };
        asked.push(figure);
    }
    let all = asked.is_empty();
    if all {
        asked.extend(Figure::ALL);
    }
    if args.json {
        let entries = asked.into_iter().map(figure_entry).collect::<Vec<_>>();
        return match figures_json(&entries) {
            Ok(json) => writeln!(out, "{json}").map(|()| Ending::Dry),
            Err(error) => {
                eprintln!("dewrun: {}", error.sentence());
                Ok(Ending::Failed)
            }
        };
    }
    let style = args.units.style();
    if all {
        list(&asked, style, out)?;
        return Ok(Ending::Dry);
    }
    for (at, figure) in asked.into_iter().enumerate() {
        if 0 < at {
            writeln!(out)?;
        }
        write_entry(figure, style, out)?;
    }
    Ok(Ending::Dry)
}

/// Every figure on a line.
fn list(figures: &[Figure], style: Style, out: &mut impl Write) -> io::Result<()> {
    let mut table = Table::new();
    table.load_style(presets::NOTHING);
    for figure in figures {
        table.add_row([figure.id(), figure.name(), figure.kind().unit(style)]);
    }
    for line in table.lines() {
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}

fn write_entry(figure: Figure, style: Style, out: &mut impl Write) -> io::Result<()> {
    let unit = figure.kind().unit(style);
    let unit = if unit.is_empty() {
        String::new()
    } else {
        format!(", {unit}")
    };
    writeln!(
        out,
        "{} ({}): {}{unit}",
        figure.id(),
        figure.symbol(),
        figure.name()
    )?;
    let mut line = |name: &str, text: &str| match text {
        "" => Ok(()),
        text => writeln!(out, "  {name}: {text}"),
    };
    line("relation", figure.relation())?;
    line("holds for", figure.holds())?;
    line("known spread", figure.spread())?;
    line("source", figure.source())?;
    line("how to measure", figure.how_to_measure())?;
    let inputs: Vec<String> = figure
        .inputs()
        .map(|input| format!("{} ({})", input.id(), input.name()))
        .collect();
    line("follows from", &inputs.join(", "))
}
