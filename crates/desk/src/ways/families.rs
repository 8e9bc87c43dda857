//! Rows of the library that are the same thing in different weather, by the word that people tap.

use dewrun_document::{AirPair, Humidity, Input, Space};

use crate::field::leg;
use crate::{OpenProject, TubeName, rows};

/// One thing in each of the named weathers, as ids of rows.
pub(super) type Family = [&'static str; 4];

/// Kinds of duct air.
pub(super) const AIR_WORDS: [&str; 7] = [
    "make-up air",
    "make-up, heated or cooled",
    "return air",
    "pool hall",
    "shower room",
    "laundry",
    "kitchen exhaust",
];

/// Their rows.
pub(super) const AIRS: [Family; 7] = [
    [
        "make-up-untreated",
        "make-up-humid-night",
        "make-up-fog",
        "make-up-frost",
    ],
    [
        "make-up-cooled",
        "make-up-cooled",
        "make-up-heated",
        "make-up-heated",
    ],
    ["return"; 4],
    ["pool-hall"; 4],
    ["shower"; 4],
    ["laundry"; 4],
    ["kitchen-exhaust"; 4],
];

/// Kinds of spaces.
pub(super) const SPACE_WORDS: [&str; 9] = [
    "corridor",
    "ceiling void",
    "return plenum",
    "shaft",
    "loft",
    "outdoors",
    "plant room",
    "plant room, unheated",
    "cold store",
];

/// Their rows.
pub(super) const SPACES: [Family; 9] = [
    ["corridor"; 4],
    [
        "ceiling-void-cooling",
        "ceiling-void-cooling",
        "ceiling-void",
        "ceiling-void",
    ],
    ["return-plenum"; 4],
    ["shaft", "shaft", "shaft-fog", "shaft-heating"],
    [
        "loft-ventilated-summer",
        "loft-ventilated-humid-night",
        "loft-ventilated-fog",
        "loft-ventilated",
    ],
    [
        "roof-summer-day",
        "roof-humid-night",
        "roof-fog",
        "roof-winter-night",
    ],
    ["plant-room-heated"; 4],
    [
        "plant-room-unheated-summer",
        "plant-room-unheated-summer",
        "plant-room-unheated-fog",
        "plant-room-unheated",
    ],
    ["cold-store-chill"; 4],
];

/// Tubes that are met most often; the others stand in the list of all.
pub(super) const TUBE_WORDS: [&str; 6] = [
    "plastic, 19 mm bore",
    "ABS, 25 mm",
    "ABS, 3/4 in",
    "PVC, 25 mm",
    "copper, 22 mm",
    "corrugated, 25 mm",
];

/// Their rows.
pub(super) const TUBES: [&str; 6] = [
    "tube-rigid-plastic-19",
    "tube-abs-25",
    "tube-abs-sch40-3-4-in",
    "tube-pvc-25",
    "tube-copper-22",
    "tube-pa-corrugated-25",
];

/// The kind of the duct air, by the row that it is assumed from.
pub(super) fn air_of(project: &OpenProject) -> Option<usize> {
    let AirPair::Temperature {
        temperature_c,
        humidity,
    } = &project.open_run()?.duct.air
    else {
        return None;
    };
    let row = row_id(temperature_c).or_else(|| row_id(said(humidity)))?;
    AIRS.iter().position(|family| family.contains(&row))
}

/// The kind of a space, by the row that something of it is assumed from.
pub(super) fn of_space(space: &Space) -> Option<usize> {
    let row = row_id(&space.temperature_c)
        .or_else(|| row_id(said(&space.humidity)))
        .or_else(|| row_id(&space.wind_m_s))?;
    SPACES.iter().position(|family| family.contains(&row))
}

/// Which tube the first leg is of.
pub(super) fn tube_of(project: &OpenProject) -> Option<usize> {
    let row = row_id(&leg(project, TubeName::Intake, 0)?.tube.bore_mm)?;
    TUBES.iter().position(|tube| *tube == row)
}

/// The number that says how humid an air is.
pub(super) fn said(humidity: &Humidity) -> &Input<f64> {
    match humidity {
        Humidity::Relative(relative) => &relative.percent,
        Humidity::DewPoint(input)
        | Humidity::FrostPoint(input)
        | Humidity::Ratio(input)
        | Humidity::WetBulb(input)
        | Humidity::Enthalpy(input) => input,
    }
}

fn row_id(input: &Input<f64>) -> Option<&'static str> {
    rows::row_of(input).map(dewrun_run::library::Row::id)
}

#[cfg(test)]
mod tests {
    use dewrun_run::library;

    use super::*;

    #[test]
    fn each_word_has_its_row_in_the_library() {
        for row in AIRS.as_flattened() {
            let found = library::find(library::duct_air(), row);
            assert!(found.is_some(), "{row} is a duct air");
        }
        for row in SPACES.as_flattened() {
            let found = library::find(library::spaces(), row);
            assert!(found.is_some(), "{row} is a space");
        }
        for row in TUBES {
            let found = library::find(library::tubes(), row);
            assert!(found.is_some(), "{row} is a tube");
        }
    }

    #[test]
    fn a_row_is_of_one_kind_only() {
        for families in [&AIRS[..], &SPACES[..]] {
            for row in families.as_flattened() {
                let kinds = families.iter().filter(|family| family.contains(row));
                assert_eq!(kinds.count(), 1, "{row}");
            }
        }
    }
}
