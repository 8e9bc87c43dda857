//! How a project is carried: packed with its weather, or as a link.

use std::path::PathBuf;

use clap::Args;

use super::{Said, System};

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
