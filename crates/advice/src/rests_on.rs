//! Which assumed values an answer rests on: each taken to its low and its high, one at a time, and all of the run evaluated anew.

use core::cmp::Ordering;

use dewrun_run::figure::{Figure, Given, Origin, set};
use dewrun_run::{Outcome, Place, Run, TubeOutcome, Verdict, WET_TUBE_G_H, evaluate};

/// An assumed value that alone changes the water by less than this share does not decide the answer; common practice, no source.
const DECIDES: f64 = 0.1;

/// An assumed value, and what the answer does where it is taken to its low or high.
#[derive(Debug, Clone, PartialEq)]
pub struct Resting {
    /// What is assumed.
    pub figure: Figure,
    /// The parts of the run that have it: legs of one tube of the library are one assumption.
    pub places: Vec<Place>,
    /// The value assumed, in the unit of the figure's kind.
    pub value: f64,
    /// The row of the library, by its id.
    pub row: String,
    /// The lowest value that is plausible.
    pub low: f64,
    /// The highest.
    pub high: f64,
    /// Most change of water inside and outside both tubes and of mist at the sensor, g/h.
    pub change_g_h: f64,
    /// Wet becomes dry, or dry wet.
    pub changes_verdict: bool,
    /// It alone changes the verdict, or the water by a tenth or more.
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
    let mut ranked: Vec<Resting> = Vec::new();
    for assumed in assumptions(givens) {
        let one = tried(run, now, assumed);
        // Few are ranked: the library's own sort would weigh more than all else here.
        let place = ranked.partition_point(|known| !goes_before(&one, known));
        ranked.insert(place, one);
    }
    ranked
}

/// Whether one changes the verdict and the other does not, or changes more of the water.
fn goes_before(one: &Resting, other: &Resting) -> bool {
    let verdict = one.changes_verdict.cmp(&other.changes_verdict);
    verdict.then(one.change_g_h.total_cmp(&other.change_g_h)) == Ordering::Greater
}

/// The assumed values, those of legs that share a row and a value as one.
fn assumptions(givens: &[Given]) -> Vec<Resting> {
    let mut found: Vec<Resting> = Vec::new();
    for given in givens {
        let Origin::Assumed { row, low, high } = &given.origin else {
            continue;
        };
        // The rating is only compared with the answer: it changes nothing in it.
        if given.figure == Figure::HumidityRating {
            continue;
        }
        let is_of_leg = |place: &Place| matches!(place, Place::Leg(..));
        let same = found.iter_mut().find(|known| {
            known.figure == given.figure
                && known.row == *row
                && known.value == given.value
                && is_of_leg(&given.place)
        });
        if let Some(known) = same {
            known.places.push(given.place);
            continue;
        }
        found.push(Resting {
            figure: given.figure,
            places: vec![given.place],
            value: given.value,
            row: row.clone(),
            low: *low,
            high: *high,
            change_g_h: 0.0,
            changes_verdict: false,
            decides: false,
        });
    }
    found
}

fn tried(run: &Run, now: &Outcome, assumed: Resting) -> Resting {
    let usual = amounts(now);
    let all: f64 = usual.iter().sum();
    let mut told = assumed;
    for end in [told.low, told.high] {
        let Some((verdict, amounts)) = answer_with(run, &told, end) else {
            continue;
        };
        let pairs = amounts.iter().zip(usual);
        let change: f64 = pairs.map(|(then, now)| (then - now).abs()).sum();
        told.change_g_h = told.change_g_h.max(change);
        told.changes_verdict |= verdict != now.verdict;
    }
    let much = (DECIDES * all).max(WET_TUBE_G_H);
    told.decides = told.changes_verdict || much <= told.change_g_h;
    told
}

fn answer_with(run: &Run, assumed: &Resting, value: f64) -> Option<(Verdict, [f64; 3])> {
    if value == assumed.value {
        return None;
    }
    let mut run = run.clone();
    for place in &assumed.places {
        set(&mut run, assumed.figure, *place, value)?;
    }
    let outcome = evaluate(&run).ok()?.value;
    Some((outcome.verdict, amounts(&outcome)))
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
