//! What the calendar shows of each hour, and in which classes.

use dewrun_quantity::format;

use super::{Step, Year};

/// What the calendar shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Map {
    /// Water that forms.
    #[default]
    Water,
    /// Suspended water at the sensor.
    Mist,
    /// Ice on the walls.
    Frost,
    /// Relative humidity in the chamber.
    Chamber,
    /// How far the coldest wall is above the dew point.
    Margin,
}

/// Five classes: from which value on each begins, and how the ends are written under them.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Classes {
    pub(super) from: [f64; 5],
    pub(super) ends: [String; 5],
    /// No hour is in any of them.
    pub(super) is_empty: bool,
}

impl Map {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 5] = [
        Self::Water,
        Self::Mist,
        Self::Frost,
        Self::Chamber,
        Self::Margin,
    ];

    /// The word that is pressed.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Water => "water",
            Self::Mist => "mist",
            Self::Frost => "frost",
            Self::Chamber => "chamber humidity",
            Self::Margin => "margin",
        }
    }

    /// What it is called over its classes.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Water => "Water formed",
            Self::Mist => "Mist at the sensor",
            Self::Frost => "Ice on the walls",
            Self::Chamber => "Chamber humidity",
            Self::Margin => "Margin",
        }
    }

    /// In what.
    pub(super) const fn unit(self) -> &'static str {
        match self {
            Self::Water => "in each hour, g/h",
            Self::Mist => "g per kg of air",
            Self::Frost => "g",
            Self::Chamber => "%",
            Self::Margin => "wall over dew point, K",
        }
    }

    /// The value of a step, of which more is worse; none where it is not drawn.
    pub(super) fn value(self, step: &Step) -> Option<f64> {
        let (is_drawn, value) = match self {
            Self::Water => (step.is_wet, 3600.0 * step.formed_g / step.seconds),
            Self::Mist => (step.is_misty, 1000.0 * step.mist),
            Self::Frost => (0.0 < step.ice_g, step.ice_g),
            Self::Chamber => (true, 100.0 * step.chamber),
            Self::Margin => (true, -step.margin_k),
        };
        (is_drawn && value.is_finite()).then_some(value)
    }

    /// Its classes in a year.
    pub(super) fn classes(self, year: &Year) -> Classes {
        let mark = year.style.mark;
        let plain = |ends: [&str; 5]| ends.map(str::to_owned);
        match self {
            Self::Chamber => Classes {
                from: [50.0, 60.0, 70.0, 80.0, 90.0],
                ends: plain(["50", "60", "70", "80", "90"]),
                is_empty: false,
            },
            Self::Margin => Classes {
                from: [-5.0, -3.0, -2.0, -1.0, 0.0],
                ends: plain(["5", "3", "2", "1", "0"]),
                is_empty: false,
            },
            _ => {
                let values = year.steps.iter().filter_map(|step| self.value(step));
                let most = values.fold(0.0, f64::max);
                let step = round(most / 5.0);
                let from = [0.0, 1.0, 2.0, 3.0, 4.0].map(|count| count * step);
                let decimals = [1.0, 0.1, 0.01]
                    .iter()
                    .filter(|finer| step < **finer)
                    .count();
                let mut ends = from.map(|value| format::fixed(value, decimals, mark));
                ends[0] = "0".to_owned();
                ends[4].push('+');
                Classes {
                    from,
                    ends,
                    is_empty: most <= 0.0,
                }
            }
        }
    }
}

impl Classes {
    /// The class of a value, 0 to 4; none where it is below them all.
    pub(super) fn class(&self, value: f64) -> Option<usize> {
        self.from.iter().rposition(|from| *from <= value)
    }
}

/// The next of 1, 2, 3, 4, 5 and 7 times a power of ten.
fn round(value: f64) -> f64 {
    for power in [0.001, 0.01, 0.1, 1.0, 10.0, 100.0, 1000.0] {
        for digit in [1.0, 2.0, 3.0, 4.0, 5.0, 7.0] {
            if value <= digit * power {
                return digit * power;
            }
        }
    }
    10_000.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn classes_follow_the_most_that_forms() {
        let step = |grams: f64| Step {
            seconds: 3600.0,
            formed_g: grams,
            is_wet: true,
            ..Step::default()
        };
        let year = Year {
            steps: vec![step(0.5), step(13.9)],
            ..Year::default()
        };
        let classes = Map::Water.classes(&year);
        assert_eq!(classes.ends, ["0", "3", "6", "9", "12+"], "in threes");
        let class = |grams| classes.class(grams);
        assert_eq!(
            [0.5, 2.9, 3.0, 11.9, 13.9].map(class),
            [Some(0), Some(0), Some(1), Some(3), Some(4)],
            "each in its class"
        );
    }

    /// A year without any has no classes to tell apart, and a little is told with as many places as its steps have.
    #[test]
    fn none_and_little_are_told() {
        let year = |grams: &[f64]| Year {
            steps: (grams.iter())
                .map(|grams| Step {
                    seconds: 3600.0,
                    ice_g: *grams,
                    ..Step::default()
                })
                .collect(),
            ..Year::default()
        };
        assert!(Map::Frost.classes(&year(&[0.0, 0.0])).is_empty, "none");
        let little = Map::Frost.classes(&year(&[0.0, 0.009]));
        assert!(!little.is_empty, "little");
        assert_eq!(
            little.ends,
            ["0", "0.002", "0.004", "0.006", "0.008+"],
            "in steps of 2 mg"
        );
    }

    #[test]
    fn a_small_margin_is_the_worst_class() {
        let step = |margin_k| Step {
            margin_k,
            ..Step::default()
        };
        let classes = Map::Margin.classes(&Year::default());
        let of = |margin| {
            Map::Margin
                .value(&step(margin))
                .map(|one| classes.class(one))
        };
        assert_eq!(of(7.0), Some(None), "far from wet");
        assert_eq!(of(4.0), Some(Some(0)), "near");
        assert_eq!(of(-2.0), Some(Some(4)), "wet");
    }
}
