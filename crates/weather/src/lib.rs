//! Weather and logger files: bytes in pieces in, rows of air in time out, with everything that was decided on the way.
//!
//! Nothing is opened here and nothing is silently mended: each decision is a [`Note`] with line numbers, and [`Understanding`] takes another one.
//!
//! ```
//! use dewrun_weather::{Reader, Understanding};
//! let mut reader = Reader::new(Understanding::default());
//! reader.push("Datum;Uhrzeit;Temperatur [°C];Feuchte [%]\n13.03.2025;00:00;8,0;95\n13.03.2025;01:00;8,7;94,5\n".as_bytes())?;
//! let weather = reader.finish()?;
//! assert_eq!(weather.series.first().unwrap().to_string(), "2025-03-13T00:00");
//! assert!((weather.series.dew_point_c[0] - 7.25).abs() < 0.01); // psychrolib 2.5, 8 °C and 95 %
//! # Ok::<(), dewrun_weather::WeatherError>(())
//! ```

mod column;
mod dated_rows;
mod design;
mod error;
mod form;
mod instant;
mod note;
mod number;
mod place;
mod raw;
mod reader;
mod series;
mod settle;
mod statistics;
mod text;
mod understanding;
mod weather;

pub use column::{Role, Unit};
pub use dated_rows::{DatedRow, DatedRows, dated_rows};
pub use design::{ColdDesign, DesignConditions, HumidDesign, design_conditions};
pub use error::WeatherError;
pub use instant::{Civil, DateOrder, MONTH_NAMES};
pub use note::{Note, Topic};
pub use place::Place;
pub use reader::Reader;
pub use series::{Gap, Series, Timing};
pub use statistics::{Range, exceeded_by};
pub use text::cells::Delimiter;
pub use text::encoding::Encoding;
pub use understanding::{ColumnChoice, Form, Stamps, Understanding};
pub use weather::{Convention, PressureSource, Weather, sha256_of};
