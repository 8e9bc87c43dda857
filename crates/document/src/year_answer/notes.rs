//! What a year's answer has to say first: the weather is of another height than the project, rows are missing, the file was read as somebody says.

use dewrun_quantity::format::{entered, fixed};
use dewrun_quantity::measure::ABSOLUTE_PRESSURE;
use dewrun_quantity::{DecimalMark, Pressure, Style};
use dewrun_season::YearOutcome;

use crate::YearSaid;

/// Weather moves the pressure of a place by some 3 %, but the mean of its year by less than 1 %: farther apart are heights, 170 m at the least.
const OTHER_HEIGHT: f64 = 0.02;

/// What has to be said of a year before anything is made of it.
pub(super) fn notes(said: &YearSaid, outcome: &YearOutcome) -> Vec<String> {
    let height = mean_pressure_pa(outcome).and_then(|pa| other_height(said.pressure_pa, pa));
    height.into_iter().chain(left_out(outcome)).collect()
}

/// The mean pressure of all hours, Pa.
fn mean_pressure_pa(outcome: &YearOutcome) -> Option<f64> {
    let hours = 0..outcome.hourly.hours.len();
    let hours = hours.filter_map(|at| outcome.hourly.hours.hour(at));
    let (sum, seconds) = hours.fold((0.0, 0.0), |(sum, seconds), hour| {
        (sum + hour.seconds * hour.p_pa, seconds + hour.seconds)
    });
    (0.0 < seconds).then(|| sum / seconds)
}

/// A project for another height than its weather.
fn other_height(project_pa: f64, file_pa: f64) -> Option<String> {
    if (file_pa - project_pa).abs() <= OTHER_HEIGHT * project_pa {
        return None;
    }
    let kpa = |pa: f64| ABSOLUTE_PRESSURE.show(Pressure::pascals(pa), Style::default());
    let side = if file_pa < project_pa { "high" } else { "low" };
    Some(format!(
        "The pressure of the project is {}, that of the weather file {} on average: its station lies too {side} for this site, or the project has another height than the site. \
         The hours are counted at the file's pressure, the steady answer, the airflow as fitted and the design states at the project's. \
         Set the pressure or altitude of the project to that of the site, and take weather from its height; where only the station is elsewhere, give one pressure for all rows when the file is read.",
        kpa(project_pa),
        kpa(file_pa)
    ))
}

/// Rows that could not be counted.
fn left_out(outcome: &YearOutcome) -> Option<String> {
    let rows = u32::try_from(outcome.hourly.left_out).unwrap_or(u32::MAX);
    let hours = fixed(outcome.sum.hours, 0, DecimalMark::Point);
    (0 < rows).then(|| {
        format!(
            "{} rows of the weather file are left out, as something in them is not known: the answer counts {hours}\u{a0}h.",
            entered(f64::from(rows))
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 2533: 101 325 Pa at sea level, 99 507 Pa at 152 m, 81 200 Pa at 1829 m; a deep winter low of 96 kPa is no height, but no mean of a year either.
    #[test]
    fn another_height_is_told_from_weather() {
        assert_eq!(other_height(101_325.0, 99_507.0), None, "some 150 m");
        let high = other_height(101_325.0, 82_137.0).expect("Golden, Colorado");
        assert!(high.contains("too high for this site"), "{high}");
        let low = other_height(81_200.0, 101_708.0).expect("Tampa, for a site at 1829 m");
        assert!(low.contains("too low for this site"), "{low}");
    }
}
