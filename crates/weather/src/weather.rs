//! What a file holds, and what was understood of it.

use sha2::{Digest, Sha256};

use crate::note::Note;
use crate::place::Place;
use crate::series::Series;
use crate::understanding::Understanding;

/// A weather or logger file, read.
#[derive(Debug, Clone, PartialEq)]
pub struct Weather {
    /// Where the readings are from.
    pub place: Place,
    /// The readings.
    pub series: Series,
    /// How the file was read, everything filled in: change it and read again.
    pub understood: Understanding,
    /// Every decision and oddity.
    pub notes: Vec<Note>,
    /// Where the pressures are from.
    pub pressure_source: PressureSource,
    /// How dew points below freezing agree with the other readings.
    pub convention: Option<Convention>,
    /// Names of all stations in the file, where it names any.
    pub stations: Vec<String>,
    /// Names of all columns in the file, in order.
    pub column_names: Vec<String>,
    /// Free words of the file.
    pub comments: Vec<String>,
    /// Readings over saturation that were taken as saturated.
    pub clipped: u64,
    /// Rows with a stamp that hold no reading but an event.
    pub event_rows: u64,
    /// Lines with nothing in them.
    pub blank_lines: u64,
    /// Length of the file, bytes.
    pub bytes: u64,
    /// SHA-256 of the file.
    pub sha256: [u8; 32],
}

impl Weather {
    /// The SHA-256 of the file as 64 digits from 0 to 9 and a to f.
    #[must_use]
    pub fn sha256_digits(&self) -> String {
        digits(&self.sha256)
    }
}

/// The SHA-256 of bytes as 64 digits from 0 to 9 and a to f.
///
/// ```
/// // FIPS 180-2, appendix B.1.
/// let digits = dewrun_weather::sha256_of(b"abc");
/// assert_eq!(digits, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
/// ```
#[must_use]
pub fn sha256_of(bytes: &[u8]) -> String {
    digits(&Sha256::digest(bytes))
}

fn digits(bytes: &[u8]) -> String {
    let digits = |byte: &u8| {
        [byte >> 4, byte & 15].map(|digit| char::from_digit(u32::from(digit), 16).unwrap_or('0'))
    };
    bytes.iter().flat_map(digits).collect()
}

/// Where the pressures of a series are from.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum PressureSource {
    /// A column of the file.
    File,
    /// A column of the file, with so many rows filled from the standard atmosphere.
    FileAndStandard {
        /// Rows that were filled.
        filled: u64,
    },
    /// Pressures at sea level in the file, brought to the elevation of the place.
    SeaLevel,
    /// The standard atmosphere at the elevation of the place.
    Standard,
    /// The standard atmosphere at sea level, for want of an elevation.
    StandardAtSeaLevel,
    /// Said by the person.
    Given,
}

impl PressureSource {
    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::File => "file",
            Self::FileAndStandard { .. } => {
                "file, gaps from the standard atmosphere at the elevation"
            }
            Self::SeaLevel => "file, from sea level to the elevation",
            Self::Standard => "standard atmosphere at the elevation",
            Self::StandardAtSeaLevel => "standard atmosphere at sea level, no elevation known",
            Self::Given => "given",
        }
    }
}

/// How the dew points of a file agree with its temperatures and relative humidities below freezing: medians of recomputed less file, K.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Convention {
    /// Rows that were compared.
    pub rows: u64,
    /// Both over water.
    pub water_k: f64,
    /// Both over ice.
    pub ice_k: f64,
    /// Relative humidity over water, dew point over ice.
    pub frost_point_k: f64,
}
