//! States, faults and legs in the words of the trade, without units.

use dewrun_airflow::{Expected, Fault, Side};
use dewrun_quantity::Length;
use dewrun_quantity::format::entered;
use dewrun_water::drainage::Course;

use super::outcome::{Change, HangerAdvice, LegWater, StateKind};
use crate::error::Tube;

impl StateKind {
    /// In words, such as `filter after 12 months`.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::Usual(Expected::AsFitted) => "as fitted".to_owned(),
            Self::Usual(Expected::FilterAfter(months)) => {
                format!("filter after {} months", entered(months))
            }
            Self::Usual(Expected::FanSpeed(speed)) => {
                format!("fan at {} %", entered((100.0 * speed).round()))
            }
            Self::Usual(Expected::DuctFanOff) => "duct fan off".to_owned(),
            Self::Cold => "air as cold as it gets".to_owned(),
            Self::Warm => "air as warm as it gets".to_owned(),
        }
    }
}

/// What a fault is called, and in which tube and where along it it is, where it has a place; metres.
#[must_use]
pub fn fault_words(fault: Fault) -> (&'static str, Option<(Tube, f64)>) {
    let at = |side, at: Length| {
        let tube = match side {
            Side::Intake => Tube::Intake,
            Side::Exhaust => Tube::Exhaust,
        };
        Some((tube, at.to_metres()))
    };
    match fault {
        Fault::Parted(side, place) => ("parted", at(side, place)),
        Fault::Sealed(side, place) => ("sealed", at(side, place)),
        Fault::HolesFouled => ("holes fouled", None),
        Fault::FilterMissing => ("filter missing", None),
        Fault::TrapDry(place) => ("trap dry", at(Side::Intake, place)),
        Fault::FanWeak => ("fan weak", None),
    }
}

impl LegWater {
    /// Which way water runs in the leg, in words.
    #[must_use]
    pub const fn runs_words(&self) -> &'static str {
        match (self.report.course, self.report.flat) {
            (Course::Level, _) => "nowhere, level",
            (_, true) => "too flat to run",
            (Course::WithAir, _) => "with the air",
            (Course::AgainstAir, _) => "against the air",
        }
    }

    /// How the leg hangs, in words, and how far apart its hangers may stand where it hangs by some.
    #[must_use]
    pub fn hung_words(&self) -> (&'static str, Option<Length>) {
        match self.hangers {
            HangerAdvice::Steep => ("steep", None),
            HangerAdvice::AllAlong => ("support all along", None),
            HangerAdvice::Level => ("drains at none", None),
            HangerAdvice::Spacing { largest, .. } if self.hangers.sags() => {
                ("too far apart", Some(largest))
            }
            HangerAdvice::Spacing { largest, .. } => ("by hangers", Some(largest)),
        }
    }
}

impl Change {
    /// In words, as advice.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::FilterInterval => "change the filter more often",
            Self::NewAsFitted => {
                "measure the airflow as fitted anew with the duct fan as it usually runs"
            }
            Self::Season => {
                "take a sensor of mass flow, or set the limits in the season that counts"
            }
            Self::FanSpeed => "take a fan of steadier speed",
            Self::ShorterTube => "a shorter or wider tube: the fault changes the flow too little",
        }
    }
}
