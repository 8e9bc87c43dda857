//! Design conditions counted from year files.

use serde_json::json;

use super::Files;
use crate::reference::report::Values;

/// Dew points with their coincident dry bulbs, and winter dry bulbs, a list for each file.
pub(in crate::reference) fn design_conditions(files: &[Files]) -> Result<Values, String> {
    let (mut points, mut coincident, mut cold) = (Vec::new(), Vec::new(), Vec::new());
    for file in files {
        let weather = file.first()?;
        let design =
            dewrun_weather::design_conditions(&weather.series).ok_or("less than a year")?;
        points.push(
            design
                .humid
                .map(|humid| humid.dew_point.to_celsius())
                .to_vec(),
        );
        coincident.push(
            design
                .humid
                .map(|humid| humid.mean_coincident_dry_bulb.to_celsius())
                .to_vec(),
        );
        cold.push(design.cold.map(|cold| cold.dry_bulb.to_celsius()).to_vec());
    }
    let values = json!({ "Tdp_0.4_1_2_C": points, "MCDB_C": coincident, "T_99.6_99_C": cold });
    values
        .as_object()
        .cloned()
        .ok_or_else(|| "no values".to_owned())
}
