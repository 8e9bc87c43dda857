//! Any bytes as a log of troubles: no panic, no row from nothing, and every entry has its line.

#![no_main]

use dewrun_troubles::{ChangeDay, DaylightSaving, ListSaid, Log, WallClock, read_list};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let day = |month, hour| ChangeDay { month, which: 5, weekday: 6, hour };
    let clock = WallClock {
        utc_offset_s: 3600,
        daylight: Some(DaylightSaving { starts: day(3, 2), ends: day(10, 3) }),
    };
    let Ok(list) = read_list(bytes, &ListSaid::default(), &clock, 3600) else {
        return;
    };
    let lines = bytes.iter().filter(|byte| matches!(byte, b'\n' | b'\r')).count() + 1;
    assert!(list.entries.len() <= lines, "no row from nothing");
    assert_eq!(list.entries.len(), list.notes.len(), "a note beside each");
    for (entry, line) in &list.entries {
        assert!(1 <= *line && *line <= lines, "a line of the text: {line}");
        assert!(entry.grams.is_none_or(|grams| grams.is_finite() && 0.0 <= grams), "{entry:?}");
    }
    let entries = list.entries.iter().map(|(entry, _)| *entry).collect();
    if let Some(log) = Log::new(entries, None) {
        let (from, until) = log.period();
        assert!(log.entries().iter().all(|entry| from <= entry.at_s && entry.at_s < until), "within its time");
    }
});
