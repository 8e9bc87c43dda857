//! What is drawn or printed of a run.

use std::path::PathBuf;

use clap::{Args, Subcommand, ValueEnum};

use super::{Said, System};

/// Makes a sheet of paper of a project.
#[derive(Debug, Args)]
pub(crate) struct Sheet {
    #[command(subcommand)]
    pub(crate) kind: SheetKind,
}

/// A kind of sheet.
#[derive(Debug, Subcommand)]
pub(crate) enum SheetKind {
    Site(SiteSheet),
    Service(ServiceSheet),
    Calculation(CalculationSheet),
}

/// Makes the site card: what the installer holds in hand, with the project as a printed code.
///
/// Writes a document in HTML that needs nothing besides; a browser prints it or saves it as PDF.
/// Of several runs each has its own card. A run whose water or air has no answer has no card.
/// Exit status as with `assess`.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct SiteSheet {
    /// Project file, or a link that carries one; `-` reads it from the standard input.
    #[arg(value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// Only the run of this id.
    #[arg(long, value_name = "ID")]
    pub(crate) run: Option<String>,
    /// File to write; without one, the standard output.
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,
    /// Address of the page that the printed code opens; without one the code carries the project alone.
    #[arg(long, value_name = "URL")]
    pub(crate) page: Option<String>,
    /// The paper.
    #[arg(long, value_enum, default_value_t = PaperSize::A4)]
    pub(crate) paper: PaperSize,
    /// The day that stands on the card, as you write it; without one, room for it.
    #[arg(long, value_name = "DAY")]
    pub(crate) date: Option<String>,
    /// The revision that stands on the card.
    #[arg(long, value_name = "WORDS")]
    pub(crate) revision: Option<String>,
    /// Units of the card.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
}

/// Makes the service card: cause, cure, intervals, limits, baseline readings, order of checks, access and the visits so far.
///
/// As the site card, a document in HTML with the project as a printed code; the cause is that of `troubles`, found in the weather that the project names.
/// Without weather the card leaves the cause open. Of several runs each has its own card.
/// Exit status as with `assess`.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct ServiceSheet {
    #[command(flatten)]
    pub(crate) card: SiteSheet,
    /// The log of troubles, as `troubles` reads it.
    #[arg(long, value_name = "LOG")]
    pub(crate) log: Option<PathBuf>,
    /// Weather file that is taken, whatever the project names.
    #[arg(long, value_name = "FILE")]
    pub(crate) weather: Option<PathBuf>,
    /// Members of the ensemble that weighs it.
    #[arg(long, value_name = "N", default_value_t = 64, value_parser = clap::value_parser!(u32).range(8..=16384))]
    pub(crate) members: u32,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// Makes the calculation sheet: inputs, relations and results, so that another engineer can check them.
///
/// Writes a document in HTML that needs nothing besides; a browser prints it or saves it as PDF.
/// With a weather file, found as by `year`, the year stands on it as well, and with `--doubt` how sure that year is.
/// Of several runs each has its own sheet. A run whose water or air has no answer has none.
/// Exit status as with `assess`.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct CalculationSheet {
    /// Project file, packed project, or a link that carries one; `-` reads it from the standard input.
    #[arg(value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// Weather file that is taken, whatever the project names.
    #[arg(long, value_name = "FILE")]
    pub(crate) weather: Option<PathBuf>,
    /// How sure the year is as well, as by `doubt`.
    #[arg(long)]
    pub(crate) doubt: bool,
    /// Members of that; powers of two are the most even.
    #[arg(long, value_name = "N", requires = "doubt", default_value_t = 256, value_parser = clap::value_parser!(u32).range(8..=16384))]
    pub(crate) members: u32,
    /// Only the run of this id.
    #[arg(long, value_name = "ID")]
    pub(crate) run: Option<String>,
    /// File to write; without one, the standard output.
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,
    /// The paper.
    #[arg(long, value_enum, default_value_t = PaperSize::A4)]
    pub(crate) paper: PaperSize,
    /// The day that stands on the sheet, as you write it; without one, room for it.
    #[arg(long, value_name = "DAY")]
    pub(crate) date: Option<String>,
    /// The revision that stands on the sheet.
    #[arg(long, value_name = "WORDS")]
    pub(crate) revision: Option<String>,
    /// Units of the sheet.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// Draws one diagram of a run as SVG, or writes what is drawn as CSV.
///
/// The SVG needs nothing besides and is drawn for paper. Of the year CSV has every hour, as `year --csv`.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Diagram {
    /// What is drawn.
    #[arg(value_enum)]
    pub(crate) kind: DiagramKind,
    /// Project file, packed project, or a link that carries one; `-` reads it from the standard input.
    #[arg(value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// What is drawn, as CSV with a name and unit over each column.
    #[arg(long)]
    pub(crate) csv: bool,
    /// Of which tube, where it is of one.
    #[arg(long, value_enum, default_value_t = WhichTube::Intake)]
    pub(crate) tube: WhichTube,
    /// Weather file that is taken, whatever the project names.
    #[arg(long, value_name = "FILE")]
    pub(crate) weather: Option<PathBuf>,
    /// The run of this id; of a project with one run, that.
    #[arg(long, value_name = "ID")]
    pub(crate) run: Option<String>,
    /// File to write; without one, the standard output.
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,
    /// Units of the drawing; columns of CSV name their own.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
}

/// A diagram.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum DiagramKind {
    /// Duct, tube, spaces and detector to scale, with the water where it is.
    Elevation,
    /// Air, inner wall and dew point along the tube, and what forms per metre.
    Profile,
    /// Temperature across, dew point up, with the dry boundary.
    DewSquare,
    /// Pressures along the path of the air.
    Pressure,
    /// What drives the flow and what it costs.
    Budget,
    /// From the duct to the sensor.
    TransportTime,
    /// States and faults of the airflow under the limits.
    Limits,
    /// The wet calendar, with traps, airflow and blind hours on its axis.
    Year,
}

/// One of the tubes.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum WhichTube {
    /// From the duct to the detector.
    Intake,
    /// From the detector back to the duct.
    Exhaust,
}

/// A size of paper.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum PaperSize {
    /// 210 mm by 297 mm.
    A4,
    /// 8.5 in by 11 in.
    Letter,
}
