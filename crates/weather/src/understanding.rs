//! What a reader understood of a file, and what a person may say instead.

use dewrun_moist_air::Over;
use dewrun_quantity::DecimalMark;

use crate::column::{Role, Unit};
use crate::instant::DateOrder;
use crate::text::cells::Delimiter;
use crate::text::encoding::Encoding;

/// The form of a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Form {
    /// Hourly or finer weather with eight lines of header, the form of building simulation.
    Epw,
    /// Typical year of the third US set, CSV.
    Tmy3,
    /// Typical year of the second US set, fixed columns.
    Tm2,
    /// A table with one reading a line: logger exports, PVGIS, satellite and reanalysis data.
    Table,
}

impl Form {
    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Epw => "EPW",
            Self::Tmy3 => "TMY3",
            Self::Tm2 => "TM2",
            Self::Table => "table",
        }
    }
}

/// What the time beside a reading means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stamps {
    /// The end of the step that the reading stands for.
    End,
    /// Its start.
    Start,
    /// The moment at which it was read.
    Moment,
}

impl Stamps {
    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::End => "end of the step",
            Self::Start => "start of the step",
            Self::Moment => "moment of the reading",
        }
    }
}

/// A column and what it holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ColumnChoice {
    /// Number of the column, from 1.
    pub column: usize,
    /// What it holds.
    pub role: Role,
    /// In which unit; none to look.
    pub unit: Option<Unit>,
}

/// What to take as given instead of looking; the same form comes back with everything filled in.
///
/// ```
/// use dewrun_weather::{DateOrder, Reader, Understanding};
/// let text = b"time,T,RH\n01/02/2024 10:00,20,50\n01/02/2024 10:10,20,51\n";
/// let given = Understanding { date_order: Some(DateOrder::MonthDayYear), ..Understanding::default() };
/// let mut reader = Reader::new(given);
/// reader.push(text)?;
/// assert_eq!(reader.finish()?.series.first().unwrap().to_string(), "2024-01-02T10:00");
/// # Ok::<(), dewrun_weather::WeatherError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Understanding {
    /// Form of the file.
    pub form: Option<Form>,
    /// Letters of the file; UTF-16 is always told by its bytes.
    pub encoding: Option<Encoding>,
    /// What stands between cells.
    pub delimiter: Option<Delimiter>,
    /// What parts whole from broken digits.
    pub decimal_mark: Option<DecimalMark>,
    /// Number of the first line with a reading, from 1.
    pub first_reading: Option<u64>,
    /// Order of day, month and year.
    pub date_order: Option<DateOrder>,
    /// Columns by number; those not named here are looked at.
    pub columns: Vec<ColumnChoice>,
    /// The station whose rows are taken, where a file holds several.
    pub station: Option<String>,
    /// What the stamps mean.
    pub stamps: Option<Stamps>,
    /// Hours that the stamps are ahead of UTC.
    pub utc_offset_h: Option<f64>,
    /// Metres above sea level.
    pub elevation_m: Option<f64>,
    /// One pressure for all rows, Pa, instead of the file's.
    pub pressure_pa: Option<f64>,
    /// Over what the dew points below 0 °C are meant.
    pub dew_point_over: Option<Over>,
    /// Over what the relative humidities below 0 °C are meant.
    pub relative_over: Option<Over>,
    /// Whether the dew point leads where a row has both it and relative humidity.
    pub dew_point_leads: Option<bool>,
}

impl Understanding {
    /// What is said here, and where nothing is, what is said there.
    ///
    /// ```
    /// use dewrun_weather::{Stamps, Understanding};
    /// let here = Understanding { elevation_m: Some(1829.0), ..Understanding::default() };
    /// let there = Understanding { elevation_m: Some(0.0), stamps: Some(Stamps::End), ..Understanding::default() };
    /// let both = here.or(&there);
    /// assert_eq!((both.elevation_m, both.stamps), (Some(1829.0), Some(Stamps::End)));
    /// ```
    #[must_use]
    pub fn or(&self, there: &Self) -> Self {
        let named = |column: &&ColumnChoice| {
            let mut own = self.columns.iter();
            !own.any(|choice| choice.column == column.column)
        };
        let others = there.columns.iter().filter(named);
        Self {
            form: self.form.or(there.form),
            encoding: self.encoding.or(there.encoding),
            delimiter: self.delimiter.or(there.delimiter),
            decimal_mark: self.decimal_mark.or(there.decimal_mark),
            first_reading: self.first_reading.or(there.first_reading),
            date_order: self.date_order.or(there.date_order),
            columns: self.columns.iter().chain(others).copied().collect(),
            station: self.station.clone().or_else(|| there.station.clone()),
            stamps: self.stamps.or(there.stamps),
            utc_offset_h: self.utc_offset_h.or(there.utc_offset_h),
            elevation_m: self.elevation_m.or(there.elevation_m),
            pressure_pa: self.pressure_pa.or(there.pressure_pa),
            dew_point_over: self.dew_point_over.or(there.dew_point_over),
            relative_over: self.relative_over.or(there.relative_over),
            dew_point_leads: self.dew_point_leads.or(there.dew_point_leads),
        }
    }
}
