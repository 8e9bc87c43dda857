//! The answer with water and air: a blind detector first, then the water, then what to do first and what the limits see.

use dewrun_quantity::measure::{AIR_FLOW, BORE, TUBE_LENGTH};
use dewrun_quantity::{Length, Style, Time, format};
use dewrun_run::figure::{Figure, Spot};
use dewrun_run::told::{Destination, Trouble, TroubleAt};
use dewrun_run::{
    AirflowOutcome, Blind, Outcome, Proposal, Run, Tube, TubeWater, Whole, fault_words,
};

use super::part::{Emphasis, Part};
use super::{Answer, asides, sentence};
use crate::wording;

/// More than this in one drain interval is too much to carry away by hand, mL.
const BY_HAND_ML: f64 = 2_000.0;

/// The answer to a run in words, with its water and its air.
///
/// A blind detector comes first, whatever else is to be said.
#[must_use]
pub fn whole_answer(run: &Run, outcome: &Outcome, whole: &Whole, style: Style) -> Answer {
    let mut parts = Vec::new();
    if let Some(found) = &whole.blind {
        parts.push(Part::words("This detector may not be sampling the duct: "));
        parts.extend(blind(found, style));
        parts.push(Part::words(". "));
    }
    parts.extend(sentence::sentence(outcome, style));
    let mut beside = asides::asides(run, outcome, style);
    beside.retain(|aside| aside != &asides::no_airflow());
    let mut all: Vec<Vec<Part>> = Vec::new();
    // The proof stays first, then what to do.
    let mut rest = beside.into_iter();
    all.extend(rest.next());
    let is_iced = matches!(whole.blind, Some(Blind::Iced { .. }));
    if is_iced {
        all.push(vec![Part::words(
            "First keep that wall above 0 °C, by insulation, heat tracing or another way: no trap helps against frost.",
        )]);
    }
    let put = if is_iced { "Then put" } else { "First put" };
    all.extend(first_trap(whole, put, style));
    all.extend(low_points(whole, style));
    all.extend(rest);
    let mut more = vec![air(&whole.airflow, style)];
    more.extend(limits(&whole.airflow, style));
    Answer {
        sentence: parts,
        asides: all,
        more,
    }
}

/// Why the detector may not be sampling its duct.
pub(super) fn blind(blind: &Blind, style: Style) -> Vec<Part> {
    match *blind {
        Blind::Reversed => vec![Part::words(
            "the air runs backwards, from the exhaust to the intake",
        )],
        Blind::Still => vec![Part::words("no air moves through it")],
        Blind::Diluted { share } => vec![
            Part::words("only "),
            percent(share, Figure::SampleShare, style),
            Part::words(" of the air at the sensor comes from the duct"),
        ],
        Blind::Iced { tube, at, after } => vec![
            Part::words(format!("frost closes the {} at ", called(tube))),
            place(at, Figure::FrostMostAt, tube, style),
            Part::words(" after "),
            time(after, Figure::TimeToIce, Spot::along(tube, at), style),
        ],
        Blind::Sealed { tube, at, after } => vec![
            Part::words("the low point at "),
            place(at, Figure::LowPoint, tube, style),
            Part::words(of_exhaust(tube)),
            Part::words(" is sealed after "),
            time(after, Figure::TimeToSeal, Spot::along(tube, at), style),
        ],
    }
}

/// The trap to place first: where the most water comes to.
fn first_trap(whole: &Whole, put: &str, style: Style) -> Option<Vec<Part>> {
    let tubes = [
        (Tube::Intake, Some(&whole.intake)),
        (Tube::Exhaust, whole.exhaust.as_ref()),
    ];
    let of = |(tube, water): (Tube, Option<&TubeWater>)| {
        let all = water
            .map(|water| water.proposals.clone())
            .unwrap_or_default();
        all.into_iter()
            .map(move |one| (tube, one))
            .collect::<Vec<_>>()
    };
    let mut all: Vec<(Tube, Proposal)> = tubes.into_iter().flat_map(of).collect();
    all.sort_by(|(_, one), (_, next)| {
        next.trap
            .rate
            .to_grams_per_hour()
            .total_cmp(&one.trap.rate.to_grams_per_hour())
    });
    let (tube, first) = all.first()?;
    Some(trap(*tube, first, put, style))
}

fn trap(tube: Tube, proposal: &Proposal, put: &str, style: Style) -> Vec<Part> {
    let found = &proposal.trap;
    let spot = Spot::along(tube, found.at.unwrap_or(found.low_point));
    let water = Part::figure(
        wording::water(found.rate, style),
        Emphasis::Water,
        Figure::LowPointWater,
        spot,
    );
    let Some(at) = found.at else {
        return vec![
            Part::words("No place that can be reached drains the low point at "),
            place(found.low_point, Figure::LowPoint, tube, style),
            Part::words(format!("{}: make one, ", of_exhaust(tube))),
            water,
            Part::words(" come to it."),
        ];
    };
    let why = match found.instead_of {
        Destination::Pool(_) | Destination::Trap(_) => " come to the low point there",
        Destination::Start | Destination::End => " run into the detector otherwise",
    };
    let mut parts = vec![
        Part::words(format!("{put} a trap at ")),
        place(at, Figure::TrapProposed, tube, style),
        Part::words(format!(" of the {}: ", called(tube))),
        water,
        Part::words(why),
    ];
    if BY_HAND_ML < proposal.capacity.to_grams() {
        let millimetres = |length: Length, figure| {
            let text = BORE.show(length, style).to_string();
            Part::figure(text, Emphasis::Strong, figure, spot)
        };
        parts.extend([
            Part::words("; let it drain itself, its outlet "),
            millimetres(proposal.needs.outlet_drop, Figure::TrapDropNeeded),
            Part::words(" below the tube and a seal of "),
            millimetres(proposal.needs.seal, Figure::TrapSealNeeded),
        ]);
    }
    parts.push(Part::words("."));
    parts
}

/// When the first low point throws slugs and trips the limit.
fn low_points(whole: &Whole, style: Style) -> Vec<Vec<Part>> {
    let tubes = [
        (Tube::Intake, Some(&whole.intake)),
        (Tube::Exhaust, whole.exhaust.as_ref()),
    ];
    let told = tubes.into_iter().filter_map(|(tube, water)| {
        let water = water?;
        let first = water.troubles.first()?;
        let at = match first.at {
            TroubleAt::Pool(number) => water.drainage.pools.get(number)?.at,
            TroubleAt::Trap(number) => water.traps.get(number)?.at,
        };
        let what = match first.trouble {
            Trouble::FirstSlugs => "the first slugs of water are thrown at ",
            Trouble::LowLimit => "the airflow falls under its low limit by the water at ",
            Trouble::Sealed => "water closes the bore at ",
            Trouble::TrapFull => "the trap is full at ",
        };
        let mut parts = vec![
            Part::words("From dry walls "),
            Part::words(what),
            place(at, Figure::LowPoint, tube, style),
            Part::words(of_exhaust(tube)),
            Part::words(" after "),
            time(
                first.after,
                Figure::TimeToTrouble,
                Spot::along(tube, at),
                style,
            ),
        ];
        if let Some(interval) = water.drain_interval {
            parts.push(Part::words("; half of that is the longest to wait, "));
            parts.push(time(
                interval,
                Figure::DrainIntervalProposed,
                Spot::tube(tube),
                style,
            ));
        }
        parts.push(Part::words("."));
        Some(parts)
    });
    told.collect()
}

/// What comes through, and how long it takes.
fn air(outcome: &AirflowOutcome, style: Style) -> Vec<Part> {
    let now = &outcome.now;
    let spot = Spot::tube(Tube::Intake);
    let mut parts = vec![
        Part::figure(
            AIR_FLOW.show(now.sensor, style).to_string(),
            Emphasis::Strong,
            Figure::SensorFlow,
            spot,
        ),
        Part::words(" reach the sensor, "),
        percent(now.share, Figure::SampleShare, style),
        Part::words(" of it from the duct"),
    ];
    if let Some(band) = now.transport {
        let seconds = |time: Time, figure: Figure| {
            let number = format::significant(time.to_seconds(), 2, 0, style.mark);
            Part::figure(format!("{number}\u{a0}s"), Emphasis::None, figure, spot)
        };
        parts.extend([
            Part::words("; smoke takes "),
            seconds(band.first, Figure::TransportFirst),
            Part::words(" to "),
            seconds(band.ninety_percent, Figure::TransportNinety),
        ]);
    }
    parts.push(Part::words("."));
    parts
}

/// The limits, and the fault that they do not see.
fn limits(outcome: &AirflowOutcome, style: Style) -> Vec<Vec<Part>> {
    let mut all = Vec::new();
    if let Some((limits, ..)) = outcome.recommended {
        all.push(vec![
            Part::words("The tightest airflow limits that no expected state trips are "),
            percent(limits.low(), Figure::LimitLow, style),
            Part::words(" and "),
            percent(limits.high(), Figure::LimitHigh, style),
            Part::words("."),
        ]);
    }
    if let Some(given) = &outcome.given
        && let Some((at, _)) = given.false_alarms.first()
        && let Some(state) = outcome.states.get(*at)
    {
        let count = given.false_alarms.len();
        let words = format!(
            "The limits in use trip in {count} of {} states in which nothing is wrong, such as: {}.",
            outcome.states.len(),
            state.state.words()
        );
        all.push(vec![Part::words(words)]);
    }
    let missed = outcome.missed();
    if let Some(worst) = missed.first() {
        let (words, at) = fault_words(worst.fault);
        let mut parts = vec![Part::words("Not seen by them: ")];
        match at {
            Some((tube, metres)) => {
                parts.push(Part::words(format!("{} {words} at ", called(tube))));
                let at = Length::metres(metres);
                parts.push(place(at, Figure::FaultPlace, tube, style));
            }
            None => parts.push(Part::words(words)),
        }
        parts.push(Part::words(", with "));
        let share = percent(worst.airflow.share, Figure::SampleShare, style);
        let spot = at.map(|(tube, metres)| Spot::along(tube, Length::metres(metres)));
        parts.push(match spot {
            Some(spot) => share.at(spot),
            None => share,
        });
        parts.push(Part::words(" of the air from the duct"));
        if 1 < missed.len() {
            parts.push(Part::words(format!(", and {} more", missed.len() - 1)));
        }
        if let Some(change) = outcome.change {
            parts.push(Part::words(format!(
                "; what would help: {}",
                change.words()
            )));
        }
        parts.push(Part::words("."));
        all.push(parts);
    }
    all
}

const fn called(tube: Tube) -> &'static str {
    match tube {
        Tube::Intake => "intake tube",
        Tube::Exhaust => "exhaust tube",
    }
}

const fn of_exhaust(tube: Tube) -> &'static str {
    match tube {
        Tube::Intake => "",
        Tube::Exhaust => " of the exhaust tube",
    }
}

fn place(at: Length, figure: Figure, tube: Tube, style: Style) -> Part {
    let text = TUBE_LENGTH.show(at, style).to_string();
    Part::figure(text, Emphasis::Strong, figure, Spot::along(tube, at))
}

fn percent(share: f64, figure: Figure, style: Style) -> Part {
    let number = format::fixed(100.0 * share, 0, style.mark);
    let text = format!("{number}\u{a0}%");
    Part::figure(text, Emphasis::Strong, figure, Spot::tube(Tube::Intake))
}

fn time(time: Time, figure: Figure, spot: Spot, style: Style) -> Part {
    let text = wording::time(time, style);
    Part::figure(text, Emphasis::Strong, figure, spot)
}
