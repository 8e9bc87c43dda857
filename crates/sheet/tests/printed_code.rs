//! What is printed as a code is read off again by another library, and opens the same project.

mod ten_legs;

use dewrun_document::{Leg, Project, Run, from_link, share_link, write};
use dewrun_sheet::{
    CODE_MM, LeftOut, PrintedCode, QUIET_MODULES, SMALLEST_MODULE_MM, printed_code,
};
use serde_json::Value;
use ten_legs::{demo, ten_legs};

const PAGE: &str = "https://tubes.example.org/dewrun/";
/// Dots of a printer to a module, the fewest that are recommended (see `SMALLEST_MODULE_MM`).
const DOTS: usize = 4;

#[track_caller]
fn code_of(project: &Project, page: Option<&str>) -> PrintedCode {
    let code = printed_code(project, 0, page).expect("the project keeps its limits");
    code.expect("it fits")
}

/// The code as it is printed, 255 for white paper: its side in dots, and the dots row by row.
fn printed(code: &PrintedCode) -> (usize, Vec<u8>) {
    let modules = code.modules + 2 * QUIET_MODULES;
    let mut dark = vec![false; modules * modules];
    for rectangle in code.path.split('M').filter(|one| !one.is_empty()) {
        let (corner, rest) = rectangle.split_once('h').expect("a width follows");
        let (x, y) = corner.split_once(' ').expect("two numbers");
        let (x, y): (usize, usize) = (x.parse().expect("x"), y.parse().expect("y"));
        let (width, _) = rest.split_once('v').expect("a height follows");
        let width: usize = width.parse().expect("a number");
        dark[y * modules + x..y * modules + x + width].fill(true);
    }
    let side = modules * DOTS;
    let dot = |at: usize| {
        let (x, y) = (at % side / DOTS, at / side / DOTS);
        if dark[y * modules + x] { 0 } else { 255 }
    };
    (side, (0..side * side).map(dot).collect())
}

/// What the library reads off the picture.
#[track_caller]
fn read_off(code: &PrintedCode) -> String {
    let (side, picture) = printed(code);
    let at = |x: usize, y: usize| picture[y * side + x];
    let mut prepared = rqrr::PreparedImage::prepare_from_greyscale(side, side, at);
    let found = prepared.detect_grids();
    let [grid] = found.as_slice() else {
        panic!("one code, not {}", found.len());
    };
    let (_, text) = grid.decode().expect("it is read");
    text
}

/// Geometry and traps of a run: what is set out on site, whatever it is called and wherever it came from.
fn set_out(run: &Run) -> Vec<[f64; 6]> {
    let leg = |leg: &Leg| {
        [
            leg.length_m.value,
            leg.rise_m.value,
            leg.tube.bore_mm.value,
            leg.tube.outside_diameter_mm.value,
            leg.tube.conductivity_w_mk.value,
            leg.hanger_spacing_m
                .as_ref()
                .map_or(0.0, |spacing| spacing.value),
        ]
    };
    let exhaust = run.exhaust.iter().flat_map(|route| &route.legs);
    let mut all: Vec<_> = run.intake.legs.iter().chain(exhaust).map(leg).collect();
    let traps = run.intake.traps.iter().map(|trap| {
        let capacity = trap.capacity_ml.as_ref().map_or(0.0, |one| one.value);
        [trap.at_m.value, capacity, 0.0, 0.0, 0.0, 0.0]
    });
    all.extend(traps);
    all.push([
        run.flow.volume_l_min.value,
        run.duct.static_pa.value,
        0.0,
        0.0,
        0.0,
        0.0,
    ]);
    all
}

#[test]
fn the_examples_are_read_off_again() {
    for name in [
        "make-up-air",
        "pool-hall-exhaust",
        "chilled-supply",
        "sagging-tube",
    ] {
        let project = demo(name);
        let code = code_of(&project, Some(PAGE));
        let text = read_off(&code);
        assert_eq!(text, code.text, "{name}: word for word");
        assert!(
            text.starts_with(&format!("{PAGE}#v1=")),
            "{name}: the page, then what it opens"
        );
        let opened = from_link(&text).expect("it opens");
        assert_eq!(
            set_out(&opened.runs[0]),
            set_out(&project.runs[0]),
            "{name}: the same tube"
        );
    }
}

#[test]
fn ten_legs_stay_readable_at_40_mm() {
    let project = ten_legs();
    let run = &project.runs[0];
    let legs = run.intake.legs.len() + run.exhaust.as_ref().map_or(0, |route| route.legs.len());
    assert_eq!(legs, 10, "a run of ten legs");
    let code = code_of(&project, Some(PAGE));
    assert!(
        SMALLEST_MODULE_MM <= code.module_mm(),
        "{} mm a module",
        code.module_mm()
    );
    assert!(
        code.left_out
            .starts_with(&[LeftOut::Notes, LeftOut::Visits]),
        "what the person at the tube can do without goes first: {:?}",
        code.left_out
    );
    let opened = from_link(&read_off(&code)).expect("it opens");
    assert_eq!(set_out(&opened.runs[0]), set_out(run), "the same tube");
    let spaces = |project: &Project| -> Vec<f64> {
        project
            .spaces
            .iter()
            .map(|space| space.temperature_c.value)
            .collect()
    };
    assert_eq!(spaces(&opened), spaces(&project), "in the same spaces");
}

/// What does not have to go stays, whatever else goes.
#[test]
fn no_more_is_left_out_than_said() {
    let project = ten_legs();
    let code = code_of(&project, Some(PAGE));
    let opened = from_link(&code.text).expect("it opens");
    let mut expected = project.clone();
    let notes = expected.runs[0].visits.iter_mut();
    notes.for_each(|visit| visit.note.clear());
    let mut origins = true;
    for step in &code.left_out {
        match step {
            LeftOut::Notes => expected.note.clear(),
            LeftOut::Visits => expected.runs[0].visits.clear(),
            LeftOut::OtherRuns => panic!("there is one run"),
            LeftOut::Files => expected.weather = None,
            LeftOut::Names => nameless(&mut expected),
            LeftOut::Origins => origins = false,
        }
    }
    assert_eq!(
        values(&opened, origins),
        values(&expected, origins),
        "all but what was said"
    );
}

fn nameless(project: &mut Project) {
    project.name.clear();
    let spaces = project.spaces.iter_mut();
    spaces.for_each(|space| space.name.clear());
    let run = &mut project.runs[0];
    run.name.clear();
    run.duct.name.clear();
    run.intake.entry.place.clear();
    if let Some(exhaust) = &mut run.exhaust {
        exhaust.entry.place.clear();
    }
}

/// The file of a project as the library reads it, with or without where its values come from.
fn values(project: &Project, with_origins: bool) -> Value {
    fn without(value: &mut Value) {
        match value {
            Value::Object(members) => {
                members.remove("origin");
                members.values_mut().for_each(without);
            }
            Value::Array(entries) => entries.iter_mut().for_each(without),
            _ => {}
        }
    }
    let text = write(project).expect("within limits");
    let mut value = serde_json::from_str(&text).expect("it is JSON");
    if !with_origins {
        without(&mut value);
    }
    value
}

#[test]
fn a_short_run_is_carried_whole_and_by_itself() {
    let mut project = demo("sagging-tube");
    project.note.clear();
    project.runs[0].exhaust = None;
    let code = code_of(&project, None);
    assert!(code.left_out.is_empty(), "nothing: {:?}", code.left_out);
    assert_eq!(
        Ok(code.text.clone()),
        share_link(&project),
        "its link without a page"
    );
    assert_eq!(from_link(&read_off(&code)), Ok(project), "and back");
}

/// The example with a season of troubles goes by a weather file and has nine legs: its service card bears a code.
#[test]
fn a_run_with_weather_leaves_its_files_out_and_keeps_its_names() {
    let project = demo("laundry-exhaust");
    assert!(project.weather.is_some(), "it goes by a weather file");
    let code = code_of(&project, None);
    assert_eq!(
        code.left_out,
        [LeftOut::Notes, LeftOut::Files, LeftOut::Origins],
        "names fit once origins are left out"
    );
    let opened = from_link(&read_off(&code)).expect("it opens");
    assert_eq!(opened.weather, None, "whoever scans it has no such file");
    assert_eq!(opened.runs[0].name, project.runs[0].name, "its name");
    assert_eq!(
        set_out(&opened.runs[0]),
        set_out(&project.runs[0]),
        "the same tube"
    );
}

#[test]
fn other_runs_go_with_the_spaces_that_they_alone_pass() {
    let mut project = ten_legs();
    let mut other = demo("pool-hall-exhaust");
    for (place, space) in other.spaces.iter_mut().enumerate() {
        space.id = format!("other-{place}");
    }
    let first = other.spaces[0].id.clone();
    let mut run = other.runs.swap_remove(0);
    run.id = "other".to_owned();
    let exhaust = run.exhaust.iter_mut().flat_map(|route| &mut route.legs);
    run.intake
        .legs
        .iter_mut()
        .chain(exhaust)
        .for_each(|leg| leg.space = first.clone());
    project.runs.insert(0, run);
    project.spaces.extend(other.spaces);
    let code = printed_code(&project, 1, Some(PAGE))
        .expect("within limits")
        .expect("it fits");
    let opened = from_link(&code.text).expect("it opens");
    assert!(
        code.left_out.contains(&LeftOut::OtherRuns),
        "{:?}",
        code.left_out
    );
    assert_eq!(opened.runs.len(), 1, "the run asked for");
    assert_eq!(
        set_out(&opened.runs[0]),
        set_out(&project.runs[1]),
        "that one"
    );
    assert_eq!(
        opened.spaces.len(),
        ten_legs().spaces.len(),
        "and its spaces"
    );
}

#[test]
fn a_run_too_long_for_any_code_has_none() {
    let mut project = ten_legs();
    let legs = &mut project.runs[0].intake.legs;
    let leg = legs[0].clone();
    for number in 0..150_u32 {
        let mut next = leg.clone();
        next.id = format!("more-{number}");
        next.length_m.value = 1.0 + f64::from(number) * 0.0137;
        next.rise_m.value = -0.02 - f64::from(number) * 0.000_31;
        legs.push(next);
    }
    let code = printed_code(&project, 0, Some(PAGE)).expect("within limits");
    assert_eq!(code, None, "rather none than one that no phone reads");
}

/// ISO/IEC 18004: a side of 17 + 4 times the version, at most 40.
#[test]
fn sides_are_those_of_the_standard() {
    let code = code_of(&ten_legs(), Some(PAGE));
    assert_eq!((code.modules - 17) % 4, 0, "{} modules", code.modules);
    let mm = f64::from(u32::try_from(code.modules).expect("small")) * code.module_mm();
    assert!((mm - CODE_MM).abs() < 1e-9, "{mm} mm");
}
