//! The figures of a year: how each follows from what, and who found it.

/// A figure of a year.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct YearFigure {
    /// The name by which files and pages refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// Its unit in SI.
    pub unit: &'static str,
    /// The numbers of an answer that are this figure, with `[]` for every entry of a list.
    pub fields: &'static [&'static str],
    /// How it follows from what.
    pub relation: &'static str,
    /// Where that holds.
    pub holds: &'static str,
    /// Ids of the figures that it follows from.
    pub inputs: &'static [&'static str],
    /// Who found it.
    pub source: &'static str,
}

const CHOICE: &str = "a choice of this project";
const MARCH: &str = "march along the tubes hour by hour, water carried over: those of the steady figures, with the law of drying of a film in its wetted share";
const HOURS: &str =
    "steps of the weather file in which temperature, humidity and pressure are known";

/// All figures of a year.
pub const YEAR_FIGURES: &[YearFigure] = &[
    YearFigure {
        id: "year-hours",
        name: "hours of the year",
        unit: "h",
        fields: &[
            "whole.hours",
            "whole.left_out_rows",
            "whole.months[].hours",
            "whole.by_bound_hours",
            "weather.rows",
            "weather.step_s",
        ],
        relation: "sum of the steps of the weather file; those by bound have the duct's dew point 0.02 K or more below the coldest surface that surroundings and sky allow, all walls dry at their start",
        holds: HOURS,
        inputs: &[],
        source: CHOICE,
    },
    YearFigure {
        id: "year-wet-hours",
        name: "wet hours",
        unit: "h",
        fields: &["whole.wet_hours", "whole.months[].wet_hours"],
        relation: "hours in which more than 0.01 g an hour deposits over both tubes",
        holds: HOURS,
        inputs: &["year-water"],
        source: CHOICE,
    },
    YearFigure {
        id: "year-water",
        name: "water formed in the tubes",
        unit: "g",
        fields: &[
            "whole.condensed_g",
            "whole.months[].condensed_g",
            "whole.worst_day.condensed_g",
        ],
        relation: "sum over cells and hours of what deposits on the inner walls, frost included",
        holds: HOURS,
        inputs: &["deposit"],
        source: MARCH,
    },
    YearFigure {
        id: "year-dried",
        name: "water that dried off the walls",
        unit: "g",
        fields: &["whole.evaporated_g", "whole.months[].evaporated_g"],
        relation: "sum of what leaves films while the air is drier than the wall; per wetted area constant in the hour, the wetted share as the film to the power 2/3",
        holds: HOURS,
        inputs: &["year-water"],
        source: MARCH,
    },
    YearFigure {
        id: "year-drained",
        name: "water that ran off the walls",
        unit: "g",
        fields: &[
            "whole.drained_g",
            "whole.months[].drained_g",
            "whole.slug_g",
        ],
        relation: "sum of what exceeds the film that a wall keeps; as frost thaws it runs at once",
        holds: HOURS,
        inputs: &["year-water", "film-retained"],
        source: MARCH,
    },
    YearFigure {
        id: "year-mist",
        name: "mist at the sensor",
        unit: "",
        fields: &[
            "whole.mist_hours",
            "whole.outlet_mist_hours",
            "whole.mist_g",
        ],
        relation: "hours with more than 1e-5 kg of suspended water per kg of dry air in the chamber, or at the end of the exhaust, and the sum of what passes the sensor",
        holds: HOURS,
        inputs: &["sensor-mist"],
        source: CHOICE,
    },
    YearFigure {
        id: "year-frost",
        name: "ice in the tubes",
        unit: "",
        fields: &["whole.frost_hours", "whole.thaws"],
        relation: "hours in which ice lies on an inner wall, and the times that the last of it went",
        holds: HOURS,
        inputs: &["leg-frost"],
        source: MARCH,
    },
    YearFigure {
        id: "year-chamber",
        name: "humidity in the chamber",
        unit: "",
        fields: &[
            "whole.hours_above_rating",
            "whole.most_humid_chamber_percent",
        ],
        relation: "hours in which the relative humidity over water around the sensor exceeds the device's rating, and the highest of it",
        holds: HOURS,
        inputs: &["sensor-humidity"],
        source: MARCH,
    },
    YearFigure {
        id: "year-coldest-wall",
        name: "coldest wall of the year",
        unit: "°C",
        fields: &["whole.coldest_wall_c"],
        relation: "lowest hour mean of an inner wall from one bore behind an inlet on",
        holds: HOURS,
        inputs: &["coldest-wall"],
        source: MARCH,
    },
    YearFigure {
        id: "year-design",
        name: "design hours of the route",
        unit: "g/h",
        fields: &[
            "whole.design_hours[].exceeded_percent",
            "whole.design_hours[].condensed_g_h",
        ],
        relation: "hours ranked by what deposits in them; so many percent of all are wetter",
        holds: HOURS,
        inputs: &["year-water"],
        source: "ranks of the ASHRAE Handbook Fundamentals 2017, ch. 14, by this route's own water",
    },
    YearFigure {
        id: "year-design-state",
        name: "design states of the climate",
        unit: "",
        fields: &[
            "design_states[].exceeded_percent",
            "design_states[].outdoor_c",
            "design_states[].outdoor_dew_point_c",
            "design_states[].condensed_g_h",
        ],
        relation: "dew point, or temperature, that a share of the hours exceeds, with the mean of the other in hours within 0.5 K of it; what forms then is the steady answer in that weather, without sun, wind or sky",
        holds: "weather files of a whole year",
        inputs: &["tube-water"],
        source: "ASHRAE Handbook Fundamentals 2017, ch. 14",
    },
    YearFigure {
        id: "year-standing",
        name: "water that stands",
        unit: "g",
        fields: &[
            "whole.water.most_standing_g",
            "whole.water.evaporated_g",
            "whole.water.drained_g",
            "whole.water.into_duct_g",
            "whole.water.into_detector_g",
            "whole.water.let_out_g",
            "whole.water.leaked_g",
            "whole.water.overflowed_g",
            "whole.water.stores[].at_m",
            "whole.water.stores[].holds_g",
            "whole.water.stores[].most_g",
        ],
        relation: "what runs off the walls goes to low points, traps, duct or detector; pools dry from their free surface, seals stand or dry out, traps fill and are emptied at the drain interval",
        holds: HOURS,
        inputs: &["year-drained", "low-point", "drain-interval"],
        source: "those of the steady figures of water, hour by hour",
    },
    YearFigure {
        id: "year-troubles",
        name: "hours of trouble",
        unit: "h",
        fields: &[
            "whole.water.blind_hours",
            "whole.water.sealed_hours",
            "whole.water.iced_hours",
            "whole.water.slug_hours",
            "whole.water.low_flow_hours",
            "whole.water.high_flow_hours",
            "whole.water.reversed_hours",
            "whole.water.trap_full_hours",
            "whole.water.trap_fillings",
            "whole.water.emptyings",
            "whole.water.thaws",
        ],
        relation: "hours in which a low point is sealed, a bore iced, the air slugs, runs backwards or leaves its limits, a trap is full; blind: it does not sample the duct, or less than 80 % of its air is from there",
        holds: HOURS,
        inputs: &["year-standing", "flow-reading", "sample-share"],
        source: "those of the steady figures of water and airflow, hour by hour",
    },
    YearFigure {
        id: "year-assumed",
        name: "assumed of the year",
        unit: "",
        fields: &["assumed[].value", "assumed[].low", "assumed[].high"],
        relation: "rows of the library that stand in for what a project leaves out",
        holds: "where nothing is known of the place",
        inputs: &[],
        source: "common practice, no source",
    },
    YearFigure {
        id: "year-series",
        name: "hour by hour",
        unit: "",
        fields: &["series.columns[].values[]"],
        relation: "what the sums of the year are sums of; names and units stand in the columns",
        holds: HOURS,
        inputs: &["year-water"],
        source: MARCH,
    },
];
