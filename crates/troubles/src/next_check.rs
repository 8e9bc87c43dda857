//! What to look at next: of the checks that a technician can do, the one that settles most of the doubt for its effort.

use dewrun_numeric::elementary::ln;

use crate::cause::Cause;
use crate::comparison::largest_first;
use crate::rank::{Ranked, Ranking};

/// However sure a log makes, checks are chosen as if so much of the doubt of the answers were left: nobody opens a duct to confirm what can't be.
const NOT_MODELLED: f64 = 0.15;

/// A check that a technician can do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Check {
    /// Look for water at the low point.
    LookForWater,
    /// Measure the airflow, empty the low point, measure again.
    EmptyAndMeasure,
    /// Blow the tube and its holes through.
    BlowThrough,
    /// Feel whether the trap draws air.
    FeelTrap,
    /// Read the filter's pressure, or measure with a new one.
    ReadFilter,
    /// Watch the sensor at dawn, or in the damp hours that are modelled.
    WatchAtDawn,
    /// Disconnect the exhaust and measure.
    DisconnectExhaust,
    /// Time the smoke from the duct to the sensor.
    TimeSmoke,
    /// Compare the entries with the clock of the duct's plant.
    CompareClock,
    /// Measure the supply, and the fan without tubes.
    MeasureSupply,
    /// Measure a clean line against the limits.
    CheckLimits,
}

/// What is seen, and how many in a hundred it is seen of each cause: common practice, no source.
struct Outcomes {
    names: &'static [&'static str],
    /// For the causes that are named: a chance for each outcome; for all others the first row.
    usual: &'static [f64],
    of: &'static [(Cause, &'static [f64])],
}

/// A check with what it would tell.
#[derive(Debug, Clone, PartialEq)]
pub struct NextCheck {
    /// Which.
    pub check: Check,
    /// How much of the doubt that is left it should settle, 0 to 1.
    pub settles: f64,
    /// The same for its effort: what checks are ranked by.
    pub worth: f64,
    /// What may be seen.
    pub outcomes: Vec<OutcomeTold>,
}

/// What may be seen at a check.
#[derive(Debug, Clone, PartialEq)]
pub struct OutcomeTold {
    /// In words.
    pub name: &'static str,
    /// The chance of it.
    pub expected: f64,
    /// The likeliest cause then, and its share.
    pub then: (Cause, f64),
}

impl Check {
    /// All of them.
    pub const ALL: [Self; 11] = [
        Self::LookForWater,
        Self::EmptyAndMeasure,
        Self::BlowThrough,
        Self::FeelTrap,
        Self::ReadFilter,
        Self::WatchAtDawn,
        Self::DisconnectExhaust,
        Self::TimeSmoke,
        Self::CompareClock,
        Self::MeasureSupply,
        Self::CheckLimits,
    ];

    /// A short name that stands for it in files.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::LookForWater => "look_for_water",
            Self::EmptyAndMeasure => "empty_and_measure",
            Self::BlowThrough => "blow_through",
            Self::FeelTrap => "feel_trap",
            Self::ReadFilter => "read_filter",
            Self::WatchAtDawn => "watch_at_dawn",
            Self::DisconnectExhaust => "disconnect_exhaust",
            Self::TimeSmoke => "time_smoke",
            Self::CompareClock => "compare_clock",
            Self::MeasureSupply => "measure_supply",
            Self::CheckLimits => "check_limits",
        }
    }

    /// What to do.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::LookForWater => "Look for water at the low point.",
            Self::EmptyAndMeasure => "Measure the airflow, empty the low point, measure again.",
            Self::BlowThrough => "Blow the tube and its holes through; measure before and after.",
            Self::FeelTrap => "Feel whether the trap draws air.",
            Self::ReadFilter => "Measure the airflow with the filter and with a new one.",
            Self::WatchAtDawn => {
                "Watch the sensor at dawn, or in the damp hours that are modelled."
            }
            Self::DisconnectExhaust => "Take the exhaust off and measure.",
            Self::TimeSmoke => "Time the smoke from the duct to the sensor.",
            Self::CompareClock => "Compare the entries with the clock of the duct’s plant.",
            Self::MeasureSupply => "Measure the supply, and the fan without tubes.",
            Self::CheckLimits => "Measure the clean line, and compare with the limits.",
        }
    }

    /// What it takes, and what to mind.
    #[must_use]
    pub const fn takes(self) -> &'static str {
        match self {
            Self::LookForWater => {
                "Ladder, torch, 10 minutes. Fan off to drain. Under the site’s impairment procedure."
            }
            Self::EmptyAndMeasure => {
                "Ladder, jug, 20 minutes. Fan off to drain. Under the site’s impairment procedure."
            }
            Self::BlowThrough => {
                "Dry air at low pressure, detector taken off the tube first, 30 minutes. Under the site’s impairment procedure."
            }
            Self::FeelTrap => "A strip of paper, 5 minutes.",
            Self::ReadFilter => "A new filter, 15 minutes. Under the site’s impairment procedure.",
            Self::WatchAtDawn => "Two hours at the right time.",
            Self::DisconnectExhaust => {
                "15 minutes. Under the site’s impairment procedure; put it back."
            }
            Self::TimeSmoke => {
                "Listed aerosol, stopwatch, two people, 20 minutes. Under the site’s impairment procedure."
            }
            Self::CompareClock => "The plant’s time programme, 15 minutes.",
            Self::MeasureSupply => "Voltmeter, 20 minutes. Under the site’s impairment procedure.",
            Self::CheckLimits => "15 minutes. Limits stay inside the device’s listed range.",
        }
    }

    /// Minutes, with what it takes to get there: common practice, no source.
    const fn minutes(self) -> f64 {
        match self {
            Self::FeelTrap => 10.0,
            Self::CompareClock | Self::CheckLimits => 20.0,
            Self::ReadFilter | Self::DisconnectExhaust | Self::LookForWater => 25.0,
            Self::EmptyAndMeasure | Self::TimeSmoke | Self::MeasureSupply => 30.0,
            Self::BlowThrough => 40.0,
            Self::WatchAtDawn => 120.0,
        }
    }

    #[expect(clippy::too_many_lines, reason = "a table")]
    const fn outcomes(self) -> Outcomes {
        match self {
            Self::LookForWater => Outcomes {
                names: &["water stands there", "damp", "dry"],
                usual: &[0.08, 0.22, 0.7],
                of: &[
                    (Cause::LowPointWater, &[0.75, 0.17, 0.08]),
                    (Cause::Frost, &[0.35, 0.35, 0.3]),
                    (Cause::Mist, &[0.2, 0.5, 0.3]),
                    (Cause::DryTrap, &[0.02, 0.08, 0.9]),
                ],
            },
            Self::EmptyAndMeasure => Outcomes {
                names: &[
                    "airflow rises by more than 10 %",
                    "no change",
                    "airflow falls",
                ],
                usual: &[0.04, 0.92, 0.04],
                of: &[
                    (Cause::LowPointWater, &[0.82, 0.15, 0.03]),
                    (Cause::Frost, &[0.3, 0.66, 0.04]),
                    (Cause::DryTrap, &[0.05, 0.6, 0.35]),
                ],
            },
            Self::BlowThrough => Outcomes {
                names: &[
                    "airflow rises by more than 5 %",
                    "no change",
                    "airflow falls",
                ],
                usual: &[0.06, 0.9, 0.04],
                of: &[
                    (Cause::HolesFouled, &[0.85, 0.13, 0.02]),
                    (Cause::LowPointWater, &[0.6, 0.37, 0.03]),
                    (Cause::PartedTube, &[0.05, 0.75, 0.2]),
                ],
            },
            Self::FeelTrap => Outcomes {
                names: &["it draws or blows air", "it does not"],
                usual: &[0.05, 0.95],
                of: &[(Cause::DryTrap, &[0.85, 0.15])],
            },
            Self::ReadFilter => Outcomes {
                names: &[
                    "airflow rises with the new one",
                    "no change",
                    "airflow falls with the new one",
                ],
                usual: &[0.1, 0.86, 0.04],
                of: &[
                    (Cause::FilterLoading, &[0.88, 0.11, 0.01]),
                    (Cause::FilterMissing, &[0.02, 0.08, 0.9]),
                ],
            },
            Self::WatchAtDawn => Outcomes {
                names: &["mist or damp at the sensor", "frost at the tube", "neither"],
                usual: &[0.06, 0.04, 0.9],
                of: &[
                    (Cause::Mist, &[0.6, 0.02, 0.38]),
                    (Cause::Frost, &[0.15, 0.5, 0.35]),
                    (Cause::LowPointWater, &[0.25, 0.04, 0.71]),
                ],
            },
            Self::DisconnectExhaust => Outcomes {
                names: &["airflow as it should be without it", "higher", "lower"],
                usual: &[0.84, 0.08, 0.08],
                of: &[
                    (Cause::PartedTube, &[0.35, 0.35, 0.3]),
                    (Cause::LowPointWater, &[0.5, 0.1, 0.4]),
                    (Cause::FanWeak, &[0.25, 0.03, 0.72]),
                    (Cause::HolesFouled, &[0.3, 0.03, 0.67]),
                ],
            },
            Self::TimeSmoke => Outcomes {
                names: &["within the band", "late or thin", "early"],
                usual: &[0.8, 0.15, 0.05],
                of: &[
                    (Cause::PartedTube, &[0.12, 0.82, 0.06]),
                    (Cause::DryTrap, &[0.3, 0.66, 0.04]),
                    (Cause::LowPointWater, &[0.3, 0.65, 0.05]),
                    (Cause::HolesFouled, &[0.35, 0.62, 0.03]),
                    (Cause::FanWeak, &[0.25, 0.73, 0.02]),
                    (Cause::FilterLoading, &[0.4, 0.58, 0.02]),
                    (Cause::FilterMissing, &[0.5, 0.05, 0.45]),
                ],
            },
            Self::CompareClock => Outcomes {
                names: &["they come as something switches", "they do not"],
                usual: &[0.06, 0.94],
                of: &[
                    (Cause::DuctSwitching, &[0.9, 0.1]),
                    (Cause::LimitsBad, &[0.25, 0.75]),
                ],
            },
            Self::MeasureSupply => Outcomes {
                names: &["supply or fan below its data", "both as they should be"],
                usual: &[0.04, 0.96],
                of: &[(Cause::FanWeak, &[0.9, 0.1])],
            },
            Self::CheckLimits => Outcomes {
                names: &["limits cut into what is usual", "they leave room"],
                usual: &[0.08, 0.92],
                of: &[
                    (Cause::LimitsBad, &[0.9, 0.1]),
                    (Cause::DuctSwitching, &[0.35, 0.65]),
                ],
            },
        }
    }

    /// What may be seen at it, in words.
    #[must_use]
    pub const fn outcome_names(self) -> &'static [&'static str] {
        self.outcomes().names
    }

    /// The chance of an outcome under a cause; none where there is no such outcome.
    #[must_use]
    pub fn chance(self, cause: Cause, outcome: usize) -> Option<f64> {
        let outcomes = self.outcomes();
        let own = outcomes.of.iter().find(|(one, _)| *one == cause);
        own.map_or(outcomes.usual, |(_, chances)| chances)
            .get(outcome)
            .copied()
    }
}

/// The checks, the best first, by what they should settle of the doubt that is left, for their effort.
///
/// # Source
/// Expected information, D. V. Lindley, Ann. Math. Stat. 27 (1956) 986, over minutes; checks that nothing can come of are left out.
#[must_use]
pub fn next_checks(ranking: &Ranking, has_trap: bool) -> Vec<NextCheck> {
    let with_doubt =
        |one: &Ranked| (1.0 - NOT_MODELLED) * one.share + NOT_MODELLED * one.by_answers;
    let shares: Vec<(Cause, f64)> = (ranking.causes.iter())
        .map(|one| (one.cause, with_doubt(one)))
        .collect();
    let doubt = entropy(shares.iter().map(|(_, share)| *share));
    let checks = Check::ALL
        .into_iter()
        .filter(|check| has_trap || *check != Check::FeelTrap);
    let mut told: Vec<NextCheck> = checks
        .map(|check| of_check(check, &shares, doubt))
        .collect();
    largest_first(&mut told, |one| one.worth);
    told
}

fn of_check(check: Check, shares: &[(Cause, f64)], doubt: f64) -> NextCheck {
    let mut left = 0.0;
    let mut outcomes = Vec::new();
    for (place, name) in check.outcomes().names.iter().enumerate() {
        let after = updated(shares, check, place);
        let expected: f64 = shares
            .iter()
            .map(|(cause, share)| share * check.chance(*cause, place).unwrap_or(0.0))
            .sum();
        left += expected * entropy(after.iter().map(|(_, share)| *share));
        let most = after.iter().max_by(|one, other| one.1.total_cmp(&other.1));
        outcomes.push(OutcomeTold {
            name,
            expected,
            then: most.copied().unwrap_or((Cause::None, 0.0)),
        });
    }
    let settles = if 0.0 < doubt {
        (1.0 - left / doubt).max(0.0)
    } else {
        0.0
    };
    NextCheck {
        check,
        settles,
        // Who is there already does two short checks as easily as one.
        worth: settles / (30.0 + check.minutes()),
        outcomes,
    }
}

/// Shares after an outcome was seen.
fn updated(shares: &[(Cause, f64)], check: Check, outcome: usize) -> Vec<(Cause, f64)> {
    let seen = |(cause, share): &(Cause, f64)| {
        (*cause, share * check.chance(*cause, outcome).unwrap_or(0.0))
    };
    let after: Vec<(Cause, f64)> = shares.iter().map(seen).collect();
    let all: f64 = after.iter().map(|(_, share)| share).sum();
    if all <= 0.0 {
        return shares.to_vec();
    }
    after
        .into_iter()
        .map(|(cause, share)| (cause, share / all))
        .collect()
}

/// The ranking after the outcome of a check was entered; outcomes count from 0, and one that is not there changes nothing.
pub fn take_outcome(ranking: &mut Ranking, check: Check, outcome: usize) {
    let shares: Vec<(Cause, f64)> = ranking
        .causes
        .iter()
        .map(|one| (one.cause, one.share))
        .collect();
    let after = updated(&shares, check, outcome);
    for (one, (_, share)) in ranking.causes.iter_mut().zip(after) {
        one.share = share;
    }
    largest_first(&mut ranking.causes, |one| one.share);
}

fn entropy(shares: impl Iterator<Item = f64>) -> f64 {
    shares
        .filter(|share| 0.0 < *share)
        .map(|share| -share * ln(share))
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chances_of_each_cause_are_one() {
        for check in Check::ALL {
            for cause in Cause::ALL {
                let all: f64 = (0..check.outcomes().names.len())
                    .filter_map(|outcome| check.chance(cause, outcome))
                    .sum();
                assert!(
                    (all - 1.0).abs() < 1e-12,
                    "{check:?} under {cause:?}: {all}"
                );
            }
        }
    }

    /// By hand: of two causes alike, seen in 0.9 of the one and 0.1 of the other, the one is left with 0.9.
    #[test]
    fn an_outcome_moves_shares_as_bayes_says() {
        let even = [(Cause::FanWeak, 0.5), (Cause::LimitsBad, 0.5)];
        let after = updated(&even, Check::MeasureSupply, 0);
        assert!((after[0].1 - 0.9 / 0.94).abs() < 1e-12, "{after:?}");
        assert_eq!(
            updated(&even, Check::MeasureSupply, 9),
            even,
            "no such outcome"
        );
    }
}
