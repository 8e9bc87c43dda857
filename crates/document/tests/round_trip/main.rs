//! A project survives its file, bit for bit.

mod generator;
mod links;
mod troubles;
mod years;

use dewrun_document::{
    DocumentError, DryEnough, FallForm, FlowAt, Humidity, Input, Occasion, Over, Project, REVISION,
    TrapCondition, TrapKind, VisitedTube, read, target_of, write,
};
use dewrun_remedies::{DesignHour, Target};
use proptest::prelude::{any, prop_assert, prop_assert_eq, proptest};

const DEMOS: [(&str, &str); 5] = [
    (
        "make-up air",
        include_str!("../../../../demo/make-up-air.json"),
    ),
    (
        "pool hall",
        include_str!("../../../../demo/pool-hall-exhaust.json"),
    ),
    (
        "chilled supply",
        include_str!("../../../../demo/chilled-supply.json"),
    ),
    (
        "sagging tube",
        include_str!("../../../../demo/sagging-tube.json"),
    ),
    (
        "laundry",
        include_str!("../../../../demo/laundry-exhaust.json"),
    ),
];

#[test]
fn the_worked_examples_are_written_as_they_were_read() {
    for (name, text) in DEMOS {
        let written = read(text).and_then(|project| write(&project));
        assert_eq!(
            written.as_deref(),
            Ok(text),
            "{name}: the file is in its own form"
        );
    }
}

/// A file without what later revisions added is the same project.
#[test]
fn files_of_earlier_revisions_open() {
    for (name, text) in DEMOS {
        for revision in 1..REVISION {
            let head = format!("\"revision\": {revision}");
            let old = text.replace(&format!("\"revision\": {REVISION}"), &head);
            assert_ne!(old, text, "{name}: the head is another");
            assert_eq!(read(&old), read(text), "{name}: nothing is asked for anew");
        }
    }
}

#[test]
fn visits_are_read_and_written() {
    let visits = r#""visits": [
        {"on": "2026-05-12", "by": "J. Orre", "occasion": "as_fitted", "note": "",
         "airflow_l_min": {"value": 29.4, "expected": {"usual": 29.3, "low": 26.9, "high": 31.4}},
         "suction_pa": {"value": 95}, "suction_at_m": 5.2},
        {"on": "2026-08-30", "by": "", "note": "Trap half full.",
         "water": [{"tube": "intake", "at_m": 5.2, "water_g": 1200}]}
    ], "intake": {"#;
    let text = DEMOS[0].1.replacen("\"intake\": {", visits, 1);
    let project = read(&text).expect("two visits with what must be said of them");
    let [first, second] = project.runs[0].visits.as_slice() else {
        panic!("in their order");
    };
    let read_then = first.airflow_l_min.as_ref();
    assert!(
        read_then.is_some_and(|reading| reading.value == 29.4
            && reading
                .expected
                .as_ref()
                .is_some_and(|span| span.low == 26.9)),
        "with what was expected then: {first:?}"
    );
    assert_eq!(
        first.occasion,
        Occasion::AsFitted,
        "what percentages refer to"
    );
    assert_eq!(second.occasion, Occasion::Service, "where nothing is said");
    assert!(
        second
            .water
            .first()
            .is_some_and(|found| found.water_g == 1200.0 && found.tube == VisitedTube::Intake),
        "{second:?}"
    );
    let written = write(&project).and_then(|text| read(&text));
    assert_eq!(written, Ok(project), "as it was");
}

#[test]
fn traps_and_hangers_are_read_and_written() {
    let trap = r#""traps": [{"at_m": {"value": 5.2, "origin": "typed"}, "kind": "hand_drained",
        "capacity_ml": {"value": 500, "origin": "typed"}}], "legs": ["#;
    let text = DEMOS[0].1.replacen("\"legs\": [", trap, 1);
    let project = read(&text).expect("a trap with what must be said of it");
    let found = project.runs[0].intake.traps.first();
    assert!(
        found.is_some_and(|trap| trap.at_m.value == 5.2
            && trap.kind == TrapKind::HandDrained
            && trap.condition == TrapCondition::Shut
            && trap.seal_mm.is_none()),
        "{found:?}"
    );
    let written = write(&project).and_then(|text| read(&text));
    assert_eq!(written, Ok(project), "as it was");
}

#[test]
fn the_worked_examples_say_that_they_are_invented() {
    for (name, text) in DEMOS {
        let note = read(text).map(|project| project.note);
        let is_said = note.is_ok_and(|note| note.starts_with("Example, not your site"));
        assert!(is_said, "{name}: the note says so first");
    }
}

/// Case F08: what is no number must never reach a file.
#[test]
fn what_is_no_number_is_never_written() {
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let written = read(DEMOS[0].1).and_then(|mut project| {
            project.spaces[0].temperature_c = Input::typed(value);
            write(&project)
        });
        assert!(
            matches!(written, Err(DocumentError::OutOfRange { .. })),
            "{value} is refused before anything is written"
        );
    }
}

#[test]
fn a_mark_of_byte_order_is_no_fault() {
    let text = format!("\u{feff}{}", DEMOS[0].1);
    assert_eq!(read(&text), read(DEMOS[0].1), "some editors put it there");
}

#[test]
fn what_may_be_left_out_has_its_default() {
    let text = DEMOS[0].1;
    let shorter = text
        .replacen("\"at\": \"intake\"", "\"at\": \"sensor\"", 1)
        .replacen(",\n        \"at\": \"sensor\"", "", 1)
        .replacen(",\n          \"over\": \"water\"", "", 1)
        .replacen("\"fall_as\": \"ratio\",", "", 1);
    let left_out = ["\"at\"", "\"over\"", "\"fall_as\""]
        .map(|field| text.matches(field).count() - shorter.matches(field).count());
    assert_eq!(left_out, [1, 1, 1], "each once");
    let project = read(&shorter).expect("none of them is missed");
    assert_eq!(
        project.runs[0].flow.at,
        FlowAt::Sensor,
        "flow is counted at the sensor"
    );
    assert_eq!(
        project.runs[0].intake.legs[0].fall_as,
        FallForm::Ratio,
        "a fall is written as a ratio"
    );
    let Humidity::Relative(relative) = &project.spaces[0].humidity else {
        panic!("the example gives a relative humidity");
    };
    assert_eq!(relative.over, Over::Water, "humidity is over water");
}

/// All bits of all numbers: -0.0 is another number than 0.0, though equal.
fn bits(project: &Project) -> String {
    format!("{project:?}")
}

proptest! {
    #[test]
    fn any_project_survives_its_file(project in generator::project()) {
        let back = write(&project).and_then(|text| read(&text));
        prop_assert_eq!(back.as_ref().map(bits), Ok(bits(&project)));
    }

    #[test]
    fn no_text_brings_the_reader_down(text in any::<String>()) {
        prop_assert!(read(&text).is_err(), "random text is no project");
    }

    #[test]
    fn a_file_cut_short_or_overwritten_is_refused_or_read_whole(
        demo in 0_usize..3,
        at in any::<proptest::sample::Index>(),
        sign in proptest::option::of(proptest::char::range('!', '~')),
    ) {
        let mut text: Vec<char> = DEMOS[demo].1.trim_end().chars().collect();
        let at = at.index(text.len());
        match sign {
            Some(sign) => text[at] = sign,
            None => text.truncate(at),
        }
        let text: String = text.into_iter().collect();
        if let Ok(project) = read(&text) {
            let again = write(&project).and_then(|text| read(&text));
            prop_assert_eq!(again.as_ref().map(bits), Ok(bits(&project)));
        }
    }
}

/// What counts as dry enough is as it was said; a word or a number that is none is told with its place.
#[test]
fn a_target_is_read_and_written() {
    let with = |target: &str| {
        let target = format!("\"target\": {target}, \"spaces\": [");
        DEMOS[0].1.replacen("\"spaces\": [", &target, 1)
    };
    let said =
        r#"{"dry_in": "0.4", "formed_l": 2.5, "chamber_margin_percent": 10, "no_frost": true}"#;
    let project = read(&with(said)).expect("a target");
    let target = target_of(&project).expect("it can be used");
    assert_eq!(target.dry_in, Some(DesignHour::Wettest04), "{target:?}");
    assert_eq!(target.formed_kg, Some(2.5), "a litre is a kilogram");
    assert_eq!(target.chamber_margin, Some(0.1), "of one");
    assert!(target.no_frost, "{target:?}");
    assert_eq!(target.blind_hours, None, "it is not asked for");
    let written = write(&project).and_then(|text| read(&text));
    assert_eq!(written.as_ref(), Ok(&project), "as it was");
    let mut again = read(DEMOS[0].1).expect("the example");
    assert_eq!(target_of(&again), Ok(Target::default()), "what is usual");
    let said = DryEnough::of(&project).expect("it is said");
    assert_eq!(said.put(&mut again), Ok(()), "it is taken");
    assert_eq!(target_of(&again), Ok(target), "as it was said");
    assert_eq!(DryEnough::USUAL.put(&mut again), Ok(()), "too");
    assert_eq!(again.target, None, "what is usual needs no words");
    for (wrong, place) in [
        (r#"{"dry_in": "3"}"#, "target.dry_in"),
        (r#"{"no_frost": 1}"#, "target.no_frost"),
        (r#"{"wet_hours": 9000}"#, "target.wet_hours"),
        (r#"{"tea": 1}"#, "target.tea"),
    ] {
        let error = read(&with(wrong)).expect_err(wrong).sentence();
        assert!(error.contains(place), "{wrong}: {error}");
    }
}
