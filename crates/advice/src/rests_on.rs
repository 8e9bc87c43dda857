//! Which assumed values an answer rests on: each taken to its low and its high, one at a time, and all of the run evaluated anew.

use core::cmp::Ordering;

use dewrun_run::figure::{Given, set, set_installed};
use dewrun_run::{
    Installation, Outcome, Run, TubeOutcome, Verdict, WET_TUBE_G_H, Whole, evaluate, water_and_air,
};

use crate::assumption::{Assumption, assumptions};

/// An assumed value that alone changes the water by less than this share does not decide the answer; common practice, no source.
const DECIDES: f64 = 0.1;

/// An assumed value, and what the answer does where it is taken to its low or high.
#[derive(Debug, Clone, PartialEq)]
pub struct Resting {
    /// What is assumed.
    pub assumed: Assumption,
    /// Most change of water inside and outside both tubes and of mist at the sensor, g/h.
    pub change_g_h: f64,
    /// Wet becomes dry, or dry wet.
    pub changes_verdict: bool,
    /// A blind detector sees, or one that sees becomes blind; never where water and air are not asked for.
    pub changes_blindness: bool,
    /// It alone changes blindness or the verdict, or the water by a tenth or more.
    pub decides: bool,
}

/// The assumed values of a run, the one that changes the answer most first.
///
/// A change of the verdict comes before every other; an end of a span at which the run has no answer is left out.
///
/// # Range
/// As [`evaluate`].
///
/// # Accuracy
/// One at a time: what two of them do together is not seen.
///
/// # Source
/// By evaluating the whole model at both ends of each span; no relation of its own.
///
/// ```
/// use dewrun_advice::rests_on;
/// use dewrun_quantity::{Conductivity, Length, PowerPerLength, Pressure, RelativeHumidity, Speed, Temperature, VolumeFlow};
/// use dewrun_run::air::{Humidity, Over, Pair};
/// use dewrun_run::figure::{Figure, Given, Origin};
/// use dewrun_run::{Detector, Flow, FlowAt, Leg, Place, Run, Space, TubeWall, evaluate};
/// let leg = Leg {
///     space: 0, length: Length::metres(8.0), rise: Length::metres(-0.16),
///     tube: TubeWall { bore: Length::millimetres(19.0), outside_diameter: Length::millimetres(22.0), conductivity: Conductivity::watts_per_metre_kelvin(0.19) },
///     insulation: None, emissivity: 0.9, tracing: PowerPerLength::ZERO,
/// };
/// let run = Run {
///     pressure: Pressure::pascals(101_325.0),
///     duct_air: Pair::Temperature(Temperature::celsius(32.0), Humidity::DewPoint(Temperature::celsius(26.0))),
///     flow: Flow { volume: VolumeFlow::litres_per_minute(30.0), at: FlowAt::Intake },
///     spaces: vec![Space {
///         temperature: Temperature::celsius(20.0),
///         humidity: Humidity::Relative { value: RelativeHumidity::percent(50.0), over: Over::Water },
///         radiant: None, wind: Speed::ZERO,
///     }],
///     intake: vec![leg], detector: Detector::default(), exhaust: vec![],
/// };
/// let assumed = Given {
///     figure: Figure::SpaceTemperature, place: Place::Space(0), value: 20.0,
///     origin: Origin::Assumed { row: "corridor".into(), low: 16.0, high: 30.0 },
/// };
/// let now = evaluate(&run).unwrap().value;
/// let ranked = rests_on(&run, &now, &[assumed]);
/// // In a space warmer than the dew point of 26 °C no water forms.
/// assert!(ranked[0].changes_verdict && ranked[0].decides);
/// ```
#[must_use]
pub fn rests_on(run: &Run, now: &Outcome, givens: &[Given]) -> Vec<Resting> {
    ranked(&Told::of(now, false), givens, |assumed, value| {
        let mut run = run.clone();
        for place in &assumed.places {
            set(&mut run, assumed.figure, *place, value)?;
        }
        Some(Told::of(&evaluate(&run).ok()?.value, false))
    })
}

/// The assumed values of a run and of how it is installed, the one that changes the answer most first.
///
/// A change of blindness comes before a change of the verdict, and that before every other.
///
/// # Range
/// As [`water_and_air`].
///
/// # Accuracy
/// As [`rests_on`].
///
/// # Source
/// By evaluating the whole model at both ends of each span; no relation of its own.
#[must_use]
pub fn rests_on_whole(
    (run, installation): (&Run, &Installation),
    (now, whole): (&Outcome, &Whole),
    givens: &[Given],
) -> Vec<Resting> {
    let now = Told::of(now, whole.blind.is_some());
    ranked(&now, givens, |assumed, value| {
        let (mut run, mut installation) = (run.clone(), installation.clone());
        for place in &assumed.places {
            set(&mut run, assumed.figure, *place, value)
                .or_else(|| set_installed(&mut installation, assumed.figure, *place, value))?;
        }
        let outcome = evaluate(&run).ok()?.value;
        let whole = water_and_air(&run, &installation, &outcome).ok()?;
        Some(Told::of(&outcome, whole.blind.is_some()))
    })
}

/// What of an answer is looked at.
struct Told {
    is_blind: bool,
    verdict: Verdict,
    amounts: [f64; 3],
}

impl Told {
    fn of(outcome: &Outcome, is_blind: bool) -> Self {
        Self {
            is_blind,
            verdict: outcome.verdict,
            amounts: amounts(outcome),
        }
    }
}

fn ranked(
    now: &Told,
    givens: &[Given],
    answer_with: impl Fn(&Assumption, f64) -> Option<Told>,
) -> Vec<Resting> {
    let mut ranked: Vec<Resting> = Vec::new();
    for assumed in assumptions(givens) {
        let one = tried(now, assumed, &answer_with);
        // Few are ranked: the library's own sort would weigh more than all else here.
        let place = ranked.partition_point(|known| !goes_before(&one, known));
        ranked.insert(place, one);
    }
    ranked
}

/// Whether one changes what the answer begins with and the other does not, or changes more of the water.
fn goes_before(one: &Resting, other: &Resting) -> bool {
    let blindness = one.changes_blindness.cmp(&other.changes_blindness);
    let verdict = one.changes_verdict.cmp(&other.changes_verdict);
    let water = one.change_g_h.total_cmp(&other.change_g_h);
    blindness.then(verdict).then(water) == Ordering::Greater
}

fn tried(
    now: &Told,
    assumed: Assumption,
    answer_with: &impl Fn(&Assumption, f64) -> Option<Told>,
) -> Resting {
    let all: f64 = now.amounts.iter().sum();
    let (mut change_g_h, mut changes_verdict, mut changes_blindness) = (0.0_f64, false, false);
    for end in [assumed.low, assumed.high] {
        if end == assumed.value {
            continue;
        }
        let Some(then) = answer_with(&assumed, end) else {
            continue;
        };
        let pairs = then.amounts.iter().zip(now.amounts);
        let change: f64 = pairs.map(|(then, now)| (then - now).abs()).sum();
        change_g_h = change_g_h.max(change);
        changes_verdict |= then.verdict != now.verdict;
        changes_blindness |= then.is_blind != now.is_blind;
    }
    let much = (DECIDES * all).max(WET_TUBE_G_H);
    Resting {
        assumed,
        change_g_h,
        changes_verdict,
        changes_blindness,
        decides: changes_blindness || changes_verdict || much <= change_g_h,
    }
}

/// Water inside and outside both tubes and mist at the sensor, g/h.
fn amounts(outcome: &Outcome) -> [f64; 3] {
    let tubes = || core::iter::once(&outcome.intake).chain(outcome.exhaust.as_ref());
    let sum = |amount: fn(&TubeOutcome) -> f64| tubes().map(amount).sum();
    let mist = outcome.chamber.mist.to_kilograms_per_kilogram();
    [
        sum(|tube| tube.condensate.to_grams_per_hour()),
        sum(|tube| tube.sweat.to_grams_per_hour()),
        mist * outcome.dry_air.to_grams_per_hour(),
    ]
}
