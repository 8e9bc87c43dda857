//! Everything written in the drawings of random routes: nothing over anything else, nothing outside, and nothing missing that matters.

mod sample;

use std::fmt;

use dewrun_drawing::{
    Elevation, Fitted, Handle, Item, LabelKind, Names, Rect, Room, Scene, Text, View, elevation,
    elevation_of_whole, elevation_of_whole_on_paper, elevation_on_paper, profile,
};
use dewrun_quantity::{
    Conductivity, FallForm, Length, PowerPerLength, Pressure, RelativeHumidity, Speed, Style,
    Temperature, VolumeFlow,
};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{
    Detector, Flow, FlowAt, Leg, Outcome, Run, Space, Tube, TubeInstallation, TubeWall,
    WET_TUBE_G_H, Whole, evaluate, water_and_air,
};
use dewrun_tests::installations;
use proptest::prelude::{ProptestConfig, Strategy, prop_assert, proptest};

/// The room for a drawing on pages of 360, 800 and 1440 px.
const WIDTHS: [f64; 3] = [328.0, 752.0, 1392.0];
/// The same for a page of 800 px, at which eight legs keep all their figures.
const EIGHT_LEGS_AT: f64 = 752.0;
const ROUTES: u32 = 300;

/// A leg: space, length in m, rise in m.
type RouteLeg = (usize, f64, f64);

/// A route in few words, so that one that fails can be read.
#[derive(Clone)]
struct Route {
    duct: (f64, f64),
    spaces: Vec<(f64, f64)>,
    intake: Vec<RouteLeg>,
    exhaust: Vec<RouteLeg>,
}

impl fmt::Debug for Route {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            duct,
            spaces,
            intake,
            exhaust,
        } = self;
        write!(
            f,
            "air {duct:.1?}, spaces {spaces:.1?}, intake {intake:.3?}, exhaust {exhaust:.3?}"
        )
    }
}

/// A route with its answer.
struct Drawn {
    run: Run,
    outcome: Outcome,
    names: Names,
}

impl Route {
    /// Evaluates it.
    fn solved(&self) -> Drawn {
        let space = |(celsius, percent): &(f64, f64)| Space {
            temperature: Temperature::celsius(*celsius),
            humidity: Humidity::Relative {
                value: RelativeHumidity::percent(*percent),
                over: Over::Water,
            },
            radiant: None,
            wind: Speed::ZERO,
        };
        let run = Run {
            pressure: Pressure::pascals(101_325.0),
            duct_air: Pair::Temperature(
                Temperature::celsius(self.duct.0),
                Humidity::DewPoint(Temperature::celsius(self.duct.1)),
            ),
            flow: Flow {
                volume: VolumeFlow::litres_per_minute(25.0),
                at: FlowAt::Intake,
            },
            spaces: self.spaces.iter().map(space).collect(),
            intake: self.intake.iter().map(leg).collect(),
            detector: Detector::default(),
            exhaust: self.exhaust.iter().map(leg).collect(),
        };
        let outcome = evaluate(&run)
            .expect("every route drawn here is sound")
            .value;
        let names = [
            "Plant room",
            "Service corridor",
            "Ceiling void, north wing",
            "Lobby",
        ];
        Drawn {
            names: Names {
                run: "Run 1".into(),
                duct: "Make-up air duct".into(),
                spaces: names.map(String::from).into(),
                intake_falls: vec![FallForm::Ratio; run.intake.len()],
                exhaust_falls: vec![FallForm::Ratio; run.exhaust.len()],
                intake_fitted: fitted(&self.intake),
                exhaust_fitted: fitted(&self.exhaust),
            },
            run,
            outcome,
        }
    }
}

impl Drawn {
    /// What water and air do in it with a random installation, which is then drawn; none where the air has no single flow.
    fn installed(&mut self, seed: u64) -> Option<Whole> {
        let built = installations::installation(&self.run, seed);
        let fitted = |tube: &TubeInstallation| Fitted {
            traps: tube.traps.iter().map(|trap| trap.at).collect(),
            hangers: tube.legs.iter().map(|leg| leg.hanger_spacing).collect(),
        };
        self.names.intake_fitted = fitted(&built.intake);
        self.names.exhaust_fitted = fitted(&built.exhaust);
        water_and_air(&self.run, &built, &self.outcome).ok()
    }

    fn view(&self, tube: Tube) -> View<'_> {
        View {
            run: &self.run,
            outcome: &self.outcome,
            names: &self.names,
            style: Style::default(),
            tube,
        }
    }
}

/// Hangers everywhere, a trap at the end of every second leg and one in the middle of the first.
fn fitted(legs: &[RouteLeg]) -> Fitted {
    let mut traps = Vec::new();
    let mut along = 0.0;
    for (place, (_, length, _)) in legs.iter().enumerate() {
        if place == 0 {
            traps.push(Length::metres(length / 2.0));
        }
        along += length;
        if place % 2 == 1 {
            traps.push(Length::metres(along));
        }
    }
    Fitted {
        traps,
        hangers: vec![Some(Length::metres(1.2)); legs.len()],
    }
}

fn leg(&(space, length, rise): &RouteLeg) -> Leg {
    Leg {
        space,
        length: Length::metres(length),
        rise: Length::metres(rise),
        tube: TubeWall {
            bore: Length::millimetres(19.0),
            outside_diameter: Length::millimetres(22.0),
            conductivity: Conductivity::watts_per_metre_kelvin(0.19),
        },
        insulation: None,
        emissivity: 0.9,
        tracing: PowerPerLength::ZERO,
    }
}

/// Legs that run level, fall, rise, drop and climb through up to four spaces, warm, humid and freezing ones; one in five is steep.
fn legs(count: impl Into<proptest::collection::SizeRange>) -> impl Strategy<Value = Vec<RouteLeg>> {
    let leg = (0_usize..4, 0.2..8.0_f64, -1.0..1.0_f64, 0.0..1.0_f64);
    let leg = leg.prop_map(|(space, length, slope, kind)| {
        let steep = if slope < 0.0 { -1.0 } else { 1.0 };
        let share = if kind < 0.2 { steep } else { slope * 0.1 };
        // As a tape measures them.
        let length = (length * 20.0).round() / 20.0;
        (space, length, length * share)
    });
    proptest::collection::vec(leg, count)
}

fn routes(intake: impl Into<proptest::collection::SizeRange>) -> impl Strategy<Value = Route> {
    let spaces = proptest::collection::vec((-15.0..35.0_f64, 20.0..95.0_f64), 4);
    let duct = (0.0..38.0_f64, 0.0..12.0_f64).prop_map(|(air, below)| (air, air - below));
    (duct, spaces, legs(intake), legs(1..=8)).prop_map(|(duct, spaces, intake, exhaust)| Route {
        duct,
        spaces,
        intake,
        exhaust,
    })
}

/// What a text or a leg's balloon says and what it covers.
fn written(scene: &Scene, scale: f64) -> Vec<(String, Rect)> {
    let balloon = |item: &Item| match item {
        Item::Circle {
            class: "dw-d-balloon",
            centre,
            radius,
        } => {
            let side = 2.0 * radius;
            Some(Rect::new(centre.x - radius, centre.y - radius, side, side))
        }
        _ => None,
    };
    let balloons: Vec<Rect> = scene.items.iter().filter_map(balloon).collect();
    let in_balloon = |text: &Text| {
        balloons
            .iter()
            .any(|balloon| balloon.holds(&text.rect(scale)))
    };
    let texts = scene.items.iter().filter_map(|item| match item {
        Item::Text(text) if !in_balloon(text) => Some((text.words.clone(), text.rect(scale))),
        _ => None,
    });
    let balloons = balloons.iter().map(|rect| ("a balloon".to_owned(), *rect));
    texts.chain(balloons).collect()
}

/// The first fault of what is written in a scene.
fn fault(scene: &Scene, scale: f64) -> Option<String> {
    let written = written(scene, scale);
    let bounds = scene.bounds();
    if let Some((words, rect)) = written.iter().find(|(_, rect)| !bounds.holds(rect)) {
        return Some(format!("`{words}` at {rect:?} leaves {bounds:?}"));
    }
    written
        .iter()
        .enumerate()
        .find_map(|(place, (words, rect))| {
            let over = written
                .iter()
                .skip(place + 1)
                .find(|(_, other)| rect.overlaps(other))?;
            Some(format!(
                "`{words}` at {rect:?} lies over `{}` at {:?}",
                over.0, over.1
            ))
        })
}

/// The first fault of the drawings of either tube at a width.
fn fault_at(drawn: &Drawn, width: f64, text: f64) -> Option<String> {
    fault_of(drawn, Room { width, text }, elevation)
}

/// The same for another way to draw the elevation.
fn fault_of(
    drawn: &Drawn,
    room: Room,
    elevation: impl Fn(&View<'_>, Room) -> Elevation,
) -> Option<String> {
    let Room { width, text } = room;
    [Tube::Intake, Tube::Exhaust].into_iter().find_map(|tube| {
        let view = drawn.view(tube);
        let upper = elevation(&view, room);
        let lower = profile(&view, &upper.frame).expect("both tubes have an answer");
        let over = over_handle(&upper, text);
        let upper = fault(&upper.scene, text).map(|fault| format!("elevation: {fault}"));
        let fault = upper
            .or(over)
            .or_else(|| fault(&lower.scene, text).map(|fault| format!("profile: {fault}")));
        fault.map(|fault| format!("{tube:?} at {width} px, text {text}, {fault}"))
    })
}

/// The first diamond that lies over another, over something written, outside, or under its leg's end.
fn over_handle(drawn: &Elevation, scale: f64) -> Option<String> {
    let written = written(&drawn.scene, scale);
    let bounds = drawn.scene.bounds();
    let mut handles = drawn.handles.iter().enumerate();
    handles.find_map(|(leg, handle)| {
        let rect = handle.rect();
        let others = drawn.handles.iter().skip(leg + 1).map(Handle::rect);
        let over = others
            .map(|other| ("another diamond".to_owned(), other))
            .chain(written.iter().cloned())
            .find(|(_, other)| rect.overlaps(other));
        if let Some((words, other)) = over {
            return Some(format!(
                "diamond {leg} at {rect:?} lies over `{words}` at {other:?}"
            ));
        }
        // Half of the bore is 8 px at most.
        let is_under = handle.foot.y + 8.0 < rect.bottom();
        (is_under || !bounds.holds(&rect)).then(|| format!("diamond {leg} stands at {rect:?}"))
    })
}

fn form(drawn: &Elevation, kind: LabelKind) -> Option<usize> {
    drawn
        .labels
        .iter()
        .find(|label| label.kind == kind)
        .map(|label| label.form)
}

/// The first leg without its number.
fn lost_number(drawn: &Drawn, width: f64) -> Option<String> {
    [Tube::Intake, Tube::Exhaust].into_iter().find_map(|tube| {
        let view = drawn.view(tube);
        let upper = elevation(&view, Room { width, text: 1.0 });
        let lost = (0..view.legs().len()).find(|leg| form(&upper, LabelKind::Leg(*leg)).is_none());
        lost.map(|leg| format!("{tube:?} leg {leg} has no number at {width} px"))
    })
}

/// The first leg that has lost its number, its fall or its water figure.
fn lost_figure(drawn: &Drawn, width: f64) -> Option<String> {
    [Tube::Intake, Tube::Exhaust].into_iter().find_map(|tube| {
        let view = drawn.view(tube);
        let upper = elevation(&view, Room { width, text: 1.0 });
        let found = view
            .answer()
            .map(|answer| answer.legs.clone())
            .unwrap_or_default();
        view.legs()
            .iter()
            .zip(found)
            .enumerate()
            .find_map(|(place, (leg, found))| {
                // The last form is the bare number; level and steep legs have one form less.
                let forms = if leg.is_steep() || leg.rise == Length::ZERO {
                    2
                } else {
                    3
                };
                match form(&upper, LabelKind::Leg(place)) {
                    None => return Some(format!("{tube:?} leg {place} has no number")),
                    Some(form) if form + 1 == forms => {
                        return Some(format!("{tube:?} leg {place} has no fall"));
                    }
                    Some(_) => {}
                }
                let is_wet = WET_TUBE_G_H < found.condensate.to_grams_per_hour();
                let has_water = form(&upper, LabelKind::LegWater(place)).is_some();
                (is_wet != has_water).then(|| {
                    format!("{tube:?} leg {place} is wet: {is_wet}, shows water: {has_water}")
                })
            })
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: ROUTES, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn nothing_lies_over_anything_or_outside(route in routes(1..=20)) {
        let drawn = route.solved();
        for width in WIDTHS {
            let fault = fault_at(&drawn, width, 1.0);
            prop_assert!(fault.is_none(), "{}", fault.unwrap_or_default());
            let lost = lost_number(&drawn, width);
            prop_assert!(lost.is_none(), "{}", lost.unwrap_or_default());
        }
        let fault = fault_of(&drawn, Room::PAPER, |view, _| elevation_on_paper(view));
        prop_assert!(fault.is_none(), "on paper: {}", fault.unwrap_or_default());
    }

    #[test]
    fn water_that_stands_lies_over_nothing(route in routes(1..=20), seed in 0_u64..1_000_000) {
        let mut drawn = route.solved();
        let whole = drawn.installed(seed);
        for width in WIDTHS {
            let with_water = |view: &View<'_>, room| elevation_of_whole(view, whole.as_ref(), room, None);
            let fault = fault_of(&drawn, Room { width, text: 1.0 }, with_water);
            prop_assert!(fault.is_none(), "{}", fault.unwrap_or_default());
        }
        let on_paper = |view: &View<'_>, _| elevation_of_whole_on_paper(view, whole.as_ref());
        let fault = fault_of(&drawn, Room::PAPER, on_paper);
        prop_assert!(fault.is_none(), "on paper: {}", fault.unwrap_or_default());
    }

    #[test]
    fn eight_legs_keep_their_figures(route in routes(8)) {
        let lost = lost_figure(&route.solved(), EIGHT_LEGS_AT);
        prop_assert!(lost.is_none(), "{}", lost.unwrap_or_default());
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: ROUTES / 3, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn text_twice_as_large_is_placed_too(route in routes(1..=8)) {
        let drawn = route.solved();
        for width in [328.0, 640.0, 1392.0] {
            let fault = fault_at(&drawn, width, 2.0);
            prop_assert!(fault.is_none(), "{}", fault.unwrap_or_default());
        }
    }
}

/// All legs wet, all labels in one space.
#[test]
fn eight_legs_in_one_cold_space_keep_their_figures() {
    let legs = (0..8).map(|place| (0, 1.5, if place % 2 == 0 { -0.03 } else { 0.02 }));
    let route = Route {
        duct: (30.0, 28.0),
        spaces: vec![(12.0, 50.0); 4],
        intake: legs.collect(),
        exhaust: vec![(0, 3.0, 0.1)],
    };
    let drawn = route.solved();
    assert_eq!(lost_figure(&drawn, EIGHT_LEGS_AT), None, "of {route:?}");
    assert_eq!(fault_at(&drawn, EIGHT_LEGS_AT, 1.0), None, "of {route:?}");
}

/// Up and down between two short legs: around the wet leg in the middle, nothing near it is free.
#[test]
fn a_wet_leg_between_steep_ones_keeps_its_figure() {
    let short = (0, 0.2, 0.0);
    let route = Route {
        duct: (25.8, 25.8),
        spaces: vec![(0.0, 20.0); 4],
        intake: vec![
            (0, 2.5, 0.0),
            (0, 2.6, -2.6),
            (2, 0.2, -0.2),
            (0, 2.95, -2.95),
            short,
            short,
            short,
            (0, 0.2, 0.2),
        ],
        exhaust: vec![(0, 0.2, 0.2)],
    };
    let drawn = route.solved();
    assert_eq!(lost_figure(&drawn, EIGHT_LEGS_AT), None, "of {route:?}");
    assert_eq!(fault_at(&drawn, EIGHT_LEGS_AT, 1.0), None, "of {route:?}");
}

/// Random routes have what is to be drawn of standing water, and most low points are named.
#[test]
fn random_routes_show_standing_water() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let (mut low, mut named, mut missing, mut iced, mut hung) = (0, 0, 0, 0, 0);
    for seed in 0..60 {
        let tree = routes(1..=8)
            .new_tree(&mut runner)
            .expect("a route can be drawn");
        let mut drawn = tree.current().solved();
        let Some(whole) = drawn.installed(seed) else {
            continue;
        };
        let room = Room {
            width: 1392.0,
            text: 1.0,
        };
        let upper = elevation_of_whole(&drawn.view(Tube::Intake), Some(&whole), room, None);
        let count = |is_it: fn(&LabelKind) -> bool| {
            let labels = upper.labels.iter();
            labels.filter(|label| is_it(&label.kind)).count()
        };
        low += whole.intake.low_points.len();
        named += count(|kind| matches!(kind, LabelKind::LowPoint(_) | LabelKind::Detail(_)));
        missing += count(|kind| matches!(kind, LabelKind::Proposed(_)));
        iced += count(|kind| matches!(kind, LabelKind::Ice(_)));
        hung += count(|kind| matches!(kind, LabelKind::Hangers(_)));
    }
    assert!(
        20 < low && 5 < missing && 5 < iced && 30 < hung,
        "{low} low points, {missing} missing traps, {iced} frosted legs, {hung} notes on hangers"
    );
    assert!(
        9 * low < 10 * named,
        "of {low} low points {named} say what stands there"
    );
}

#[test]
fn random_routes_show_every_form_of_water() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let (mut frost, mut mist, mut sweat) = (0, 0, 0);
    for _ in 0..50 {
        let tree = routes(1..=20)
            .new_tree(&mut runner)
            .expect("a route can be drawn");
        let tube = tree.current().solved().outcome.intake;
        frost += usize::from(
            tube.legs
                .iter()
                .any(|leg| 0.0 < leg.frost.to_grams_per_hour()),
        );
        mist += usize::from(1e-6 < tube.most_mist.to_kilograms_per_kilogram());
        sweat += usize::from(0.0 < tube.sweat.to_grams_per_hour());
    }
    assert!(
        3 < frost && 3 < mist && 3 < sweat,
        "of 50 routes {frost} freeze, {mist} carry mist, {sweat} sweat"
    );
}

#[test]
fn label_rectangles_are_not_empty() {
    let sample = sample::make_up_air();
    let view = View {
        run: &sample.run,
        outcome: &sample.outcome,
        names: &sample.names,
        style: Style::default(),
        tube: Tube::Intake,
    };
    let drawn = elevation(
        &view,
        Room {
            width: 1392.0,
            text: 1.0,
        },
    );
    assert!(10 < drawn.labels.len(), "there are labels to place");
    for label in &drawn.labels {
        let Rect { width, height, .. } = label.rect;
        assert!(5.0 < width && 5.0 < height, "{label:?} covers something");
    }
}
