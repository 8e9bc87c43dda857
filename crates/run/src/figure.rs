//! Every figure by its id: what it is called, how it follows from what, how far it holds and who found it.
//!
//! What is shown or printed names its figure, so that it can be opened to its relation, inputs and source, and each input in turn, down to what was entered.
//!
//! ```
//! use dewrun_run::figure::Figure;
//! let water = Figure::from_id("leg-water").unwrap();
//! assert_eq!(water.name(), "water formed");
//! assert!(water.inputs().any(|input| input == Figure::Deposit));
//! assert!(Figure::Deposit.source().starts_with("Bird, Stewart & Lightfoot"));
//! assert!(Figure::Bore.is_given());
//! ```

mod films;
mod given;
mod ids;
mod installed;
mod kind;
mod scope;
mod spot;
mod value;
mod whole_value;

pub use given::{Given, Origin, set};
pub use ids::Figure;
pub use installed::set_installed;
pub use kind::Kind;
pub use scope::Scope;
pub use spot::Spot;
pub use value::value;
pub use whole_value::whole_value;

/// Computed figures: id, name, symbol, known spread, inputs, relation, where it holds, source.
const COMPUTED: &str = include_str!("figure/computed.txt");
/// Inputs of a run: id, name, symbol, how to measure it.
const GIVEN: &str = include_str!("figure/given.txt");
/// The same of water and airflow; a program that shows none of them does without.
const WATER_AND_AIR: [&str; 2] = if cfg!(feature = "water-and-air") {
    [
        include_str!("figure/water-and-air.txt"),
        include_str!("figure/given-water-and-air.txt"),
    ]
} else {
    ["", ""]
};

impl Figure {
    /// The figure of an id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|figure| figure.id() == id)
    }

    /// An input of the run, entered and not computed.
    #[must_use]
    pub fn is_given(self) -> bool {
        self.computed_line().is_none()
    }

    /// What it is called, in lower case.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.column(1)
    }

    /// Its letter, an index after `_`.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        self.column(2)
    }

    /// How far its relation is known to be off, such as `±20 %`; empty where nothing is known.
    #[must_use]
    pub fn spread(self) -> &'static str {
        self.computed(3)
    }

    /// What it is computed from, the most important first.
    pub fn inputs(self) -> impl Iterator<Item = Self> {
        self.computed(4).split(' ').filter_map(Self::from_id)
    }

    /// How it follows from them; empty for an input.
    #[must_use]
    pub fn relation(self) -> &'static str {
        self.computed(5)
    }

    /// Where the relation holds; empty where there is nothing to say.
    #[must_use]
    pub fn holds(self) -> &'static str {
        self.computed(6)
    }

    /// Who found the relation, and when; empty for an input.
    #[must_use]
    pub fn source(self) -> &'static str {
        self.computed(7)
    }

    /// How a person could measure it; empty where it is computed.
    #[must_use]
    pub fn how_to_measure(self) -> &'static str {
        self.given_line().map_or("", |line| cell(line, 3))
    }

    fn column(self, at: usize) -> &'static str {
        let line = self.computed_line().or_else(|| self.given_line());
        line.map_or("", |line| cell(line, at))
    }

    fn computed(self, at: usize) -> &'static str {
        self.computed_line().map_or("", |line| cell(line, at))
    }

    fn computed_line(self) -> Option<&'static str> {
        let [water_and_air, _] = WATER_AND_AIR;
        line(COMPUTED, self.id()).or_else(|| line(water_and_air, self.id()))
    }

    fn given_line(self) -> Option<&'static str> {
        let [_, water_and_air] = WATER_AND_AIR;
        line(GIVEN, self.id()).or_else(|| line(water_and_air, self.id()))
    }
}

fn line(table: &'static str, id: &str) -> Option<&'static str> {
    table.lines().find(|line| cell(line, 0) == id)
}

fn cell(line: &'static str, at: usize) -> &'static str {
    line.split('|').nth(at).unwrap_or("")
}
