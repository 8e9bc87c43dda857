//! The dew square: to one scale, its labels apart, and each thing where its numbers say.

mod sample;

use dewrun_advice::{BoundaryPoint, Limit, dry_boundary};
use dewrun_drawing::{
    DewSquare, Item, Room, SquareHours, View, boundary_temperatures, dew_square, svg,
};
use dewrun_quantity::{Style, Temperature, Units};
use dewrun_run::air::{Humidity, Pair};
use dewrun_run::evaluate;
use proptest::prelude::{Strategy, prop_assert, proptest};
use sample::{Sample, SampleLeg};

const WIDTHS: [f64; 3] = [328.0, 640.0, 1000.0];

/// The sample with the engine's own answer, and duct air of a temperature and a dew point.
fn answered(mut sample: Sample, (air_c, dew_c): (f64, f64)) -> Sample {
    let humidity = Humidity::DewPoint(Temperature::celsius(dew_c));
    sample.run.duct_air = Pair::Temperature(Temperature::celsius(air_c), humidity);
    match evaluate(&sample.run) {
        Ok(outcome) => sample.outcome = outcome.value,
        Err(error) => panic!("the sample has no answer: {error}"),
    }
    sample
}

fn view(sample: &Sample, units: Units) -> View<'_> {
    sample.view(Style {
        units,
        ..Style::default()
    })
}

fn room(width: f64) -> Room {
    Room { width, text: 1.0 }
}

fn boundary(view: &View<'_>, width: f64) -> Vec<BoundaryPoint> {
    let temperatures = boundary_temperatures(view, &[], room(width));
    match dry_boundary(view.run, view.outcome, &temperatures) {
        Ok(boundary) => boundary,
        Err(error) => panic!("no boundary: {error}"),
    }
}

fn draw(sample: &Sample, width: f64) -> DewSquare {
    let view = view(sample, Units::Si);
    dew_square(&view, &boundary(&view, width), &[], room(width))
}

fn make_up_air() -> Sample {
    answered(sample::make_up_air(), (32.0, 26.0))
}

fn loft() -> Sample {
    answered(sample::loft(), (29.0, 21.0))
}

fn circle(drawn: &DewSquare, class: &str) -> dewrun_drawing::Point {
    let found = drawn.scene.items.iter().find_map(|item| match item {
        Item::Circle {
            class: c, centre, ..
        } if *c == class => Some(*centre),
        _ => None,
    });
    match found {
        Some(centre) => centre,
        None => panic!("no circle of class {class}"),
    }
}

/// Words of all texts.
fn words(drawn: &DewSquare) -> Vec<&str> {
    let texts = drawn.scene.items.iter().filter_map(|item| match item {
        Item::Text(text) => Some(text.words.as_str()),
        _ => None,
    });
    texts.collect()
}

#[test]
fn square_is_square_and_fits_its_width() {
    for width in WIDTHS {
        for sample in [make_up_air(), loft()] {
            let drawn = draw(&sample, width);
            let (plot, bounds) = (drawn.plot, drawn.scene.bounds());
            assert!(
                (plot.width - plot.height).abs() < 1e-9,
                "one scale both ways"
            );
            assert!(bounds.holds(&plot), "the square stays within {width} px");
            assert!(bounds.holds(&drawn.lens), "so does the enlarged part");
            let is_inset = plot.holds(&drawn.lens);
            assert_eq!(is_inset, 600.0 <= width, "under the square on a phone");
        }
    }
}

#[test]
fn duct_and_sensor_lie_where_their_numbers_say() {
    let sample = make_up_air();
    let drawn = draw(&sample, 1000.0);
    let (dot, ring) = (circle(&drawn, "dw-d-solid"), circle(&drawn, "dw-q-ring"));
    let chamber = &sample.outcome.chamber;
    let Some(dew_point) = chamber.dew_point else {
        panic!("the air at the sensor is not bone-dry");
    };
    // Between two states the same kelvins are the same pixels, both ways.
    let across = 32.0 - chamber.temperature.to_celsius();
    let up = 26.0 - dew_point.to_celsius();
    let (dx, dy) = (dot.x - ring.x, ring.y - dot.y);
    assert!(
        (dx / across - dy / up).abs() < 0.05 * dx / across,
        "{dx} px for {across} K, {dy} px for {up} K"
    );
    // The duct air is 6 K right of the diagonal, measured along its own height.
    let diagonal = drawn.plot.x + (drawn.plot.bottom() - dot.y);
    let apart = (dot.x - diagonal) / (dx / across);
    assert!((apart - 6.0).abs() < 0.05, "{apart} K from saturation");
}

#[test]
fn hatch_is_there_where_water_or_frost_forms() {
    let has = |sample: &Sample, hatch: dewrun_drawing::Hatch| {
        let drawn = draw(sample, 1000.0);
        let mut items = drawn.scene.items.iter();
        items.any(|item| matches!(item, Item::Hatched { hatch: h, .. } if *h == hatch))
    };
    let dry = answered(sample::make_up_air(), (32.0, 12.0));
    assert!(has(&make_up_air(), dewrun_drawing::Hatch::Water), "wet");
    assert!(!has(&dry, dewrun_drawing::Hatch::Water), "dry");
    assert!(has(&loft(), dewrun_drawing::Hatch::Frost), "frozen");
}

#[test]
fn description_says_how_humid_the_duct_air_may_be() {
    let drawn = draw(&make_up_air(), 1000.0);
    let description = &drawn.scene.description;
    assert!(
        description.contains("goes below the dew point"),
        "{description}"
    );
    assert!(
        description.contains("The dry boundary runs from"),
        "{description}"
    );
    let dry = answered(sample::make_up_air(), (18.0, 12.0));
    let view = view(&dry, Units::Si);
    let any = [BoundaryPoint {
        temperature: Temperature::celsius(18.0),
        dew_point: Limit::Any,
    }];
    let drawn = dew_square(&view, &any, &[], room(640.0));
    assert!(
        drawn
            .scene
            .description
            .contains("Even saturated duct air stays dry"),
        "{}",
        drawn.scene.description
    );
}

#[test]
fn everything_is_named() {
    for width in WIDTHS {
        let drawn = draw(&loft(), width);
        let words = words(&drawn).join("|");
        for name in [
            "Loft",
            "Lobby",
            "Pool plant room",
            "dry boundary",
            "frost line",
            "Above the diagonal",
            "dew point, °C",
            "temperature, °C",
            "100\u{a0}%",
            "Path and inner wall, enlarged",
        ] {
            assert!(
                words.contains(name),
                "at {width} px {name} is missing in {words}"
            );
        }
    }
}

#[test]
fn in_inch_pound_the_square_is_the_same() {
    let sample = make_up_air();
    let view = view(&sample, Units::InchPound);
    let drawn = dew_square(&view, &boundary(&view, 1000.0), &[], room(1000.0));
    assert!(
        words(&drawn).contains(&"temperature, °F"),
        "the axis says so"
    );
    let place = |drawn: &DewSquare| circle(drawn, "dw-q-ring");
    assert_eq!(
        place(&drawn),
        place(&draw(&sample, 1000.0)),
        "nothing moves"
    );
}

#[test]
fn bone_dry_air_has_no_path() {
    let mut sample = make_up_air();
    sample.run.duct_air = Pair::Temperature(
        Temperature::celsius(30.0),
        Humidity::Ratio(dewrun_quantity::HumidityRatio::ZERO),
    );
    if let Ok(outcome) = evaluate(&sample.run) {
        sample.outcome = outcome.value;
    }
    let drawn = draw(&sample, 640.0);
    assert!(
        drawn.scene.description.contains("bone-dry"),
        "{}",
        drawn.scene.description
    );
    assert!(
        !svg(&drawn.scene).contains("NaN"),
        "and no number that is none"
    );
}

/// Legs through up to four spaces, and duct air above or below what they take.
fn routes() -> impl Strategy<Value = Sample> {
    let leg = (0_usize..4, 0.2..8.0_f64, -0.1..0.1_f64);
    let legs = proptest::collection::vec(leg, 1..=12);
    let spaces = proptest::collection::vec(-15.0..35.0_f64, 4);
    (legs, spaces, 5.0..40.0_f64, 0.0..20.0_f64).prop_map(|(legs, spaces, air, below)| {
        let names = [
            "Plant room",
            "Service corridor",
            "Ceiling void, north wing",
            "Lobby",
        ];
        let spaces: Vec<_> = names.into_iter().zip(spaces).collect();
        let legs: Vec<SampleLeg> = legs
            .iter()
            .map(|(space, length, slope)| (*space, *length, length * slope))
            .collect();
        let state = (air, air - below);
        answered(sample::sample(state, &spaces, &legs), state)
    })
}

proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(100))]

    #[test]
    fn labels_keep_apart_and_inside(sample in routes()) {
        for width in WIDTHS {
            let drawn = draw(&sample, width);
            let bounds = drawn.scene.bounds();
            for (place, label) in drawn.labels.iter().enumerate() {
                prop_assert!(bounds.holds(label), "at {width} px {label:?} leaves {bounds:?}");
                for other in drawn.labels.iter().skip(place + 1) {
                    prop_assert!(!label.overlaps(other), "at {width} px {label:?} and {other:?}");
                }
            }
            prop_assert!(!svg(&drawn.scene).contains("NaN"), "at {width} px a number is none");
        }
    }
}

/// A year around the path makes the square wider, and every hour lies in it.
#[test]
fn the_hours_of_a_year_lie_in_the_square() {
    let sample = make_up_air();
    let view = view(&sample, Units::Si);
    let year = SquareHours::of(&[
        -9.75, -12.25, 40.0, 0.0, //
        20.25, 15.25, 10.0, 0.0, //
        41.75, 28.25, 2.0, 5.0,
    ]);
    let alone = dew_square(&view, &[], &[], room(640.0));
    let drawn = dew_square(&view, &[], &year, room(640.0));
    let paths = |drawn: &DewSquare, class: &str| {
        let of_class =
            |item: &&Item| matches!(item, Item::Path { class: own, .. } if *own == class);
        drawn.scene.items.iter().filter(of_class).count()
    };
    assert_eq!(paths(&alone, "dw-y-dry"), 0, "no hours without a year");
    assert_eq!(paths(&drawn, "dw-y-dry"), 1, "dry ones at once");
    assert_eq!(paths(&drawn, "dw-y-m5"), 1, "the wettest class");
    assert_eq!(paths(&drawn, "dw-y-m1"), 0, "none of the first");
    let low = boundary_temperatures(&view, &year, room(640.0));
    let first = low.first().map(|t| t.to_celsius());
    assert!(
        first.is_some_and(|t_c| t_c < -12.5),
        "it begins at {first:?}"
    );
}
