//! What is asked of runs: dry or wet, through a year, how sure, what to do, why it keeps coming back.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::{Order, Said, System, Telling};

/// Says whether the runs of a project stay dry, and what happens in each leg.
///
/// Exit status: 0 dry; 10 wet; 20 blind, the detector may not be sampling its duct; 1 a project could not be read or
/// answered; 2 wrong command line.
/// Of several runs the worst counts, and 1 before all others.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Assess {
    /// Project files, or links that carry one; `-` reads one from the standard input.
    #[arg(required = true, value_name = "PROJECT")]
    pub(crate) projects: Vec<PathBuf>,
    /// Answer in JSON: of one project spread over many lines, of several one line each.
    #[arg(long)]
    pub(crate) json: bool,
    /// Only the run of this id.
    #[arg(long, value_name = "ID")]
    pub(crate) run: Option<String>,
    #[command(flatten)]
    pub(crate) telling: Telling,
}

/// Answers a year of real weather hour by hour: wet hours, water, mist, frost, traps, airflow, blind hours.
///
/// The weather file lies beside the project under the name that the project gives, and must have the same SHA-256; or it
/// is named by `--weather`, or packed with the project. Without it the design states answer that the project holds.
/// What is said of how it is read counts before what the project says of that.
/// Runs are marched side by side; where the standard error is a terminal it says how far they are.
/// Exit status as with `assess`; 1 as well where the weather file is missing.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Year {
    /// Project file, packed project, or a link that carries one; `-` reads it from the standard input.
    #[arg(value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// Weather file that is taken, whatever the project names.
    #[arg(long, value_name = "FILE")]
    pub(crate) weather: Option<PathBuf>,
    /// Answer in JSON.
    #[arg(long)]
    pub(crate) json: bool,
    /// With JSON: every hour.
    #[arg(long, requires = "json")]
    pub(crate) series: bool,
    /// Every hour as CSV, of several runs one after the other.
    #[arg(long, conflicts_with = "json")]
    pub(crate) csv: bool,
    /// The year in harder weather as well: dew points 2 K higher, and air 5 K colder.
    #[arg(long)]
    pub(crate) stress: bool,
    /// Only the run of this id.
    #[arg(long, value_name = "ID")]
    pub(crate) run: Option<String>,
    /// Units of the text.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// Says how sure a year is: the year again and again, everything that is assumed or measured taken anywhere within its span.
///
/// Between what four of five plausible years lie, how many of a hundred are wet or blind, which assumed values decide and
/// how to measure them. What was measured at visits, or is said by `--measured`, weights the members by how well they agree.
/// The weather file is found, and read, as by `year`. Where the standard error is a terminal it says how many members are done.
/// The same project gives the same members. Exit status as with `year`, by the year as it is entered.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Doubt {
    /// Project file, packed project, or a link that carries one; `-` reads it from the standard input.
    #[arg(value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// Weather file that is taken, whatever the project names.
    #[arg(long, value_name = "FILE")]
    pub(crate) weather: Option<PathBuf>,
    /// Members; powers of two are the most even.
    #[arg(long, value_name = "N", default_value_t = 256, value_parser = clap::value_parser!(u32).range(8..=16384))]
    pub(crate) members: u32,
    /// A reading: `airflow=29.1` (L/min), `first-smoke=9`, `ninety-percent=21` (s), `suction=118,at=3.2` (Pa, m), or
    /// `drained=310,since=2026-03-01,until=2026-06-01` (g); `,error=2` says its standard error.
    #[arg(long, value_name = "WHAT=VALUE")]
    pub(crate) measured: Vec<String>,
    /// Leave out what was measured at visits.
    #[arg(long)]
    pub(crate) without_visits: bool,
    /// Answer in JSON.
    #[arg(long)]
    pub(crate) json: bool,
    /// Only the run of this id.
    #[arg(long, value_name = "ID")]
    pub(crate) run: Option<String>,
    /// Units of the text.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// Finds the smallest change of each kind that makes a run dry enough, over its whole year.
///
/// Each size is tried on the route's worst hours and confirmed by a whole year; one step smaller misses the target.
/// Without a weather file the conditions entered alone count. Exit status: 0 where the target is met as drawn,
/// 10 where a remedy meets it, 20 where none does.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Remedies {
    /// Project file, packed project, or a link that carries one; `-` reads it from the standard input.
    #[arg(value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// Weather file that is taken, whatever the project names.
    #[arg(long, value_name = "FILE")]
    pub(crate) weather: Option<PathBuf>,
    /// What counts as dry enough, parted by commas: `dry-in=entered` (or `0.4`, `1`, `2`: design hours, %),
    /// `wet-hours=N`, `litres=L`, `chamber-margin=PERCENT`, `no-frost`, `blind-hours=N`, `trap-days=N`;
    /// left out: what the project says, or else `dry-in=entered,blind-hours=0`.
    #[arg(long, value_name = "TARGET")]
    pub(crate) target: Option<String>,
    /// What remedies are ranked by.
    #[arg(long, value_enum, default_value_t = Rank::Left)]
    pub(crate) rank: Rank,
    /// Write the project with the remedy of this number made, instead of the answer.
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..))]
    pub(crate) apply: Option<u32>,
    /// File to write that project to; without one, the standard output.
    #[arg(long, value_name = "FILE", requires = "apply")]
    pub(crate) out: Option<PathBuf>,
    /// Answer in JSON.
    #[arg(long)]
    pub(crate) json: bool,
    /// Only the run of this id.
    #[arg(long, value_name = "ID")]
    pub(crate) run: Option<String>,
    /// Units of the text.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// Which cause explains a log of troubles best, with the evidence for and against it, and what to look at next.
///
/// The log is any table with a date, a time and words a line: airflow low or high, alarm without smoke, water found, trap emptied, filter changed, detector replaced.
/// Without a log the answers alone rank the causes: those that the project's note holds, and those given by `--answer`.
#[derive(Debug, Args)]
pub(crate) struct Troubles {
    /// The log; `-` reads it from the standard input.
    #[arg(value_name = "LOG")]
    pub(crate) log: Option<PathBuf>,
    /// Project file, packed project, or a link that carries one.
    #[arg(long, value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// Weather file that is taken, whatever the project names; that of the log's own days tells most.
    #[arg(long, value_name = "FILE")]
    pub(crate) weather: Option<PathBuf>,
    /// Members of the ensemble.
    #[arg(long, value_name = "N", default_value_t = 64, value_parser = clap::value_parser!(u32).range(8..=16384))]
    pub(crate) members: u32,
    /// The first day that the log speaks of, such as 2026-06-01; left out: a week before its first entry.
    #[arg(long, value_name = "DAY", requires = "until")]
    pub(crate) from: Option<String>,
    /// The day after the last that it speaks of.
    #[arg(long, value_name = "DAY", requires = "from")]
    pub(crate) until: Option<String>,
    /// A tapped answer: `trouble=airflow-low`, `airflow-high` or `alarm`; `when=summer-day`, `summer-night`, `between`, `winter` or `any`;
    /// `trap=none`, `water`, `dry` or `not-sure`; `touched=this-year`, `longer-ago` or `not-sure`.
    #[arg(long = "answer", value_name = "WHAT=ANSWER")]
    pub(crate) answers: Vec<String>,
    /// What words of the log mean: `draught weak=airflow_low`.
    #[arg(long = "means", value_name = "WORDS=KIND")]
    pub(crate) means: Vec<String>,
    /// Order of day, month and year in the log.
    #[arg(long, value_enum)]
    pub(crate) log_date_order: Option<Order>,
    /// Hours that the log's clock is ahead of UTC outside daylight saving; left out: as the weather's.
    #[arg(long, value_name = "HOURS", allow_hyphen_values = true)]
    pub(crate) clock_offset: Option<String>,
    /// When the log's clock is put forward and back by an hour, each as month, which of the month, day of the week and hour on the wall: `3,last,sun,2:10,last,sun,3`.
    #[arg(long, value_name = "START:END")]
    pub(crate) daylight_saving: Option<String>,
    /// What was seen at a check: `empty_and_measure=1`, outcomes counted from 1.
    #[arg(long = "seen", value_name = "CHECK=N")]
    pub(crate) seen: Vec<String>,
    /// Answer in JSON.
    #[arg(long)]
    pub(crate) json: bool,
    /// The run of this id; left out: the first.
    #[arg(long, value_name = "ID")]
    pub(crate) run: Option<String>,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// What remedies are ranked by; equals by the work that they are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum Rank {
    /// What is left.
    Left,
    /// The work that it is.
    Work,
    /// What it takes of power.
    Energy,
    /// How long the smoke takes.
    Transport,
}

/// Answers one project a line, for estates of any size.
///
/// Reads projects or links, each on one line, and writes one answer in JSON a line, in the same order.
/// A line that holds no project is answered by its error and does not stop the rest; empty lines are passed over.
/// A project that names a weather file is answered with its year, as by `year`.
/// Exit status as with `assess`.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Lines {
    /// Files of lines; without one, or as `-`, the standard input.
    #[arg(value_name = "FILE")]
    pub(crate) files: Vec<PathBuf>,
    /// Folder of the weather files; without one, that of the file of lines.
    #[arg(long, value_name = "FOLDER")]
    pub(crate) weather_in: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) telling: Telling,
}
