//! What can be typed on the command line, and the help texts.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use dewrun_quantity::{Style, Units};

/// Where water forms in the sampling tube of a duct smoke detector, and how fast.
///
/// Dewrun follows the air from the duct through the tube to the detector and back, and says where the tube falls
/// below the air's dew point and how much water, frost or mist forms there.
/// Results are advice for competent people: the device's listing and instructions, the local code and the authority
/// having jurisdiction come first.
#[derive(Debug, Parser)]
#[command(name = "dewrun", version, verbatim_doc_comment)]
pub(crate) struct Cli {
    #[command(subcommand)]
    pub(crate) command: Command,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    Assess(Assess),
    Air(Air),
    Lines(Lines),
    Year(Year),
    Doubt(Doubt),
    Remedies(Remedies),
    Troubles(Troubles),
    Weather(Weather),
    Pack(Pack),
    Unpack(Unpack),
    Link(Link),
    Sheet(Sheet),
    Diagram(Diagram),
    Figures(Figures),
    Schema(Schema),
}

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
#[derive(Debug, clap::Args)]
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
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
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

/// Saves a project with its weather: one text that holds the project and its files.
///
/// Wherever a project is read, its packed form does as well. `unpack` parts them again.
/// What is said here of how the weather file is read stands in the project from then on.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Pack {
    /// Project file; its weather file lies beside it, or is named by `--weather`.
    #[arg(value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// Weather file that the project is to go by from now on.
    #[arg(long, value_name = "FILE")]
    pub(crate) weather: Option<PathBuf>,
    /// File to write; without one, the standard output.
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,
    /// Units of numbers that carry none.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// Parts a packed project into the project and its files.
#[derive(Debug, Args)]
pub(crate) struct Unpack {
    /// Packed project.
    #[arg(value_name = "PACKED")]
    pub(crate) packed: PathBuf,
    /// Folder to write them into; nothing that is there already is written over.
    #[arg(long, value_name = "FOLDER", default_value = ".")]
    pub(crate) into: PathBuf,
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

/// Prints a link that carries a project.
///
/// Opened in a browser, the link puts the project on the page at that address; nothing is sent anywhere for it.
/// Wherever a project is read, its link does as well.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Link {
    /// Project file, or a link that carries one; `-` reads it from the standard input.
    #[arg(value_name = "PROJECT")]
    pub(crate) project: PathBuf,
    /// Address of the page that is to open it; without one, what stands behind such an address is printed alone.
    #[arg(long, value_name = "URL")]
    pub(crate) page: Option<String>,
}

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

/// How an answer is told.
#[derive(Debug, Clone, Copy, Args)]
pub(crate) struct Telling {
    /// Units of tables and sentences; JSON figures name their own.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    /// With JSON: every quantity along the tubes, point by point.
    #[arg(long)]
    pub(crate) profile: bool,
}

/// Answers one state of moist air from any two of its quantities.
///
/// Numbers may carry a unit: 32C, 90F, 26, 101325Pa, 29.92inHg, 300m, 12g/kg, 85gr/lb; without one they are in the
/// units of `--units`. Point and comma are both decimal marks.
/// Refused are pairs that say the same twice, such as dew point with humidity ratio, and enthalpy with wet bulb, whose
/// lines nearly coincide.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Air {
    /// Temperature of the air.
    #[arg(short, long, value_name = "T", allow_hyphen_values = true)]
    pub(crate) temperature: Option<String>,
    /// Relative humidity, %.
    #[arg(short, long, value_name = "RH", allow_hyphen_values = true)]
    pub(crate) relative_humidity: Option<String>,
    /// Dew point, over water also below freezing.
    #[arg(short, long, value_name = "T", allow_hyphen_values = true)]
    pub(crate) dew_point: Option<String>,
    /// Frost point, over ice.
    #[arg(short, long, value_name = "T", allow_hyphen_values = true)]
    pub(crate) frost_point: Option<String>,
    /// Humidity ratio, vapour per dry air.
    #[arg(short = 'w', long, value_name = "W", allow_hyphen_values = true)]
    pub(crate) humidity_ratio: Option<String>,
    /// Wet bulb.
    #[arg(short = 'b', long, value_name = "T", allow_hyphen_values = true)]
    pub(crate) wet_bulb: Option<String>,
    /// Enthalpy per dry air, counted from 0 °C, in Btu/lb from 0 °F.
    #[arg(short = 'e', long, value_name = "H", allow_hyphen_values = true)]
    pub(crate) enthalpy: Option<String>,
    /// Absolute pressure; without it, that at sea level.
    #[arg(
        short,
        long,
        value_name = "P",
        allow_hyphen_values = true,
        conflicts_with = "altitude"
    )]
    pub(crate) pressure: Option<String>,
    /// Altitude above sea level, which gives the pressure of the standard atmosphere.
    #[arg(short, long, value_name = "Z", allow_hyphen_values = true)]
    pub(crate) altitude: Option<String>,
    /// What a relative humidity below freezing refers to.
    #[arg(long, value_enum, default_value_t = Surface::Water)]
    pub(crate) over: Surface,
    /// Units of the answer, and of numbers that carry none.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    /// Answer in JSON.
    #[arg(long)]
    pub(crate) json: bool,
}

/// Reads a weather or logger file and says what was understood.
///
/// EPW, TMY3, TM2, PVGIS, satellite data and logger exports of any form; what is not said here is found by looking,
/// and each decision is told with line numbers.
/// Nothing is changed or kept.
#[derive(Debug, Args)]
#[command(verbatim_doc_comment)]
pub(crate) struct Weather {
    /// The file; `-` reads it from the standard input.
    #[arg(value_name = "FILE")]
    pub(crate) file: PathBuf,
    /// Answer in JSON.
    #[arg(long)]
    pub(crate) json: bool,
    /// The rows as they are used, as CSV, instead of what was understood.
    #[arg(long, conflicts_with = "json")]
    pub(crate) rows: bool,
    /// Units of the text.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    #[command(flatten)]
    pub(crate) said: Said,
}

/// What a person says of a file instead of having it looked at.
#[derive(Debug, Args)]
#[command(next_help_heading = "Said instead of found by looking")]
pub(crate) struct Said {
    /// Form of the file.
    #[arg(long, value_enum)]
    pub(crate) form: Option<FileForm>,
    /// What stands between cells.
    #[arg(long, value_enum)]
    pub(crate) delimiter: Option<Between>,
    /// What parts whole from broken digits.
    #[arg(long, value_enum)]
    pub(crate) decimal_mark: Option<Mark>,
    /// Order of day, month and year.
    #[arg(long, value_enum)]
    pub(crate) date_order: Option<Order>,
    /// Number of the first line with a reading, from 1.
    #[arg(long, value_name = "LINE")]
    pub(crate) first_reading: Option<u64>,
    /// A column by its number, what it holds and, if need be, in which unit: `3=temperature`, `4=pressure:hPa`, `5=other`.
    #[arg(long = "column", value_name = "N=WHAT[:UNIT]")]
    pub(crate) columns: Vec<String>,
    /// The station whose rows are taken, where a file holds several.
    #[arg(long, value_name = "NAME")]
    pub(crate) station: Option<String>,
    /// What the time beside a reading means.
    #[arg(long, value_enum)]
    pub(crate) stamps: Option<Meaning>,
    /// Hours that the stamps are ahead of UTC.
    #[arg(long, value_name = "HOURS", allow_hyphen_values = true)]
    pub(crate) utc_offset: Option<String>,
    /// Elevation of the place above sea level.
    #[arg(long, value_name = "Z", allow_hyphen_values = true)]
    pub(crate) elevation: Option<String>,
    /// One pressure for all rows.
    #[arg(long, value_name = "P")]
    pub(crate) pressure: Option<String>,
    /// What dew points below freezing refer to.
    #[arg(long, value_enum)]
    pub(crate) dew_point_over: Option<Surface>,
    /// What relative humidities below freezing refer to.
    #[arg(long, value_enum)]
    pub(crate) relative_humidity_over: Option<Surface>,
    /// Which counts where a row has both dew point and relative humidity.
    #[arg(long, value_enum)]
    pub(crate) lead: Option<Lead>,
}

/// A form of weather file.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum FileForm {
    /// Eight lines of header and 35 columns.
    Epw,
    /// Third US set of typical years, CSV.
    Tmy3,
    /// Second US set of typical years, fixed columns.
    Tm2,
    /// Any table with one reading a line.
    Table,
}

/// What stands between cells.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Between {
    /// `,`
    Comma,
    /// `;`
    Semicolon,
    /// A tabulator.
    Tab,
    /// `|`
    Bar,
    /// Any run of spaces.
    Spaces,
}

/// A decimal mark.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Mark {
    /// `21.5`
    Point,
    /// `21,5`
    Comma,
}

/// An order of dates.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Order {
    /// Day, month, year.
    Dmy,
    /// Month, day, year.
    Mdy,
    /// Year, month, day.
    Ymd,
}

/// What a stamp means.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Meaning {
    /// The start of the step.
    Start,
    /// The end of the step.
    End,
    /// The moment of the reading.
    Moment,
}

/// A humidity that counts before the other.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Lead {
    /// The dew point.
    DewPoint,
    /// The relative humidity.
    RelativeHumidity,
}

/// Says what a figure is: how it follows from what, where that holds and who found it.
///
/// Without an id, every figure with its name; answers and the page name their figures by these ids.
#[derive(Debug, Args)]
#[command(visible_alias = "figure", verbatim_doc_comment)]
pub(crate) struct Figures {
    /// Ids of figures, such as leg-water.
    #[arg(value_name = "ID")]
    pub(crate) ids: Vec<String>,
    /// Units of what is printed.
    #[arg(long, value_enum, default_value_t = System::Si)]
    pub(crate) units: System,
    /// In JSON, with the fields of answers that each is.
    #[arg(long)]
    pub(crate) json: bool,
}

/// Prints the JSON schema of a document.
#[derive(Debug, Args)]
pub(crate) struct Schema {
    /// Which document.
    #[arg(value_enum, default_value_t = Document::Project)]
    pub(crate) document: Document,
}

/// A system of units.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum System {
    /// Metres, degrees Celsius, grams.
    Si,
    /// Feet, degrees Fahrenheit, ounces.
    Ip,
}

/// A surface to which humidity refers.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Surface {
    /// Liquid water, as weather services and sensors count.
    Water,
    /// Ice below 0.01 °C, as handbooks count.
    Ice,
}

/// A document that has a schema.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Document {
    /// The project file.
    Project,
    /// The answer of `assess --json` and `lines`.
    Answer,
    /// The answer of `air --json`.
    Air,
    /// The answer of `weather --json`.
    Weather,
    /// The answer of `doubt --json`.
    Doubt,
    /// The answer of `remedies --json`.
    Remedies,
    /// The answer of `troubles --json`.
    Troubles,
}

impl System {
    /// How numbers are shown in it.
    pub(crate) fn style(self) -> Style {
        let units = match self {
            Self::Si => Units::Si,
            Self::Ip => Units::InchPound,
        };
        Style {
            units,
            ..Style::default()
        }
    }
}
