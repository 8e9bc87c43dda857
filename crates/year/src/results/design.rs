//! The design hours of a route: those ranked by its own condensate, since dew point alone does not tell what a cold loft makes of it.

use crate::sums::HourSum;

/// Shares of the hours that are wetter than a design hour.
const RANKS: [f64; 3] = [0.004, 0.01, 0.02];

/// A design hour of a route.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RouteDesign {
    /// Share of the hours in which more deposits.
    pub rank: f64,
    /// The hour.
    pub hour: usize,
    /// What deposits in it, kg an hour.
    pub condensed_kg_h: f64,
}

/// The hours at which 0.4, 1 and 2 % of all hours deposit more; none where there are no hours.
///
/// # Source
/// The ranks are those of the ASHRAE Handbook Fundamentals 2017, ch. 14, for climates; here they rank joint weather by what this route makes of it.
#[must_use]
pub fn route_design(sums: &[HourSum]) -> Vec<RouteDesign> {
    let rate = |hour: &HourSum| hour.condensed_kg * 3600.0 / hour.seconds;
    let mut ranked: Vec<(f64, usize)> = sums
        .iter()
        .enumerate()
        .map(|(at, hour)| (rate(hour), at))
        .collect();
    // Of equal hours the earlier one comes first.
    ranked.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    let design = |rank: f64| {
        let &(condensed_kg_h, hour) = ranked.get(place(rank, ranked.len()))?;
        Some(RouteDesign {
            rank,
            hour,
            condensed_kg_h,
        })
    };
    RANKS.into_iter().filter_map(design).collect()
}

/// So many hours are wetter.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a share of a number of hours"
)]
fn place(rank: f64, count: usize) -> usize {
    (rank * count as f64) as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 1000 hours with 0, 1, .. 999 g: four are wetter than the 0.4 % hour, which has 995 g.
    #[test]
    fn ranks_count_the_wetter_hours() {
        let hours: Vec<HourSum> = (0..1000)
            .map(|grams| HourSum {
                seconds: 3600.0,
                condensed_kg: 1e-3 * f64::from(grams),
                ..HourSum::NONE
            })
            .collect();
        let found: Vec<usize> = route_design(&hours)
            .iter()
            .map(|design| design.hour)
            .collect();
        assert_eq!(found, [995, 989, 979], "0.4, 1 and 2 %");
    }
}
