//! A member as numbers, to be carried from where its year was marched to where all members are told; its hours travel as bytes beside them, where they are wanted.

use crate::hours::Kept;
use crate::measured::OnSiteTold;
use crate::member::Member;
use crate::plan::Plan;
use crate::quantity::{Quantity, Totals};

impl Member {
    /// What of it is told, as numbers, for [`Member::carried`].
    #[must_use]
    pub fn as_numbers(&self) -> Vec<f64> {
        let or_none = |value: Option<f64>| value.unwrap_or(f64::NAN);
        let mut numbers: Vec<f64> = Quantity::ALL
            .into_iter()
            .map(|quantity| or_none(self.totals.get(quantity)))
            .collect();
        for along in &self.wet_along {
            numbers.push(count(along.len()));
            numbers.extend(along.iter().map(|is_wet| f64::from(u8::from(*is_wet))));
        }
        let site = &self.on_site;
        let has_trap = f64::from(u8::from(site.has_trap));
        numbers.extend([
            site.airflow_l_min,
            or_none(site.first_s),
            or_none(site.ninety_s),
            has_trap,
        ]);
        numbers.push(count(site.suction.len()));
        numbers.extend(site.suction.iter().flat_map(|(at, pa)| [*at, *pa]));
        numbers.push(count(site.trapped.len()));
        for (day, grams) in &site.trapped {
            // Days since 1970 are small whole numbers.
            numbers.extend([i32::try_from(*day).map_or(f64::NAN, f64::from), *grams]);
        }
        numbers
    }

    /// The member of a plan that numbers tell, by its number; none is the one with all values as they stand. Nothing where they tell no member.
    ///
    /// It has no hours: these are carried by [`Kept::carried`].
    #[must_use]
    pub fn carried(plan: &Plan, number: Option<u32>, numbers: &[f64]) -> Option<Self> {
        let mut rest = Rest(numbers);
        let totals = Quantity::ALL.map(|_| rest.number());
        let totals = totals.map(|value| value.filter(|value| !value.is_nan()));
        let wet_along = [rest.flags()?, rest.flags()?];
        let on_site = OnSiteTold {
            airflow_l_min: rest.number()?,
            first_s: rest.number().filter(|value| !value.is_nan()),
            ninety_s: rest.number().filter(|value| !value.is_nan()),
            has_trap: rest.number()? != 0.0,
            suction: rest.pairs()?,
            trapped: rest.days()?,
        };
        let (point, values) = match number {
            Some(number) => (plan.point(number), plan.values(number)),
            None => (
                vec![0.5; plan.spans().len()],
                plan.spans().iter().map(|span| span.usual).collect(),
            ),
        };
        rest.0.is_empty().then_some(Self {
            point,
            values,
            totals: Totals::from_values(totals),
            wet_along,
            hours: Kept {
                rows_each: 1,
                hours: Vec::new(),
            },
            on_site,
        })
    }
}

fn count(length: usize) -> f64 {
    u32::try_from(length).map_or(f64::INFINITY, f64::from)
}

/// Numbers that are not read yet.
struct Rest<'a>(&'a [f64]);

impl Rest<'_> {
    fn number(&mut self) -> Option<f64> {
        let (first, rest) = self.0.split_first()?;
        self.0 = rest;
        Some(*first)
    }

    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "held to what is there"
    )]
    fn count(&mut self) -> Option<usize> {
        let count = self.number()?;
        let is_count = 0.0 <= count && count <= f64::from(u32::MAX) && count.floor() == count;
        is_count
            .then_some(count as usize)
            .filter(|count| *count <= self.0.len())
    }

    fn flags(&mut self) -> Option<Vec<bool>> {
        let count = self.count()?;
        (0..count).map(|_| Some(self.number()? != 0.0)).collect()
    }

    fn pairs(&mut self) -> Option<Vec<(f64, f64)>> {
        let count = self.count()?;
        (0..count)
            .map(|_| Some((self.number()?, self.number()?)))
            .collect()
    }

    #[expect(clippy::cast_possible_truncation, reason = "the cast saturates")]
    fn days(&mut self) -> Option<Vec<(i64, f64)>> {
        let pairs = self.pairs()?.into_iter();
        pairs
            .map(|(day, grams)| day.is_finite().then_some((day as i64, grams)))
            .collect()
    }
}
