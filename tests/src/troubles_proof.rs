//! How often the true cause of an invented log is found: runs are drawn, their ensembles computed once, and logs of every cause ranked.

use std::collections::BTreeMap;
use std::num::NonZero;
use std::thread;

use dewrun_ensemble::Plan;
use dewrun_season::hours_of;
use dewrun_troubles::{Answers, Cause, Entry, EventKind, Known, Log, Modelled, Ranking, rank};
use dewrun_weather::Series;

use crate::ensembles::gathered;
use crate::troubles::{Kind, Log as Invented, OtherWorld, TrueCause, Truth, log_of, site, truth};

/// With fewer troubles of its own a cause has left nothing to see.
const SEEN: usize = 2;
/// With as many troubles the true cause ought to be found.
pub const MANY: usize = 8;
/// A cause that has left nothing to see so many times at a run leaves nothing there.
const IN_VAIN: usize = 12;
/// Seeds that are tried for a run that has an answer.
const TRIES: u64 = 8;

/// How much is proven.
#[derive(Debug, Clone, Copy)]
pub struct Extent {
    /// Runs that are drawn.
    pub runs: u64,
    /// Members of each run's ensemble.
    pub members: u32,
    /// What truly is at each, so many times.
    pub truths: u64,
    /// Where seeds begin.
    pub seed: u64,
}

/// A log that was ranked.
#[derive(Debug, Clone)]
pub struct Case {
    /// Its true cause.
    pub cause: Cause,
    /// Troubles in it, noise included.
    pub troubles: usize,
    /// Troubles of the cause.
    pub of_cause: usize,
    /// What was said of it.
    pub ranking: Ranking,
}

impl Case {
    /// At which place the true cause was ranked, from 0.
    #[must_use]
    pub fn place(&self) -> usize {
        let mut causes = self.ranking.causes.iter();
        causes
            .position(|one| one.cause == self.cause)
            .unwrap_or(usize::MAX)
    }
}

/// A run that is drawn, with all that is needed to draw its logs and to rank them.
#[derive(Debug, Clone)]
pub struct Drawn {
    /// What truly is there, several times.
    pub truths: Vec<Truth>,
    /// The same where sites differ from all that is known of them.
    pub others: Vec<Truth>,
    /// What its ensemble says.
    pub modelled: Modelled,
    /// Start of each hour, s since 1970.
    pub start_s: Vec<i64>,
    /// Where the seeds of its logs begin.
    pub seed: u64,
}

/// Runs, drawn, with their ensembles; a draw without an answer is left out.
///
/// # Errors
/// A sentence where too few runs can be drawn.
pub fn draw(weather: &Series, extent: &Extent) -> Result<Vec<Drawn>, String> {
    let wanted = usize::try_from(extent.runs).unwrap_or(usize::MAX);
    let seeds = (0..2 * extent.runs + 4).map(|run| extent.seed + 1000 * run);
    let runs = seeds.filter_map(|seed| drawn(weather, extent, seed).ok());
    let runs: Vec<Drawn> = runs.take(wanted).collect();
    if runs.len() < wanted {
        return Err(format!("only {} runs have an answer", runs.len()));
    }
    Ok(runs)
}

/// Ranks logs of every cause, drawn in turn from all runs at which the cause leaves something to see.
///
/// # Errors
/// A sentence where a thread broke down.
pub fn ranked(runs: &[Drawn], world: OtherWorld, logs: u64) -> Result<Vec<Case>, String> {
    let threads = thread::available_parallelism().map_or(1, NonZero::get);
    let mine = |first: usize| -> Vec<(usize, Vec<Case>)> {
        let causes = TrueCause::ALL.into_iter().enumerate();
        let causes = causes.skip(first).step_by(threads);
        causes
            .map(|(at, cause)| (at, of_cause(cause, (runs, world), logs)))
            .collect()
    };
    let mut all: Vec<(usize, Vec<Case>)> = thread::scope(|scope| {
        let hands: Vec<_> = (0..threads)
            .map(|first| scope.spawn(move || mine(first)))
            .collect();
        let joined = hands.into_iter().map(|hand| hand.join());
        joined.filter_map(Result::ok).flatten().collect()
    });
    if all.len() < TrueCause::ALL.len() {
        return Err("a thread broke down".to_owned());
    }
    all.sort_by_key(|(at, _)| *at);
    Ok(all.into_iter().flat_map(|(_, cases)| cases).collect())
}

impl Drawn {
    fn in_world(&self, world: OtherWorld) -> &[Truth] {
        match world {
            OtherWorld::No => &self.truths,
            OtherWorld::Yes => &self.others,
        }
    }
}

fn drawn(weather: &Series, extent: &Extent, seed: u64) -> Result<Drawn, String> {
    let found = (0..TRIES).find_map(|more| {
        let site = site(seed + more).ok()?;
        let weather = site.climate(weather);
        let of = |world| -> Vec<Truth> {
            (0..4 * extent.truths)
                .filter_map(|number| truth(&site, &weather, seed + 31 * number, world).ok())
                .take(usize::try_from(extent.truths).unwrap_or(1))
                .collect()
        };
        let (truths, others) = (of(OtherWorld::No), of(OtherWorld::Yes));
        let is_there = !truths.is_empty() && !others.is_empty();
        is_there.then_some((site, weather, truths, others))
    });
    let (site, weather, truths, others) = found.ok_or("no run has an answer")?;
    let plan = Plan::new(site.said.usual, seed);
    let all = gathered(&plan, &weather, 0..extent.members);
    let inputs = plan.usual();
    let hourly =
        hours_of(&inputs.run, &inputs.season, &weather, None).map_err(|one| one.to_string())?;
    let modelled = Modelled::of(&Known {
        plan: &plan,
        gathered: &all,
        weights: None,
        start_s: &hourly.start_s,
    });
    Ok(Drawn {
        truths,
        others,
        modelled: modelled.ok_or("no member has an answer")?,
        start_s: hourly.start_s,
        seed,
    })
}

/// As many logs of a cause as are wanted, from all runs in turn; those at which it leaves nothing to see are left out after some tries.
fn of_cause(cause: TrueCause, (runs, world): (&[Drawn], OtherWorld), logs: u64) -> Vec<Case> {
    let mut places: Vec<(&Drawn, usize, usize)> = runs
        .iter()
        .flat_map(|run| (0..run.in_world(world).len()).map(move |truth| (run, truth, 0)))
        .collect();
    let mut cases = Vec::new();
    let wanted = usize::try_from(logs).unwrap_or(usize::MAX);
    let mut number = 0;
    while !places.is_empty() {
        for (run, at, in_vain) in &mut places {
            if cases.len() == wanted {
                return cases;
            }
            let seed = run.seed + 17 * number + 7919 * *at as u64;
            let log = run
                .in_world(world)
                .get(*at)
                .map(|truth| log_of(truth, cause, seed));
            let seen = log.filter(|log| cause == TrueCause::Nothing || SEEN <= log.of_cause);
            let read = seen.and_then(|log| Some((as_read(&log, &run.start_s)?, log)));
            let Some((read, log)) = read else {
                *in_vain += 1;
                continue;
            };
            *in_vain = 0;
            cases.push(Case {
                cause: cause_of(cause),
                troubles: read.troubles(),
                of_cause: log.of_cause,
                ranking: rank(&Answers::default(), Some(&run.modelled), Some(&read)),
            });
        }
        places.retain(|(_, _, in_vain)| *in_vain < IN_VAIN);
        number += 1;
    }
    cases
}

/// An invented log as it is read.
#[must_use]
pub fn as_read(log: &Invented, start_s: &[i64]) -> Option<Log> {
    let entries = log.entries.iter().map(|entry| Entry {
        at_s: entry.at_s,
        wall_hour: (!entry.day_only)
            .then(|| u8::try_from(entry.at_s.rem_euclid(86_400) / 3600).unwrap_or(0)),
        kind: kind_of(entry.kind),
        grams: entry.grams,
        percent: entry.percent,
    });
    let period = start_s
        .get(log.period.0)
        .copied()
        .zip(start_s.get(log.period.1 - 1).copied());
    Log::new(entries.collect(), period)
}

const fn kind_of(kind: Kind) -> EventKind {
    match kind {
        Kind::FlowLow => EventKind::AirflowLow,
        Kind::FlowHigh => EventKind::AirflowHigh,
        Kind::Alarm => EventKind::Alarm,
        Kind::Water => EventKind::WaterFound,
        Kind::Emptied => EventKind::Emptied,
        Kind::Filter => EventKind::FilterChanged,
        Kind::Replaced => EventKind::DetectorReplaced,
        Kind::Other => EventKind::Other,
    }
}

/// The name that the ranking has for a true cause.
#[must_use]
pub const fn cause_of(cause: TrueCause) -> Cause {
    match cause {
        TrueCause::LowPoint => Cause::LowPointWater,
        TrueCause::Mist => Cause::Mist,
        TrueCause::Frost => Cause::Frost,
        TrueCause::FilterLoads => Cause::FilterLoading,
        TrueCause::FilterMissing => Cause::FilterMissing,
        TrueCause::Parted => Cause::PartedTube,
        TrueCause::TrapDry => Cause::DryTrap,
        TrueCause::HolesFouled => Cause::HolesFouled,
        TrueCause::DuctSwitches => Cause::DuctSwitching,
        TrueCause::FanWeak => Cause::FanWeak,
        TrueCause::Limits => Cause::LimitsBad,
        TrueCause::Nothing => Cause::None,
    }
}

/// How often the true cause is among the first so many, of logs with enough troubles; and how many such logs there are.
#[must_use]
pub fn found(cases: &[Case], first: usize, at_least: usize) -> (f64, usize) {
    let many: Vec<&Case> = cases
        .iter()
        .filter(|case| at_least <= case.troubles)
        .collect();
    let found = many.iter().filter(|case| case.place() < first).count();
    (found as f64 / many.len().max(1) as f64, many.len())
}

/// How often the true cause is first, cause by cause, of logs with enough troubles; and which cause is first instead, mostly.
#[must_use]
pub fn by_cause(
    cases: &[Case],
    at_least: usize,
) -> Vec<(Cause, f64, usize, BTreeMap<Cause, usize>)> {
    let of = |cause: Cause| {
        let mine: Vec<&Case> = (cases.iter())
            .filter(|case| case.cause == cause && at_least <= case.troubles)
            .collect();
        let mut instead = BTreeMap::new();
        for case in &mine {
            if let Some(first) = case
                .ranking
                .causes
                .first()
                .filter(|first| first.cause != cause)
            {
                *instead.entry(first.cause).or_default() += 1;
            }
        }
        let wrong: usize = instead.values().sum();
        let right = (mine.len() - wrong) as f64 / mine.len().max(1) as f64;
        (cause, right, mine.len(), instead)
    };
    Cause::ALL.into_iter().map(of).collect()
}

/// For bins of a tenth: the mean share that was said, how often it was so, and how many shares lie in the bin.
#[must_use]
pub fn reliability(cases: &[Case], at_least: usize) -> Vec<(f64, f64, usize)> {
    let mut bins = vec![(0.0, 0.0, 0); 10];
    for case in cases.iter().filter(|case| at_least <= case.troubles) {
        for one in &case.ranking.causes {
            let bin = (0..9)
                .find(|bin| one.share < (f64::from(*bin) + 1.0) / 10.0)
                .unwrap_or(9);
            if let Some((said, so, number)) = bins.get_mut(usize::try_from(bin).unwrap_or(9)) {
                *said += one.share;
                *so += if one.cause == case.cause { 1.0 } else { 0.0 };
                *number += 1;
            }
        }
    }
    (bins.into_iter())
        .filter(|(_, _, number)| 0 < *number)
        .map(|(said, so, number)| (said / number as f64, so / number as f64, number))
        .collect()
}
