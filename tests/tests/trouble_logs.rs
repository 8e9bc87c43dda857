//! What invented trouble logs promise: repeatable, noisy, incomplete, and of every cause.

use dewrun_tests::ensembles::weather;
use dewrun_tests::routes::Draw;
use dewrun_tests::troubles::{
    Kind, OtherWorld, Site, TrueCause, Truth, happenings, log_of, site, truth,
};

const SITES: u64 = 8;

fn drawn() -> Vec<(Site, Truth)> {
    let weather = weather(0..8760).expect("the weather is there");
    let drawn = (0..40).filter_map(|seed| {
        let site = site(seed).expect("it can be read");
        // Corners of the spans that have no answer are left out.
        let truth = truth(&site, &weather, seed, OtherWorld::No).ok()?;
        Some((site, truth))
    });
    drawn.take(usize::try_from(SITES).expect("few")).collect()
}

#[test]
fn logs_keep_their_promises() {
    let drawn = drawn();
    assert_eq!(drawn.len() as u64, SITES, "sites with an answer");
    let mut entries = [0_usize; 2];
    for cause in TrueCause::ALL {
        let mut most = 0;
        for (at, (_, truth)) in drawn.iter().enumerate() {
            for number in 0..5 {
                let seed = 100 * at as u64 + number;
                let log = log_of(truth, cause, seed);
                assert_eq!(
                    log.entries,
                    log_of(truth, cause, seed).entries,
                    "repeatable"
                );
                assert!(
                    log.entries.is_sorted_by_key(|entry| entry.at_s),
                    "{cause:?}: in order"
                );
                most = most.max(log.of_cause);
                entries[0] += log.entries.len();
                entries[1] += log.of_cause;
            }
        }
        println!("{cause:?}: {most}");
        if !matches!(cause, TrueCause::Frost | TrueCause::TrapDry) {
            assert!(3 <= most, "{cause:?} makes trouble somewhere: {most}");
        }
    }
    let noise = 1.0 - entries[1] as f64 / entries[0] as f64;
    assert!(
        0.3 <= noise,
        "three of ten have nothing to do with the cause: {noise}"
    );
}

/// Filters are changed and troubles go; weekends are quiet where the duct switches by the clock.
#[test]
fn causes_behave_as_they_are_named() {
    let drawn = drawn();
    let (_, truth) = &drawn[0];
    let all = (0, truth.start_s.len());
    let of = |cause, seed| happenings(truth, cause, all, &mut Draw::new(seed));
    for seed in 0..20 {
        for one in of(TrueCause::DuctSwitches, seed) {
            // 1 January 2001, the start of the weather, was a Monday.
            let day = (one.at_h / 24.0).floor();
            let of_week = day - 7.0 * (day / 7.0).floor();
            assert!(of_week < 5.0, "{one:?}: a working day");
        }
        assert!(
            of(TrueCause::Mist, seed)
                .iter()
                .all(|one| one.kind == Kind::Alarm),
            "mist looks like smoke"
        );
        let loads = of(TrueCause::FilterLoads, seed);
        for pair in loads.windows(2) {
            if pair[0].kind == Kind::Filter {
                assert!(
                    24.0 * 7.0 < pair[1].at_h - pair[0].at_h,
                    "{pair:?}: a new filter lasts"
                );
            }
        }
    }
}
