//! How often the true cause of an invented log is found: runs are drawn, their ensembles computed once, and logs of every cause ranked.

use std::collections::BTreeMap;

use dewrun_ensemble::Plan;
use dewrun_season::hours_of;
use dewrun_troubles::{Answers, Cause, Entry, EventKind, Known, Log, Modelled, Ranking, rank};
use dewrun_weather::Series;

use crate::ensembles::gathered;
use crate::troubles::{Kind, Log as Invented, OtherWorld, Site, TrueCause, log_of, site, truth};

/// With fewer troubles of its own a cause has left nothing to see.
const SEEN: usize = 2;
/// With as many troubles the true cause ought to be found.
pub const MANY: usize = 8;
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
    /// Logs of each cause for each of them.
    pub logs: u64,
    /// Where seeds begin.
    pub seed: u64,
    /// Whether sites differ from all that is known of them.
    pub world: OtherWorld,
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

/// Ranks logs of every cause.
///
/// # Errors
/// A sentence where a run can't be drawn.
pub fn cases(weather: &Series, extent: &Extent) -> Result<Vec<Case>, String> {
    let mut cases = Vec::new();
    for run in 0..extent.runs {
        let seed = extent.seed + 1000 * run;
        let found = (0..TRIES).find_map(|more| {
            let site = site(seed + more).ok()?;
            let truths: Vec<_> = (0..4 * extent.truths)
                .filter_map(|number| truth(&site, weather, seed + 31 * number, extent.world).ok())
                .take(usize::try_from(extent.truths).unwrap_or(1))
                .collect();
            (!truths.is_empty()).then_some((site, truths))
        });
        let (site, truths) = found.ok_or("no run has an answer")?;
        of_run(&site, &truths, weather, extent, seed, &mut cases)?;
    }
    Ok(cases)
}

fn of_run(
    site: &Site,
    truths: &[crate::troubles::Truth],
    weather: &Series,
    extent: &Extent,
    seed: u64,
    cases: &mut Vec<Case>,
) -> Result<(), String> {
    let plan = Plan::new(site.said.usual.clone(), seed);
    let all = gathered(&plan, weather, 0..extent.members);
    let inputs = plan.usual();
    let hourly =
        hours_of(&inputs.run, &inputs.season, weather, None).map_err(|one| one.to_string())?;
    let modelled = Modelled::of(&Known {
        plan: &plan,
        gathered: &all,
        weights: None,
        start_s: &hourly.start_s,
    });
    let modelled = modelled.ok_or("no member has an answer")?;
    for (at, truth) in truths.iter().enumerate() {
        for cause in TrueCause::ALL {
            for number in 0..extent.logs {
                let log = log_of(truth, cause, seed + 17 * number + 7919 * at as u64);
                if cause != TrueCause::Nothing && log.of_cause < SEEN {
                    continue;
                }
                let Some(read) = as_read(&log, &hourly.start_s) else {
                    continue;
                };
                cases.push(Case {
                    cause: cause_of(cause),
                    troubles: read.troubles(),
                    of_cause: log.of_cause,
                    ranking: rank(&Answers::default(), Some(&modelled), Some(&read)),
                });
            }
        }
    }
    Ok(())
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
