//! The weather file that is held, and the one that is being read.

use std::rc::Rc;

use dewrun_document::{WeatherReference, weather_reference};
use dewrun_weather::{Reader, Understanding, Weather};

/// A weather file as it was read.
#[derive(Debug, Clone)]
pub(crate) struct Held {
    /// Its name.
    pub(crate) name: String,
    /// What it holds.
    pub(crate) weather: Rc<Weather>,
    /// What was said of it; the rest was looked for.
    pub(crate) said: Understanding,
}

impl Held {
    /// The hash of its bytes in letters.
    pub(crate) fn hash(&self) -> String {
        self.weather.sha256_digits()
    }

    /// It is the file that is named, read as is said there.
    pub(crate) fn is(&self, named: &WeatherReference) -> bool {
        named.sha256 == self.hash() && named.understanding().is_ok_and(|said| said == self.said)
    }

    /// What a project says of it.
    pub(crate) fn reference(&self) -> WeatherReference {
        weather_reference(&self.name, &self.weather).read_with(&self.said)
    }
}

/// What a file is to the year of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// Its weather.
    Weather,
    /// What was measured in its duct.
    InDuct,
}

/// A file on its way in.
#[derive(Debug)]
pub(crate) struct Reading {
    reader: Reader,
    said: Understanding,
    pub(crate) place: Place,
}

impl Reading {
    /// A file of which something may be said beforehand.
    pub(crate) fn new(place: Place, said: Understanding) -> Self {
        Self {
            reader: Reader::new(said.clone()),
            said,
            place,
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
            said: self.said,
        })
    }
}
