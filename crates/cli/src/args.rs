//! What can be typed on the command line, and the help texts.

mod air;
mod carried;
mod paper;
mod runs;
mod weather;

use clap::{Args, Parser, Subcommand, ValueEnum};
use dewrun_quantity::{Style, Units};

pub(crate) use air::Air;
pub(crate) use carried::{Link, Pack, Unpack};
pub(crate) use paper::{
    CalculationSheet, Diagram, DiagramKind, PaperSize, ServiceSheet, Sheet, SheetKind, SiteSheet,
    WhichTube,
};
pub(crate) use runs::{Assess, Doubt, Lines, Rank, Remedies, Troubles, Year};
pub(crate) use weather::{Between, FileForm, Lead, Mark, Meaning, Order, Said, Surface, Weather};

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
