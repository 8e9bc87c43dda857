//! How a run is installed, as fields: pressures, holes, detector, fan, limits, traps, each with what stands in for it where nothing is entered.
//!
//! A field goes by its place in the project, such as `air_path.hole_count`.

mod html;
mod place;
mod set;

pub use html::entries_html;
pub(crate) use html::{choice, group, one, plain};
pub(crate) use set::no;
pub use set::{enter, set_limits};

use dewrun_document::{AirPath, Input};
use dewrun_quantity::measure::{BORE, DRAUGHT, TEMPERATURE, TUBE_LENGTH};
use dewrun_quantity::parse::{self, ParseError};
use dewrun_quantity::{Length, Pressure, Style, Temperature, Units, format};

/// How a number is shown and read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Measured {
    /// A pressure against a room, Pa in the project.
    Gauge,
    /// A diameter or height, mm in the project.
    Small,
    /// A place along a tube, m in the project.
    Along,
    /// A temperature, °C in the project.
    Temperature,
    /// A share, 0 to 1 in the project, shown in %.
    Share,
    /// In this unit everywhere.
    In(&'static str),
}

/// A number that may be left out of what the air meets.
struct Left {
    field: &'static str,
    label: &'static str,
    /// The row that stands in for it; none where nothing does.
    row: &'static str,
    measured: Measured,
    of: fn(&mut AirPath) -> &mut Option<Input<f64>>,
}

macro_rules! left {
    ($($field:ident $label:literal $row:literal $measured:expr;)+) => {
        [$(Left {
            field: stringify!($field),
            label: $label,
            row: $row,
            measured: $measured,
            of: |path| &mut path.$field,
        }),+]
    };
}

/// Numbers of what the air meets, in the order of the page.
const LEFT: [Left; 15] = left! {
    exhaust_static_pa "Duct static at the exhaust" "" Measured::Gauge;
    exhaust_velocity_pa "Velocity pressure there" "" Measured::Gauge;
    intake_catch "Share of it the intake meets" "catch-intake" Measured::In("");
    exhaust_catch "Share of it the exhaust meets" "catch-exhaust" Measured::In("");
    hole_count "Sampling holes" "holes-count" Measured::In("");
    hole_diameter_mm "Diameter of a hole" "holes-diameter" Measured::Small;
    hole_discharge "Discharge coefficient" "holes-discharge" Measured::In("");
    start_suction_pa "Suction at start" "start-suction" Measured::Gauge;
    filter_pa_min_l "Clean filter" "filter-clean" Measured::In("Pa per L/min");
    chamber_loss "Loss coefficient of the chamber" "chamber-loss" Measured::In("");
    chamber_volume_ml "Filter housing and chamber" "chamber-volume" Measured::In("mL");
    low_limit_percent "Low limit" "" Measured::In("%");
    high_limit_percent "High limit" "" Measured::In("%");
    limit_margin_percent "Margin of advised limits" "limit-margin" Measured::In("%");
    drain_interval_days "Traps emptied every" "drain-interval" Measured::In("days");
};

/// The numbers of a trap that may be left out, with the row that stands in.
const TRAP: [(&str, &str, &str, Measured); 3] = [
    (
        "capacity_ml",
        "Capacity",
        "trap-capacity",
        Measured::In("mL"),
    ),
    ("seal_mm", "Seal", "trap-seal", Measured::Small),
    (
        "outlet_drop_mm",
        "Outlet below the tube",
        "trap-drop",
        Measured::Small,
    ),
];

impl Measured {
    fn unit(self, style: Style) -> &'static str {
        match self {
            Self::Gauge => DRAUGHT.unit(style.units).name,
            Self::Small => BORE.unit(style.units).name,
            Self::Along => TUBE_LENGTH.unit(style.units).name,
            Self::Temperature => TEMPERATURE.unit(style.units).name,
            Self::Share => "%",
            Self::In(unit) => unit,
        }
    }

    fn show(self, value: f64, style: Style) -> String {
        match self {
            Self::Gauge => DRAUGHT.show_entered(Pressure::pascals(value), style).number,
            Self::Small => BORE.show_entered(Length::millimetres(value), style).number,
            Self::Along => {
                TUBE_LENGTH
                    .show_entered(Length::metres(value), style)
                    .number
            }
            Self::Temperature => {
                TEMPERATURE
                    .show_entered(Temperature::celsius(value), style)
                    .number
            }
            // Nobody enters a share finer: what went through % comes back as it was typed.
            Self::Share => format::entered_with((value * 1e8).round() / 1e6, style.mark),
            Self::In(_) => format::entered_with(value, style.mark),
        }
    }

    pub(crate) fn parse(self, text: &str, units: Units) -> Result<f64, ParseError> {
        let is_bare = parse::split_unit(text).1.is_empty();
        match self {
            // Not through the quantity and back, so that 19 mm stays 19.
            Self::Gauge | Self::Small | Self::Along | Self::Temperature
                if is_bare && units == Units::Si =>
            {
                parse::number(text)
            }
            Self::Gauge => DRAUGHT.parse(text, units).map(Pressure::to_pascals),
            Self::Small => BORE.parse(text, units).map(Length::to_millimetres),
            Self::Along => TUBE_LENGTH.parse(text, units).map(Length::to_metres),
            Self::Temperature => TEMPERATURE.parse(text, units).map(Temperature::to_celsius),
            Self::Share => {
                let percent = text.trim_end().strip_suffix('%').unwrap_or(text);
                parse::number(percent).map(|percent| percent / 100.0)
            }
            Self::In(_) => parse::number(text),
        }
    }
}
