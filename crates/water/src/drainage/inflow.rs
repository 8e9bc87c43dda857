//! Water that comes in at rates which only rise with time, as walls and puddles upstream fill up.

use dewrun_quantity::{Mass, MassFlow, Time};

/// From a moment on so much more a second.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Step {
    start_s: f64,
    rate_kg_s: f64,
}

/// What comes in under steady conditions: nothing until the way there is wet, then more and more, then evenly.
///
/// Its amount over time is convex and made of straight lines, so that every time to a given amount is exact.
///
/// ```
/// use dewrun_quantity::{Mass, MassFlow, Time};
/// use dewrun_water::drainage::Inflow;
/// // 10 g/h of which the first 20 g stay on the wall: 30 g have come through after 5 h.
/// let inflow = Inflow::steady(MassFlow::grams_per_hour(10.0)).beyond(Mass::grams(20.0));
/// assert!((inflow.amount(Time::hours(5.0)).to_grams() - 30.0).abs() < 1e-9);
/// assert!((inflow.time_for(Mass::grams(30.0)).unwrap().to_hours() - 5.0).abs() < 1e-9);
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Inflow {
    /// In the order of their start.
    steps: Vec<Step>,
}

impl Inflow {
    /// The same from the start on; nothing for a rate of zero or less.
    #[must_use]
    pub fn steady(rate: MassFlow) -> Self {
        let mut inflow = Self::default();
        inflow.add(0.0, rate.to_kilograms_per_second());
        inflow
    }

    /// What has come in after a time.
    #[must_use]
    pub fn amount(&self, after: Time) -> Mass {
        let t_s = after.to_seconds();
        let of = |step: &Step| step.rate_kg_s * (t_s - step.start_s).max(0.0);
        Mass::kilograms(self.steps.iter().map(of).sum())
    }

    /// What comes in once everything upstream is wet.
    #[must_use]
    pub fn final_rate(&self) -> MassFlow {
        let kg_s = self
            .steps
            .iter()
            .fold(0.0, |sum, step| sum + step.rate_kg_s);
        MassFlow::kilograms_per_second(kg_s)
    }

    /// When so much has come in; none where it never does.
    #[must_use]
    pub fn time_for(&self, amount: Mass) -> Option<Time> {
        let target_kg = amount.to_kilograms();
        if target_kg <= 0.0 {
            return Some(Time::ZERO);
        }
        let (mut rate_kg_s, mut since_s, mut come_kg) = (0.0, 0.0, 0.0);
        for step in &self.steps {
            let by_then_kg = come_kg + rate_kg_s * (step.start_s - since_s);
            if target_kg <= by_then_kg {
                break;
            }
            come_kg = by_then_kg;
            since_s = step.start_s;
            rate_kg_s += step.rate_kg_s;
        }
        let left_s = (target_kg - come_kg) / rate_kg_s;
        left_s.is_finite().then(|| Time::seconds(since_s + left_s))
    }

    /// What goes on once so much has stayed behind.
    #[must_use]
    pub fn beyond(&self, stays: Mass) -> Self {
        let Some(full) = self.time_for(stays) else {
            return Self::default();
        };
        let full_s = full.to_seconds();
        let mut passed = Self::default();
        for step in &self.steps {
            passed.add(step.start_s.max(full_s), step.rate_kg_s);
        }
        passed
    }

    /// What is left where up to so much a second evaporates, and what evaporates.
    #[must_use]
    pub fn less(&self, evaporates: MassFlow) -> (Self, Self) {
        let mut room_kg_s = evaporates.to_kilograms_per_second().max(0.0);
        let (mut left, mut taken) = (Self::default(), Self::default());
        for step in &self.steps {
            let takes = step.rate_kg_s.min(room_kg_s);
            room_kg_s -= takes;
            taken.add(step.start_s, takes);
            left.add(step.start_s, step.rate_kg_s - takes);
        }
        (left, taken)
    }

    /// Both together.
    #[must_use]
    pub fn with(&self, other: &Self) -> Self {
        let mut steps: Vec<Step> = self.steps.iter().chain(&other.steps).copied().collect();
        steps.sort_by(|one, next| one.start_s.total_cmp(&next.start_s));
        let mut both = Self::default();
        for step in steps {
            both.add(step.start_s, step.rate_kg_s);
        }
        both
    }

    /// One more step, which starts no sooner than the last.
    fn add(&mut self, start_s: f64, rate_kg_s: f64) {
        if rate_kg_s.is_nan() || rate_kg_s <= 0.0 {
            return;
        }
        match self.steps.last_mut() {
            Some(last) if last.start_s == start_s => last.rate_kg_s += rate_kg_s,
            _ => self.steps.push(Step { start_s, rate_kg_s }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{Strategy, prop_assert, proptest};

    fn grams_an_hour(rate: f64) -> Inflow {
        Inflow::steady(MassFlow::grams_per_hour(rate))
    }

    /// By hand: two walls hold 10 g each; at 5 and 2 g/h they are wet after 2 and 5 h.
    /// After 8 h 6 · 5 + 3 · 2 = 36 g have run off; 36 g are there after 8 h.
    #[test]
    fn two_walls_wet_one_after_the_other() {
        let wall = |rate| grams_an_hour(rate).beyond(Mass::grams(10.0));
        let both = wall(5.0).with(&wall(2.0));
        let amount = both.amount(Time::hours(8.0)).to_grams();
        assert!((amount - 36.0).abs() < 1e-9, "{amount} g after 8 h");
        let time = both.time_for(Mass::grams(36.0)).map(Time::to_hours);
        assert!(
            time.is_some_and(|hours| (hours - 8.0).abs() < 1e-9),
            "{time:?} h for 36 g"
        );
    }

    #[test]
    fn nothing_never_fills_anything() {
        let none = grams_an_hour(0.0);
        assert_eq!(none.time_for(Mass::grams(1.0)), None, "no water comes");
        assert_eq!(
            none.time_for(Mass::ZERO),
            Some(Time::ZERO),
            "nothing is there at once"
        );
        let dried = grams_an_hour(3.0).less(MassFlow::grams_per_hour(5.0)).0;
        assert_eq!(dried, Inflow::default(), "all of it evaporates");
    }

    fn inflows() -> impl Strategy<Value = Inflow> {
        let wall = (0.0..50.0_f64, 0.0..100.0_f64);
        proptest::collection::vec(wall, 1..5).prop_map(|walls| {
            walls
                .into_iter()
                .map(|(rate, holds)| grams_an_hour(rate).beyond(Mass::grams(holds)))
                .fold(Inflow::default(), |sum, wall| sum.with(&wall))
        })
    }

    proptest! {
        #[test]
        fn what_stays_and_what_goes_on_are_what_came(inflow in inflows(), stays in 0.0..100.0_f64, hours in 0.0..500.0_f64) {
            let (stays, after) = (Mass::grams(stays), Time::hours(hours));
            let came = inflow.amount(after);
            let went = inflow.beyond(stays).amount(after);
            let off = (came - came.min(stays) - went).to_grams().abs();
            prop_assert!(off <= 1e-9 * (1.0 + came.to_grams()), "{came:?} {went:?}");
        }

        #[test]
        fn what_evaporates_and_what_is_left_are_what_came(inflow in inflows(), rate in 0.0..80.0_f64, hours in 0.0..500.0_f64) {
            let after = Time::hours(hours);
            let (left, taken) = inflow.less(MassFlow::grams_per_hour(rate));
            let off = (inflow.amount(after) - left.amount(after) - taken.amount(after)).to_grams().abs();
            prop_assert!(off <= 1e-9 * (1.0 + inflow.amount(after).to_grams()), "{left:?} {taken:?}");
            prop_assert!(taken.final_rate() <= MassFlow::grams_per_hour(rate * (1.0 + 1e-12)), "{taken:?}");
        }

        #[test]
        fn time_and_amount_are_inverse(inflow in inflows(), amount in 1e-3..1e4_f64) {
            if let Some(time) = inflow.time_for(Mass::grams(amount)) {
                let back = inflow.amount(time).to_grams();
                prop_assert!((back - amount).abs() <= 1e-9 * amount, "{back} of {amount}");
            }
        }
    }
}
