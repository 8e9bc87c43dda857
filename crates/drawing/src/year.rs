//! The section Year: the wet calendar, traps and airflow under it on the same axis, the months, one hour, its hours in the dew square, and all of it in a sentence.

mod axis;
mod calendar;
mod grid;
mod hand;
mod hour;
mod hours_of_day;
mod key;
mod lanes;
mod map;
mod months;
mod opened;
mod sentence;
mod shown;
mod square;
pub(crate) mod stamp;
mod stretch;
mod totals;
pub(crate) mod written;

use core::ops::Range;

use dewrun_quantity::Style;

use crate::wording;

pub use calendar::{charts, scene as calendar_scene};
pub use hand::{cell_time, hand};
pub use hour::hour;
pub use map::Map;
pub use months::months;
pub use opened::{Inputs, opened};
pub use sentence::{plain as plain_sentence, sentence};
pub use shown::year_shown;
pub use square::{square, square_told};

/// A step of the year, an hour as a rule.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Step {
    /// Its start on the clock of the weather file, s since 1 January 1970; rising.
    pub start_s: i64,
    /// Its length, s.
    pub seconds: f64,
    /// The duct's air, °C.
    pub air_c: f64,
    /// Its dew point, °C.
    pub dew_point_c: f64,
    /// What formed on the walls in it, g.
    pub formed_g: f64,
    /// It counts as wet.
    pub is_wet: bool,
    /// Suspended water at the sensor, kg per kg of dry air.
    pub mist: f64,
    /// It counts as misty.
    pub is_misty: bool,
    /// Ice on the walls at its end, g.
    pub ice_g: f64,
    /// Relative humidity in the chamber, 0 to 1.
    pub chamber: f64,
    /// That is above the device's rating.
    pub is_over: bool,
    /// How much warmer the coldest wall is than the duct's dew point, K.
    pub margin_k: f64,
    /// Share of it in which the detector does not sample the duct.
    pub blind: f64,
    /// Share of it in which a low point is closed by water or ice.
    pub closed: f64,
    /// Share of it in which the airflow is beyond a limit.
    pub beyond: f64,
}

/// A trap or a low point through the year.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Standing {
    /// What it is, such as "trap".
    pub what: &'static str,
    /// Where along its tube, m.
    pub at_m: f64,
    /// It is in the exhaust tube.
    pub is_exhaust: bool,
    /// From how much on it is full, or closes the bore, L, and the word for that; none where that is not known.
    pub full: Option<(f64, &'static str)>,
    /// What stands in it at the end of each step, L.
    pub level_l: Vec<f64>,
    /// The steps at whose start it is emptied, rising.
    pub emptied: Vec<usize>,
}

/// The airflow through the year.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Flow {
    /// The reading of each step, % of that as fitted.
    pub percent: Vec<f64>,
    /// Low and high limit, %.
    pub limits: Option<[f64; 2]>,
}

/// What the section shows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Year {
    /// The steps.
    pub steps: Vec<Step>,
    /// The file knows of no one year.
    pub is_typical: bool,
    /// The highest relative humidity that the device bears, %; none where that is not known.
    pub rating_percent: Option<f64>,
    /// Hours in which no wall is colder than the duct's dew point, whatever the tube is like.
    pub by_bound_h: f64,
    /// The first week in which water becomes a trouble, and which.
    pub first_critical: Option<(Range<usize>, &'static str)>,
    /// The water that stands was followed: it is known whether the detector samples the duct.
    pub follows_water: bool,
    /// Traps and low points.
    pub standing: Vec<Standing>,
    /// The airflow, where it was followed.
    pub flow: Option<Flow>,
    /// How numbers are shown.
    pub style: Style,
}

/// What a trap is called.
pub const TRAP: &str = "trap";

impl Standing {
    /// What it is and where, such as "trap at 5.2 m".
    fn name(&self, style: Style) -> String {
        let place = wording::metres(self.at_m, style);
        let of = if self.is_exhaust {
            " of the exhaust"
        } else {
            ""
        };
        format!("{} at {place}{of}", self.what)
    }
}

#[cfg(test)]
mod tests;
