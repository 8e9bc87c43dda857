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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Reader, Understanding};
    use std::fmt::Write as _;

    /// A year of hours whose dew point rises by 0.003 K an hour from 0 °C, the air 10 K above it, read as a file.
    fn rising(hours: i64) -> Series {
        let mut text = "time,temperature (C),dew point (C)\n".to_owned();
        for hour in 0..hours {
            let stamp = crate::Civil::of((11_323 * 24 + hour) * 3600).expect("a date");
            let thousandths = 3 * hour;
            let (whole, rest) = (thousandths / 1000, thousandths % 1000);
            writeln!(text, "{stamp},{}.{rest:03},{whole}.{rest:03}", whole + 10)
                .expect("a text grows");
        }
        let mut reader = Reader::new(Understanding::default());
        reader.push(text.as_bytes()).expect("a table");
        reader.finish().expect("a table").series
    }

    /// By hand: 0.4 % of 8760 is 35.04, so the 36th largest, number 8724 from 0: 26.172 °C; within 0.5 K of it lie numbers
    /// 8558 to 8759, whose middle is 8658.5 x 0.003 + 10 = 35.9755 °C. 1 %: 88th largest, 8672, 26.016 °C, numbers 8506 to
    /// 8759, 35.8975 °C. 2 %: 176th, 8584, 25.752 °C, 8418 to 8750, 35.752 °C. 99.6 %: 8725th largest, number 35, 10.105 °C;
    /// 99 %: 8673rd, number 87, 10.261 °C.
    #[test]
    fn ranks_and_coincident_means_by_hand() {
        let design = design_conditions(&rising(8760)).expect("a year");
        let near = |got: Temperature, expected: f64| (got.to_celsius() - expected).abs() < 1.0e-9;
        for (humid, (point_c, dry_c)) in
            design
                .humid
                .iter()
                .zip([(26.172, 35.9755), (26.016, 35.8975), (25.752, 35.752)])
        {
            assert!(near(humid.dew_point, point_c), "{humid:?}, {point_c} °C");
            assert!(
                near(humid.mean_coincident_dry_bulb, dry_c),
                "{humid:?}, {dry_c} °C"
            );
        }
        for (cold, dry_c) in design.cold.iter().zip([10.105, 10.261]) {
            assert!(near(cold.dry_bulb, dry_c), "{cold:?}, {dry_c} °C");
        }
    }

    #[test]
    fn less_than_a_year_has_none() {
        assert_eq!(design_conditions(&rising(8000)), None, "91 % of a year");
    }
}
