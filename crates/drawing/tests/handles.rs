//! What a hand can take hold of in the drawing, and what it makes of a leg as it moves.

mod sample;

use dewrun_drawing::{
    Elevation, Grips, Point, Room, Shape, Touched, View, elevation, elevation_held,
    elevation_on_paper, leg_name,
};
use dewrun_quantity::{Fall, FallForm, Length, Style};
use sample::{Sample, make_up_air};

const WIDTH: f64 = 1392.0;

fn draw(sample: &Sample, width: f64) -> Elevation {
    elevation(&sample.view(Style::default()), Room { width, text: 1.0 })
}

fn fall(shape: Shape) -> Option<f64> {
    Fall::of(shape.length, shape.rise, FallForm::Ratio).map(|fall| fall.number)
}

/// The hand is moved by so many metres to the right and so many px down from the diamond of a leg.
fn pulled(sample: &Sample, leg: usize, by_m: f64, down_px: f64, free: bool) -> Shape {
    let drawn = draw(sample, WIDTH);
    let grips = Grips::new(&drawn);
    let from = grips.handles[leg].at;
    let pull = grips.pull(leg, from).expect("there is such a leg");
    let hand = from.moved(by_m * drawn.frame.px_per_m, down_px);
    pull.shape(hand, free, Style::default())
}

#[test]
fn every_leg_has_a_diamond_above_its_end_and_paper_has_none() {
    let sample = make_up_air();
    for width in [328.0, 752.0, WIDTH] {
        let drawn = draw(&sample, width);
        assert_eq!(drawn.handles.len(), 5, "one for each leg at {width} px");
        for (leg, handle) in drawn.handles.iter().enumerate() {
            let bend = drawn.bends[leg + 1];
            assert_eq!(handle.foot, bend, "leg {leg} ends at its bend");
            assert!(
                handle.at.y < handle.foot.y,
                "leg {leg} is held above the tube"
            );
            let away = handle.at.distance(handle.foot);
            assert!(away < 80.0, "diamond {leg} stands {away} px from its end");
        }
    }
    let paper = elevation_on_paper(&sample.view(Style::default()));
    assert!(paper.handles.is_empty(), "nothing can be drawn on paper");
}

#[test]
fn a_hand_that_does_not_move_changes_nothing_but_to_what_snaps() {
    let sample = make_up_air();
    for (leg, found) in sample.run.intake.iter().enumerate() {
        let shape = pulled(&sample, leg, 0.0, 0.0, false);
        let (length, expected) = (shape.length.to_metres(), found.length.to_metres());
        assert!((length - expected).abs() < 1e-9, "leg {leg} is {length} m");
        let (rise, expected) = (shape.rise.to_metres(), found.rise.to_metres());
        assert!((rise - expected).abs() < 1e-4, "leg {leg} rises {rise} m");
    }
}

/// Lengths are to scale and falls are drawn 6 times: 0.14 m of fall in 4.2 m is 1:30 and lies 0.84 m lower on the paper.
#[test]
fn along_is_length_and_down_is_fall() {
    let sample = make_up_air();
    let longer = pulled(&sample, 1, 0.8, 0.0, false);
    assert_eq!(longer.length, Length::metres(5.0), "4.2 m and 0.8 m");
    let scale = draw(&sample, WIDTH).held.px_per_m;
    let lower = pulled(&sample, 1, 0.0, (0.14 - 0.084) * 6.0 * scale, false);
    assert_eq!(lower.length, Length::metres(4.2), "as long as before");
    let n = fall(lower).expect("it is not upright");
    assert!((n - 30.0).abs() < 1e-9, "1:{n}");
    let level = pulled(&sample, 1, 0.0, -0.084 * 6.0 * scale, false);
    assert_eq!(level.rise, Length::ZERO, "level");
}

#[test]
fn a_free_hand_does_not_snap() {
    let sample = make_up_air();
    let scale = draw(&sample, WIDTH).held.px_per_m;
    let down = (4.2 / 45.0 - 0.084) * 6.0 * scale;
    let free = pulled(&sample, 1, 0.02, down, true);
    assert_eq!(free.length, Length::metres(4.22), "to the centimetre");
    let n = fall(free).expect("it is not upright");
    assert!((n - 45.0).abs() < 1e-6, "1:{n}");
    let snapped = pulled(&sample, 1, 0.02, down, false);
    assert_eq!(snapped.length, Length::metres(4.2), "to 0.05 m");
}

/// The drop at the end is drawn at its true height.
#[test]
fn a_drop_stays_upright_and_gets_longer_downwards() {
    let sample = make_up_air();
    let scale = draw(&sample, WIDTH).held.px_per_m;
    let longer = pulled(&sample, 4, 0.03, 0.5 * scale, false);
    assert_eq!(longer.length, Length::metres(2.0), "1.5 m and 0.5 m");
    assert_eq!(longer.rise, -longer.length, "it still drops");
}

#[test]
fn a_held_drawing_puts_the_end_under_the_hand() {
    let sample = make_up_air();
    let drawn = draw(&sample, WIDTH);
    let mut changed = sample.clone();
    changed.run.intake[1].length = Length::metres(3.0);
    changed.run.intake[1].rise = Length::metres(-0.15);
    let view = changed.view(Style::default());
    let room = Room {
        width: WIDTH,
        text: 1.0,
    };
    let held = elevation_held(&view, room, &drawn.held);
    assert_eq!(held.held.px_per_m, drawn.held.px_per_m, "the same scale");
    assert_eq!(
        held.held.inlet, drawn.held.inlet,
        "the tube begins there still"
    );
    let (before, after) = (drawn.handles[1].foot, held.handles[1].foot);
    let scale = drawn.held.px_per_m;
    let across = (3.0_f64 * 3.0 - 0.15 * 0.15).sqrt() - (4.2_f64 * 4.2 - 0.084 * 0.084).sqrt();
    assert!(
        (after.x - before.x - across * scale).abs() < 1e-6,
        "its end went along by what it is shorter"
    );
    let down = (0.15 - 0.084) * 6.0 * scale;
    assert!((after.y - before.y - down).abs() < 1e-6, "and down");
    assert!(
        drawn.scene.height <= held.scene.height,
        "the paper is no smaller"
    );
    let free = elevation(&view, room);
    assert!(
        drawn.held.px_per_m < free.held.px_per_m,
        "let go, a shorter tube is drawn larger"
    );
}

#[test]
fn a_hand_meets_the_nearest_diamond_or_the_tube() {
    let sample = make_up_air();
    let drawn = draw(&sample, WIDTH);
    let grips = Grips::new(&drawn);
    for (leg, handle) in grips.handles.iter().enumerate() {
        let beside = handle.at.moved(3.0, -4.0);
        assert_eq!(
            grips.touched(beside),
            Some(Touched::Handle(leg)),
            "5 px from diamond {leg}"
        );
    }
    let (from, to) = (drawn.bends[1], drawn.bends[2]);
    let quarter = from.towards(to, 0.25);
    match grips.touched(quarter) {
        Some(Touched::Place {
            leg,
            from_start,
            along,
        }) => {
            assert_eq!(leg, 1, "the second leg");
            let found = from_start.to_metres();
            assert!((found - 1.05).abs() < 1e-6, "a quarter of 4.2 m: {found}");
            let found = along.to_metres();
            assert!((found - 2.05).abs() < 1e-6, "behind 1 m: {found}");
        }
        other => panic!("the tube is there, and {other:?} was met"),
    }
    assert_eq!(
        grips.touched(Point::new(quarter.x, drawn.scene.height - 2.0)),
        None,
        "nothing lies under the floor"
    );
}

#[test]
fn a_leg_is_told_by_number_space_length_and_fall() {
    let sample = make_up_air();
    let view = sample.view(Style::default());
    let told = |leg| leg_name(&view, leg).replace('\u{a0}', " ");
    assert_eq!(
        told(1),
        "Leg 2, Service corridor, 4.2 m, falls 1:50",
        "down"
    );
    assert_eq!(told(2), "Leg 3, Service corridor, 3.8 m, rises 1:60", "up");
    assert_eq!(told(4), "Leg 5, Lobby, 1.5 m, drop", "upright");
}

#[test]
fn the_chosen_leg_has_its_number_in_a_balloon() {
    let sample = make_up_air();
    let view: View<'_> = sample.view(Style::default());
    let grips = Grips::new(&draw(&sample, WIDTH));
    let chosen = grips.chosen(&view, 1);
    assert!(chosen.contains(">2</text>"), "its number: {chosen}");
    assert!(chosen.contains("dw-h-chosen"), "its mark: {chosen}");
    assert_eq!(grips.chosen(&view, 9), "", "there is no tenth leg");
}

/// A trap hangs under the low point and one stands beside the drop; hangers every 1.2 m.
#[test]
fn traps_are_drawn_at_their_places_and_met_by_a_hand() {
    let mut sample = make_up_air();
    let traps = [5.2, 12.1].map(Length::metres);
    sample.names.intake_fitted.traps = traps.to_vec();
    sample.names.intake_fitted.hangers = vec![Some(Length::metres(1.2)); 5];
    for width in [328.0, WIDTH] {
        let drawn = draw(&sample, width);
        let (low, end) = (drawn.bends[2], drawn.bends[5]);
        let (first, second) = (drawn.traps[0].at, drawn.traps[1].at);
        assert!((first.x - low.x).abs() < 1e-6, "under the low point");
        assert!(low.y + 5.0 < first.y, "below the tube");
        assert!(second.x < end.x - 5.0, "beside the drop");
        let detector = drawn.ends[1];
        assert!(second.x + 6.0 <= detector.x, "and clear of the detector");
        let grips = Grips::new(&drawn);
        assert_eq!(grips.touched(first), Some(Touched::Trap(0)), "a finger");
        let (along, away) = grips.along(first);
        let along = along.to_metres();
        assert!((along - 5.2).abs() < 1e-9, "it is at {along} m of the tube");
        assert!(away < 40.0, "{away} px from it");
    }
}

/// 4.2 m take three hangers 1.2 m apart, 3.8 m three, 1.6 m one, 1 m and the drop none.
#[test]
fn hangers_stand_so_far_apart_in_each_flat_leg() {
    let mut sample = make_up_air();
    let count = |sample: &Sample| draw(sample, WIDTH).scene.items.len();
    let without = count(&sample);
    sample.names.intake_fitted.hangers = vec![Some(Length::metres(1.2)); 5];
    assert_eq!(count(&sample), without + 2 * 7, "a rod and a clip each");
}
