//! The pointer: where it goes, what it says there, and that its points lie on the curves.

mod sample;

use dewrun_drawing::{Mark, Rail, Room, Step, View, big_steps, elevation, profile};
use dewrun_quantity::{DecimalMark, Length, Style, Units};

const INCH_POUND: Style = Style {
    units: Units::InchPound,
    mark: DecimalMark::Comma,
};

fn rail(view: &View<'_>, width: f64) -> Rail {
    let elevation = elevation(view, Room { width, text: 1.0 });
    let profile = profile(view, &elevation.frame).expect("the tube is drawn");
    Rail::new(&elevation, &profile)
}

fn mark(view: &View<'_>, rail: &Rail, metres: f64) -> Mark {
    rail.mark(view, Length::metres(metres))
        .expect("the tube has an answer")
}

/// Text without the tags and with plain spaces.
fn plain(html: &str) -> String {
    let mut inside = false;
    let mut text = String::new();
    for c in html.chars() {
        match c {
            '<' => {
                inside = true;
                text.push(' ');
            }
            '>' => inside = false,
            '\u{a0}' => text.push(' '),
            _ if !inside => text.push(c),
            _ => {}
        }
    }
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_flag_says_what_the_profile_holds() {
    let sample = sample::make_up_air();
    let view = sample.view(Style::default());
    let rail = rail(&view, 1392.0);
    // A point of the sample's own profile, in its second leg.
    let point = sample
        .outcome
        .intake
        .profile
        .iter()
        .filter(|point| point.leg == 1)
        .nth(10)
        .expect("a leg has 25 points");
    let said = plain(&mark(&view, &rail, point.x.to_metres()).flag);
    let dew_point = point.dew_point.expect("the air is humid").to_celsius();
    for expected in [
        format!("at {:.2} m, leg 2", point.x.to_metres()),
        format!("air {:.1} °C", point.air.to_celsius()),
        format!("inner wall {:.1} °C", point.inner_wall.to_celsius()),
        format!("dew point {dew_point:.1} °C"),
        format!(
            "forms here {:.2} g/(h m)",
            point.deposit.to_grams_per_hour_metre()
        ),
    ] {
        assert!(said.contains(&expected), "`{said}` says `{expected}`");
    }
    assert!(
        !said.contains("mist") && !said.contains("sweat"),
        "nothing of what this tube has not: {said}"
    );
}

#[test]
fn what_is_spoken_is_the_whole_flag() {
    let sample = sample::loft();
    let view = sample.view(Style::default());
    let rail = rail(&view, 328.0);
    for x in [0.2, 1.0, 4.4, 8.0, 10.0] {
        let mark = mark(&view, &rail, x);
        let spoken = mark
            .spoken
            .replace('\u{a0}', " ")
            .replace("g/h per metre", "g/(h m)");
        for word in plain(&mark.flag).split(' ') {
            assert!(spoken.contains(word), "`{spoken}` says `{word}`");
        }
    }
}

#[test]
fn below_freezing_the_dew_point_is_a_frost_point() {
    let sample = sample::loft();
    let view = sample.view(Style::default());
    let rail = rail(&view, 1392.0);
    let at = |frozen: bool| {
        let point = sample.outcome.intake.profile.iter().find(|p| {
            (0.5 < p.frozen_share) == frozen && 0.0 < p.deposit.to_grams_per_hour_metre()
        });
        plain(
            &mark(
                &view,
                &rail,
                point.expect("it forms water and frost").x.to_metres() + 0.01,
            )
            .flag,
        )
    };
    assert!(
        at(false).contains("dew point") && at(false).contains("forms here"),
        "{}",
        at(false)
    );
    assert!(
        at(true).contains("frost point") && at(true).contains("frosts here"),
        "{}",
        at(true)
    );
}

#[test]
fn water_runs_past_from_the_top_of_its_slope() {
    let sample = sample::make_up_air();
    let view = sample.view(Style::default());
    let rail = rail(&view, 1392.0);
    let legs = &sample.outcome.intake.legs;
    let past = |x: f64| {
        let said = plain(&mark(&view, &rail, x).flag);
        let (_, number) = said.split_once("runs past ").expect("a wet tube says so");
        number
            .split(' ')
            .next()
            .and_then(|number| number.parse::<f64>().ok())
            .expect("a number")
    };
    // Legs 1 and 2 fall to the low point at 5.2 m, legs 3 and 4 fall back to it.
    let falls = legs[0].condensate + legs[1].condensate;
    let back = legs[2].condensate + legs[3].condensate;
    assert!(
        (past(5.199) - falls.to_grams_per_hour()).abs() < 0.11,
        "all of the first slope just before the low point"
    );
    assert!(
        (past(5.2) - back.to_grams_per_hour()).abs() < 0.06,
        "all of the second slope just behind it"
    );
    assert!(
        past(1.0) <= past(3.0) && past(3.0) <= past(5.0),
        "more the further down"
    );
    assert!(past(9.0) <= past(7.0), "on the way back too");
}

#[test]
fn even_steps_land_on_even_places_and_stay_in_the_tube() {
    let sample = sample::make_up_air();
    let view = sample.view(Style::default());
    let rail = rail(&view, 1392.0);
    let check = |from: f64, step: Step, expected: f64| {
        let to = rail.stepped(&view, Length::metres(from), step).to_metres();
        assert!(
            (to - expected).abs() < 1e-9,
            "{step:?} from {from} m leads to {to} m, expected {expected}"
        );
    };
    check(3.4, Step::Small { on: true }, 3.45);
    check(3.4, Step::Small { on: false }, 3.35);
    check(3.4, Step::Large { on: true }, 3.9);
    check(0.2, Step::Large { on: false }, 0.0);
    check(12.0, Step::Large { on: true }, 12.1);
    check(3.4, Step::End { on: false }, 0.0);
    check(3.4, Step::End { on: true }, 12.1);
    check(3.4, Step::By(Length::metres(-1.0)), 2.4);
}

#[test]
fn page_steps_visit_joints_and_wet_bounds() {
    let sample = sample::make_up_air();
    let view = sample.view(Style::default());
    let rail = rail(&view, 1392.0);
    let mut visited = vec![0.0];
    while visited.last().is_some_and(|last| *last < 12.1 - 1e-9) && visited.len() < 50 {
        let from = Length::metres(*visited.last().expect("it begins at the inlet"));
        visited.push(
            rail.stepped(&view, from, Step::Bound { on: true })
                .to_metres(),
        );
    }
    let mut expected: Vec<f64> = vec![0.0, 1.0, 5.2, 9.0, 10.6, 12.1];
    for wet in &sample.outcome.intake.wet {
        expected.extend([wet.from.to_metres(), wet.to.to_metres()]);
    }
    expected.sort_by(f64::total_cmp);
    expected.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    assert_eq!(
        visited.len(),
        expected.len(),
        "{visited:?} are {expected:?}"
    );
    for (found, expected) in visited.iter().zip(&expected) {
        assert!(
            (found - expected).abs() < 1e-6,
            "{found} m is a joint or bound, expected {expected}"
        );
    }
    let back = rail
        .stepped(&view, Length::metres(12.1), Step::Bound { on: false })
        .to_metres();
    assert!(
        (back - expected[expected.len() - 2]).abs() < 1e-6,
        "{back} m is the one before the end"
    );
}

#[test]
fn it_begins_where_half_of_the_water_has_formed() {
    let sample = sample::make_up_air();
    let view = sample.view(Style::default());
    let rail = rail(&view, 1392.0);
    let start = rail.start(&view);
    let said = plain(&rail.mark(&view, start).expect("it is in the tube").flag);
    let (_, so_far) = said
        .split_once("formed so far ")
        .expect("a wet tube says so");
    let so_far: f64 = so_far
        .split(' ')
        .next()
        .and_then(|n| n.parse().ok())
        .expect("a number");
    let half = sample.outcome.intake.condensate.to_grams_per_hour() / 2.0;
    // The sample's profile has a point every 17 cm, on which up to half a gram an hour forms.
    assert!(
        half - 0.1 <= so_far && so_far < half + 0.5,
        "{so_far} g/h so far, half is {half}"
    );
}

#[test]
fn handle_and_line_follow_the_shared_axis() {
    for width in [328.0, 800.0, 1392.0] {
        let sample = sample::loft();
        let view = sample.view(Style::default());
        let drawn = elevation(&view, Room { width, text: 1.0 });
        let rail = rail(&view, width);
        for x in [0.0, 2.5, 10.6] {
            let mark = mark(&view, &rail, x);
            assert!(
                (mark.handle.x - drawn.frame.px(x)).abs() < 1e-9,
                "the handle stands over {x} m"
            );
            assert!(
                drawn.scene.height < mark.handle.y,
                "on the axis under the elevation"
            );
            let back = rail.at(&view, mark.handle.x).to_metres();
            assert!(
                (back - x).abs() < 0.006,
                "{x} m is found again where it is pointed at: {back}"
            );
        }
    }
}

#[test]
fn the_flag_stays_inside_the_elevation() {
    for sample in [sample::make_up_air(), sample::loft(), sample::many(20)] {
        for width in [800.0, 1392.0] {
            let view = sample.view(Style::default());
            let drawn = elevation(&view, Room { width, text: 1.0 });
            let rail = rail(&view, width);
            for step in 0..=40 {
                let x = drawn.frame.length_m * f64::from(step) / 40.0;
                let at = mark(&view, &rail, x).flag_at;
                assert!(
                    0.0 <= at.x && at.x + 184.0 <= width,
                    "at {x} m of {width} px: {at:?}"
                );
                assert!(0.0 <= at.y && at.y < drawn.scene.height, "at {x} m: {at:?}");
            }
        }
    }
}

#[test]
fn feet_and_commas_are_kept() {
    let sample = sample::make_up_air();
    let view = sample.view(INCH_POUND);
    let rail = rail(&view, 1392.0);
    let mark = mark(&view, &rail, 3.048);
    assert!(
        plain(&mark.flag).starts_with("at 10,00 ft, leg 2"),
        "{}",
        plain(&mark.flag)
    );
    assert_eq!(mark.value, "10.00", "a machine reads a point");
    let words = big_steps(INCH_POUND).map(|step| step.words.replace('\u{a0}', " "));
    assert_eq!(
        words,
        ["\u{2212}3 ft", "\u{2212}0,3", "+0,3", "+3 ft"],
        "in feet"
    );
    let step = big_steps(INCH_POUND)[2].step;
    let expected = Step::By(Length::feet(0.3));
    assert_eq!(step, expected, "a tenth of three feet");
}
