//! What six tapped answers say before any log is read.

use dewrun_weather::Civil;

use crate::cause::Cause;
use crate::feasible::Feasible;
use crate::modelled::Modelled;
use crate::signs::Sign;

/// Which trouble comes back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TroubleAnswer {
    /// The airflow is low.
    AirflowLow,
    /// The airflow is high.
    AirflowHigh,
    /// An alarm without smoke.
    Alarm,
}

/// When it comes, mostly.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhenAnswer {
    /// In summer, by day.
    SummerDay,
    /// In summer, at night.
    SummerNight,
    /// In spring or autumn.
    Between,
    /// In winter.
    Winter,
    /// At any time.
    AnyTime,
}

/// Whether there is a trap, and water in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TrapAnswer {
    /// There is none.
    None,
    /// Water comes out of it.
    Water,
    /// There is one, and it is dry.
    Dry,
    /// Nobody knows.
    NotSure,
}

/// When filter or fan were last touched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TouchedAnswer {
    /// This year.
    ThisYear,
    /// Longer ago.
    LongerAgo,
    /// Nobody knows.
    NotSure,
}

/// The answers that a technician tapped; the two of the duct's air and of the tube's way are in the run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Answers {
    /// Which trouble.
    pub trouble: Option<TroubleAnswer>,
    /// When.
    pub when: Option<WhenAnswer>,
    /// The trap.
    pub trap: Option<TrapAnswer>,
    /// Filter or fan.
    pub touched: Option<TouchedAnswer>,
    /// The site lies south of the equator: summer is in January.
    pub southern: bool,
}

/// How often each cause is met, before anything is known; common practice, no source.
const USUAL: [f64; Cause::ALL.len()] = [
    0.12, 0.09, 0.07, 0.09, 0.07, 0.08, 0.07, 0.08, 0.08, 0.08, 0.07, 0.1,
];

/// The chance of each cause from the answers and from what the run is modelled to do, without any log; all of them together are one.
#[must_use]
pub fn shares_of_answers(answers: &Answers, modelled: Option<&Modelled>) -> Vec<f64> {
    let feasible = modelled.map(Feasible::of);
    let calendar = modelled.zip(answers.when).map(|(modelled, when)| {
        let is_when = |start_s: i64| is_in(when, start_s, answers.southern);
        Calendar::of(modelled, &is_when)
    });
    let scores = Cause::ALL.iter().zip(USUAL).map(|(cause, usual)| {
        let can = feasible
            .as_ref()
            .map_or(1.0, |feasible| feasible.of_cause(*cause));
        let signs = modelled.map(|modelled| &modelled.signs);
        let sign = match cause {
            Cause::PartedTube => signs.map(|signs| signs.parted),
            Cause::DryTrap => signs.map(|signs| signs.dry_trap),
            _ => None,
        };
        let trouble = answers
            .trouble
            .map_or(1.0, |answer| of_trouble(*cause, answer, sign));
        let when = answers
            .when
            .map_or(1.0, |answer| of_when(*cause, answer, calendar.as_ref()));
        let trap = answers.trap.map_or(1.0, |answer| of_trap(*cause, answer));
        let touched = answers
            .touched
            .map_or(1.0, |answer| of_touched(*cause, answer));
        usual * can * trouble * when * trap * touched
    });
    let scores: Vec<f64> = scores.collect();
    let all: f64 = scores.iter().sum();
    scores.into_iter().map(|score| score / all).collect()
}

/// How often each cause looks so; common practice, no source, but for signs that are computed.
fn of_trouble(cause: Cause, answer: TroubleAnswer, sign: Option<Sign>) -> f64 {
    let [low, high, alarm] = match (cause, sign) {
        (Cause::PartedTube | Cause::DryTrap, Some(sign)) => {
            let both = (sign.low + sign.high).max(1e-9);
            [
                0.05 + 0.85 * sign.low / both,
                0.05 + 0.85 * sign.high / both,
                0.1,
            ]
        }
        (Cause::LowPointWater, _) => [0.85, 0.05, 0.1],
        (Cause::Mist, _) => [0.03, 0.02, 0.95],
        (Cause::Frost, _) => [0.65, 0.05, 0.3],
        (Cause::FilterLoading | Cause::HolesFouled | Cause::FanWeak, _) => [0.93, 0.03, 0.04],
        (Cause::FilterMissing, _) => [0.05, 0.85, 0.1],
        (Cause::None, _) => [0.33, 0.2, 0.47],
        _ => [0.45, 0.45, 0.1],
    };
    match answer {
        TroubleAnswer::AirflowLow => low,
        TroubleAnswer::AirflowHigh => high,
        TroubleAnswer::Alarm => alarm,
    }
}

fn of_when(cause: Cause, answer: WhenAnswer, calendar: Option<&Calendar>) -> f64 {
    let of_clock = match answer {
        WhenAnswer::AnyTime => 0.6,
        _ => 0.1,
    };
    let Some(calendar) = calendar.filter(|_| cause.follows_weather()) else {
        return of_clock;
    };
    match answer {
        WhenAnswer::AnyTime => 0.2,
        _ => 0.02 + 0.78 * calendar.share(cause).unwrap_or(0.25),
    }
}

fn of_trap(cause: Cause, answer: TrapAnswer) -> f64 {
    let [none, water, dry, not_sure] = match cause {
        Cause::LowPointWater => [0.3, 0.45, 0.05, 0.2],
        Cause::DryTrap => [0.02, 0.08, 0.7, 0.2],
        Cause::Mist | Cause::Frost => [0.28, 0.38, 0.1, 0.24],
        _ => [0.3, 0.2, 0.2, 0.3],
    };
    match answer {
        TrapAnswer::None => none,
        TrapAnswer::Water => water,
        TrapAnswer::Dry => dry,
        TrapAnswer::NotSure => not_sure,
    }
}

fn of_touched(cause: Cause, answer: TouchedAnswer) -> f64 {
    let [this_year, longer_ago, not_sure] = match cause {
        Cause::FilterLoading => [0.15, 0.6, 0.25],
        Cause::FilterMissing => [0.7, 0.15, 0.15],
        Cause::FanWeak => [0.2, 0.55, 0.25],
        Cause::HolesFouled => [0.3, 0.45, 0.25],
        Cause::PartedTube | Cause::LimitsBad => [0.5, 0.25, 0.25],
        _ => [0.4, 0.35, 0.25],
    };
    match answer {
        TouchedAnswer::ThisYear => this_year,
        TouchedAnswer::LongerAgo => longer_ago,
        TouchedAnswer::NotSure => not_sure,
    }
}

fn is_in(when: WhenAnswer, start_s: i64, southern: bool) -> bool {
    let Some(civil) = Civil::of(start_s) else {
        return false;
    };
    let month = if southern {
        (civil.month + 5) % 12 + 1
    } else {
        civil.month
    };
    let is_summer = (6..=8).contains(&month);
    let is_day = (8..20).contains(&civil.hour);
    match when {
        WhenAnswer::SummerDay => is_summer && is_day,
        WhenAnswer::SummerNight => is_summer && !is_day,
        WhenAnswer::Between => (3..=5).contains(&month) || (9..=11).contains(&month),
        WhenAnswer::Winter => month == 12 || month <= 2,
        WhenAnswer::AnyTime => true,
    }
}

/// What part of each cause's modelled hazard lies in some hours of the year.
struct Calendar {
    within: Feasible,
    all: Feasible,
}

impl Calendar {
    fn of(modelled: &Modelled, is_within: &dyn Fn(i64) -> bool) -> Self {
        Self {
            within: Feasible::of_hours(modelled, is_within),
            all: Feasible::of(modelled),
        }
    }

    fn share(&self, cause: Cause) -> Option<f64> {
        let (within, all) = (self.within.hazard(cause)?, self.all.hazard(cause)?);
        (0.0 < all).then(|| within / all)
    }
}
