//! The worked examples, which are part of the page.

use dewrun_document::{DocumentError, Project, read_keeping_years};

/// A worked example.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Example {
    /// Its name in the address: `#example=NAME`.
    pub name: &'static str,
    /// What it is about.
    pub title: &'static str,
    /// The trouble it teaches.
    pub teaches: &'static str,
    text: &'static str,
}

/// All of them.
pub const EXAMPLES: [Example; 5] = [
    Example {
        name: "make-up-air",
        title: "Humid make-up air, cool corridor",
        teaches: "Water forms on the way and runs to a low point.",
        text: include_str!("../../../demo/make-up-air.json"),
    },
    Example {
        name: "pool-hall-exhaust",
        title: "Pool hall, exhaust through a cold loft",
        teaches: "Frost, not water.",
        text: include_str!("../../../demo/pool-hall-exhaust.json"),
    },
    Example {
        name: "chilled-supply",
        title: "Chilled supply through a humid shaft",
        teaches: "Dry inside; the tube drips on the outside.",
        text: include_str!("../../../demo/chilled-supply.json"),
    },
    Example {
        name: "sagging-tube",
        title: "Flexible tube over a ceiling",
        teaches: "It sags and seals itself with its own water.",
        text: include_str!("../../../demo/sagging-tube.json"),
    },
    Example {
        name: "laundry-exhaust",
        title: "Laundry exhaust, a season of troubles",
        teaches: "Airflow low at dawn, again and again.",
        text: include_str!("../../../demo/laundry-exhaust.json"),
    },
];

impl Example {
    /// Its project.
    ///
    /// # Errors
    /// Never in a page that was tested: each example is read by the tests.
    pub fn project(&self) -> Result<Project, DocumentError> {
        read_keeping_years(self.text)
    }
}

/// The example that an address names after its `#`.
#[must_use]
pub fn example(hash: &str) -> Option<Example> {
    let name = hash.trim_start_matches('#').strip_prefix("example=")?;
    EXAMPLES.into_iter().find(|example| example.name == name)
}
