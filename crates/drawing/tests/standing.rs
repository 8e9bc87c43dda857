//! Water that stands in the drawing: where it reaches and how deep it is, against what the low point holds.

use dewrun_document::{read, to_installation, to_run};
use dewrun_drawing::{
    Elevation, Fitted, Item, LabelKind, Names, Room, View, elevation_of_whole, svg,
};
use dewrun_quantity::{FallForm, Style, Time};
use dewrun_run::{Installation, Outcome, Run, Tube, Whole, evaluate, water_and_air};

const WIDE: Room = Room {
    width: 1392.0,
    text: 1.0,
};

/// A run of a project with all that is answered of it.
struct Answered {
    run: Run,
    built: Installation,
    outcome: Outcome,
    whole: Whole,
    names: Names,
}

/// A worked case whose traps are emptied after so many hours.
fn answered(project: &str, hours: f64) -> Answered {
    let project = read(project).expect("a worked case is a project");
    let (run, given) = to_run(&project, 0).expect("it has a run");
    let (mut built, _) = to_installation(&project, 0).expect("it is installed");
    built.drain_interval = Time::hours(hours);
    let outcome = evaluate(&run).expect("it has an answer").value;
    let whole = water_and_air(&run, &built, &outcome).expect("its water has one");
    let fitted = |tube: &dewrun_run::TubeInstallation| Fitted {
        traps: tube.traps.iter().map(|trap| trap.at).collect(),
        hangers: tube.legs.iter().map(|leg| leg.hanger_spacing).collect(),
    };
    let names = Names {
        spaces: given.spaces,
        intake_falls: vec![FallForm::Ratio; run.intake.len()],
        intake_fitted: fitted(&built.intake),
        exhaust_fitted: fitted(&built.exhaust),
        ..Names::default()
    };
    Answered {
        run,
        built,
        outcome,
        whole,
        names,
    }
}

impl Answered {
    fn view(&self) -> View<'_> {
        View {
            run: &self.run,
            outcome: &self.outcome,
            names: &self.names,
            style: Style::default(),
            tube: Tube::Intake,
        }
    }

    fn drawn(&self, room: Room) -> Elevation {
        elevation_of_whole(&self.view(), Some(&self.whole), room, None)
    }
}

fn make_up_air(hours: f64) -> Answered {
    answered(include_str!("../../../demo/make-up-air.json"), hours)
}

/// All coordinates of the areas of water that have a level surface, px.
fn pools(drawn: &Elevation) -> Vec<Vec<(f64, f64)>> {
    let water = drawn.scene.items.iter().filter_map(|item| match item {
        Item::Path {
            class: "dw-s-water",
            path,
        } => Some(corners(path.as_str())),
        _ => None,
    });
    let is_level = |area: &Vec<(f64, f64)>| {
        let top = area.iter().map(|(_, y)| *y).fold(f64::INFINITY, f64::min);
        1 < area.iter().filter(|(_, y)| *y == top).count()
    };
    water.filter(is_level).collect()
}

fn corners(path: &str) -> Vec<(f64, f64)> {
    let pairs = path.trim_end_matches('Z').split(['M', 'L']);
    let pair = |pair: &str| {
        let (x, y) = pair.split_once(' ')?;
        Some((x.parse().ok()?, y.parse().ok()?))
    };
    pairs.filter_map(pair).collect()
}

#[test]
fn a_pool_is_level_and_as_long_and_deep_as_it_is() {
    let answered = make_up_air(10.0);
    let drawn = answered.drawn(WIDE);
    let low = &answered.whole.intake.low_points[0];
    assert!(!low.stand.sealed, "after ten hours it is open: {low:?}");
    let all = pools(&drawn);
    // The first is the one in the tube, the second the one in the circle.
    let pool = all.first().expect("water stands");
    let top = pool.iter().map(|(_, y)| *y).fold(f64::INFINITY, f64::min);
    let bottom = pool.iter().map(|(_, y)| *y).fold(0.0, f64::max);
    let surface: Vec<f64> = pool
        .iter()
        .filter(|(_, y)| *y == top)
        .map(|(x, _)| *x)
        .collect();
    let left = surface.iter().copied().fold(f64::INFINITY, f64::min);
    let right = surface.iter().copied().fold(0.0, f64::max);
    let [before, after] = low.stand.wetted.map(|length| length.to_metres());
    let long = (before + after) * drawn.frame.px_per_m;
    // Water keeps 0.6 px off the wall's line: at falls of 1:50 and 1:60, drawn six times, that is up to 0.6 x 60 / 6 px at each end, and a tenth of a pixel is written.
    assert!(
        (right - left - long).abs() < 2.0 * 0.6 * 60.0 / 6.0 + 0.2,
        "a surface of {} px for {long} px",
        right - left
    );
    let deep = low.stand.depth.to_metres() * drawn.falls_factor * drawn.frame.px_per_m;
    assert!(
        (bottom + 0.6 - top - deep).abs() < 0.3,
        "{} px deep for {deep} px",
        bottom + 0.6 - top
    );
}

#[test]
fn more_time_means_more_water_until_it_seals() {
    let depth = |hours| {
        let drawn = make_up_air(hours).drawn(WIDE);
        let pool = pools(&drawn).first().cloned().unwrap_or_default();
        let ys = || pool.iter().map(|(_, y)| *y);
        ys().fold(0.0, f64::max) - ys().fold(f64::INFINITY, f64::min)
    };
    let (early, late, sealed) = (depth(8.0), depth(16.0), depth(100.0));
    assert!(early < late, "{early} px after 8 h, {late} px after 16 h");
    let bore = 2.0 * 8.0;
    assert!(
        late < bore && bore < sealed,
        "{late} px open and {sealed} px sealed in a bore of {bore} px"
    );
}

#[test]
fn what_is_missing_is_dashed_and_says_why() {
    let drawn = make_up_air(2160.0).drawn(WIDE);
    let text = svg(&drawn.scene);
    assert!(text.contains("dw-d-planned"), "a dashed trap");
    assert!(text.contains("trap here"), "and its name");
    assert!(
        drawn.scene.description.contains("A trap is missing at 5.2"),
        "{}",
        drawn.scene.description
    );
    assert!(
        drawn
            .labels
            .iter()
            .any(|label| label.kind == LabelKind::Detail(0)),
        "the low point is enlarged where there is room"
    );
}

#[test]
fn a_trap_that_nothing_comes_to_says_so() {
    let mut answered = make_up_air(2160.0);
    let mut trap = dewrun_tests::installations::trap(dewrun_quantity::Length::metres(12.1));
    answered.built.intake.traps.push(trap);
    trap.at = dewrun_quantity::Length::metres(5.2);
    answered.built.intake.traps.push(trap);
    answered.whole =
        water_and_air(&answered.run, &answered.built, &answered.outcome).expect("it has an answer");
    answered.names.intake_fitted.traps = answered.built.intake.traps.iter().map(|t| t.at).collect();
    let text = svg(&answered.drawn(WIDE).scene);
    assert!(text.contains("no water reaches it"), "of the first trap");
    assert!(!text.contains("trap here"), "none is missing");
}

#[test]
fn ice_is_drawn_where_frost_closes_the_bore() {
    let frozen = answered(include_str!("../../../demo/pool-hall-exhaust.json"), 2160.0);
    let text = svg(&frozen.drawn(WIDE).scene);
    assert!(text.contains("elevation-ice"), "a plug of ice");
    assert!(text.contains("bore closed after"), "and when");
    let early = answered(include_str!("../../../demo/pool-hall-exhaust.json"), 2.0);
    let text = svg(&early.drawn(WIDE).scene);
    assert!(!text.contains("bore closed after"), "not within two hours");
    assert!(text.contains("of the bore"), "but narrower: {text}");
}
