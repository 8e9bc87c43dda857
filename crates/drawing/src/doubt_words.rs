//! The doubt of a year in a few sentences.

use dewrun_advice::Spread;
use dewrun_ensemble::{
    EnsembleTold, Measured, MeasurementTold, Member, Plan, Quantity, Reweighted, SpanShare, Varied,
};
use dewrun_quantity::format::{amount, fixed};
use dewrun_quantity::{Style, Units};

use crate::answer::assumed_name;

/// A US fluid ounce holds so much water, kg, at 4 °C: 29.573 529 562 5 mL.
const OUNCE_KG: f64 = 0.029_573_529_562_5;

/// What the sentences are made of.
#[derive(Debug, Clone, Copy)]
pub struct DoubtWords<'a> {
    /// What varies.
    pub plan: &'a Plan,
    /// What the spaces are called.
    pub spaces: &'a [String],
    /// Where the weather is from, or its file.
    pub place: &'a str,
    /// The year with all values as they stand.
    pub usual: &'a Member,
    /// Of all members alike.
    pub told: &'a EnsembleTold,
    /// What readings make of it.
    pub measured: Option<(&'a Reweighted, &'a EnsembleTold)>,
    /// How numbers are shown.
    pub style: Style,
}

impl DoubtWords<'_> {
    /// All of them, the gravest first.
    #[must_use]
    pub fn sentences(&self) -> Vec<String> {
        let mut told = Vec::new();
        if let Some(blind) = self.told.blind.filter(|share| 0.0 < *share) {
            let hours = self.hours(self.told, Quantity::BlindHours);
            told.push(format!(
                "This detector may not be sampling the duct in {}: {hours} of the year.",
                cases(blind)
            ));
        }
        told.push(self.water());
        for (quantity, what) in [
            (Quantity::MistHours, "Mist reaches the sensor in"),
            (Quantity::FrostHours, "Ice lies on a wall in"),
        ] {
            let spread = self.told.of(quantity).map(|one| one.spread);
            if spread.is_some_and(|spread| 0.0 < spread.p90) {
                told.push(format!("{what} {}.", self.hours(self.told, quantity)));
            }
        }
        told.push(self.rests());
        told.push(self.settled());
        told.extend(self.after_readings());
        told
    }

    fn water(&self) -> String {
        let place = self.place;
        let wet = cases(self.told.wet);
        let found = match self.told.of(Quantity::Water) {
            Some(water) if 0.0 < water.spread.p90 => format!(
                "{} of water form in a year ({} as entered)",
                self.litres(&water.spread),
                self.litre(self.usual.totals.get(Quantity::Water).unwrap_or(0.0))
            ),
            _ => "hardly any water forms".to_owned(),
        };
        format!("In the weather of {place} {wet} are wet in some hour: {found}.")
    }

    /// The assumed values that decide.
    fn rests(&self) -> String {
        let deciding = self.told.deciding(self.plan);
        if self
            .told
            .that_matters()
            .is_some_and(|one| one.shares.is_empty())
        {
            return "So few cases don't tell what decides.".to_owned();
        }
        if deciding.is_empty() {
            return "No assumed value alone makes a tenth of the spread.".to_owned();
        }
        let name = |one: &SpanShare| {
            let percent = fixed(100.0 * one.share, 0, self.style.mark);
            Some(format!("{} ({percent} %)", self.name(one.span)?))
        };
        let names: Vec<String> = deciding.iter().filter_map(name).collect();
        format!(
            "What is assumed and decides most of the spread: {}.",
            names.join(", ")
        )
    }

    /// How far the spread has settled.
    fn settled(&self) -> String {
        let members = self.told.members;
        let by = format!("By model, with doubt: {members} plausible cases");
        match self.told.that_matters().and_then(|one| one.moved) {
            Some(moved) => format!(
                "{by}; from half of them to all the ends of the span moved by {} % of its width.",
                fixed(100.0 * moved, 0, self.style.mark)
            ),
            None => format!("{by}, all alike."),
        }
    }

    fn after_readings(&self) -> Vec<String> {
        let Some((by, after)) = self.measured else {
            return Vec::new();
        };
        let mut told: Vec<String> = by
            .readings
            .iter()
            .filter_map(|reading| self.left_out(reading))
            .collect();
        if by.readings.iter().all(is_left_out) {
            return told;
        }
        let water = after.of(Quantity::Water);
        told.push(format!(
            "With what was measured {} are wet, and {} of water form in a year; what is left is worth {} cases.",
            cases(after.wet),
            water.map_or_else(String::new, |water| self.litres(&water.spread)),
            fixed(by.worth, 0, self.style.mark)
        ));
        if by.trust < 1.0 {
            told.push(format!(
                "The readings say more than {} cases can tell apart: they count for {} % of what they say.",
                self.told.members,
                fixed(100.0 * by.trust, 0, self.style.mark)
            ));
        }
        told
    }

    fn left_out(&self, reading: &MeasurementTold) -> Option<String> {
        let (what, unit) = reading_name(reading.measurement.what);
        let show = |value| format!("{}\u{a0}{unit}", amount(value, 1, self.style.mark));
        let read = show(reading.measurement.value);
        if let Some(nearest) = reading.contradicts {
            return Some(format!(
                "The {what} read, {read}, contradicts the model: even the nearest of all plausible cases gives {}. Look for what the drawing does not show; the reading is left out.",
                show(nearest)
            ));
        }
        let unknown = reading.before.is_none();
        unknown.then(|| {
            format!(
                "The {what} read, {read}, can't be compared: the run as drawn has no such reading."
            )
        })
    }

    fn name(&self, span: usize) -> Option<String> {
        Some(match &self.plan.spans().get(span)?.varied {
            Varied::Input { figure, places } => {
                assumed_name(self.spaces, *figure, places.first().copied())
            }
            Varied::Season(input) => input.name().to_owned(),
            Varied::Relation(relation) => relation.name().to_owned(),
        })
    }

    fn hours(&self, told: &EnsembleTold, quantity: Quantity) -> String {
        let Some(one) = told.of(quantity) else {
            return String::new();
        };
        let show = |hours| fixed(hours, 0, self.style.mark);
        format!(
            "{} to {}\u{a0}h ({} as entered)",
            show(one.spread.p10),
            show(one.spread.p90),
            show(self.usual.totals.get(quantity).unwrap_or(0.0))
        )
    }

    fn litres(&self, spread: &Spread) -> String {
        let (number, _) = self.volume(spread.p10);
        format!("{number} to {}", self.litre(spread.p90))
    }

    fn litre(&self, kg: f64) -> String {
        let (number, unit) = self.volume(kg);
        format!("{number}\u{a0}{unit}")
    }

    fn volume(&self, kg: f64) -> (String, &'static str) {
        let (value, unit) = match self.style.units {
            Units::Si => (kg, "L"),
            Units::InchPound => (kg / OUNCE_KG, "fl oz"),
        };
        (amount(value, 2, self.style.mark), unit)
    }
}

fn is_left_out(reading: &MeasurementTold) -> bool {
    reading.contradicts.is_some() || reading.before.is_none()
}

/// What a reading is called, and its unit.
const fn reading_name(what: Measured) -> (&'static str, &'static str) {
    match what {
        Measured::Airflow => ("airflow", "L/min"),
        Measured::FirstSmoke => ("time to the first smoke", "s"),
        Measured::NinetyPercent => ("time to nine tenths of the smoke", "s"),
        Measured::Suction { .. } => ("suction", "Pa"),
        Measured::Drained { .. } => ("water let out of traps", "g"),
    }
}

/// A share of all plausible cases, in words; none and all are said only where it is none and all.
fn cases(share: f64) -> String {
    let rounded = (100.0 * share).round();
    let words = if 0.0 < share && rounded < 1.0 {
        "fewer than 1".to_owned()
    } else if share < 1.0 && 99.0 < rounded {
        "more than 99".to_owned()
    } else {
        dewrun_quantity::format::entered(rounded)
    };
    format!("{words} of 100 plausible cases")
}

#[cfg(test)]
mod tests {
    use super::cases;

    #[test]
    fn none_and_all_are_said_only_where_they_are() {
        assert_eq!(cases(0.0), "0 of 100 plausible cases", "none");
        assert_eq!(
            cases(0.001),
            "fewer than 1 of 100 plausible cases",
            "hardly any"
        );
        assert_eq!(
            cases(0.999),
            "more than 99 of 100 plausible cases",
            "nearly all"
        );
        assert_eq!(cases(1.0), "100 of 100 plausible cases", "all");
    }
}
