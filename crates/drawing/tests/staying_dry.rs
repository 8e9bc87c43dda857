//! What a run would still take dry, in words.

mod sample;

use dewrun_advice::{Limit, SpaceLimit, StayingDry, TubeLimit};
use dewrun_drawing::{View, dry_limits, html};
use dewrun_quantity::{Length, Style, Temperature, Units};
use sample::Sample;

fn view(sample: &Sample, units: Units) -> View<'_> {
    sample.view(Style {
        units,
        ..Style::default()
    })
}

/// Made-up limits.
fn found() -> StayingDry {
    StayingDry {
        duct_temperature: Temperature::celsius(32.0),
        duct_air: Limit::At(Temperature::celsius(20.2)),
        space: SpaceLimit {
            temperature: Limit::At(Temperature::celsius(26.0)),
            spaces: vec![1, 2],
        },
        tube: TubeLimit {
            length: Limit::At(Length::metres(1.0)),
            leg: 0,
            at_end_of_leg: true,
        },
    }
}

#[track_caller]
fn check(found: &StayingDry, units: Units, expected: [&str; 3]) {
    let sample = sample::make_up_air();
    let lines = dry_limits(&view(&sample, units), found);
    let lines = lines.map(|line| {
        let words = [line.name, &line.limit.to_string(), &line.words, &line.now].join(" | ");
        words.replace('\u{a0}', " ")
    });
    assert_eq!(lines, expected, "three lines");
}

#[test]
fn each_limit_stands_beside_what_there_is_now() {
    check(
        &found(),
        Units::Si,
        [
            "Most humid duct air | 20.2 °C | dew point at 32.0 °C | now 26.0",
            "Coldest space | 26.0 °C | Service corridor and Lobby alike | now 20 and 23",
            "Longest tube | 1.0 m | up to Service corridor | now 12.1",
        ],
    );
}

#[test]
fn in_inch_pound_too() {
    check(
        &found(),
        Units::InchPound,
        [
            "Most humid duct air | 68.4 °F | dew point at 89.6 °F | now 78.8",
            "Coldest space | 78.8 °F | Service corridor and Lobby alike | now 68 and 73.4",
            "Longest tube | 3.3 ft | up to Service corridor | now 39.7",
        ],
    );
}

#[test]
fn no_limit_is_a_word() {
    let any = StayingDry {
        duct_air: Limit::Any,
        space: SpaceLimit {
            temperature: Limit::Any,
            spaces: vec![0, 1, 2],
        },
        tube: TubeLimit {
            length: Limit::Any,
            leg: 4,
            at_end_of_leg: true,
        },
        ..found()
    };
    check(
        &any,
        Units::Si,
        [
            "Most humid duct air | any | even saturated at 32.0 °C | now 26.0",
            "Coldest space | any | however cold the spaces | now 20 to 28",
            "Longest tube | any | the whole intake as drawn | now 12.1",
        ],
    );
    let never = StayingDry {
        duct_air: Limit::Never,
        space: SpaceLimit {
            temperature: Limit::Never,
            spaces: vec![0],
        },
        tube: TubeLimit {
            length: Limit::Never,
            leg: 0,
            at_end_of_leg: false,
        },
        ..found()
    };
    check(
        &never,
        Units::Si,
        [
            "Most humid duct air | none | wet however dry | now 26.0",
            "Coldest space | none | wet however warm the spaces | now 28",
            "Longest tube | none | wet from the duct on | now 12.1",
        ],
    );
}

#[test]
fn tube_that_ends_within_a_leg_names_leg_and_space() {
    let within = StayingDry {
        tube: TubeLimit {
            length: Limit::At(Length::metres(3.3)),
            leg: 1,
            at_end_of_leg: false,
        },
        ..found()
    };
    let sample = sample::make_up_air();
    let [_, _, tube] = dry_limits(&view(&sample, Units::Si), &within);
    assert_eq!(tube.words, "ends in leg 2, Service corridor", "within");
    let joint = StayingDry {
        tube: TubeLimit {
            length: Limit::At(Length::metres(5.2)),
            leg: 1,
            at_end_of_leg: true,
        },
        ..found()
    };
    let [_, _, tube] = dry_limits(&view(&sample, Units::Si), &joint);
    assert_eq!(
        tube.words, "to the end of leg 2",
        "legs 2 and 3 share a space"
    );
}

#[test]
fn table_has_a_row_for_each() {
    let sample = sample::make_up_air();
    let table = html::staying_dry(&dry_limits(&view(&sample, Units::Si), &found()));
    assert_eq!(table.matches("<tr>").count(), 3, "{table}");
    assert!(
        table.contains("<th scope=\"row\">Coldest space</th>"),
        "{table}"
    );
    let path = html::path_table(&view(&sample, Units::Si));
    assert_eq!(
        path.matches("<tr>").count(),
        8,
        "head, duct, five legs, sensor"
    );
}
