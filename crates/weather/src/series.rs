//! Rows of air in time, in SI.

use dewrun_moist_air::fast::SaturationCurve;
use dewrun_moist_air::{Over, humidity, mixture};

use crate::instant::Civil;
use crate::understanding::Stamps;

/// How the rows lie in time.
#[derive(Debug, Clone, PartialEq)]
pub struct Timing {
    /// Usual time from row to row, s.
    pub step_s: i64,
    /// What the stamps in the file mean.
    pub stamps: Stamps,
    /// Hours that the stamps are ahead of UTC, where that is known.
    pub utc_offset_h: Option<f64>,
    /// The months come from different years: the year of a row means nothing.
    pub is_typical_year: bool,
    /// Steps that differ from the usual one.
    pub irregular_steps: u64,
    /// Rows that repeat the time of an earlier one; only the first is kept.
    pub repeated: u64,
    /// Rows that were earlier than the one before them, in the file.
    pub backward: u64,
    /// Longest step, s.
    pub longest_step_s: i64,
    /// Stretches without a usable reading that are longer than a step, between the readings around them.
    pub gaps: Vec<Gap>,
}

/// A stretch without a usable reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Gap {
    /// The last usable reading before it.
    pub from_s: i64,
    /// The next usable one.
    pub to_s: i64,
    /// Line of that one.
    pub line: u32,
}

/// Rows of air; a number that is missing is NaN.
///
/// Times are seconds since 1 January 1970, 00:00, on the file's own clock; of a typical year, in one working year.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// How the rows lie in time.
    pub timing: Timing,
    /// Start of the step that each row stands for, rising.
    pub start_s: Vec<i64>,
    /// Line of each row in the file.
    pub lines: Vec<u32>,
    /// Temperature of the air, °C.
    pub temperature_c: Vec<f64>,
    /// Dew point, °C, below 0 °C over what [`Series::dew_point_over`] says; never above the temperature.
    pub dew_point_c: Vec<f64>,
    /// Relative humidity as it is used, %, at most 100; from the dew point where the file gives none.
    pub relative_percent: Vec<f64>,
    /// Pressure of the air, Pa.
    pub pressure_pa: Vec<f64>,
    /// Over what dew points below 0 °C are meant.
    pub dew_point_over: Over,
    /// Over what relative humidities below 0 °C are meant.
    pub relative_over: Over,
    /// Speed of the wind, m/s.
    pub wind_m_s: Option<Vec<f64>>,
    /// Sun on the level, W/m².
    pub global_w_m2: Option<Vec<f64>>,
    /// Sun on a plane that faces it, W/m².
    pub direct_w_m2: Option<Vec<f64>>,
    /// Sun on the level, from the sky, W/m².
    pub diffuse_w_m2: Option<Vec<f64>>,
    /// Heat radiation of the sky on the level, W/m².
    pub infrared_w_m2: Option<Vec<f64>>,
    /// Rain in the step, mm.
    pub rain_mm: Option<Vec<f64>>,
    /// Share of the sky that is covered, %.
    pub sky_percent: Option<Vec<f64>>,
}

/// The fits of saturation begin here, °C; colder, the relations themselves are asked.
const FITS_FROM_C: f64 = -60.0;

/// Mole fraction of vapour at a dew point, over water or, below 0 °C, over ice.
pub(crate) fn vapour_at_point(point_c: f64, over: Over, p_pa: f64) -> f64 {
    match over {
        Over::Water if point_c < FITS_FROM_C => humidity::saturated_over_water(point_c, p_pa),
        Over::Ice if point_c < FITS_FROM_C => humidity::saturated_over_ice(point_c, p_pa),
        Over::Water => {
            SaturationCurve::at(p_pa)
                .mole_fraction_over_water(point_c)
                .0
        }
        Over::Ice => SaturationCurve::at(p_pa).mole_fraction(point_c).0,
    }
}

impl Series {
    /// How many rows there are.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.start_s.len()
    }

    /// There are none.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.start_s.is_empty()
    }

    /// Hours that one row stands for.
    #[must_use]
    pub fn row_hours(&self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "a step is far below 2^52 s")]
        let step_s = self.timing.step_s as f64;
        step_s / 3600.0
    }

    /// Temperature, humidity and pressure of a row are all known.
    #[must_use]
    pub fn is_usable(&self, row: usize) -> bool {
        [&self.temperature_c, &self.dew_point_c, &self.pressure_pa]
            .iter()
            .all(|column| column.get(row).is_some_and(|value| value.is_finite()))
    }

    /// How many rows are usable.
    #[must_use]
    pub fn usable(&self) -> usize {
        (0..self.len()).filter(|row| self.is_usable(*row)).count()
    }

    /// Humidity ratio of a row, kg/kg; none where it is not usable.
    #[must_use]
    pub fn humidity_ratio(&self, row: usize) -> Option<f64> {
        self.humidity_ratio_at(row, *self.pressure_pa.get(row)?)
    }

    /// The same of air that has the dew point of a row at a pressure of its own, Pa.
    #[must_use]
    pub fn humidity_ratio_at(&self, row: usize, p_pa: f64) -> Option<f64> {
        let point_c = *self.dew_point_c.get(row)?;
        let w = mixture::humidity_ratio(vapour_at_point(point_c, self.dew_point_over, p_pa));
        w.is_finite().then_some(w)
    }

    /// The stamp of a row as the file means it.
    #[must_use]
    pub fn stamp(&self, row: usize) -> Option<Civil> {
        let start = *self.start_s.get(row)?;
        let shift = match self.timing.stamps {
            Stamps::End => self.timing.step_s,
            Stamps::Start | Stamps::Moment => 0,
        };
        Civil::of(start.saturating_add(shift))
    }

    /// The stamp of the first row.
    #[must_use]
    pub fn first(&self) -> Option<Civil> {
        self.stamp(0)
    }

    /// The stamp of the last row.
    #[must_use]
    pub fn last(&self) -> Option<Civil> {
        self.stamp(self.len().checked_sub(1)?)
    }
}
