//! Design states of the air outdoors, counted from a weather file, and the weather that they stand for.

use dewrun_duct_air::FogAir;
use dewrun_duct_air::schedule::Moment;
use dewrun_duct_air::space::Outdoors;
use dewrun_moist_air::fast::{dew_point_of_c, plain_fraction_over_water};
use dewrun_moist_air::fog::saturation;
use dewrun_moist_air::mixture::{humidity_ratio, mole_fraction};
use dewrun_weather::{Series, design_conditions};

use crate::outdoors::{moment, outdoors};

/// Hours this near count as those of a design state, K.
const COINCIDENT_K: f64 = 0.5;
/// Design states hold at noon.
const NOON: u8 = 12;

/// What a design state is ranked by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DesignBy {
    /// The dew point.
    DewPoint,
    /// The temperature.
    Temperature,
}

/// A state of the air outdoors that a share of the hours exceeds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DesignState {
    /// What it is ranked by; the other value is the mean of its hours.
    pub by: DesignBy,
    /// Share of the hours that exceed it, %.
    pub exceeded_percent: f64,
    /// Temperature, °C.
    pub t_c: f64,
    /// Dew point, over water also below freezing, °C.
    pub dew_point_c: f64,
    /// Month that has most of its hours, 1 to 12.
    pub month: u8,
}

/// The design states of a weather file: dew points exceeded in 0.4, 1 and 2 % of the hours, temperatures in 99.6 and 99 %; none where it covers less than a year.
///
/// # Range
/// As [`design_conditions`].
/// # Source
/// As [`design_conditions`]; the mean that comes with a temperature is counted alike.
#[must_use]
pub fn design_states(series: &Series) -> Vec<DesignState> {
    let Some(conditions) = design_conditions(series) else {
        return Vec::new();
    };
    let humid = conditions.humid.iter().map(|humid| {
        let found = (DesignBy::DewPoint, humid.exceeded_percent);
        state(
            series,
            found,
            &series.dew_point_c,
            humid.dew_point.to_celsius(),
        )
    });
    let cold = conditions.cold.iter().map(|cold| {
        let found = (DesignBy::Temperature, cold.exceeded_percent);
        state(
            series,
            found,
            &series.temperature_c,
            cold.dry_bulb.to_celsius(),
        )
    });
    humid.chain(cold).flatten().collect()
}

/// The means of the hours that lie near a value of a column.
fn state(
    series: &Series,
    (by, exceeded_percent): (DesignBy, f64),
    column: &[f64],
    value: f64,
) -> Option<DesignState> {
    let (mut t_c, mut dew_point_c, mut count) = (0.0, 0.0, 0.0);
    let mut months = [0_u32; 13];
    for (row, near) in column.iter().enumerate() {
        if COINCIDENT_K < (near - value).abs() {
            continue;
        }
        let Some((air, month)) = air_of(series, row) else {
            continue;
        };
        let Some(point_c) = dew_point_of_c(mole_fraction(air.air.w), air.p_pa) else {
            continue;
        };
        t_c += air.air.t_c;
        dew_point_c += point_c;
        count += 1.0;
        if let Some(hours) = months.get_mut(usize::from(month)) {
            *hours += 1;
        }
    }
    if count < 1.0 {
        return None;
    }
    let most = (1_u8..=12).max_by_key(|month| months.get(usize::from(*month)).copied())?;
    let (t_c, dew_point_c) = (t_c / count, dew_point_c / count);
    Some(DesignState {
        by,
        exceeded_percent,
        t_c: if by == DesignBy::Temperature {
            value
        } else {
            t_c
        },
        dew_point_c: if by == DesignBy::DewPoint && 0.0 <= value {
            value
        } else {
            dew_point_c
        },
        month: most,
    })
}

fn air_of(series: &Series, row: usize) -> Option<(Outdoors, u8)> {
    let month = moment(*series.start_s.get(row)?)?.month;
    Some((outdoors(series, row)?, month))
}

impl DesignState {
    /// The weather that it stands for: still air at noon of a Monday in its month, without sun, the sky as warm as the air.
    ///
    /// # Range
    /// Air from -60 to 95 °C.
    #[must_use]
    pub fn outdoors(&self, p_pa: f64) -> (Moment, Outdoors) {
        let vapour = plain_fraction_over_water(self.dew_point_c, p_pa, p_pa.recip()).0;
        let air = FogAir {
            t_c: self.t_c,
            w: humidity_ratio(vapour).min(saturation(self.t_c, p_pa).0),
            mist: 0.0,
        };
        let noon = Moment {
            month: self.month,
            weekday: 0,
            hour: NOON,
        };
        let outdoors = Outdoors {
            air,
            p_pa,
            wind_m_s: 0.0,
            sky_c: None,
            sun_w_m2: 0.0,
        };
        (noon, outdoors)
    }
}
