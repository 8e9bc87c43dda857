//! Tables that name no columns, or whose first line has a form of its own.
//!
//! # Source
//! NOAA NCEI, U.S. Climate Reference Network, readme of the products subhourly01 and hourly02;
//! Wilcox & Marion, Users Manual for TMY3 Data Sets, NREL/TP-581-43156 (2008), table 1-2.

use dewrun_quantity::DecimalMark;

use super::sniff::{Found, HeadLine};
use crate::column::names::folded;
use crate::number::number;
use crate::place::Place;
use crate::text::cells::{Delimiter, Splitter};
use crate::text::encoding::text_of;

/// Columns of the five-minute product, as far as they are used; the others are not.
const FIVE_MINUTES: &[(usize, &str)] = &[
    (0, "station"),
    (1, "date"),
    (2, "time UTC"),
    (8, "air temperature (C)"),
    (9, "precipitation (mm)"),
    (10, "global radiation"),
    (15, "relative humidity (%)"),
    (21, "wind 1.5 m (m/s)"),
];
/// Columns of the hourly product.
const HOURLY: &[(usize, &str)] = &[
    (0, "station"),
    (1, "date"),
    (2, "time UTC"),
    (9, "air temperature (C)"),
    (12, "precipitation (mm)"),
    (13, "global radiation"),
    (26, "relative humidity (%)"),
];

/// Names of the columns of a table that is known by its width alone.
pub(super) fn names(lines: &[HeadLine], found: &Found) -> Option<Vec<String>> {
    if found.delimiter != Delimiter::Spaces || found.date != 1 {
        return None;
    }
    let mut splitter = Splitter::default();
    let (line, _) = lines.get(found.first)?;
    let cells = splitter.split(line, Delimiter::Spaces);
    let is_station = cells.get(0).len() == 5 && cells.get(1).len() == 8 && cells.get(2).len() == 4;
    let known = match found.cells {
        23 => FIVE_MINUTES,
        38 => HOURLY,
        _ => return None,
    };
    let name = |at: usize| {
        known
            .iter()
            .find(|(place, _)| *place == at)
            .map_or("", |(_, name)| *name)
            .to_owned()
    };
    is_station.then(|| (0..found.cells).map(name).collect())
}

/// The place in the first line of a TMY3 file: station, name, state, zone, latitude, longitude, elevation.
pub(super) fn tmy3_place(lines: &[HeadLine]) -> Option<Place> {
    let [(first, _), (second, _), ..] = lines else {
        return None;
    };
    let heading = folded(second);
    let is_tmy3 =
        heading.starts_with("date (mm/dd/yyyy),time (hh:mm)") && heading.contains("dry-bulb (c)");
    let mut splitter = Splitter::default();
    let cells = splitter.split(first, Delimiter::Comma);
    let value = |at: usize| number(cells.get(at), DecimalMark::Point);
    is_tmy3.then(|| Place {
        name: Some(text_of(cells.get(1)).0.into_owned()).filter(|name| !name.is_empty()),
        zone_h: value(3),
        latitude_deg: value(4),
        longitude_deg: value(5),
        elevation_m: value(6),
    })
}
