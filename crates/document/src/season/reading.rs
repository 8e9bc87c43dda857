//! How a file is read, from the words of a project to those of the reader and back.

use dewrun_quantity::DecimalMark;
use dewrun_run::air::Over as Surface;
use dewrun_weather::{ColumnChoice, DateOrder, Delimiter, Form, Role, Stamps, Understanding, Unit};

use crate::field_path::Here;
use crate::{
    DocumentError, FileColumn, FileDates, FileDelimiter, FileForm, FileHumidity, FileMark,
    FileReading, FileStamps, Over, WeatherReference,
};

/// Words of the project beside those of the reader.
const FORMS: [(FileForm, Form); 4] = [
    (FileForm::Epw, Form::Epw),
    (FileForm::Tmy3, Form::Tmy3),
    (FileForm::Tm2, Form::Tm2),
    (FileForm::Table, Form::Table),
];
const DELIMITERS: [(FileDelimiter, Delimiter); 5] = [
    (FileDelimiter::Comma, Delimiter::Comma),
    (FileDelimiter::Semicolon, Delimiter::Semicolon),
    (FileDelimiter::Tab, Delimiter::Tab),
    (FileDelimiter::Bar, Delimiter::Bar),
    (FileDelimiter::Spaces, Delimiter::Spaces),
];
const MARKS: [(FileMark, DecimalMark); 2] = [
    (FileMark::Point, DecimalMark::Point),
    (FileMark::Comma, DecimalMark::Comma),
];
pub(crate) const DATES: [(FileDates, DateOrder); 3] = [
    (FileDates::DayMonthYear, DateOrder::DayMonthYear),
    (FileDates::MonthDayYear, DateOrder::MonthDayYear),
    (FileDates::YearMonthDay, DateOrder::YearMonthDay),
];
const STAMPS: [(FileStamps, Stamps); 3] = [
    (FileStamps::Start, Stamps::Start),
    (FileStamps::End, Stamps::End),
    (FileStamps::Moment, Stamps::Moment),
];
const SURFACES: [(Over, Surface); 2] = [(Over::Water, Surface::Water), (Over::Ice, Surface::Ice)];
const LEADS: [(FileHumidity, bool); 2] = [
    (FileHumidity::DewPoint, true),
    (FileHumidity::RelativeHumidity, false),
];

impl WeatherReference {
    /// The same file, with what was said of it when it was read.
    #[must_use]
    pub fn read_with(self, said: &Understanding) -> Self {
        Self {
            reading: FileReading::of(said),
            ..self
        }
    }

    /// What the project says of the file, for the reader that looks at the rest.
    ///
    /// # Errors
    /// [`DocumentError::Told`] where a column holds something or has a unit that no reader knows.
    pub fn understanding(&self) -> Result<Understanding, DocumentError> {
        self.understanding_at(&Here::ROOT)
    }

    pub(crate) fn understanding_at(&self, at: &Here<'_>) -> Result<Understanding, DocumentError> {
        let said = self.reading.as_ref();
        let said = said.map(|said| said.at(&at.field("reading")));
        said.unwrap_or_else(|| Ok(Understanding::default()))
    }
}

impl FileReading {
    /// What is said of a file; none where nothing is.
    ///
    /// Letters are not kept: they are told by the file's bytes.
    ///
    /// ```
    /// use dewrun_document::{FileReading, Over};
    /// use dewrun_weather::Understanding;
    /// let said = Understanding {
    ///     dew_point_over: Some(dewrun_run::air::Over::Ice),
    ///     ..Understanding::default()
    /// };
    /// let kept = FileReading::of(&said).unwrap();
    /// assert_eq!(kept.dew_points_over, Some(Over::Ice));
    /// assert_eq!(FileReading::of(&Understanding::default()), None);
    /// ```
    #[must_use]
    pub fn of(said: &Understanding) -> Option<Self> {
        let reading = Self {
            form: word(&FORMS, said.form),
            delimiter: word(&DELIMITERS, said.delimiter),
            decimal_mark: word(&MARKS, said.decimal_mark),
            first_reading: said.first_reading.map(number),
            date_order: word(&DATES, said.date_order),
            columns: said.columns.iter().map(column).collect(),
            station: said.station.clone(),
            stamps: word(&STAMPS, said.stamps),
            utc_offset_h: said.utc_offset_h,
            elevation_m: said.elevation_m,
            pressure_pa: said.pressure_pa,
            dew_points_over: word(&SURFACES, said.dew_point_over),
            relative_humidities_over: word(&SURFACES, said.relative_over),
            leads: word(&LEADS, said.dew_point_leads),
        };
        (reading != Self::default()).then_some(reading)
    }

    fn at(&self, at: &Here<'_>) -> Result<Understanding, DocumentError> {
        let columns = at.field("columns");
        let choices = self.columns.iter().enumerate();
        let choices = choices.map(|(position, column)| choice(&columns.index(position), column));
        Ok(Understanding {
            form: meant(&FORMS, self.form),
            encoding: None,
            delimiter: meant(&DELIMITERS, self.delimiter),
            decimal_mark: meant(&MARKS, self.decimal_mark),
            first_reading: self.first_reading.and_then(whole),
            date_order: meant(&DATES, self.date_order),
            columns: choices.collect::<Result<_, _>>()?,
            station: self.station.clone(),
            stamps: meant(&STAMPS, self.stamps),
            utc_offset_h: self.utc_offset_h,
            elevation_m: self.elevation_m,
            pressure_pa: self.pressure_pa,
            dew_point_over: meant(&SURFACES, self.dew_points_over),
            relative_over: meant(&SURFACES, self.relative_humidities_over),
            dew_point_leads: meant(&LEADS, self.leads),
        })
    }
}

/// The project's word for what a reader means.
fn word<W: Copy, M: Copy + PartialEq>(words: &[(W, M)], meant: Option<M>) -> Option<W> {
    let found = words.iter().find(|(_, known)| Some(*known) == meant);
    found.map(|(word, _)| *word)
}

/// What a word of the project means to a reader.
fn meant<W: Copy + PartialEq, M: Copy>(words: &[(W, M)], word: Option<W>) -> Option<M> {
    let found = words.iter().find(|(known, _)| Some(*known) == word);
    found.map(|(_, meant)| *meant)
}

fn column(choice: &ColumnChoice) -> FileColumn {
    FileColumn {
        number: number(u64::try_from(choice.column).unwrap_or(u64::MAX)),
        holds: match choice.role {
            Role::Other => "other",
            role => role.name(),
        }
        .to_owned(),
        unit: choice.unit.map(|unit| unit.sign().to_owned()),
    }
}

fn choice(at: &Here<'_>, column: &FileColumn) -> Result<ColumnChoice, DocumentError> {
    let told = |name, sentence| DocumentError::Told {
        path: at.field(name).path(),
        sentence,
    };
    let role = Role::named(&column.holds).ok_or_else(|| {
        let known = Role::names().join(", ");
        told(
            "holds",
            format!("`{}` is none of {known}, other", column.holds),
        )
    })?;
    let unit = column.unit.as_ref().map(|sign| {
        Unit::named(sign).ok_or_else(|| told("unit", format!("there is no unit `{sign}`")))
    });
    let number = whole(column.number).and_then(|number| usize::try_from(number).ok());
    Ok(ColumnChoice {
        column: number.unwrap_or(0),
        role,
        unit: unit.transpose()?,
    })
}

#[expect(
    clippy::cast_precision_loss,
    reason = "lines and columns are far fewer than 2^52"
)]
const fn number(count: u64) -> f64 {
    count as f64
}

/// A number that the limits have found to be whole.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "within the limits of a line or a column"
)]
fn whole(number: f64) -> Option<u64> {
    (1.0..=1e9).contains(&number).then_some(number as u64)
}
