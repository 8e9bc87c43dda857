//! Another layout is drawn on the scales of the open one.

mod sample;

use dewrun_drawing::{
    Elevation, Item, Path, Room, compare_elevation, compare_profile, elevation, html, profile,
};
use dewrun_quantity::Style;
use sample::{Sample, make_up_air};

const ROOM: Room = Room {
    width: 1200.0,
    text: 1.0,
};

fn thin(items: &[Item]) -> Vec<&Path> {
    let thin = |item: &'_ Item| matches!(item, Item::Path { class, .. } if *class == "dw-o-line");
    items
        .iter()
        .filter(|item| thin(item))
        .filter_map(|item| match item {
            Item::Path { path, .. } => Some(path),
            _ => None,
        })
        .collect()
}

fn compared(open: &Sample, other: &Sample) -> Elevation {
    let style = Style::default();
    let mut drawn = elevation(&open.view(style), ROOM);
    compare_elevation(&mut drawn, &other.view(style));
    drawn
}

/// A layout under itself lies in the middle of its own tube, bend for bend.
#[test]
fn the_same_layout_lies_under_itself() {
    let sample = make_up_air();
    let drawn = compared(&sample, &sample);
    let own = Path::through(drawn.bends.iter().copied());
    assert_eq!(
        thin(&drawn.scene.items),
        [&own],
        "one line through its bends"
    );
    let first = drawn
        .scene
        .items
        .iter()
        .position(|item| matches!(item, Item::Path { class, .. } if *class == "dw-d-bore"));
    let under = drawn
        .scene
        .items
        .iter()
        .position(|item| matches!(item, Item::Path { class, .. } if *class == "dw-o-line"));
    assert!(under < first, "and under the tube");
}

#[test]
fn the_curves_of_the_same_layout_lie_under_its_own() {
    let sample = make_up_air();
    let view = sample.view(Style::default());
    let drawn = elevation(&view, ROOM);
    let before = profile(&view, &drawn.frame).expect("it has an answer");
    let mut after = before.clone();
    compare_profile(&mut after, &drawn.frame, &view);
    assert_eq!(thin(&after.scene.items).len(), 3, "air, wall and dew point");
    assert_eq!(
        after.scene.items.len(),
        before.scene.items.len() + 3,
        "everything else is as it was"
    );
}

#[test]
fn figures_of_both_say_which_they_are() {
    let sample = make_up_air();
    let view = sample.view(Style::default());
    let table = html::side_by_side(&view, &view);
    let ids = |mark: &str| -> Vec<String> {
        let parts = table.split(mark).skip(1);
        parts
            .filter_map(|part| part.split('"').next())
            .map(str::to_owned)
            .collect()
    };
    let opened = ids(" data-figure=\"");
    assert_eq!(opened.len(), 5, "{table}");
    assert_eq!(
        opened,
        ids(" data-other=\""),
        "the same figures in both columns"
    );
}
