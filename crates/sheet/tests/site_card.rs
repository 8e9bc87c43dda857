//! What stands on a site card, for runs whose figures can be told by hand.

mod ten_legs;

use dewrun_advice::rests_on_whole;
use dewrun_document::{
    ExpectedReading, Input, Origin, Project, Reading, givens, to_installation, to_run, write,
};
use dewrun_drawing::html::CAUTIONS;
use dewrun_run::{evaluate, water_and_air};
use dewrun_sheet::{CardOptions, Paper, SiteCard, Told, document, site_card};
use ten_legs::{demo, ten_legs};

#[track_caller]
fn card_on(project: &Project, options: &CardOptions<'_>) -> SiteCard {
    let (run, names) = to_run(project, 0).expect("it has a run");
    let (installation, _) = to_installation(project, 0).expect("it is installed");
    let outcome = evaluate(&run).expect("it has an answer").value;
    let whole = water_and_air(&run, &installation, &outcome).expect("water and air too");
    let resting = rests_on_whole(
        (&run, &installation),
        (&outcome, &whole),
        &givens(project, 0),
    );
    let told = Told {
        project,
        run_index: 0,
        run: &run,
        names: &names,
        installation: &installation,
        outcome: &outcome,
        whole: &whole,
        resting: &resting,
    };
    site_card(&told, options).expect("within limits")
}

#[track_caller]
fn card(project: &Project) -> SiteCard {
    let options = CardOptions {
        page: Some("https://tubes.example.org/"),
        date: "2026-08-30",
        revision: "C",
        ..CardOptions::default()
    };
    card_on(project, &options)
}

/// The text of a card without its marks, a space for each.
fn words(body: &str) -> String {
    let mut in_tag = false;
    let mut words = String::new();
    for sign in body.chars() {
        match sign {
            '<' => in_tag = true,
            '>' => {
                in_tag = false;
                words.push(' ');
            }
            _ if in_tag => {}
            _ => words.push(sign),
        }
    }
    words
        .split(' ')
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

/// The cells of the row of a leg, as words.
#[track_caller]
fn leg(body: &str, number: usize) -> Vec<String> {
    let start = format!("<td><b>{number}</b></td>");
    let row = body.split("<tr").find(|row| row.contains(&start));
    let row = row.unwrap_or_else(|| panic!("leg {number} has a row"));
    let cells = row.split("<td").skip(1);
    cells.map(|cell| words(&format!("<td{cell}"))).collect()
}

/// By hand: 1 m at 1:50 falls 20 mm and 4.2 m 84 mm, 3.8 m at 1:60 rise 63 mm, and the tube drops 1.5 m to the detector.
#[test]
fn legs_say_what_a_level_shows() {
    let card = card(&demo("make-up-air"));
    assert_eq!(card.sheets, 1, "one sheet");
    let told = |number: usize| leg(&card.body, number)[1..6].to_vec();
    assert_eq!(
        told(1),
        [
            "duct to wall",
            "1.00",
            "1:50",
            "20",
            "wall end, with the air"
        ],
        "leg 1"
    );
    assert_eq!(
        told(2),
        [
            "wall to trap",
            "4.20",
            "1:50",
            "84",
            "trap end, with the air"
        ],
        "leg 2"
    );
    assert_eq!(
        told(3),
        [
            "trap to wall",
            "3.80",
            "1:60",
            "63",
            "trap end , against the air"
        ],
        "leg 3"
    );
    assert_eq!(
        told(5),
        [
            "elbow to detector",
            "1.50",
            "upright",
            "1\u{a0}500",
            "detector end, with the air"
        ],
        "leg 5"
    );
    assert_eq!(leg(&card.body, 9)[1], "wall to duct", "the exhaust goes on");
    // Levels by hand: -20 mm, then -104 mm at the low point, and 1.5 m under 0.0633 and 0.0267 m back up.
    for level in ["±0.000", "\u{2212}0.020", "\u{2212}0.104", "\u{2212}1.514"] {
        assert!(card.body.contains(level), "{level} stands on the drawing");
    }
}

#[test]
fn a_blind_detector_leads_and_its_trap_is_told() {
    let text = words(&card(&demo("make-up-air")).body);
    let lead = text
        .find("This detector may not be sampling the duct: the low point at 5.2\u{a0}m is sealed");
    let legs = text.find("Legs");
    assert!(
        lead.is_some() && lead < legs,
        "before everything else: {text}"
    );
    assert!(
        text.contains("Fit a trap at 5.20\u{a0}m of the intake tube, reached from a ladder"),
        "{text}"
    );
    assert!(
        text.contains("To empty: the tube is under suction there"),
        "how to empty it: {text}"
    );
    assert!(text.contains("Example, not your site"), "it is an example");
    let mut own = demo("chilled-supply");
    own.note.clear();
    let text = words(&card(&own).body);
    assert!(
        !text.contains("Example") && !text.contains("may not be sampling"),
        "{text}"
    );
}

#[test]
fn cautions_stand_word_for_word() {
    for name in ["make-up-air", "chilled-supply"] {
        let body = card(&demo(name)).body;
        assert!(body.contains(CAUTIONS), "{name}: all of them");
    }
    // The page, the sheets and these words are one.
    for caution in [
        "The detector’s listing and instructions, the local code and the authority having jurisdiction come first.",
        "Impair a detector only under the site’s impairment procedure.",
        "a magnet or an electronic test does not replace it",
        "Never widen an airflow limit to cure water",
        "penetrations of fire barriers are sealed; the exhaust goes back to the same duct",
        "A drain valve under suction draws air in when it is opened",
        "Work at height, rotating plant, electric heat tracing",
    ] {
        assert!(CAUTIONS.contains(caution), "{caution}");
    }
}

#[test]
fn assumed_values_are_marked_and_asked_for() {
    let mut project = demo("make-up-air");
    let body = card(&project).body;
    assert!(
        body.contains("Service corridor"),
        "what the answer rests on"
    );
    let asked = body.matches("class=\"dw-card__assumed\"").count();
    let told = words(&body).matches("assumed : ").count();
    assert_eq!(
        (asked, told),
        (2, 2),
        "corridor and duct static, marked and in words"
    );
    project.spaces[1].temperature_c = Input {
        value: 20.0,
        origin: Origin::Measured {
            on: "2026-05-12".to_owned(),
            by: "J. Orre".to_owned(),
        },
    };
    project.runs[0].duct.static_pa = Input::typed(-50.0);
    let text = words(&card(&project).body);
    assert!(
        !text.contains("assumed : "),
        "a measured one is not: {text}"
    );
}

#[test]
fn what_the_last_visit_found_is_told_against_what_was_expected_then() {
    let mut project = ten_legs();
    let visit = project.runs[0].visits.last_mut().expect("it was visited");
    visit.airflow_l_min = Some(Reading {
        value: 22.5,
        expected: Some(ExpectedReading {
            usual: 29.3,
            low: 25.7,
            high: 31.6,
        }),
    });
    let text = words(&card(&project).body);
    assert!(
        text.contains("Last visit 2026-06-17, J. Orre: airflow 22.5\u{a0}L/min, below the span; suction 67\u{a0}Pa;"),
        "{text}"
    );
    assert!(text.contains("water 720\u{a0}g"), "and the water: {text}");
}

#[test]
fn the_code_says_what_it_leaves_out() {
    let card = card(&ten_legs());
    let code = card.code.as_ref().expect("it fits");
    assert!(card.body.contains(&code.path), "it is drawn");
    for left_out in &code.left_out {
        assert!(
            words(&card.body).contains(left_out.words()),
            "{left_out:?} is said"
        );
    }
    let alone = card_on(&ten_legs(), &CardOptions::default());
    let text = words(&alone.body);
    assert!(
        text.contains("inside an opened Dewrun"),
        "without a page it says where to scan it: {text}"
    );
}

#[test]
fn many_legs_take_further_sheets_with_their_head() {
    let mut project = ten_legs();
    let legs = &mut project.runs[0].intake.legs;
    for number in 0..60 {
        let mut next = legs[0].clone();
        next.id = format!("more-{number}");
        legs.push(next);
    }
    for paper in [Paper::A4, Paper::Letter] {
        let options = CardOptions {
            paper,
            ..CardOptions::default()
        };
        let card = card_on(&project, &options);
        assert!(2 < card.sheets, "{} sheets", card.sheets);
        let heads = card.body.matches("<header").count();
        assert_eq!(heads, card.sheets, "a head on each");
        for sheet in 1..=card.sheets {
            let told = format!("Site card {sheet} of {}", card.sheets);
            assert!(card.body.contains(&told), "{told}");
        }
        for number in 1..=70 {
            let row = format!("<td><b>{number}</b></td>");
            assert_eq!(
                card.body.matches(&row).count(),
                1,
                "leg {number} stands once"
            );
        }
    }
}

#[test]
fn names_stay_text_and_nothing_runs() {
    let mut project = demo("make-up-air");
    project.name = "<script>alert(1)</script>".to_owned();
    project.runs[0].name = "Riser \"A\" & <b>B</b>".to_owned();
    project.spaces[0].name = "<img src=x onerror=alert(1)>".to_owned();
    let text = document(&[card(&project)]);
    assert!(
        !text.contains("<script") && !text.contains("<img"),
        "no element comes of a name"
    );
    assert!(
        text.contains("Riser &quot;A&quot; &amp; &lt;b&gt;"),
        "it stands as it was written"
    );
    assert!(
        text.contains("<style>") && !text.contains("http-equiv"),
        "its style is within"
    );
    assert!(
        !text.contains("src=\"http") && !text.contains("url(http"),
        "it asks no network"
    );
}

#[test]
fn a_card_changes_nothing_and_is_the_same_twice() {
    let project = ten_legs();
    let before = write(&project);
    let cards = [card(&project), card(&project)];
    assert_eq!(cards[0], cards[1], "no clock, no chance");
    assert_eq!(write(&project), before, "the project stays");
}
