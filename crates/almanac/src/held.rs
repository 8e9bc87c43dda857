//! The weather file that is held, and the one that is being read.

use std::rc::Rc;

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
}

/// A file on its way in.
#[derive(Debug)]
pub(crate) struct Reading {
    reader: Reader,
    said: Understanding,
}

impl Reading {
    /// A file of which something may be said beforehand.
    pub(crate) fn new(said: Understanding) -> Self {
        Self {
            reader: Reader::new(said.clone()),
            said,
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
