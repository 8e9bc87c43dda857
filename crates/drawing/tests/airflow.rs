//! The section of the airflow: what limits make of states and faults as they move, against the readings themselves.

use dewrun_advice::over_duct;
use dewrun_document::{read, to_installation, to_run};
use dewrun_drawing::Room;
use dewrun_drawing::airflow::{Shown, head, limits, path, tables};
use dewrun_quantity::{Pressure, Style};
use dewrun_run::{FaultOutcome, Installation, Outcome, Run, Whole, evaluate, water_and_air};

const WIDE: Room = Room {
    width: 1392.0,
    text: 1.0,
};
const PHONE: Room = Room {
    width: 328.0,
    text: 1.0,
};

struct Answered {
    run: Run,
    built: Installation,
    outcome: Outcome,
    whole: Whole,
}

fn make_up_air() -> Answered {
    let project = read(include_str!("../../../demo/make-up-air.json")).expect("a project");
    let (run, _) = to_run(&project, 0).expect("it has a run");
    let (built, _) = to_installation(&project, 0).expect("it is installed");
    let outcome = evaluate(&run).expect("it has an answer").value;
    let whole = water_and_air(&run, &built, &outcome).expect("its air has one");
    Answered {
        run,
        built,
        outcome,
        whole,
    }
}

impl Answered {
    fn shown(&self) -> Shown<'_> {
        Shown::new(&self.run, &self.whole, Style::default())
    }

    /// Faults that read so that a condition holds.
    fn faults(&self, holds: impl Fn(&FaultOutcome) -> bool) -> usize {
        let faults = self.whole.airflow.faults.iter();
        faults.filter(|fault| holds(fault)).count()
    }

    /// Faults that lie within the limits advised.
    fn missed_advised(&self) -> usize {
        let (limits, ..) = self.whole.airflow.recommended.expect("limits are advised");
        self.faults(|fault| limits.low() <= fault.reading && fault.reading <= limits.high())
    }
}

fn count(text: &str, words: &str) -> usize {
    text.matches(words).count()
}

#[test]
fn limits_far_apart_miss_all_and_limits_that_meet_catch_all() {
    let answered = make_up_air();
    let mut shown = answered.shown();
    let missed = |shown: &Shown<'_>| count(&tables(shown), ">missed<") - answered.missed_advised();
    shown.limits = Some([0.0, 10.0]);
    assert_eq!(
        missed(&shown),
        answered.whole.airflow.faults.len(),
        "all faults lie within"
    );
    shown.limits = Some([0.0, 0.0]);
    // What is sealed reads nothing, which lies on those limits.
    let still = answered.faults(|fault| fault.reading == 0.0);
    assert_eq!(missed(&shown), still, "all others lie outside");
}

#[test]
fn advised_limits_trip_no_state_and_a_percent_more_does() {
    let answered = make_up_air();
    let advised = answered.shown();
    assert_eq!(count(&tables(&advised), ">trips<"), 0, "as advised");
    let [low, high] = advised.limits.expect("limits are advised");
    let inwards = answered.built.limit_margin + 0.01;
    for moved in [[low + inwards, high], [low, high - inwards]] {
        let mut shown = answered.shown();
        shown.limits = Some(moved);
        assert!(
            0 < count(&tables(&shown), ">trips<"),
            "{moved:?} trip a state"
        );
        assert!(
            limits(&shown, WIDE).contains("trips though nothing is wrong"),
            "and the chart says so"
        );
    }
}

#[test]
fn handles_say_where_they_stand_and_what_they_do() {
    let answered = make_up_air();
    let mut shown = answered.shown();
    shown.limits = Some([0.81, 1.09]);
    let chart = limits(&shown, WIDE);
    let handles = [
        ("low", "Low", "0", "109", "81"),
        ("high", "High", "81", "200", "109"),
    ];
    for (limit, name, least, most, now) in handles {
        let attributes = format!(
            "data-limit=\"{limit}\" aria-label=\"{name} limit\" aria-valuemin=\"{least}\" aria-valuemax=\"{most}\" aria-valuenow=\"{now}\""
        );
        assert!(chart.contains(&attributes), "{attributes} in {chart}");
    }
    let seen = answered.faults(|fault| fault.reading < 0.81 || 1.09 < fault.reading);
    let told = format!(
        "; {seen} of {} faults caught",
        answered.whole.airflow.faults.len()
    );
    assert_eq!(count(&chart, &told), 2, "each says `{told}`");
    assert_eq!(count(&chart, "data-step="), 0, "no steps on a wide page");
    let phone = limits(&shown, PHONE);
    assert_eq!(
        count(&phone, "data-step="),
        4,
        "two for each limit on a phone"
    );
}

#[test]
fn a_missed_fault_says_what_is_breathed() {
    let answered = make_up_air();
    let mut shown = answered.shown();
    shown.limits = Some([0.0, 10.0]);
    let chart = limits(&shown, WIDE);
    assert!(chart.contains("not seen: all room air"), "a parted intake");
    assert!(
        chart.contains("not seen: all duct air"),
        "holes that are fouled"
    );
    assert!(
        chart.contains("<path class=\"dw-v-missed\""),
        "hollow and red"
    );
    assert!(
        !chart.contains("<path class=\"dw-v-fault\""),
        "none is filled"
    );
}

#[test]
fn dotted_lines_follow_the_duct_where_its_pressure_is_assumed() {
    let answered = make_up_air();
    let span = [-300.0, 300.0].map(Pressure::pascals);
    let over = over_duct(&answered.run, &answered.built, &answered.outcome, span)
        .expect("each pressure has an answer");
    let mut shown = answered.shown();
    assert!(
        !limits(&shown, WIDE).contains("dw-v-span"),
        "none where it is known"
    );
    shown.over_duct = &over;
    let chart = limits(&shown, WIDE);
    assert!(chart.contains("dw-v-span"), "parted joints have one");
    let ends = "\u{2212}300\u{a0}Pa to +300\u{a0}Pa";
    assert!(chart.contains(ends), "and the sentence its ends");
}

#[test]
fn charts_and_tables_tell_the_same() {
    let answered = make_up_air();
    let shown = answered.shown();
    let head = head(&shown);
    for figure in ["sensor-flow", "sample-share", "transport-ninety"] {
        let opens = format!("data-figure=\"{figure}\"");
        assert!(head.contains(&opens), "{figure} opens: {head}");
    }
    let path = path(&shown, WIDE);
    assert_eq!(
        count(&path, "<figure"),
        3,
        "pressure, budget, transport time"
    );
    let tables = tables(&shown);
    assert_eq!(count(&tables, "<table"), 4, "and a table behind each");
    let airflow = &answered.whole.airflow;
    // Eight losses and three times.
    let rows = airflow.now.pressures.len() + 8 + 3 + airflow.states.len() + airflow.faults.len();
    assert_eq!(
        count(&tables, "<th scope=\"row\">"),
        rows,
        "each row is told"
    );
}
