//! The weather file that is held, and the one that is being read.

use std::rc::Rc;

use dewrun_moist_air::Over;
use dewrun_weather::{Reader, Understanding, Weather};

/// A weather file as it was read.
#[derive(Debug, Clone)]
pub(crate) struct Held {
    /// Its name.
    pub(crate) name: String,
    /// What it holds.
    pub(crate) weather: Rc<Weather>,
    /// Over what its humidities below 0 °C were said to be; none where that was looked for.
    pub(crate) over: Option<Over>,
}

impl Held {
    /// The hash of its bytes in letters.
    pub(crate) fn hash(&self) -> String {
        self.weather.sha256_digits()
    }
}

/// A file on its way in.
#[derive(Debug)]
pub(crate) struct Reading {
    reader: Reader,
    over: Option<Over>,
}

impl Reading {
    /// A file of which only one thing may be said beforehand: over what its humidities below 0 °C are.
    pub(crate) fn new(over: Option<Over>) -> Self {
        let given = Understanding {
            dew_point_over: over,
            relative_over: over,
            ..Understanding::default()
        };
        Self {
            reader: Reader::new(given),
            over,
        }
    }

    /// Takes the next piece.
    ///
    /// # Errors
    /// Why the file can't be read, as a sentence.
    pub(crate) fn take(&mut self, piece: &[u8]) -> Result<(), String> {
        self.reader.push(piece).map_err(|error| error.to_string())
    }

    /// What it holds.
    ///
    /// # Errors
    /// The same.
    pub(crate) fn end(self, name: &str) -> Result<Held, String> {
        let weather = self.reader.finish().map_err(|error| error.to_string())?;
        Ok(Held {
            name: name.to_owned(),
            weather: Rc::new(weather),
            over: self.over,
        })
    }
}
