//! Why there is no airflow to tell, and what has to be said beside one.

use dewrun_quantity::format::{entered, fixed};
use dewrun_quantity::{DecimalMark, Length, OutOfRange, VolumeFlow};
use thiserror::Error;

use crate::line::Side;

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum AirflowError {
    /// A number makes no sense where it stands: bring it within its limits.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// A fan's curve needs two points: read another off its data sheet.
    #[error("the fan curve has {count} point(s), at least 2 are needed")]
    TooFewFanPoints {
        /// Points given.
        count: usize,
    },
    /// The flows of a fan's points have to rise from one to the next: sort them, leave out doubles.
    #[error("the flows of the fan curve must rise: {} L/min follows {} L/min", entered(*.after_l_min), entered(*.before_l_min))]
    FanFlowsNotRising {
        /// The flow before, L/min.
        before_l_min: f64,
        /// The flow that does not exceed it, L/min.
        after_l_min: f64,
    },
    /// A tube without a stretch has no bore: give it one, of no length where there is no tube.
    #[error("the {side} has no stretch of tube")]
    NoStretch {
        /// Which tube.
        side: Side,
    },
    /// Something lies beside its tube: move it between the tube's ends.
    #[error("{what} lies at {} m of the {side}, which is {} m long", entered(*.at_m), entered(*.length_m))]
    OffTube {
        /// What, in words.
        what: &'static str,
        /// Which tube.
        side: Side,
        /// Where it was put, m.
        at_m: f64,
        /// Length of that tube, m.
        length_m: f64,
    },
    /// Shares of open holes were given for another number of holes: give one for each.
    #[error("{given} open shares are given for {holes} holes")]
    HoleCount {
        /// Shares given.
        given: usize,
        /// Holes of the line.
        holes: usize,
    },
    /// The fan's hump and the line's resistance meet more than once; which flow settles is open: take a fan, a resistance or duct pressures without it.
    #[error("the fan can settle at {} flows: {} L/min", .flows.len(), listed(.flows))]
    SeveralOperatingPoints {
        /// All of them, stable and unstable, rising.
        flows: Vec<VolumeFlow>,
    },
    /// No flow was found that balances the pressures: a number is far out of the ordinary.
    #[error("no flow balances the pressures: {} Pa are left at best", entered(*.left_pa))]
    Unbalanced {
        /// What is left of the balance, Pa.
        left_pa: f64,
    },
    /// The low limit lies above the high one: exchange them.
    #[error("the low airflow limit of {} % lies above the high one of {} %", entered(*.low_percent), entered(*.high_percent))]
    LimitsCrossed {
        /// Low limit, % of the reading as fitted.
        low_percent: f64,
        /// High limit, % of the reading as fitted.
        high_percent: f64,
    },
    /// Airflow limits need at least one state that must not trip them: give the state as fitted.
    #[error("there is no expected state to set airflow limits by")]
    NothingExpected,
}

/// What has to be said beside an answer that stands.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum AirflowNote {
    /// The fan's pressure rises with the flow over this stretch: with other resistances it may hunt.
    FanHump {
        /// Where the rise begins.
        from: VolumeFlow,
        /// Where it ends.
        to: VolumeFlow,
    },
    /// The flow at the fan lies beyond the points of its curve, where a straight line stands for it.
    BeyondFanPoints {
        /// The flow at the fan.
        flow: VolumeFlow,
        /// The nearest point.
        last: VolumeFlow,
    },
    /// Between Re 2100 and 4000 friction is one of several possible values, up to 14 % of flow.
    Transitional {
        /// In which tube, next to the detector.
        side: Side,
        /// Reynolds number there.
        reynolds: f64,
    },
    /// Roughness over bore exceeds the 0.05 to which friction factors were measured, as in corrugated tube: the friction is a guess.
    VeryRough {
        /// In which tube.
        side: Side,
        /// Roughness over bore.
        roughness: f64,
    },
    /// A pool would reach past an end of its tube; only the part within counts.
    PoolPastEnd {
        /// Of which tube.
        side: Side,
        /// Where the pool lies.
        at: Length,
    },
    /// Two pools reach into each other; each counts as if it were alone.
    PoolsMeet {
        /// In which tube.
        side: Side,
        /// Where the second begins.
        at: Length,
    },
}

fn listed(flows: &[VolumeFlow]) -> String {
    let numbers: Vec<String> = flows
        .iter()
        .map(|flow| fixed(flow.to_litres_per_minute(), 1, DecimalMark::Point))
        .collect();
    numbers.join(", ")
}
