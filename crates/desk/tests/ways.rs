//! Each way in leads to an answer: what each tap writes, and what it leaves alone.

use dewrun_desk::{
    Answered, Blank, Field, OpenProject, Question, TubeName, Way, humid_with, passing, put_above,
    weathers,
};
use dewrun_document::{AirPair, Humidity, Leg, Origin};
use dewrun_quantity::Style;

const STYLE: Style = Style {
    units: dewrun_quantity::Units::Si,
    mark: dewrun_quantity::DecimalMark::Point,
};

fn begun(way: Way) -> OpenProject {
    way.project().expect("the library has its rows")
}

/// Taps the answer with that word.
#[track_caller]
fn tap(project: &mut OpenProject, question: Question, word: &str) {
    let place = question.words().iter().position(|own| *own == word);
    let place = place.unwrap_or_else(|| panic!("{question:?} has no answer {word}"));
    let answered = question.answer(project, place);
    assert!(answered.is_some(), "{question:?}: {word} is taken");
}

#[track_caller]
fn type_in(project: &mut OpenProject, field: Field, text: &str) {
    field
        .take(project, text, STYLE)
        .unwrap_or_else(|refused| panic!("{field:?}: {}", refused.sentence));
}

fn legs(project: &OpenProject) -> &[Leg] {
    &project.runs[0].intake.legs
}

fn is_assumed(origin: &Origin) -> bool {
    matches!(origin, Origin::Assumed { .. })
}

/// The words of the answers that hold.
fn chosen(project: &OpenProject, question: Question) -> Vec<&'static str> {
    let bits = question.chosen(project);
    let words = question.words().iter().enumerate();
    words
        .filter(|(place, _)| bits >> place & 1 == 1)
        .map(|(_, word)| *word)
        .collect()
}

/// The row that the duct air is assumed from, and its temperature.
fn duct_air(project: &OpenProject) -> (String, f64) {
    match &project.runs[0].duct.air {
        AirPair::Temperature { temperature_c, .. } => match &temperature_c.origin {
            Origin::Assumed { row, .. } => (row.clone(), temperature_c.value),
            _ => (String::new(), temperature_c.value),
        },
        other => panic!("{other:?} has no temperature"),
    }
}

const ASKED: [(Way, &[Question]); 3] = [
    (
        Way::Drawing,
        &[
            Question::Air,
            Question::Weather,
            Question::Spaces,
            Question::Tube,
        ],
    ),
    (
        Way::Fitting,
        &[
            Question::Tube,
            Question::Air,
            Question::Weather,
            Question::LegWay(0),
            Question::LegSpace(0),
        ],
    ),
    (Way::Trouble, &Question::TROUBLE),
];

#[test]
fn every_answer_of_every_question_holds_and_has_an_answer_of_the_run() {
    for (way, questions) in ASKED {
        for question in questions {
            for word in question.words() {
                let mut project = begun(way);
                tap(&mut project, *question, word);
                assert_eq!(chosen(&project, *question), [*word], "{question:?} holds");
                let answered = Answered::unranked(&project);
                assert!(answered.is_ok(), "{question:?} {word}: {answered:?}");
            }
        }
    }
}

#[test]
fn there_is_an_answer_before_anything_is_tapped_and_all_of_it_is_assumed() {
    for way in Way::ALL {
        let project = begun(way);
        let answered = Answered::unranked(&project);
        assert!(answered.is_ok(), "{way:?}: {answered:?}");
        for leg in legs(&project) {
            let origins = [&leg.length_m, &leg.rise_m, &leg.tube.bore_mm].map(|it| &it.origin);
            assert!(origins.into_iter().all(is_assumed), "{way:?}: {leg:?}");
        }
        assert!(project.note.is_empty(), "{way:?}: nothing was said yet");
    }
}

#[test]
fn the_weather_moves_what_is_assumed_and_leaves_what_was_typed() {
    let mut project = begun(Way::Drawing);
    tap(&mut project, Question::Spaces, "loft");
    tap(&mut project, Question::Weather, "frosty night");
    // The library's row: a clear night of -10 °C.
    assert_eq!(
        duct_air(&project),
        ("make-up-frost".to_owned(), -10.0),
        "the air"
    );
    assert_eq!(project.spaces[0].temperature_c.value, -8.0, "the loft");
    assert_eq!(project.note, "Weather: frosty night.", "and says so");

    type_in(&mut project, Field::DuctFirst, "-3");
    type_in(&mut project, Field::SpaceTemperature(0), "-5");
    tap(&mut project, Question::Weather, "foggy morning");
    assert_eq!(duct_air(&project), (String::new(), -3.0), "typed air stays");
    assert_eq!(
        project.spaces[0].temperature_c.value, -5.0,
        "a typed space stays"
    );
    assert_eq!(
        project.note, "Weather: foggy morning.",
        "in place of the other"
    );
}

#[test]
fn an_answer_that_holds_writes_nothing_again() {
    let mut project = begun(Way::Drawing);
    let before = project.clone();
    tap(&mut project, Question::Air, "make-up air");
    tap(&mut project, Question::Weather, "muggy summer day");
    tap(&mut project, Question::Tube, "plastic, 19 mm bore");
    assert_eq!(
        project, before,
        "the muggy day of the sentence stays as it was"
    );
}

#[test]
fn the_spaces_that_are_tapped_share_the_level_part_of_the_tube() {
    let mut project = begun(Way::Drawing);
    assert_eq!(humid_with(&project), " with a dew point of ", "of its row");
    tap(&mut project, Question::Air, "pool hall");
    assert_eq!(
        humid_with(&project),
        " with a relative humidity of ",
        "of its row"
    );
    assert_eq!(
        passing(&project, 0),
        " bare tube through a space at ",
        "unnamed"
    );
    for word in ["loft", "shaft", "corridor"] {
        tap(&mut project, Question::Spaces, word);
    }
    // 12 m to a detector 1.2 m below: 10.8 m level, 3.6 m in each of three spaces.
    let lengths: Vec<f64> = legs(&project)
        .iter()
        .map(|leg| leg.length_m.value)
        .collect();
    assert_eq!(lengths, [3.6, 3.6, 3.6, 1.2], "and the drop");
    let passed: Vec<String> = (0..3).map(|at| passing(&project, at)).collect();
    assert_eq!(
        passed,
        [
            " bare tube through the loft at ",
            ", then the shaft at ",
            ", then the corridor at "
        ],
        "in the order in which they were tapped"
    );
    assert_eq!(
        legs(&project)[3].space,
        legs(&project)[2].space,
        "the drop is in the last"
    );
    tap(&mut project, Question::Spaces, "shaft");
    assert_eq!(
        chosen(&project, Question::Spaces),
        ["corridor", "loft"],
        "tapped again it goes"
    );
    assert_eq!(project.spaces.len(), 2, "with its space");
    tap(&mut project, Question::Spaces, "loft");
    tap(&mut project, Question::Spaces, "corridor");
    assert_eq!(
        chosen(&project, Question::Spaces),
        ["corridor"],
        "the last one stays"
    );
}

#[test]
fn the_blanks_speak_of_the_whole_tube_through_all_its_spaces() {
    let mut project = begun(Way::Drawing);
    for word in ["loft", "corridor"] {
        tap(&mut project, Question::Spaces, word);
    }
    type_in(&mut project, Field::First(Blank::Length), "9");
    type_in(&mut project, Field::First(Blank::Height), "2");
    put_above(&mut project, true).expect("there is a drop");
    let geometry: Vec<[f64; 2]> = legs(&project)
        .iter()
        .map(|leg| [leg.length_m.value, leg.rise_m.value])
        .collect();
    // 9 m to a detector 2 m above: 7 m level in two spaces, and a riser.
    assert_eq!(geometry, [[3.5, 0.0], [3.5, 0.0], [2.0, 2.0]], "all of it");
    type_in(&mut project, Field::First(Blank::Height), "0");
    let lengths: Vec<f64> = legs(&project)
        .iter()
        .map(|leg| leg.length_m.value)
        .collect();
    assert_eq!(lengths, [4.5, 4.5], "level with the duct");
    let length = Field::First(Blank::Length).show(&project, STYLE);
    assert_eq!(length, Some(("9".to_owned(), "m")), "as it was typed");
}

#[test]
fn a_tube_is_taken_for_every_leg() {
    let mut project = begun(Way::Drawing);
    tap(&mut project, Question::Tube, "copper, 22 mm");
    for leg in legs(&project) {
        // EN 1057: 22 × 1 mm.
        assert_eq!(leg.tube.bore_mm.value, 20.0, "{}", leg.id);
        assert!(is_assumed(&leg.tube.bore_mm.origin), "{}", leg.id);
    }
}

#[test]
fn a_tube_is_fitted_leg_by_leg() {
    let mut project = begun(Way::Fitting);
    let length = |at| Field::LegLength(TubeName::Intake, at);
    tap(&mut project, Question::LegWay(0), "straight up");
    type_in(&mut project, length(0), "0.8");
    tap(&mut project, Question::LegSpace(0), "plant room");
    tap(&mut project, Question::NextLeg, "down 1:50");
    type_in(&mut project, length(1), "6");
    tap(&mut project, Question::LegSpace(1), "loft");
    tap(&mut project, Question::NextLeg, "straight down");
    let geometry: Vec<[f64; 2]> = legs(&project)
        .iter()
        .map(|leg| [leg.length_m.value, leg.rise_m.value])
        .collect();
    // 6 m at 1:50 fall by 120 mm; the drop is not measured yet.
    assert_eq!(geometry, [[0.8, 0.8], [6.0, -0.12], [1.2, -1.2]], "as laid");
    let origins: Vec<bool> = legs(&project)
        .iter()
        .map(|leg| is_assumed(&leg.length_m.origin))
        .collect();
    assert_eq!(origins, [false, false, true], "what was typed is typed");
    assert_eq!(
        chosen(&project, Question::LegSpace(2)),
        ["loft"],
        "it goes on in the same space"
    );
    assert_eq!(project.spaces.len(), 2, "no other space is left");
    let ids: Vec<&str> = legs(&project).iter().map(|leg| leg.id.as_str()).collect();
    assert_eq!(ids, ["leg-1", "leg-2", "leg-3"], "numbered");
    type_in(&mut project, Field::LegFall(TubeName::Intake, 1), "1:40");
    assert!(
        chosen(&project, Question::LegWay(1)).is_empty(),
        "a fall of its own is none of the words"
    );
}

#[test]
fn six_answers_of_a_technician_make_a_route_and_a_note() {
    let mut project = begun(Way::Trouble);
    for (question, word) in [
        (Question::Trouble, "airflow low"),
        (Question::When, "winter"),
        (Question::TroubleAir, "shower room"),
        (Question::Where, "loft"),
        (Question::Trap, "trap, dry"),
        (Question::Touched, "not sure"),
    ] {
        assert!(
            chosen(&project, question).is_empty(),
            "{question:?} is not answered by itself"
        );
        tap(&mut project, question, word);
    }
    assert_eq!(
        project.note,
        "Trouble: airflow low.\nMostly: winter.\nDuct air: shower room.\nThe tube runs through: loft.\nTrap and water: trap, dry.\nFilter or fan touched: not sure.",
        "in words"
    );
    assert_eq!(duct_air(&project).0, "shower", "the air");
    // The loft of a frosty night, -8 °C.
    assert_eq!(project.spaces[0].temperature_c.value, -8.0, "the loft");
    assert!(
        legs(&project)
            .iter()
            .all(|leg| leg.space == project.spaces[0].id),
        "all of the tube runs there"
    );
    assert!(
        matches!(
            project.runs[0].duct.air,
            AirPair::Temperature {
                humidity: Humidity::Relative(_),
                ..
            }
        ),
        "said as its row says it"
    );
}

#[test]
fn a_note_that_somebody_wrote_stays() {
    let mut project = begun(Way::Trouble);
    project.note = "Roof hatch 3.\nTrouble: not clear to me".to_owned();
    tap(&mut project, Question::Trouble, "airflow high");
    tap(&mut project, Question::Trouble, "airflow low");
    assert_eq!(
        project.note, "Roof hatch 3.\nTrouble: not clear to me\nTrouble: airflow low.",
        "beside the answer"
    );
}

#[test]
fn the_weathers_are_answered_beside_each_other() {
    let mut project = begun(Way::Drawing);
    tap(&mut project, Question::Spaces, "loft");
    let answered = weathers(&project);
    let words: Vec<&str> = answered.iter().map(|(word, _)| *word).collect();
    assert_eq!(words, Question::Weather.words(), "each of them");
    let now = Answered::unranked(&project).expect("it has an answer");
    assert_eq!(
        answered[0].1, now,
        "the chosen one is the project as it stands"
    );
    let frosty = &answered[3].1;
    assert_eq!(
        frosty.run.spaces[0].temperature.to_celsius(),
        -8.0,
        "the loft of a frosty night"
    );
}
