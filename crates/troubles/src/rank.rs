//! Causes ranked by answers and log.

use crate::answers::{Answers, shares_of_answers};
use crate::cause::Cause;
use crate::comparison::{largest_first, normalised};
use crate::follows::{Follows, Ways};
use crate::hours_of_log::{Placed, in_turns, placed};
use crate::lasting_causes;
use crate::loads::Loads;
use crate::log::Log;
use crate::modelled::{Hours, Modelled};
use crate::poisson::count;
use crate::shape::{KINDS, USUAL_KINDS, telling};
use crate::shown::{self, Read};
use crate::switching;
use crate::weather_causes::{Weighed, dry_trap, frost, limits, low_point, mist};

use dewrun_numeric::elementary::ln;

/// Fewer troubles tell too little.
const ENOUGH: usize = 4;
/// So often a log follows nothing of what is modelled of its cause, and tells nothing then.
///
/// Found on logs of invented runs, drawn apart from those of the proof.
const ASTRAY: f64 = 0.03;
/// What else may cause trouble shows in any kind, seldom as water; common practice, no source.
const KINDS_BEFORE: [f64; KINDS] = [1.0, 1.0, 1.0, 0.2, 0.2];
/// A filter that is only coarser raises the airflow by so much of what a missing one does.
const COARSER: [f64; 4] = [0.4, 0.6, 0.8, 1.0];
/// A fan loses so much of what a weak one is modelled to.
const WEAKER: [f64; 5] = [0.5, 0.75, 1.0, 1.25, 1.5];
/// What answers and a log say of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranking {
    /// The causes, the likeliest first.
    pub causes: Vec<Ranked>,
    /// Troubles that were read, what people did left out.
    pub troubles: usize,
    /// There are too few of them: the order rests on answers and on what is modelled.
    pub too_few: bool,
    /// Hours are those of another year: the climate, and not what was.
    pub is_climate: bool,
    /// The position in the log of each trouble that factors and chances are of.
    pub entries: Vec<usize>,
}

/// A cause in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranked {
    /// Which.
    pub cause: Cause,
    /// Its share of all, 0 to 1.
    pub share: f64,
    /// Its share by the answers alone.
    pub by_answers: f64,
    /// Its share by the log alone; that of all alike where there is none.
    pub by_log: f64,
    /// By how much the log speaks for it, against entries at any time: a logarithm. What nobody knows of the cause is averaged over, which is what its freedom costs.
    pub gain: f64,
    /// How much of that comes of readings off the panel; zero where there are none.
    pub by_readings: f64,
    /// Whether it has any hour at all in the time of the log.
    pub is_modelled: bool,
    /// The chance that each trouble is of this cause.
    pub explained: Vec<f64>,
    /// How many times as likely each trouble is under it than at any time.
    pub factors: Vec<f64>,
}

/// What a log says of each cause.
struct Gains {
    each: Vec<Follows>,
    are_modelled: Vec<bool>,
}

/// Ranks the causes of troubles; without a log, or with one that holds no trouble, by the answers alone.
#[must_use]
pub fn rank(answers: &Answers, modelled: Option<&Modelled>, log: Option<&Log>) -> Ranking {
    let by_answers = shares_of_answers(answers, modelled);
    let ranking = modelled.zip(log).and_then(|(modelled, log)| {
        let hours = Hours::of(modelled, log)?;
        let placed = placed(log, &hours);
        let gains = gains(modelled, &hours, &placed);
        ranked(&by_answers, gains, &placed, hours.is_climate)
    });
    ranking.unwrap_or_else(|| without_log(&by_answers))
}

/// Ranks the causes as [`rank`] does, and says between which the share of each lies, in the order of [`Cause::ALL`], as groups of troubles are left out in turn: how far the order rests on few of them.
///
/// What was done, that somebody came to look, and what is told by all entries (when a load began, how much water stood, which sizes of a fault are looked at) is known as before when a trouble is left out: the spans are a little narrower for it. There is no span where there is no trouble.
///
/// # Source
/// The jackknife: M. H. Quenouille, Biometrika 43 (1956) 353; the ends are the lowest and the highest that were met.
#[must_use]
pub fn rank_with_spans(
    answers: &Answers,
    modelled: &Modelled,
    log: &Log,
) -> (Ranking, Vec<(f64, f64)>) {
    let by_answers = shares_of_answers(answers, Some(modelled));
    let both = Hours::of(modelled, log).and_then(|hours| {
        let placed = in_turns(placed(log, &hours));
        let gains = gains(modelled, &hours, &placed);
        let spans = spans(&by_answers, &gains, &placed);
        let ranking = ranked(&by_answers, gains, &placed, hours.is_climate)?;
        Some((ranking, spans))
    });
    both.unwrap_or_else(|| (without_log(&by_answers), Vec::new()))
}

/// The causes by what a log says of them; none where it holds no trouble.
fn ranked(
    by_answers: &[f64],
    gains: Gains,
    placed: &[Placed],
    is_climate: bool,
) -> Option<Ranking> {
    let telling = only_telling(placed);
    let troubles = || telling.iter().map(|one| one.kind.trouble().is_some());
    let entries: Vec<usize> = (telling.iter().zip(troubles()))
        .filter(|(_, is_trouble)| *is_trouble)
        .map(|(one, _)| one.entry)
        .collect();
    if entries.is_empty() {
        return None;
    }
    let shares = posterior(by_answers, &gains, 0);
    let even = vec![1.0 / count(Cause::ALL.len()); Cause::ALL.len()];
    let by_log = posterior(&even, &gains, 0);
    let each = Cause::ALL.iter().zip(gains.each).zip(gains.are_modelled);
    let mut causes: Vec<Ranked> = each
        .map(|((cause, follows), is_modelled)| {
            let of = |values: &[f64]| values.get(cause.place()).copied().unwrap_or(0.0);
            let told = follows.told.into_iter().zip(troubles());
            let told = told.filter(|(_, is_trouble)| *is_trouble);
            let (explained, factors) = told.map(|(told, _)| told).unzip();
            let gain = follows.gains.first().copied().unwrap_or(0.0);
            Ranked {
                cause: *cause,
                share: of(&shares),
                by_answers: of(by_answers),
                by_log: of(&by_log),
                gain,
                by_readings: gain - follows.unread,
                is_modelled,
                explained,
                factors,
            }
        })
        .collect();
    largest_first(&mut causes, |one| one.share);
    Some(Ranking {
        causes,
        troubles: entries.len(),
        too_few: entries.len() < ENOUGH,
        is_climate,
        entries,
    })
}

/// Between which the share of each cause lies; none where no trouble can be left out.
fn spans(by_answers: &[f64], gains: &Gains, placed: &[Placed]) -> Vec<(f64, f64)> {
    let turns = placed.iter().map(|one| one.turn).max().unwrap_or(0);
    if turns == 0 {
        return Vec::new();
    }
    let all = posterior(by_answers, gains, 0).into_iter();
    let mut found: Vec<(f64, f64)> = all.map(|share| (share, share)).collect();
    for turn in 1..=turns {
        let left = posterior(by_answers, gains, turn);
        for ((low, high), share) in found.iter_mut().zip(left) {
            *low = low.min(share);
            *high = high.max(share);
        }
    }
    found
}

/// Entries that tell by when they come: troubles, and water that was let out.
fn only_telling(placed: &[Placed]) -> Vec<Placed> {
    placed
        .iter()
        .copied()
        .filter(|one| telling(one.kind).is_some())
        .collect()
}

fn without_log(by_answers: &[f64]) -> Ranking {
    let even = 1.0 / count(Cause::ALL.len());
    let each = Cause::ALL.iter().zip(by_answers);
    let mut causes: Vec<Ranked> = each
        .map(|(cause, share)| Ranked {
            cause: *cause,
            share: *share,
            by_answers: *share,
            by_log: even,
            gain: 0.0,
            by_readings: 0.0,
            is_modelled: true,
            explained: Vec::new(),
            factors: Vec::new(),
        })
        .collect();
    largest_first(&mut causes, |one| one.share);
    Ranking {
        causes,
        troubles: 0,
        too_few: true,
        is_climate: false,
        entries: Vec::new(),
    }
}

/// Shares of the causes, of all entries or of those that a turn leaves.
fn posterior(before: &[f64], gains: &Gains, turn: usize) -> Vec<f64> {
    let each = before.iter().zip(&gains.each);
    let gain = |follows: &Follows| follows.gains.get(turn).copied().unwrap_or(0.0);
    let scores: Vec<f64> = each
        .map(|(before, follows)| ln(before.max(1e-12)) + gain(follows))
        .collect();
    let shares = normalised(&scores).into_iter().zip(before);
    shares
        .map(|(share, before)| (1.0 - ASTRAY) * share + ASTRAY * before)
        .collect()
}

fn gains(modelled: &Modelled, hours: &Hours, placed: &[Placed]) -> Gains {
    let troubles = only_telling(placed);
    let sound = shown::sound(hours);
    let narrowing = shown::of_narrowing(&troubles, &sound);
    let follows = |cause: &Cause| -> Option<Follows> {
        let mut ways = Ways::none(troubles.len());
        let of_shapes = |shapes: Vec<Weighed>, low: &[Read], high: &[Read], ways: &mut Ways| {
            for one in shapes {
                let by_hour = shown::of_narrowed(&troubles, &sound, &one.narrowed);
                for shape in one.shapes {
                    let side = if shape.is_high() { high } else { low };
                    let reads = if by_hour.is_empty() { side } else { &by_hour };
                    shape.ways(&troubles, reads, &one.amounts, ways);
                }
            }
        };
        match cause {
            Cause::LowPointWater => {
                let shapes = low_point(hours, placed, modelled.low_point);
                of_shapes(shapes, &narrowing, &narrowing, &mut ways);
            }
            Cause::Mist => of_shapes(mist(hours), &[], &[], &mut ways),
            Cause::Frost => of_shapes(frost(hours), &[], &[], &mut ways),
            Cause::DryTrap => {
                let shapes = dry_trap(hours, modelled.signs.dry_trap);
                let [low, high] = [false, true].map(|is_high| {
                    let sizes = shown::sizes(&modelled.faults.dry_trap, &[1.0], is_high);
                    shown::of_fault(&troubles, &sound, &sizes)
                });
                of_shapes(shapes, &low, &high, &mut ways);
            }
            Cause::LimitsBad => {
                let reads = shown::of_sound(&troubles, &sound);
                of_shapes(limits(hours), &reads, &reads, &mut ways);
            }
            Cause::DuctSwitching => {
                let jumps = shown::any(&troubles).then(|| shown::of_jumps(&troubles, &sound));
                switching::ways(
                    &troubles,
                    &modelled.switching_hours,
                    jumps.as_ref(),
                    &mut ways,
                );
            }
            Cause::None => {
                ways.take_sum(Follows::nothing(troubles.len()), 0.7);
                ways.take_sum(any_kinds(&troubles), 0.3);
            }
            _ => {
                let of = (placed, troubles.as_slice());
                for (follows, weight) in lasting(*cause, modelled, of, (hours, &sound)) {
                    ways.take_sum(follows, weight);
                }
            }
        }
        ways.all()
    };
    let each: Vec<Option<Follows>> = Cause::ALL.iter().map(follows).collect();
    Gains {
        are_modelled: each.iter().map(Option::is_some).collect(),
        each: (each.into_iter())
            .map(|follows| follows.unwrap_or_else(|| Follows::nothing(troubles.len())))
            .collect(),
    }
}

/// Something else, that makes some kinds of trouble more often than others: at any time, all proportions of kinds alike before.
///
/// The mean over the proportions is Dirichlet's, with so much of each kind beforehand: each entry is as likely as the part of those before that are of its kind.
fn any_kinds(troubles: &[Placed]) -> Follows {
    let gain = |turn: usize| {
        let mut seen = KINDS_BEFORE;
        let all: f64 = seen.iter().sum();
        let mut gain = 0.0;
        let left = troubles.iter().filter(|one| one.is_left(turn));
        for (before, one) in left.enumerate() {
            let kind = telling(one.kind).unwrap_or(0);
            let usual = USUAL_KINDS.get(kind).copied().unwrap_or(1.0);
            if let Some(seen) = seen.get_mut(kind) {
                gain += ln(*seen / (count(before) + all) / usual);
                *seen += 1.0;
            }
        }
        gain
    };
    Follows {
        gains: core::array::from_fn(gain),
        unread: gain(0),
        ..Follows::nothing(troubles.len())
    }
}

fn lasting(
    cause: Cause,
    modelled: &Modelled,
    (placed, troubles): (&[Placed], &[Placed]),
    (hours, sound): (&Hours, &[f64]),
) -> Vec<(Follows, f64)> {
    let (readings, parts): (&[f64], &[f64]) = match cause {
        Cause::PartedTube => (&modelled.faults.parted, &[1.0]),
        Cause::FilterMissing => (&modelled.faults.no_filter, &COARSER),
        Cause::FanWeak => (&modelled.faults.weak, &WEAKER),
        _ => (&[], &[]),
    };
    let ways = lasting_causes::of(cause, &modelled.signs).into_iter();
    ways.map(|(spells, weight)| {
        let is_high = 0.0 < spells.kinds[1];
        let reads = if spells.loads {
            shown::of_loading(troubles, sound, &Loads::of(placed, spells.mended_by.0))
        } else {
            let sizes = shown::sizes(readings, parts, is_high);
            shown::of_fault(troubles, sound, &sizes)
        };
        (spells.follows(placed, hours, readings, &reads), weight)
    })
    .collect()
}
