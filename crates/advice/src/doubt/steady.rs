//! The doubt of a steady answer.

use dewrun_numeric::sobol::{Dimension, Sobol};
use dewrun_quantity::Length;
use dewrun_run::figure::Given;
use dewrun_run::{Factors, Outcome, Run, TubeOutcome, Verdict, evaluate_with};

use super::{Spread, Varied, first_order_shares};

/// Places along a tube at which the chance of water is counted lie so far apart, m.
const STEP_M: f64 = 0.1;

/// How sure the steady answer of a run is, as far as it was asked.
#[derive(Debug, Clone, PartialEq)]
pub struct SteadyDoubt {
    /// So many cases have an answer.
    pub cases: u32,
    /// So many of them are wet.
    pub wet: u32,
    /// So many cases have none: their values leave what the relations hold for.
    pub unanswered: u32,
    /// The intake tube.
    pub intake: TubeDoubt,
    /// The exhaust tube, where one is drawn.
    pub exhaust: Option<TubeDoubt>,
    /// Mist at the sensor, kg of water per kg of dry air.
    pub mist: Spread,
    /// What varied, and the part of the spread of all deposited water that it alone makes, the largest first.
    pub shares: Vec<Share>,
}

/// What varied, and its part of a spread.
#[derive(Debug, Clone, PartialEq)]
pub struct Share {
    /// What varied.
    pub varied: Varied,
    /// Its part, 0 to 1.
    pub share: f64,
}

/// How sure the answer for one tube is.
#[derive(Debug, Clone, PartialEq)]
pub struct TubeDoubt {
    /// Water and frost deposited inside, g/h.
    pub water_g_h: Spread,
    /// Water and rime deposited outside, g/h.
    pub sweat_g_h: Spread,
    /// In how many cases it is wet at each place, from the inlet on, a decimetre from one to the next.
    pub wet_at: Vec<u32>,
}

/// The cases of a run, one after another: as many as there is time for.
///
/// # Range
/// As [`evaluate_with`].
///
/// # Accuracy
/// With 1000 cases the chance of water is within 2 in 100 of that of ever more cases.
///
/// # Source
/// Assumed values vary as triangular distributions from low over usual to high, relations as their known spread, independently of each other;
/// cases are scrambled Sobol points, see [`Sobol`].
#[derive(Debug, Clone)]
pub struct SteadyDoubts {
    run: Run,
    varied: Vec<Varied>,
    dimensions: Vec<Dimension>,
    next: u32,
    unanswered: u32,
    points: Vec<Vec<f64>>,
    told: Vec<Told>,
    intake_at: Vec<u32>,
    exhaust_at: Vec<u32>,
}

/// What is kept of a case.
#[derive(Debug, Clone, Copy)]
struct Told {
    is_wet: bool,
    mist: f64,
    intake: [f64; 2],
    exhaust: Option<[f64; 2]>,
}

impl SteadyDoubts {
    /// Before the first case; the same seed gives the same cases.
    #[must_use]
    pub fn new(run: &Run, givens: &[Given], seed: u64) -> Self {
        let varied = Varied::of(run, givens);
        let sequence = Sobol::new(seed);
        Self {
            dimensions: (0..varied.len()).map(|at| sequence.dimension(at)).collect(),
            run: run.clone(),
            varied,
            next: 0,
            unanswered: 0,
            points: Vec::new(),
            told: Vec::new(),
            intake_at: places(&run.intake),
            exhaust_at: places(&run.exhaust),
        }
    }

    /// Takes so many more cases.
    pub fn take(&mut self, cases: u32) {
        for _ in 0..cases {
            self.take_one();
        }
    }

    fn take_one(&mut self) {
        let point: Vec<f64> = self
            .dimensions
            .iter()
            .map(|one| one.at(self.next))
            .collect();
        self.next += 1;
        let (mut run, mut factors) = (self.run.clone(), Factors::PUBLISHED);
        for (varied, share) in self.varied.iter().zip(&point) {
            // What can't be set was left out before.
            let _ = varied.take(*share, &mut run, &mut factors);
        }
        let Ok(outcome) = evaluate_with(&run, factors) else {
            self.unanswered += 1;
            return;
        };
        self.note(point, &outcome.value);
    }

    fn note(&mut self, point: Vec<f64>, outcome: &Outcome) {
        count(&mut self.intake_at, &outcome.intake);
        if let Some(exhaust) = &outcome.exhaust {
            count(&mut self.exhaust_at, exhaust);
        }
        self.points.push(point);
        self.told.push(Told {
            is_wet: outcome.verdict == Verdict::Wet,
            mist: outcome.chamber.mist.to_kilograms_per_kilogram(),
            intake: amounts(&outcome.intake),
            exhaust: outcome.exhaust.as_ref().map(amounts),
        });
    }

    /// What the cases so far say; none before the first.
    #[must_use]
    pub fn so_far(&self) -> Option<SteadyDoubt> {
        let of = |value: fn(&Told) -> f64| -> Vec<f64> { self.told.iter().map(value).collect() };
        let exhaust = |at: usize| -> Option<Vec<f64>> {
            let values = self.told.iter().map(|told| told.exhaust?.get(at).copied());
            values.collect()
        };
        let exhaust = match (exhaust(0), exhaust(1)) {
            (Some(water), Some(sweat)) => Some(TubeDoubt {
                water_g_h: Spread::of(&water)?,
                sweat_g_h: Spread::of(&sweat)?,
                wet_at: self.exhaust_at.clone(),
            }),
            _ => None,
        };
        let wet = self.told.iter().filter(|told| told.is_wet).count();
        Some(SteadyDoubt {
            cases: u32::try_from(self.told.len()).ok()?,
            wet: u32::try_from(wet).ok()?,
            unanswered: self.unanswered,
            intake: TubeDoubt {
                water_g_h: Spread::of(&of(|told| told.intake[0]))?,
                sweat_g_h: Spread::of(&of(|told| told.intake[1]))?,
                wet_at: self.intake_at.clone(),
            },
            exhaust,
            mist: Spread::of(&of(|told| told.mist))?,
            shares: self.shares(&of(Told::all_water)),
        })
    }

    fn shares(&self, water: &[f64]) -> Vec<Share> {
        let shares = first_order_shares(&self.points, water);
        let pairs = self.varied.iter().cloned().zip(shares);
        let mut found: Vec<Share> = pairs
            .map(|(varied, share)| Share { varied, share })
            .collect();
        found.sort_by(|one, other| other.share.total_cmp(&one.share));
        found
    }
}

impl Told {
    /// Water and frost inside both tubes, g/h.
    fn all_water(&self) -> f64 {
        let [intake, _] = self.intake;
        let [exhaust, _] = self.exhaust.unwrap_or_default();
        intake + exhaust
    }
}

/// Water inside and outside, g/h.
fn amounts(tube: &TubeOutcome) -> [f64; 2] {
    [
        tube.condensate.to_grams_per_hour(),
        tube.sweat.to_grams_per_hour(),
    ]
}

/// A count for each place along a tube.
fn places(legs: &[dewrun_run::Leg]) -> Vec<u32> {
    let length: f64 = legs.iter().map(|leg| leg.length.to_metres()).sum();
    let mut places = Vec::new();
    let mut at_m = 0.0;
    while at_m <= length {
        places.push(0);
        at_m += STEP_M;
    }
    places
}

/// The seed of a run's cases, from a name of its own.
///
/// # Range
/// Any text.
///
/// # Source
/// FNV-1a, 64 bits: G. Fowler, L. C. Noll, K.-P. Vo, IETF draft-eastlake-fnv.
///
/// ```
/// // The hash of "a" in the draft's table.
/// assert_eq!(dewrun_advice::seed_of("a"), 0xAF63_DC4C_8601_EC8C);
/// ```
#[must_use]
pub fn seed_of(name: &str) -> u64 {
    let start = 0xCBF2_9CE4_8422_2325;
    name.bytes().fold(start, |hash: u64, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01B3)
    })
}

fn count(places: &mut [u32], tube: &TubeOutcome) {
    let mut at_m = 0.0;
    for place in places {
        let at = Length::metres(at_m);
        if tube.wet.iter().any(|wet| wet.from <= at && at <= wet.to) {
            *place += 1;
        }
        at_m += STEP_M;
    }
}
