//! Troubles: what must hold of shares whatever the log, and how often the true cause of an invented log is found.

use std::sync::LazyLock;

use dewrun_ensemble::Plan;
use dewrun_season::hours_of;
use dewrun_tests::ensembles::{example, gathered, weather};
use dewrun_tests::routes::Draw;
use dewrun_tests::troubles::OtherWorld;
use dewrun_tests::troubles_proof::{Extent, MANY, draw, found, ranked};
use dewrun_troubles::{
    Answers, Cause, Entry, EventKind, Known, Log, Modelled, Ranking, TouchedAnswer, TrapAnswer,
    TroubleAnswer, WhenAnswer, cannot_tell, contradiction, evidence, next_checks, rank,
    rank_with_spans, shares_of_answers, take_outcome,
};

const MEMBERS: u32 = 12;
/// 1 January 2001, the start of the invented weather, s since 1970.
const START_S: i64 = 978_307_200;
const HOUR_S: i64 = 3600;
const HOURS: usize = 8760;

static MODELLED: LazyLock<Modelled> = LazyLock::new(|| {
    let weather = weather(0..HOURS).expect("the weather is there");
    let plan = Plan::new(
        example("gull-harbour-roof").expect("it can be read").usual,
        1,
    );
    let all = gathered(&plan, &weather, 0..MEMBERS);
    let usual = plan.usual();
    let hourly = hours_of(&usual.run, &usual.season, &weather, None).expect("hours");
    let known = Known {
        plan: &plan,
        gathered: &all,
        weights: None,
        start_s: &hourly.start_s,
    };
    Modelled::of(&known).expect("members")
});

fn entry(hour: i64, kind: EventKind) -> Entry {
    Entry {
        at_s: START_S + hour * HOUR_S,
        wall_hour: u8::try_from(hour.rem_euclid(24)).ok(),
        kind,
        grams: None,
        percent: None,
    }
}

fn year(entries: Vec<Entry>) -> Log {
    let end = START_S + 8760 * HOUR_S;
    Log::new(entries, Some((START_S, end))).expect("a time")
}

fn answers() -> Answers {
    Answers {
        trouble: Some(TroubleAnswer::AirflowLow),
        when: Some(WhenAnswer::SummerNight),
        trap: Some(TrapAnswer::None),
        touched: Some(TouchedAnswer::NotSure),
        southern: false,
    }
}

fn share(ranking: &Ranking, cause: Cause) -> f64 {
    let mut causes = ranking.causes.iter();
    causes
        .find(|one| one.cause == cause)
        .expect("all causes")
        .share
}

#[test]
fn an_empty_log_leaves_the_answers_alone() {
    for answers in [Answers::default(), answers()] {
        let alone = shares_of_answers(&answers, Some(&MODELLED));
        let all: f64 = alone.iter().sum();
        assert!((all - 1.0).abs() < 1e-12, "{all}");
        let filter = vec![
            entry(2000, EventKind::FilterChanged),
            entry(5000, EventKind::Other),
        ];
        for log in [None, Some(year(Vec::new())), Some(year(filter))] {
            let ranking = rank(&answers, Some(&MODELLED), log.as_ref());
            for (cause, alone) in Cause::ALL.into_iter().zip(&alone) {
                assert_eq!(share(&ranking, cause), *alone, "{cause:?}");
            }
            assert!(ranking.too_few, "and says so");
            assert!(
                cannot_tell(&ranking)
                    .iter()
                    .any(|told| told.contains("no trouble in the log")),
                "{:?}",
                cannot_tell(&ranking)
            );
        }
    }
}

/// A log whose times were shuffled says nothing of the weather.
#[test]
fn shuffled_times_speak_for_no_weather() {
    let mut held = 0;
    for seed in 0..100 {
        let mut draw = Draw::new(seed);
        let entries = (0..12).map(|_| {
            let hour = i64::try_from(draw.below(HOURS)).expect("an hour");
            entry(hour, EventKind::AirflowLow)
        });
        let log = year(entries.collect());
        let ranking = rank(&answers(), Some(&MODELLED), Some(&log));
        let mut of_weather = (ranking.causes.iter()).filter(|one| one.cause.follows_weather());
        held += usize::from(of_weather.all(|one| one.share <= one.by_answers + 0.1));
    }
    assert!(90 <= held, "{held} of 100");
}

/// A contact that chatters: 300 times low on one day, once on another. All chances are numbers, and a weak fan is one of the causes.
#[test]
fn a_day_of_hundreds_of_troubles_is_weighed() {
    let day = (0..300).map(|at| entry(24 * 60 + at % 24, EventKind::AirflowLow));
    let entries = day.chain([entry(24 * 200, EventKind::AirflowLow)]);
    let log = year(entries.collect());
    let (ranking, spans) = rank_with_spans(&answers(), &MODELLED, &log);
    for one in &ranking.causes {
        assert!(one.gain.is_finite() && one.by_readings == 0.0, "{one:?}");
        let numbers = one.explained.iter().chain(&one.factors);
        assert!(
            numbers.into_iter().all(|number| number.is_finite()),
            "{:?}",
            one.cause
        );
    }
    let (low, high) = spans[Cause::FanWeak.place()];
    assert!(0.0 <= low && low <= high && high <= 1.0, "{low} {high}");
}

/// Water found after the modelled nights of July is water in the low point; the next check is about it, and what is seen there moves the shares.
#[test]
fn water_where_it_is_modelled_is_found() {
    let wettest = wettest_hours(10);
    let mut entries: Vec<Entry> = wettest
        .iter()
        .map(|hour| entry(*hour, EventKind::AirflowLow))
        .collect();
    for hour in wettest.iter().step_by(3) {
        entries.push(Entry {
            grams: Some(60.0),
            ..entry(hour + 20, EventKind::WaterFound)
        });
    }
    let log = year(entries);
    let mut ranking = rank(&answers(), Some(&MODELLED), Some(&log));
    let first = &ranking.causes[0];
    assert_eq!(
        first.cause,
        Cause::LowPointWater,
        "{:?}",
        &ranking.causes[..3]
    );
    assert!(
        !ranking.too_few && contradiction(&ranking).is_none(),
        "{:?}",
        contradiction(&ranking)
    );
    let told = evidence(&log, &ranking, first);
    assert!(
        told.for_it
            .iter()
            .any(|told| told.contains("modelled water")),
        "{told:?}"
    );
    let (same, spans) = rank_with_spans(&answers(), &MODELLED, &log);
    for (one, other) in ranking.causes.iter().zip(&same.causes) {
        let apart = (one.share - other.share).abs();
        assert!(
            one.cause == other.cause && apart < 1e-9,
            "{one:?} {other:?}"
        );
    }
    let (low, high) = spans[Cause::LowPointWater.place()];
    assert!(
        low <= first.share && first.share <= high && low < high,
        "{low} {high}"
    );
    let checks = next_checks(&ranking, MODELLED.has_trap());
    let expected: f64 = checks[0]
        .outcomes
        .iter()
        .map(|outcome| outcome.expected)
        .sum();
    assert!(
        (expected - 1.0).abs() < 1e-9,
        "something is seen: {checks:?}"
    );
    assert!(
        checks
            .iter()
            .all(|check| (0.0..=1.0).contains(&check.settles)),
        "{checks:?}"
    );
    let before = share(&ranking, Cause::LowPointWater);
    take_outcome(&mut ranking, dewrun_troubles::Check::EmptyAndMeasure, 1);
    assert!(
        share(&ranking, Cause::LowPointWater) < before,
        "no change speaks against water"
    );
}

/// Fourteen troubles in the hours of a seed, each with what the panel showed.
fn shown(seed: u64, percent: impl Fn(&mut Draw) -> Option<f64>) -> Vec<Entry> {
    let (mut hours, mut reads) = (Draw::new(seed), Draw::new(seed ^ 0x9a7e));
    let each = (0..14).map(|_| Entry {
        percent: percent(&mut reads),
        ..entry(
            i64::try_from(hours.below(HOURS)).expect("an hour"),
            EventKind::AirflowLow,
        )
    });
    each.collect()
}

fn of(ranking: &Ranking, cause: Cause) -> &dewrun_troubles::Ranked {
    let mut causes = ranking.causes.iter();
    causes.find(|one| one.cause == cause).expect("all causes")
}

/// What trips near the reading of a clean line speaks for the limits, and is told.
#[test]
fn readings_near_a_clean_line_speak_for_limits() {
    for seed in 0..4 {
        let rank = |entries| rank(&Answers::default(), Some(&MODELLED), Some(&year(entries)));
        let unread = rank(shown(seed, |_| None));
        let clean = shown(seed, |draw| Some(draw.between(97.0, 101.0)));
        let read = rank(clean.clone());
        let (before, after) = (of(&unread, Cause::LimitsBad), of(&read, Cause::LimitsBad));
        assert!(before.share < after.share, "{before:?} {after:?}");
        assert!(
            of(&read, Cause::FanWeak).by_readings < 0.0,
            "no weak fan: {read:?}"
        );
        let told = evidence(&year(clean), &read, after).for_it;
        let of_it = after.explained.iter().filter(|chance| 0.6 <= **chance);
        if 3 <= of_it.count() && 1.1 < after.by_readings {
            assert!(
                told.iter()
                    .any(|told| told.ends_with("%, which is what a clean line gives.")),
                "{told:?}"
            );
        }
    }
}

/// A fault shows the same each time; what lies anywhere is no fault of one size.
#[test]
fn readings_that_agree_speak_for_what_lasts() {
    let best = |entries| {
        let ranking = rank(&Answers::default(), Some(&MODELLED), Some(&year(entries)));
        let lasting = [Cause::PartedTube, Cause::FanWeak];
        let each = lasting.map(|cause| of(&ranking, cause).by_readings);
        each.into_iter().fold(f64::NEG_INFINITY, f64::max)
    };
    for seed in 0..3 {
        let agree = best(shown(seed, |draw| Some(draw.between(78.0, 82.0))));
        let differ = best(shown(seed, |draw| Some(draw.between(20.0, 100.0))));
        assert!(differ < agree && 0.0 < agree, "{differ} {agree}");
    }
}

/// In which order entries stand says nothing, and neither does a percent beside anything but airflow.
#[test]
fn order_and_other_percents_say_nothing() {
    for seed in 0..3 {
        let mut entries = shown(seed, |draw| {
            let percent = draw.between(30.0, 110.0);
            draw.chance(0.5).then_some(percent)
        });
        let again = Entry {
            percent: Some(55.0),
            ..entries[3]
        };
        entries.push(again);
        entries.push(entry(4000, EventKind::WaterFound));
        let rank = |entries| rank(&answers(), Some(&MODELLED), Some(&year(entries)));
        let ranking = rank(entries.clone());
        let turned: Vec<Entry> = entries.iter().rev().copied().collect();
        assert_eq!(rank(turned), ranking, "in any order");
        if let Some(water) = entries.last_mut() {
            water.percent = Some(64.0);
        }
        assert_eq!(rank(entries), ranking, "no reading of the airflow");
        let unread = rank(shown(seed, |_| None));
        assert!(
            unread.causes.iter().all(|one| one.by_readings == 0.0),
            "nothing was read"
        );
    }
}

/// Hours in which most water is modelled, a day apart at least.
fn wettest_hours(count: usize) -> Vec<i64> {
    let log = year(vec![entry(0, EventKind::Other)]);
    let hours = dewrun_troubles::Hours::of(&MODELLED, &log).expect("hours");
    let mut order: Vec<usize> = (0..hours.water_g.len()).collect();
    order.sort_by(|one, other| hours.water_g[*other].total_cmp(&hours.water_g[*one]));
    let mut found: Vec<i64> = Vec::new();
    for hour in order {
        let hour = i64::try_from(hour).expect("an hour");
        if found.iter().all(|one| 24 <= (one - hour).abs()) {
            found.push(hour);
        }
        if found.len() == count {
            break;
        }
    }
    found
}

/// Answers that say alarms, and a log of high airflow at eight in the morning: both are told.
#[test]
fn answers_and_log_that_contradict_are_told() {
    let answers = Answers {
        trouble: Some(TroubleAnswer::Alarm),
        ..answers()
    };
    let entries = (0..14).map(|week| entry(24 * (7 * week + week % 5) + 8, EventKind::AirflowHigh));
    let log = year(entries.collect());
    let ranking = rank(&answers, Some(&MODELLED), Some(&log));
    assert_eq!(
        ranking.causes[0].cause,
        Cause::DuctSwitching,
        "{:?}",
        &ranking.causes[..3]
    );
    let told = contradiction(&ranking);
    assert!(
        told.is_some_and(|told| told.contains("Duct fan or damper switching")),
        "{ranking:?}"
    );
}

/// Ten logs a cause on three runs: far from the long proof, but nothing is broken.
#[test]
fn true_causes_are_found() {
    let weather = weather(0..HOURS).expect("the weather is there");
    let extent = Extent {
        runs: 3,
        members: 12,
        truths: 1,
        seed: 7001,
    };
    let runs = draw(&weather, &extent).expect("runs with an answer");
    for (world, least) in [(OtherWorld::No, [0.65, 0.8]), (OtherWorld::Yes, [0.5, 0.7])] {
        let cases = ranked(&runs, world, 10).expect("ranked");
        let (first, number) = found(&cases, 1, MANY);
        let (two, _) = found(&cases, 2, MANY);
        // Half of all that are drawn.
        assert!(60 <= number, "{number} logs");
        assert!(
            least[0] <= first && least[1] <= two,
            "{world:?}: first in {first}, among two in {two}"
        );
        let few = cases.iter().filter(|case| case.troubles <= 2);
        assert!(
            few.into_iter().all(|case| case.ranking.too_few),
            "two troubles are too few"
        );
    }
}
