//! A list of troubles damaged anywhere: read or not, and never broken.

use dewrun_tests::routes::Draw;
use dewrun_troubles::{ListSaid, WallClock, read_list};

const CLOCK: WallClock = WallClock {
    utc_offset_s: 3600,
    daylight: None,
};

#[test]
fn damaged_lists_are_read_or_not() {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../demo/laundry-exhaust-log.csv"
    );
    let text = std::fs::read(path).expect("the log is there");
    let whole = read_list(&text, &ListSaid::default(), &CLOCK, 3600).expect("it has dates");
    assert_eq!(whole.entries.len(), 17, "all its rows");
    let mut read = 0;
    for seed in 0..2000 {
        let mut draw = Draw::new(seed);
        let mut bytes = text.clone();
        for _ in 0..1 + draw.below(8) {
            let at = draw.below(bytes.len());
            match draw.below(3) {
                0 => bytes[at] = bytes[draw.below(text.len())],
                1 => bytes[at] = u8::try_from(draw.below(256)).expect("a byte"),
                _ => bytes.truncate(at.max(40)),
            }
            if bytes.len() < text.len() {
                break;
            }
        }
        let Ok(list) = read_list(&bytes, &ListSaid::default(), &CLOCK, 3600) else {
            continue;
        };
        read += 1;
        assert!(
            list.entries.len() <= 26,
            "no row from nothing: {}",
            list.entries.len()
        );
        assert!(
            list.entries
                .iter()
                .all(|(entry, _)| entry.grams.is_none_or(f64::is_finite)),
            "amounts are numbers"
        );
    }
    assert!(1500 < read, "most are read all the same: {read}");
}
