//! Sample share: how much of the air at the sensor came from the duct.

use dewrun_quantity::MassFlow;

/// Share by mass of the air at the sensor that came from the duct through the holes.
///
/// Arguments: mass flow into the tube through the holes, mass flow into the tube at each leak on the way, negative where air leaves.
/// Air that leaves takes its share with it and changes nothing; where the flow runs towards the holes there is no duct air.
///
/// # Range
/// Well mixed behind each leak.
///
/// # Accuracy
/// Exact.
///
/// # Errors
/// None.
///
/// # Source
/// Balance of mass.
///
/// ```
/// use dewrun_airflow::sample_share;
/// use dewrun_quantity::MassFlow;
/// let grams = MassFlow::grams_per_hour;
/// let share = sample_share(grams(80.0), &[grams(20.0), grams(-50.0)]);
/// assert!((share - 0.8).abs() < 1e-12);
/// assert_eq!(sample_share(grams(-5.0), &[grams(20.0)]), 0.0);
/// ```
#[must_use]
pub fn sample_share(through_holes: MassFlow, leaks: &[MassFlow]) -> f64 {
    let mut mixing = Mixing::of_duct_air(through_holes.to_kilograms_per_second());
    for leak in leaks {
        mixing.take_in(leak.to_kilograms_per_second());
    }
    mixing.share()
}

/// Duct air in a flow that takes in other air on its way.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Mixing {
    flow_kg_s: f64,
    share: f64,
}

impl Mixing {
    pub(crate) const fn of_duct_air(flow_kg_s: f64) -> Self {
        Self {
            flow_kg_s,
            share: 1.0,
        }
    }

    /// A flow in which there is none.
    pub(crate) const fn of_other_air(flow_kg_s: f64) -> Self {
        Self {
            flow_kg_s,
            share: 0.0,
        }
    }

    pub(crate) fn take_in(&mut self, inflow_kg_s: f64) {
        let after = self.flow_kg_s + inflow_kg_s;
        if self.flow_kg_s <= 0.0 {
            self.share = 0.0;
        } else if 0.0 < inflow_kg_s {
            self.share *= self.flow_kg_s / after;
        }
        self.flow_kg_s = after;
    }

    pub(crate) fn share(self) -> f64 {
        if self.flow_kg_s <= 0.0 {
            return 0.0;
        }
        self.share
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(holes: f64, leaks: &[f64], expected: f64) {
        let leaks: Vec<MassFlow> = leaks
            .iter()
            .map(|&leak| MassFlow::grams_per_hour(leak))
            .collect();
        let share = sample_share(MassFlow::grams_per_hour(holes), &leaks);
        assert!(
            (share - expected).abs() < 1e-12,
            "{share}, expected {expected}"
        );
    }

    #[test]
    fn duct_air_is_what_came_through_the_holes() {
        check(100.0, &[], 1.0);
        check(30.0, &[10.0, 20.0], 0.5);
        // 60 in, 30 out, 30 in: half of it is duct air.
        check(60.0, &[-30.0, 30.0], 0.5);
    }

    #[test]
    fn there_is_none_where_the_flow_runs_back() {
        check(-10.0, &[50.0], 0.0);
        check(10.0, &[-20.0, 50.0], 0.0);
        check(10.0, &[-20.0], 0.0);
        check(0.0, &[5.0], 0.0);
    }
}
