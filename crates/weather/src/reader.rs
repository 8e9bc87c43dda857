//! Pieces of a file in, weather out.

use sha2::{Digest, Sha256};

use crate::error::WeatherError;
use crate::form::FormReader;
use crate::form::epw::{self, EpwReader};
use crate::form::table::TableReader;
use crate::form::tm2::{self, Tm2Reader};
use crate::settle::{FileFacts, settle};
use crate::text::cells::Delimiter;
use crate::text::encoding::{Decoder, Encoding};
use crate::text::lines::Lines;
use crate::understanding::{Form, Understanding};
use crate::weather::Weather;

/// The form of a table is decided when so many lines or bytes are seen.
const HEAD_LINES: usize = 400;
const HEAD_BYTES: usize = 1 << 18;

/// Reads a file piece by piece; between pieces it can be dropped.
///
/// ```
/// use dewrun_weather::{Reader, Understanding};
/// let mut reader = Reader::new(Understanding::default());
/// reader.push(b"time,temp_c,rh\n2026-07-01 00:00,21.5,70\n")?;
/// reader.push(b"2026-07-01 00:10,21.4,71\n")?;
/// let weather = reader.finish()?;
/// assert_eq!(weather.series.len(), 2);
/// assert!((weather.series.dew_point_c[0] - 15.802).abs() < 0.01); // Hyland & Wexler 1983, water curve
/// # Ok::<(), dewrun_weather::WeatherError>(())
/// ```
#[derive(Debug)]
pub struct Reader {
    given: Understanding,
    hash: Sha256,
    bytes: u64,
    decoder: Decoder,
    lines: Lines,
    stage: Stage,
}

enum Stage {
    Head(Head),
    Rows(Box<dyn FormReader>),
}

impl core::fmt::Debug for Stage {
    fn fmt(&self, form: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        form.write_str(match self {
            Self::Head(_) => "Head",
            Self::Rows(_) => "Rows",
        })
    }
}

/// Lines that are kept until the form of the file is known.
#[derive(Debug, Default)]
struct Head {
    lines: Vec<(Vec<u8>, u64)>,
    bytes: usize,
}

impl Reader {
    /// A reader that looks at everything which is not given.
    #[must_use]
    pub fn new(given: Understanding) -> Self {
        Self {
            given,
            hash: Sha256::new(),
            bytes: 0,
            decoder: Decoder::default(),
            lines: Lines::default(),
            stage: Stage::Head(Head::default()),
        }
    }

    /// Takes the next piece, of any length.
    ///
    /// # Errors
    /// [`WeatherError`] as soon as it is sure that the file can't be read; the reader is of no use then.
    pub fn push(&mut self, piece: &[u8]) -> Result<(), WeatherError> {
        if self.bytes == 0 {
            refuse_packed(piece)?;
        }
        self.hash.update(piece);
        self.bytes = self
            .bytes
            .saturating_add(u64::try_from(piece.len()).unwrap_or(u64::MAX));
        let text = self.decoder.push(piece);
        let (lines, stage, given) = (&mut self.lines, &mut self.stage, &self.given);
        lines.push(&text, |line, number| stage.line(line, number, given))
    }

    /// What the file holds.
    ///
    /// # Errors
    /// [`WeatherError`] where it holds no readings of air.
    pub fn finish(mut self) -> Result<Weather, WeatherError> {
        if self.bytes == 0 {
            return Err(WeatherError::Empty);
        }
        let text = self.decoder.finish();
        let (lines, stage, given) = (&mut self.lines, &mut self.stage, &self.given);
        lines.push(&text, |line, number| stage.line(line, number, given))?;
        lines.finish(|line, number| stage.line(line, number, given))?;
        let reader = match self.stage {
            Stage::Head(head) => head.decide(&self.given)?,
            Stage::Rows(reader) => reader,
        };
        let mut raw = reader.finish()?;
        let encoding = self.decoder.encoding().unwrap_or(Encoding::Utf8);
        raw.understood.encoding = raw.understood.encoding.or(Some(encoding));
        let facts = FileFacts {
            bytes: self.bytes,
            lines: self.lines.count(),
            sha256: self.hash.finalize().into(),
        };
        settle(raw, &self.given, facts)
    }
}

/// First bytes of files that are no text, with what to do instead.
const PACKED: [(&[u8], &str, &str); 6] = [
    (
        b"PK\x03\x04",
        "a zip archive or a workbook",
        "save the sheet as CSV, or unpack the archive, and open that",
    ),
    (
        b"\x1f\x8b",
        "a gzip archive",
        "unpack it and open the file inside",
    ),
    (
        b"\xd0\xcf\x11\xe0",
        "an old workbook",
        "save the sheet as CSV and open that",
    ),
    (b"%PDF", "a PDF", "ask for the readings as CSV"),
    (
        b"\x89HDF",
        "an HDF file",
        "export the place as CSV and open that",
    ),
    (
        b"CDF\x01",
        "a NetCDF file",
        "export the place as CSV and open that",
    ),
];

fn refuse_packed(piece: &[u8]) -> Result<(), WeatherError> {
    match PACKED.iter().find(|(start, ..)| piece.starts_with(start)) {
        Some((_, what, hint)) => Err(WeatherError::NotText { what, hint }),
        None => Ok(()),
    }
}

impl Stage {
    fn line(
        &mut self,
        line: &[u8],
        number: u64,
        given: &Understanding,
    ) -> Result<(), WeatherError> {
        match self {
            Self::Rows(reader) => reader.line(line, number),
            Self::Head(head) => {
                head.take(line, number)?;
                if head.is_enough(given) {
                    *self = Self::Rows(core::mem::take(head).decide(given)?);
                }
                Ok(())
            }
        }
    }
}

impl Head {
    fn take(&mut self, line: &[u8], number: u64) -> Result<(), WeatherError> {
        if line.contains(&0) {
            return Err(WeatherError::NotText {
                what: "a file of bytes that are no letters",
                hint: "export the readings as CSV and open that",
            });
        }
        self.bytes += line.len();
        self.lines.push((line.to_vec(), number));
        Ok(())
    }

    fn is_enough(&self, given: &Understanding) -> bool {
        HEAD_LINES <= self.lines.len()
            || HEAD_BYTES <= self.bytes
            || matches!(self.form(given), Some(Form::Epw | Form::Tm2))
    }

    /// The form that the first line with anything in it shows.
    fn form(&self, given: &Understanding) -> Option<Form> {
        let first = self
            .lines
            .iter()
            .map(|(line, _)| line.trim_ascii())
            .find(|line| !line.is_empty())?;
        given.form.or_else(|| {
            if epw::delimiter(first).is_some() {
                return Some(Form::Epw);
            }
            tm2::begins(first).then_some(Form::Tm2)
        })
    }

    /// An EPW, parted as its first line is or as somebody says.
    fn epw(&self, given: &Understanding) -> EpwReader {
        let found = self.lines.iter().find_map(|(line, _)| epw::delimiter(line));
        let delimiter = given.delimiter.or(found).unwrap_or(Delimiter::Comma);
        EpwReader::new(delimiter, given.decimal_mark)
    }

    fn decide(self, given: &Understanding) -> Result<Box<dyn FormReader>, WeatherError> {
        let mut reader: Box<dyn FormReader> = match self.form(given) {
            Some(Form::Epw) => Box::new(self.epw(given)),
            Some(Form::Tm2) => Box::new(Tm2Reader::new()),
            _ => Box::new(TableReader::of_head(&self.lines, given)?),
        };
        for (line, number) in self.lines {
            reader.line(&line, number)?;
        }
        Ok(reader)
    }
}
