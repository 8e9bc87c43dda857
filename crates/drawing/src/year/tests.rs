//! Drawings of invented years.

use super::stamp::{DAY_S, HOUR_S};
use super::*;
use crate::frame::Room;
use crate::geometry::Rect;
use crate::scene::{Item, Scene};
use crate::text::Size;

/// Hours from a day on in which every so many days are wet, with mist, ice, traps and airflow as asked.
fn invented(first_day: i64, hours: usize, seed: usize) -> Year {
    let mut state = seed as u64 * 2_654_435_761 + 1;
    let mut draw = move || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state % 1000) as f64 / 1000.0
    };
    let mut steps = Vec::new();
    for at in 0..hours {
        let is_wet = (at / 24) % (seed % 7 + 2) == 0 && draw() < 0.7;
        steps.push(Step {
            start_s: first_day * DAY_S + at as i64 * HOUR_S,
            seconds: 3600.0,
            air_c: 25.0,
            dew_point_c: 20.0 * draw(),
            formed_g: if is_wet { 0.02 + 15.0 * draw() } else { 0.0 },
            is_wet,
            is_misty: seed.is_multiple_of(3) && draw() < 0.05,
            mist: 1e-4,
            ice_g: if seed.is_multiple_of(2) && at % 500 < 60 {
                1.0
            } else {
                0.0
            },
            chamber: draw(),
            is_over: seed.is_multiple_of(5) && draw() < 0.02,
            margin_k: 10.0 * draw() - 3.0,
            blind: if at % 900 < 100 { 1.0 } else { 0.0 },
            ..Step::default()
        });
    }
    let level_l: Vec<f64> = (0..hours).map(|at| (at % 336) as f64 / 140.0).collect();
    Year {
        is_typical: seed.is_multiple_of(2),
        rating_percent: Some(85.0),
        first_critical: (24 < hours).then(|| {
            (
                (hours / 3)..(hours / 3 + 168).min(hours),
                "a low point is closed",
            )
        }),
        follows_water: true,
        standing: vec![
            Standing {
                what: "trap",
                at_m: 5.2,
                is_exhaust: false,
                full: Some((2.5, "full,")),
                emptied: (1..hours).filter(|at| at % 336 == 0).collect(),
                level_l,
            };
            seed % 3
        ],
        flow: (seed % 4 != 1).then(|| Flow {
            percent: (0..hours)
                .map(|at| 100.0 - (at % 400) as f64 / 4.0)
                .collect(),
            limits: (seed % 4 != 2).then_some([81.0, 111.0]),
        }),
        steps,
        ..Year::default()
    }
}

/// The first text that leaves the drawing, lies over another or is too small.
fn fault(scene: &Scene, scale: f64) -> Option<String> {
    let texts: Vec<(&str, Rect, Size)> = scene
        .items
        .iter()
        .filter_map(|item| match item {
            Item::Text(text) => Some((text.words.as_str(), text.rect(scale), text.size)),
            _ => None,
        })
        .collect();
    let bounds = scene.bounds().grown(0.5);
    for (place, (words, rect, size)) in texts.iter().enumerate() {
        if !bounds.holds(rect) {
            return Some(format!("`{words}` at {rect:?} leaves"));
        }
        if size.px() < 11.0 {
            return Some(format!("`{words}` is too small"));
        }
        let mut others = texts.iter().skip(place + 1);
        if let Some((other, at, _)) = others.find(|(_, other, _)| rect.overlaps(&other.grown(-0.5)))
        {
            return Some(format!(
                "`{words}` at {rect:?} lies over `{other}` at {at:?}"
            ));
        }
    }
    None
}

#[test]
fn nothing_lies_over_anything() {
    let mut written = 0;
    for seed in 0..24 {
        let (first_day, hours) = match seed % 4 {
            0 => (18_628, 8760),
            1 => (18_900, 48),
            2 => (18_700, 24 * 90),
            _ => (18_628, 24 * 900),
        };
        let year = invented(first_day, hours, seed);
        for (width, text) in [
            (328.0, 1.0),
            (752.0, 1.0),
            (1392.0, 1.0),
            (1392.0, 2.0),
            (752.0, 2.0),
        ] {
            for map in Map::ALL {
                let scene = calendar::scene(&year, Room { width, text }, map);
                let fault = fault(&scene, text);
                assert!(
                    fault.is_none(),
                    "year {seed} at {width} px, {map:?}: {fault:?}"
                );
                written += 1;
            }
        }
    }
    assert_eq!(written, 24 * 5 * 5, "all were drawn");
}

#[test]
fn the_drawing_says_what_it_is() {
    let year = invented(18_628, 8760, 2);
    let room = Room {
        width: 1392.0,
        text: 1.0,
    };
    let svg = charts(&year, room, Map::Water);
    assert!(
        svg.contains("<title id=\"year-title\">The year hour by hour"),
        "its title"
    );
    let told = svg.split_once("<desc").map_or("", |(_, after)| after);
    assert!(told.contains("wet hours, "), "its data in a sentence");
    assert!(!svg.contains("style"), "the content policy refuses styles");
    for class in [
        "dw-y-m1",
        "dw-y-m5",
        "dw-y-frost",
        "dw-c-formed",
        "dw-c-air",
    ] {
        assert!(svg.contains(class), "{class} is drawn");
    }
}

/// 3 wet hours of 2, 3 and 4 g in a day: 9 g are 0.01 L, the most is 4 g/h, at 5 h.
#[test]
fn the_sentence_counts_by_hand() {
    let step = |at: i64, grams: f64| Step {
        start_s: 18_847 * DAY_S + at * HOUR_S,
        seconds: 3600.0,
        formed_g: grams,
        is_wet: 0.0 < grams,
        ..Step::default()
    };
    let mut steps: Vec<Step> = (0..24).map(|at| step(at, 0.0)).collect();
    (steps[3].formed_g, steps[4].formed_g, steps[5].formed_g) = (2.0, 3.0, 4.0);
    for step in &mut steps[3..6] {
        step.is_wet = true;
    }
    let year = Year {
        steps,
        is_typical: true,
        ..Year::default()
    };
    let opens = |id: &str, words: &str| {
        format!(
            "<button type=\"button\" class=\"dw-opens\" data-year-figure=\"year-{id}\" aria-expanded=\"false\">{words}</button>"
        )
    };
    let expected = format!(
        "<b>{}</b>, <b>{}</b> in {}. Most forms on 8\u{a0}August, 5\u{a0}h: {}.",
        opens("wet-hours", "3 wet hours"),
        opens("water", "0.01\u{a0}L"),
        opens("hours", "24\u{a0}h"),
        opens("design", "4.0\u{a0}g/h"),
    );
    assert_eq!(sentence(&year), expected, "by hand");
    let table = months(&year, false);
    let name = format!("<th scope=\"row\">{}</th>", opens("wet-hours", "Wet hours"));
    assert!(table.contains(&name), "{table}");
    let august = table.matches("<td class=\"dw-number\">3</td>").count();
    assert_eq!(august, 2, "in August and in all: {table}");
    assert_eq!(year.worst_step(), 5, "the wettest");
    assert_eq!(
        year.step_at(18_847 * DAY_S + 3 * HOUR_S + 1800),
        3,
        "within it"
    );
    assert_eq!(
        cell_time(&year, 0.5, 5.5 / 24.0),
        18_847 * DAY_S + 5 * HOUR_S,
        "by its place"
    );
    let panel = hour(&year, 5);
    assert!(
        panel.contains("8\u{a0}August, 5\u{a0}h") && panel.contains("4.0\u{a0}g/h"),
        "{panel}"
    );
}
