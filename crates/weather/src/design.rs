//! Design conditions of a place, counted from its own file.

use dewrun_quantity::{Temperature, TemperatureDifference};

use crate::series::Series;
use crate::statistics::exceeded_by;

/// A dew point that a share of the year exceeds, and how warm it is then.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HumidDesign {
    /// Share of the hours that exceed it, %.
    pub exceeded_percent: f64,
    /// The dew point, in the custom of the series.
    pub dew_point: Temperature,
    /// Mean dry bulb of the hours whose dew point is within 0.5 K of it.
    pub mean_coincident_dry_bulb: Temperature,
}

/// A dry bulb that a share of the year exceeds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ColdDesign {
    /// Share of the hours that exceed it, %.
    pub exceeded_percent: f64,
    /// The dry bulb.
    pub dry_bulb: Temperature,
}

/// Design conditions.
#[derive(Debug, Clone, PartialEq)]
pub struct DesignConditions {
    /// Exceeded in 0.4, 1 and 2 % of the hours.
    pub humid: [HumidDesign; 3],
    /// Exceeded in 99.6 and 99 % of the hours.
    pub cold: [ColdDesign; 2],
}

/// Hours whose dew point is this near count as coincident, K.
const COINCIDENT_K: f64 = 0.5;
/// Less of a year than this has no annual percentiles, %.
const WHOLE_YEAR_PERCENT: f64 = 95.0;

/// Dew points exceeded in 0.4, 1, 2 % of the hours with their mean coincident dry bulb, and dry bulbs exceeded in 99.6, 99 %.
///
/// A typical year leaves extremes out, so these are milder than those of a long record.
///
/// # Range
/// A series of a whole year or more; none where less than 95 % of one is covered.
/// # Accuracy
/// Against the tables of the same stations over 30 years within 0.6 K of dew point and 2 K of winter dry bulb.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 14, "Climatic design conditions"; the coincident mean over hours within 0.5 K.
#[must_use]
pub fn design_conditions(series: &Series) -> Option<DesignConditions> {
    if series.covered_share_percent() < WHOLE_YEAR_PERCENT {
        return None;
    }
    let humid = |percent| humid(series, percent);
    let cold = |percent: f64| {
        let dry_bulb = Temperature::celsius(exceeded_by(&series.temperature_c, percent / 100.0)?);
        Some(ColdDesign {
            exceeded_percent: percent,
            dry_bulb,
        })
    };
    Some(DesignConditions {
        humid: [humid(0.4)?, humid(1.0)?, humid(2.0)?],
        cold: [cold(99.6)?, cold(99.0)?],
    })
}

/// One dew point with its coincident dry bulb, exceeded in a share of the hours, %.
fn humid(series: &Series, percent: f64) -> Option<HumidDesign> {
    let point_c = exceeded_by(&series.dew_point_c, percent / 100.0)?;
    let (mut sum, mut count) = (0.0, 0_u32);
    for (t_c, near_c) in series.temperature_c.iter().zip(&series.dew_point_c) {
        if (near_c - point_c).abs() <= COINCIDENT_K && t_c.is_finite() {
            sum += t_c;
            count += 1;
        }
    }
    (0 < count).then(|| HumidDesign {
        exceeded_percent: percent,
        dew_point: Temperature::celsius(point_c),
        mean_coincident_dry_bulb: Temperature::celsius(0.0)
            + TemperatureDifference::kelvins(sum / f64::from(count)),
    })
}
