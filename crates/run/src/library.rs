//! The library: rows with low, usual and high for what nobody on site knows, each figure with its source.
//!
//! The rows are generic: no row stands for anybody's product.
//! They are compiled in as CSV and read once, by a reader of our own; nothing is opened or fetched.
//!
//! ```
//! use dewrun_run::library;
//! let corridor = library::find(library::spaces(), "corridor").unwrap();
//! assert_eq!(corridor.temperature.usual.to_celsius(), 20.0);
//! assert_eq!(corridor.temperature.low.to_celsius(), 16.0);
//!
//! let figure = library::row("corridor").unwrap().entry("temperature_c").unwrap();
//! assert_eq!((figure.span.low, figure.span.high), (16.0, 24.0));
//! assert_eq!(figure.span.source, "common practice, no source");
//! ```

mod assumption;
mod csv;
mod detector;
mod duct;
mod duct_air;
mod error;
mod fitting;
mod humidity;
mod insulation;
mod record;
mod route;
mod row;
mod site;
mod sources;
mod space;
mod span;
mod tube;

use std::sync::OnceLock;

pub use assumption::AssumptionRow;
pub use detector::DetectorRow;
pub use duct::{DuctPressure, DuctRow};
pub use duct_air::DuctAirRow;
pub use error::LibraryError;
pub use fitting::{FittingKind, FittingRow};
pub use humidity::HumiditySpan;
pub use insulation::{Cells, InsulationRow};
pub use route::RouteRow;
pub use row::{Entry, Row, find};
pub use site::SiteRow;
pub use space::SpaceRow;
pub use span::Span;
pub use tube::{BoreForm, Supply, TubeRow};

use sources::Sources;

/// What reading a list gives; the error is boxed, so that what can't go wrong in a tested program takes no room in it.
type Read<T> = Result<T, Box<LibraryError>>;

/// Every list of the library.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Library {
    /// Tubes of common trade sizes.
    pub tubes: Vec<TubeRow>,
    /// Insulation for tubes.
    pub insulation: Vec<InsulationRow>,
    /// What surrounds a leg, in a given design situation.
    pub spaces: Vec<SpaceRow>,
    /// The air in the duct.
    pub duct_air: Vec<DuctAirRow>,
    /// The detector; one row that stands for no device.
    pub detectors: Vec<DetectorRow>,
    /// Bends, elbows, tees, valves.
    pub fittings: Vec<FittingRow>,
    /// Pressures in the duct.
    pub ducts: Vec<DuctRow>,
    /// Air pressure on site.
    pub sites: Vec<SiteRow>,
    /// Stretches of tube that nobody has measured yet.
    pub routes: Vec<RouteRow>,
}

impl Library {
    /// Reads the lists that are compiled in.
    ///
    /// # Errors
    /// [`LibraryError`] names file, line and column of what cannot be read.
    pub fn read() -> Result<Self, LibraryError> {
        Self::compiled_in().map_err(|error| *error)
    }

    #[cold]
    fn compiled_in() -> Read<Self> {
        let sources = Sources::read()?;
        Ok(Self {
            tubes: tube::read(&sources)?,
            insulation: insulation::read(&sources)?,
            spaces: space::read(&sources)?,
            duct_air: duct_air::read(&sources)?,
            detectors: detector::read(&sources)?,
            fittings: fitting::read(&sources)?,
            ducts: duct::read(&sources)?,
            sites: site::read(&sources)?,
            routes: route::read(&sources)?,
        })
    }
}

/// The lists, read once.
///
/// What is compiled in can be read: a test does.
/// Were it not so, there would be no rows to pick from and everything else would work.
fn library() -> &'static Library {
    static LIBRARY: OnceLock<Library> = OnceLock::new();
    LIBRARY.get_or_init(|| Library::read().unwrap_or_default())
}

/// Tubes of common trade sizes.
#[must_use]
pub fn tubes() -> &'static [TubeRow] {
    &library().tubes
}

/// Insulation for tubes.
#[must_use]
pub fn insulation() -> &'static [InsulationRow] {
    &library().insulation
}

/// What surrounds a leg, in a given design situation.
#[must_use]
pub fn spaces() -> &'static [SpaceRow] {
    &library().spaces
}

/// The air in the duct.
#[must_use]
pub fn duct_air() -> &'static [DuctAirRow] {
    &library().duct_air
}

/// The detector; one row that stands for no device.
#[must_use]
pub fn detectors() -> &'static [DetectorRow] {
    &library().detectors
}

/// Bends, elbows, tees, valves.
#[must_use]
pub fn fittings() -> &'static [FittingRow] {
    &library().fittings
}

/// Pressures in the duct.
#[must_use]
pub fn ducts() -> &'static [DuctRow] {
    &library().ducts
}

/// Air pressure on site.
#[must_use]
pub fn sites() -> &'static [SiteRow] {
    &library().sites
}

/// Stretches of tube that nobody has measured yet.
#[must_use]
pub fn routes() -> &'static [RouteRow] {
    &library().routes
}

/// What is assumed of water and airflow where nobody has said anything.
///
/// A list beside [`Library`]: nobody picks from it, it stands in for what is left out.
#[must_use]
pub fn assumptions() -> &'static [AssumptionRow] {
    static ROWS: OnceLock<Vec<AssumptionRow>> = OnceLock::new();
    // What is compiled in can be read: a test does.
    ROWS.get_or_init(|| read_assumptions().unwrap_or_default())
}

/// Reads the assumptions that are compiled in.
///
/// # Errors
/// [`LibraryError`] names file, line and column of what cannot be read.
pub fn read_assumptions() -> Result<Vec<AssumptionRow>, LibraryError> {
    let rows = Sources::read().and_then(|sources| assumption::read(&sources));
    rows.map_err(|error| *error)
}

/// Every row of every list, in the order of [`Library`].
pub fn rows() -> impl Iterator<Item = &'static dyn Row> {
    fn of<T: Row>(rows: &'static [T]) -> impl Iterator<Item = &'static dyn Row> {
        rows.iter().map(|row| -> &'static dyn Row { row })
    }
    of(tubes())
        .chain(of(insulation()))
        .chain(of(spaces()))
        .chain(of(duct_air()))
        .chain(of(detectors()))
        .chain(of(fittings()))
        .chain(of(ducts()))
        .chain(of(sites()))
        .chain(of(routes()))
}

/// The row with that id, from whichever list it is in.
#[must_use]
pub fn row(id: &str) -> Option<&'static dyn Row> {
    rows().find(|row| row.id() == id)
}
