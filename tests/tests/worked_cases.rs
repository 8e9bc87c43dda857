//! Each worked example is drawn small with the trouble it teaches, legibly and within its picture.

use std::fs;

use dewrun_document::{Project, read, to_run};
use dewrun_drawing::{Hatch, Item, Names, Scene, View, worked_case};
use dewrun_quantity::Style;
use dewrun_run::{Tube, evaluate};

fn project(name: &str) -> Project {
    let path = format!("{}/../demo/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = fs::read_to_string(path).expect("the example is there");
    read(&text).expect("it can be read")
}

fn drawn(name: &'static str) -> Scene {
    let (run, names) = to_run(&project(name), 0).expect("it has a run");
    let outcome = evaluate(&run).expect("the run has an answer").value;
    let names = Names {
        run: names.run,
        duct: names.duct,
        spaces: names.spaces,
        intake_falls: names.intake_falls,
        exhaust_falls: names.exhaust_falls,
        ..Names::default()
    };
    let view = View {
        run: &run,
        outcome: &outcome,
        names: &names,
        style: Style::default(),
        tube: Tube::Intake,
    };
    worked_case(&view, name)
}

fn has_class(scene: &Scene, wanted: &str) -> bool {
    let mut items = scene.items.iter();
    items.any(|item| matches!(item, Item::Path { class, .. } if *class == wanted))
}

fn has_hatch(scene: &Scene, wanted: Hatch) -> bool {
    let mut items = scene.items.iter();
    items.any(|item| matches!(item, Item::Hatched { hatch, .. } if *hatch == wanted))
}

#[track_caller]
fn check(name: &'static str, title: &str, labels: [&str; 2]) -> Scene {
    let scene = drawn(name);
    assert_eq!(scene.title, title, "{name}: what it is");
    let texts: Vec<_> = scene.items.iter().filter_map(text).collect();
    let words: Vec<_> = texts.iter().map(|text| text.words.as_str()).collect();
    assert_eq!(
        words,
        labels.map(|label| label.replace('~', "\u{a0}")),
        "{name}"
    );
    let [one, other] = [texts[0].rect(1.0), texts[1].rect(1.0)];
    assert!(!one.overlaps(&other), "{name}: {one:?} lies on {other:?}");
    for rect in [one, other] {
        assert!(
            scene.bounds().holds(&rect),
            "{name}: {rect:?} leaves the picture"
        );
    }
    for y in levels(&scene) {
        let crosses = |rect: &dewrun_drawing::Rect| rect.y < y && y < rect.bottom();
        assert!(
            !crosses(&one) && !crosses(&other),
            "{name}: a label lies on the line at {y}"
        );
    }
    scene
}

/// Heights of the slabs and floors.
fn levels(scene: &Scene) -> Vec<f64> {
    let level = |item: &Item| match item {
        Item::Path {
            class: "dw-d-cut",
            path,
        } => {
            let (_, from) = path.as_str().split_once("M0 ")?;
            from.split_once('L')?.0.parse().ok()
        }
        _ => None,
    };
    let levels: Vec<f64> = scene.items.iter().filter_map(level).collect();
    assert!(2 <= levels.len(), "a slab and a floor: {levels:?}");
    levels
}

fn text(item: &Item) -> Option<&dewrun_drawing::Text> {
    match item {
        Item::Text(text) => Some(text),
        _ => None,
    }
}

#[test]
fn humid_make_up_air_runs_to_its_low_point() {
    let scene = check(
        "make-up-air",
        "Make-up air duct to the detector: water forms in the tube",
        ["runs to here", "Service corridor 20~°C"],
    );
    assert!(has_class(&scene, "dw-s-water"), "water at the low point");
    assert!(has_class(&scene, "dw-b-water"), "and on the way to it");
    assert!(has_class(&scene, "dw-d-solid"), "walls part the spaces");
}

#[test]
fn the_pool_hall_freezes_in_its_loft() {
    let scene = check(
        "pool-hall-exhaust",
        "Exhaust duct in the loft to the detector: frost grows in the tube",
        ["frost", "Ventilated loft \u{2212}8~°C"],
    );
    assert!(has_hatch(&scene, Hatch::Frost), "frost in the bore");
    assert!(
        has_class(&scene, "dw-g-raise"),
        "the loft is the upper storey"
    );
    assert!(!has_class(&scene, "dw-s-water"), "no water");
}

#[test]
fn the_chilled_duct_drips_outside_only() {
    let scene = check(
        "chilled-supply",
        "Supply duct to the detector: the tube drips on the outside",
        ["outside only", "Service shaft 30~°C"],
    );
    assert!(has_class(&scene, "dw-s-sweat"), "drops under the tube");
    assert!(!has_class(&scene, "dw-b-water"), "dry inside");
}
