//! The laundry's list, weighed as the page does: years marched by members, carried, summed up, and what is entered taken into the project.

use dewrun_almanac::{Almanac, Carried, Place};

const LAUNDRY: &str = include_str!(concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../demo/laundry-exhaust.json"
));
const WEATHER: &[u8] = include_bytes!(concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../demo/gull-harbour.csv"
));
const LIST: &[u8] = include_bytes!(concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../demo/laundry-exhaust-log.csv"
));
const KEY: &str = "so many of this run";
const MEMBERS: u32 = 8;

/// An almanac that has summed up some years of the laundry.
fn weighing() -> Almanac {
    let mut almanac = Almanac::default();
    almanac
        .begin_reading((LAUNDRY, 0), Place::Weather, None)
        .expect("a project");
    almanac.take_piece(WEATHER).expect("weather");
    almanac.end_reading("gull-harbour.csv").expect("a year");
    let mut members = Vec::new();
    for number in 0..MEMBERS {
        assert_eq!(
            almanac.begin_member(LAUNDRY, 0, Some(number)),
            Ok(true),
            "{number}"
        );
        while !almanac.member_turn() {}
        members.push(almanac.member());
    }
    let carried: Vec<Carried<'_>> = members
        .iter()
        .map(|(numbers, hours)| Carried { numbers, hours })
        .collect();
    assert!(!almanac.knows_members(KEY), "nothing is summed up yet");
    almanac
        .take_members(KEY, LAUNDRY, 0, &carried)
        .expect("members");
    assert!(almanac.knows_members(KEY), "now it is");
    almanac
}

fn shown(almanac: &Almanac, part: &str) -> String {
    almanac.troubles_shown(part, &[0.0, 0.0, 1200.0, 1.0])
}

#[test]
fn a_list_is_entered_weighed_and_put_right() {
    let mut almanac = weighing();
    let with_log = almanac
        .troubles_entered(LAUNDRY, 0, "log\u{1f}list.csv", Some(LIST))
        .expect("it can be read");
    // sha256sum of the file.
    let digits = dewrun_weather::sha256_of(LIST);
    assert!(with_log.contains(&digits), "it is known by its hash");
    assert_eq!(almanac.rank_troubles(KEY, &with_log, 0, Some(LIST)), Ok(()));
    // The demo was made so that water is its cause; it falls for 1.2 and 3.5 m, and rises from there on.
    let causes = shown(&almanac, "causes");
    assert!(
        causes.contains("Water in the low point at 4.7\u{a0}m explains this log best"),
        "{causes}"
    );
    let drawn = shown(&almanac, "timeline");
    assert!(
        drawn.starts_with("<svg") && drawn.contains("17 entries"),
        "{drawn}"
    );
    assert!(
        shown(&almanac, "read").contains("17 rows read"),
        "how it was read"
    );
    assert!(
        shown(&almanac, "table").matches("<tr>").count() == 18,
        "a row each and a head"
    );
    let check = shown(&almanac, "check");
    let first = check
        .split("data-check=\"")
        .nth(1)
        .and_then(|rest| rest.split('"').next());
    let seen = format!(
        "seen\u{1f}{}\u{1f}1",
        first.expect("a check can be entered")
    );
    let with_seen = almanac
        .troubles_entered(&with_log, 0, &seen, None)
        .expect("an outcome");
    assert_eq!(
        almanac.rank_troubles(KEY, &with_seen, 0, Some(LIST)),
        Ok(())
    );
    assert_ne!(shown(&almanac, "causes"), causes, "it moves the shares");
    assert!(
        shown(&almanac, "seen").contains("data-unseen=\"0\""),
        "it can be taken back"
    );
    let back = almanac.troubles_entered(&with_seen, 0, "unseen\u{1f}0", None);
    assert_eq!(back.as_deref(), Ok(with_log.as_str()), "and is gone then");
    let without = almanac.troubles_entered(&with_log, 0, "no-log", None);
    assert_eq!(
        without.as_deref(),
        Ok(LAUNDRY),
        "nothing is left of the list"
    );
}

#[test]
fn what_can_not_be_entered_is_said() {
    let almanac = weighing();
    let refused = |what: &str, log: Option<&[u8]>| {
        let entered = almanac.troubles_entered(LAUNDRY, 0, what, log);
        entered.expect_err("nothing of that can be entered")
    };
    let said = refused("log\u{1f}list.csv", Some(b"no date here\n"));
    assert!(
        said.starts_with("no line of the list begins with a date"),
        "{said}"
    );
    for what in [
        "",
        "seen\u{1f}look\u{1f}1",
        "unseen\u{1f}0",
        "answer\u{1f}9\u{1f}0",
        "reading",
    ] {
        assert!(!refused(what, None).is_empty(), "{what}");
    }
}

#[test]
fn without_weather_answers_rank() {
    let mut almanac = Almanac::default();
    assert_eq!(almanac.rank_troubles("", LAUNDRY, 0, Some(LIST)), Ok(()));
    assert!(
        shown(&almanac, "causes").contains("is the likeliest by what was answered"),
        "no list is weighed without weather"
    );
    assert!(shown(&almanac, "timeline").is_empty(), "nothing is drawn");
    assert!(
        shown(&almanac, "rests").contains("as it is entered"),
        "it says so"
    );
}
