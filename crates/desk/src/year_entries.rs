//! What a run's year goes by, as fields: the source of the duct's air with its steps, what each space follows, when, and visits.
//!
//! A field goes by its place in the project, such as `duct.source.steps.0.share`.

mod html;
mod set;
mod times;

pub use html::year_entries_html;
pub use set::enter_year;

use dewrun_document::{AirFrom, AirStep, AirStepKind, Follows, Input, SpaceYear};

use crate::entries::Measured;

/// A number that may be left out of a part `P` of the year.
struct Numbered<P> {
    field: &'static str,
    label: &'static str,
    /// The row that stands in for it; empty where nothing does.
    row: &'static str,
    measured: Measured,
    of: fn(&mut P) -> &mut Option<Input<f64>>,
}

macro_rules! numbered {
    ($part:ty; $($field:ident $label:literal $row:literal $measured:expr;)+) => {
        [$(Numbered {
            field: stringify!($field),
            label: $label,
            row: $row,
            measured: $measured,
            of: |part: &mut $part| &mut part.$field,
        }),+]
    };
}

/// Numbers of a space, in the order of the page; which of them it has depends on what it follows.
const SPACE: [Numbered<SpaceYear>; 6] = numbered! {
    SpaceYear;
    share "Follows outdoors by" "" Measured::Share;
    room_c "Rooms beside it" "year-room-temperature" Measured::Temperature;
    room_percent "Their humidity" "year-room-humidity" Measured::In("%");
    roof_absorbs "Sun its roof takes up" "" Measured::Share;
    sky_share "Sky the tube sees" "year-sky-share" Measured::Share;
    wind_share "Wind that reaches the tube" "year-wind-share" Measured::Share;
};

/// Numbers of a step; what they are called depends on what is done.
const STEP: [Numbered<AirStep>; 4] = numbered! {
    AirStep;
    temperature_c "" "" Measured::Temperature;
    percent "" "" Measured::In("%");
    share "" "" Measured::Share;
    moisture_share "" "" Measured::Share;
};

/// What can be done to the air: its word in the project, as it is chosen, and what its numbers are called in the order of [`STEP`]; one without a name it has not.
struct Kind {
    kind: AirStepKind,
    word: &'static str,
    words: &'static str,
    labels: [&'static str; 4],
    /// Low, usual and high that a new one begins with; common practice, no source.
    begins: [Option<[f64; 3]>; 4],
}

/// All of them, in the order in which air handling units have them.
const KINDS: [Kind; 5] = [
    Kind {
        kind: AirStepKind::Recovered,
        word: "recovered",
        words: "heat recovery",
        labels: [
            "Extract air",
            "Its humidity",
            "Heat recovered",
            "Moisture recovered",
        ],
        begins: [
            Some([20.0, 23.0, 26.0]),
            Some([25.0, 45.0, 60.0]),
            Some([0.4, 0.7, 0.85]),
            Some([0.0, 0.0, 0.6]),
        ],
    },
    Kind {
        kind: AirStepKind::Mixed,
        word: "mixed",
        words: "return air mixed in",
        labels: ["Return air", "Its humidity", "Share of return air", ""],
        begins: [
            Some([20.0, 23.0, 26.0]),
            Some([25.0, 45.0, 60.0]),
            Some([0.3, 0.6, 0.9]),
            None,
        ],
    },
    Kind {
        kind: AirStepKind::Heated,
        word: "heated",
        words: "heater",
        labels: ["Heated to", "", "", ""],
        begins: [Some([15.0, 20.0, 30.0]), None, None, None],
    },
    Kind {
        kind: AirStepKind::Cooled,
        word: "cooled",
        words: "cooling coil",
        labels: ["Coil surface", "", "Air that bypasses the coil", ""],
        begins: [Some([6.0, 10.0, 14.0]), None, Some([0.0, 0.1, 0.3]), None],
    },
    Kind {
        kind: AirStepKind::Humidified,
        word: "humidified",
        words: "humidifier",
        labels: [
            "Water of the humidifier, none for steam",
            "Humidified to",
            "",
            "",
        ],
        begins: [None, Some([45.0, 70.0, 98.0]), None, None],
    },
];

/// A share of outdoors that nothing is known of: low, usual, high.
const PARTLY: [f64; 3] = [0.2, 0.5, 0.8];

/// Where the numbers that something begins with come from: no table of the library has them.
const NO_ROW: &str = "common-practice";

/// Where air may come from: the word in the project and as it is chosen.
const FROM: [(AirFrom, &str, &str); 3] = [
    (AirFrom::Outdoors, "outdoors", "outdoor air"),
    (AirFrom::Room, "room", "the air of a room"),
    (AirFrom::Measured, "measured", "as measured in the duct"),
];

/// What a space may follow.
const FOLLOWS: [(Follows, &str, &str); 3] = [
    (Follows::Settings, "settings", "stays as entered"),
    (Follows::Partly, "partly", "is partly as outdoors"),
    (Follows::Outdoors, "outdoors", "lies outdoors, wind and sky"),
];

/// The entry of what is done that a kind has.
fn kind_of(kind: AirStepKind) -> Option<&'static Kind> {
    KINDS.iter().find(|known| known.kind == kind)
}

/// Which of the numbers of [`SPACE`] count for what a space follows.
fn counts(follows: Follows, field: &str) -> bool {
    match follows {
        Follows::Settings => false,
        Follows::Outdoors => matches!(field, "sky_share" | "wind_share"),
        Follows::Partly => matches!(field, "share" | "room_c" | "room_percent" | "roof_absorbs"),
    }
}
