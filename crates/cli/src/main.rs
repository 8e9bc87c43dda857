//! The command line `dewrun`.

mod air;
mod answer_json;
mod args;
mod assess;
mod columns;
mod diagram;
mod doubt;
mod evaluate;
mod exit;
mod figures;
mod lines;
mod link;
mod pack;
mod project;
mod remedies;
mod report;
mod run_answer;
mod schema;
mod sheet;
mod table;
mod troubles;
mod weather;
mod whole;
mod year;

use std::io::{self, ErrorKind, Write};
use std::process::ExitCode;

use clap::Parser;

use args::{Cli, Command};
use exit::Ending;

fn main() -> ExitCode {
    let cli = Cli::parse();
    let mut out = io::BufWriter::new(io::stdout().lock());
    let ended = match &cli.command {
        Command::Assess(args) => assess::assess(args, &mut out),
        Command::Air(args) => air::air(args, &mut out),
        Command::Lines(args) => lines::lines(args, &mut out),
        Command::Year(args) => year::year(args, &mut out),
        Command::Doubt(args) => doubt::doubt(args, &mut out),
        Command::Remedies(args) => remedies::remedies(args, &mut out),
        Command::Troubles(args) => troubles::troubles(args, &mut out),
        Command::Pack(args) => pack::pack(args, &mut out),
        Command::Unpack(args) => pack::unpack(args, &mut out),
        Command::Weather(args) => weather::weather(args, &mut out),
        Command::Link(args) => link::link(args, &mut out),
        Command::Sheet(args) => sheet::sheet(args, &mut out),
        Command::Diagram(args) => diagram::diagram(args, &mut out),
        Command::Figures(args) => figures::figures(args, &mut out),
        Command::Schema(args) => schema::schema(args, &mut out),
    };
    match ended.and_then(|ending| out.flush().map(|()| ending)) {
        Ok(ending) => ending.into(),
        // Whoever reads has heard enough.
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ending::Failed.into(),
        Err(error) => {
            eprintln!("dewrun: the answer could not be written: {error}");
            Ending::Failed.into()
        }
    }
}
