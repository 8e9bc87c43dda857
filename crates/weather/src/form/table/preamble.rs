//! What stands above the headings: place, zone, the words of the file.

use dewrun_quantity::DecimalMark;

use super::sniff::{HeadLine, any_number};
use crate::column::names::folded;
use crate::instant::words::zone;
use crate::number::number;
use crate::place::Place;
use crate::text::cells::{Delimiter, Splitter};
use crate::text::encoding::text_of;

/// What a preamble says.
#[derive(Debug, Default)]
pub(super) struct Preamble {
    pub(super) place: Place,
    /// Hours that the stamps are ahead of UTC.
    pub(super) offset_h: Option<f64>,
    pub(super) comments: Vec<String>,
}

#[derive(Clone, Copy)]
enum Key {
    Latitude,
    Longitude,
    Elevation,
    Zone,
    OffsetSeconds,
    Name,
}

/// Beginnings of what the parts of a place are called, folded.
const KEYS: [(&str, Key); 20] = [
    ("latitude", Key::Latitude),
    ("lat", Key::Latitude),
    ("breite", Key::Latitude),
    ("longitude", Key::Longitude),
    ("lon", Key::Longitude),
    ("lange", Key::Longitude),
    ("elevation", Key::Elevation),
    ("altitude", Key::Elevation),
    ("height above sea", Key::Elevation),
    ("hohe", Key::Elevation),
    ("utc_offset_seconds", Key::OffsetSeconds),
    ("utc offset", Key::Zone),
    ("time zone", Key::Zone),
    ("timezone (", Key::Zone),
    ("local time zone", Key::Zone),
    ("station name", Key::Name),
    ("site name", Key::Name),
    ("location name", Key::Name),
    ("city", Key::Name),
    ("place", Key::Name),
];

/// Reads the lines above the headings.
pub(super) fn read(lines: &[HeadLine], delimiter: Delimiter) -> Preamble {
    let mut preamble = Preamble::default();
    let mut names: Option<Vec<Vec<u8>>> = None;
    for (line, _) in lines {
        let (text, _) = text_of(line);
        let text = text.trim().trim_start_matches('#').trim();
        if text.is_empty() {
            continue;
        }
        preamble.comments.push(text.trim_matches('"').to_owned());
        let cells = cells_of(text.as_bytes(), delimiter);
        if let Some(names) = names.take() {
            preamble.of_columns(&names, &cells);
            continue;
        }
        let keys = cells
            .iter()
            .filter(|cell| key_of(&folded(cell)).is_some())
            .count();
        let has_number = cells.iter().any(|cell| any_number(cell).is_some());
        if 2 <= keys && !has_number {
            names = Some(cells);
            continue;
        }
        preamble.of_line(&folded(text.as_bytes()), text);
    }
    preamble
}

fn cells_of(line: &[u8], delimiter: Delimiter) -> Vec<Vec<u8>> {
    // A preamble of names and values is parted by commas where the rows are parted by spaces.
    let delimiter = if delimiter == Delimiter::Spaces {
        Delimiter::Comma
    } else {
        delimiter
    };
    Splitter::default()
        .split(line, delimiter)
        .iter()
        .map(<[u8]>::to_vec)
        .collect()
}

fn key_of(folded: &str) -> Option<Key> {
    let folded = folded.trim_start_matches(['"', ' ', '-']);
    let begins = |name: &str| {
        let rest = folded.strip_prefix(name)?;
        rest.chars()
            .next()
            .is_none_or(|next| !next.is_ascii_alphanumeric())
            .then_some(())
    };
    KEYS.iter()
        .find(|(name, _)| begins(name).is_some())
        .map(|(_, key)| *key)
}

impl Preamble {
    /// A line of names above a line of values.
    fn of_columns(&mut self, names: &[Vec<u8>], values: &[Vec<u8>]) {
        for (name, value) in names.iter().zip(values) {
            if let Some(key) = key_of(&folded(name)) {
                self.set(
                    key,
                    number(value, DecimalMark::Point).or_else(|| any_number(value)),
                    text_of(value).0.trim(),
                );
            }
        }
    }

    /// `Latitude (decimal degrees): 45.000`, or several such in one line.
    fn of_line(&mut self, folded: &str, text: &str) {
        for (start, _) in folded.char_indices().filter(|(at, _)| {
            *at == 0
                || folded
                    .as_bytes()
                    .get(at - 1)
                    .is_some_and(|before| !before.is_ascii_alphanumeric() && *before != b'_')
        }) {
            let Some(rest) = folded.get(start..) else {
                continue;
            };
            let Some(key) = key_of(rest) else { continue };
            let after = rest
                .split_once('=')
                .or_else(|| rest.split_once(':'))
                .map_or(rest, |(_, after)| after);
            let words = text
                .split_once([':', '='])
                .map_or("", |(_, words)| words.trim());
            self.set(key, first_number(after), words);
        }
    }

    fn set(&mut self, key: Key, value: Option<f64>, words: &str) {
        let place = &mut self.place;
        let slot = match key {
            Key::Latitude => &mut place.latitude_deg,
            Key::Longitude => &mut place.longitude_deg,
            Key::Elevation => &mut place.elevation_m,
            Key::Zone => &mut place.zone_h,
            Key::OffsetSeconds => {
                self.offset_h = value.map(|seconds| seconds / 3600.0);
                return;
            }
            Key::Name => {
                let words = words.trim_matches(['"', '-', ' ']);
                if !words.is_empty() && place.name.is_none() {
                    place.name = Some(words.to_owned());
                }
                return;
            }
        };
        if slot.is_none() {
            *slot = value;
        }
    }
}

/// The first number in a text.
fn first_number(text: &str) -> Option<f64> {
    let start = text.find(|sign: char| sign.is_ascii_digit())?;
    let start = match text
        .get(..start)
        .and_then(|before| before.chars().next_back())
    {
        Some('-') => start - 1,
        _ => start,
    };
    let rest = text.get(start..)?;
    let end = rest
        .char_indices()
        .skip(1)
        .find(|(_, sign)| !(sign.is_ascii_digit() || *sign == '.'))
        .map_or(rest.len(), |(at, _)| at);
    number(
        rest.get(..end)?.trim_end_matches('.').as_bytes(),
        DecimalMark::Point,
    )
}

/// Hours that a heading of a time says it is ahead of UTC: `GMT-08:00`, `time(UTC)`, `UTC+1`.
pub(super) fn offset_of(heading: &str) -> Option<f64> {
    let Some(at) = heading.find("gmt").or_else(|| heading.find("utc")) else {
        let mut words = heading.split(|sign: char| !sign.is_ascii_alphanumeric());
        return words.find_map(zone).map(f64::from);
    };
    let rest = heading.get(at + 3..)?.trim_start_matches([' ', ':', ',']);
    let (is_west, rest) = match rest.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest),
        None => match rest.strip_prefix(['+', '\u{b1}']) {
            Some(rest) => (false, rest),
            None => return Some(0.0),
        },
    };
    let digits = rest.trim_start();
    let end = digits
        .find(|sign: char| !(sign.is_ascii_digit() || sign == ':'))
        .unwrap_or(digits.len());
    let (hours, minutes) = digits
        .get(..end)?
        .split_once(':')
        .unwrap_or((digits.get(..end)?, "0"));
    let part = |text: &str| number(text.as_bytes(), DecimalMark::Point);
    let (mut hours, mut minutes) = (part(hours)?, part(minutes).unwrap_or(0.0));
    if 100.0 <= hours {
        minutes = hours % 100.0;
        hours = (hours / 100.0).trunc();
    }
    let size = hours + minutes / 60.0;
    (size <= 14.0).then_some(if is_west { -size } else { size })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read_text(text: &str, delimiter: Delimiter) -> Preamble {
        let lines: Vec<HeadLine> = (1..)
            .zip(text.lines())
            .map(|(at, line)| (line.as_bytes().to_vec(), at))
            .collect();
        read(&lines, delimiter)
    }

    #[test]
    fn places_of_many_preambles() {
        let said = read_text(
            "Latitude (decimal degrees): 45.000\nLongitude (decimal degrees): -8.5\nElevation (m): 250.0\n",
            Delimiter::Comma,
        );
        assert_eq!(
            (
                said.place.latitude_deg,
                said.place.longitude_deg,
                said.place.elevation_m
            ),
            (Some(45.0), Some(-8.5), Some(250.0)),
            "key and value"
        );
        let said = read_text(
            "latitude,longitude,elevation,utc_offset_seconds,timezone\n52.5,13.4,38.0,7200,Somewhere\n",
            Delimiter::Comma,
        );
        assert_eq!(
            (
                said.place.latitude_deg,
                said.place.elevation_m,
                said.offset_h
            ),
            (Some(52.5), Some(38.0), Some(2.0)),
            "names above values"
        );
        let said = read_text(
            "-BEGIN HEADER-\nLocation: Latitude  45.25   Longitude 8.0\nElevation from model-2: average over 0.5 x 0.6 degree = 247.52 meters\n",
            Delimiter::Comma,
        );
        assert_eq!(
            (
                said.place.latitude_deg,
                said.place.longitude_deg,
                said.place.elevation_m
            ),
            (Some(45.25), Some(8.0), Some(247.52)),
            "several in a line"
        );
    }

    #[test]
    fn offsets_of_headings() {
        assert_eq!(offset_of("date time, gmt-08:00"), Some(-8.0), "hyphen");
        assert_eq!(
            offset_of("date time - gmt -04:00"),
            Some(-4.0),
            "with a space"
        );
        assert_eq!(offset_of("time(utc)"), Some(0.0), "plain");
        assert_eq!(offset_of("time utc+5:30"), Some(5.5), "half an hour");
        assert_eq!(offset_of("uhrzeit (mez)"), Some(1.0), "by its clock");
        assert_eq!(offset_of("timestamp"), None, "none");
    }
}
