//! The route of a tube: legs in flow order, what they are made of and where the tube enters the duct.

use crate::json::{record, words};
use schemars::JsonSchema;

use super::{Input, Trap, TubeStuff};

/// One tube: where it enters the duct, and its legs in flow order.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Route {
    /// Where it enters the duct.
    pub entry: DuctEntry,
    /// Its legs, in the direction of normal flow.
    pub legs: Vec<Leg>,
    /// Where water is taken out of it; left out: nowhere. Since revision 2.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub traps: Vec<Trap>,
}

/// Where a tube enters the duct.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct DuctEntry {
    /// The place along the duct, in words; may be empty.
    pub place: String,
    /// The side of the duct.
    pub side: Side,
}

/// A side of the duct.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum Side {
    /// Through an upright wall.
    Side,
    /// From above.
    Top,
    /// From below: water that lies in the duct can run in.
    Bottom,
}

/// One straight stretch with one fall in one space.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Leg {
    /// Stable name within the run.
    pub id: String,
    /// Id of the space it lies in.
    pub space: String,
    /// Length along the tube, m.
    pub length_m: Input<f64>,
    /// Rise from its start to its end in the direction of normal flow, m; negative where it falls.
    pub rise_m: Input<f64>,
    /// The form in which its fall was typed and is shown.
    #[schemars(default, extend("default" = "ratio"))]
    pub fall_as: FallForm,
    /// The tube it is made of.
    pub tube: TubeWall,
    /// Emissivity of its outermost surface, 0 to 1.
    pub emissivity: Input<f64>,
    /// Insulation around it; left out: bare.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub insulation: Option<Insulation>,
    /// Heat tracing at the tube's outer face, under the insulation, W/m; left out: none.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub heat_tracing_w_m: Option<Input<f64>>,
    /// Distance between its hangers, m; left out: not known. Since revision 2.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub hanger_spacing_m: Option<Input<f64>>,
    /// Bends, tees, valves in it; may be empty.
    pub fittings: Vec<Fitting>,
    /// How a person gets to it.
    pub access: Access,
}

/// A form in which falls are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FallForm {
    /// 1:n.
    #[default]
    Ratio,
    /// Percent of the horizontal length.
    Percent,
    /// Millimetres per horizontal metre.
    MmPerM,
    /// Inches per horizontal foot.
    InPerFt,
}

/// The wall of a tube.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct TubeWall {
    /// Inside diameter, mm.
    pub bore_mm: Input<f64>,
    /// Outside diameter, mm.
    pub outside_diameter_mm: Input<f64>,
    /// Conductivity of the wall, W/(m K).
    pub conductivity_w_mk: Input<f64>,
    /// What it is like besides; left out: as the row of its bore, or plain and rigid. Since revision 2.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub stuff: Option<TubeStuff>,
}

/// A layer of insulation around a tube.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Insulation {
    /// Thickness of the layer, mm.
    pub thickness_mm: Input<f64>,
    /// Conductivity of the layer, W/(m K).
    pub conductivity_w_mk: Input<f64>,
}

/// A bend, tee or valve in a leg.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Fitting {
    /// What it is.
    pub kind: FittingKind,
    /// Distance from the leg's start, m.
    pub at_m: Input<f64>,
    /// Pressure lost in it over the velocity pressure in the bore.
    pub loss_coefficient: Input<f64>,
}

/// What a fitting is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FittingKind {
    /// A bend of a few bores' radius.
    Bend,
    /// A sharp elbow.
    Elbow,
    /// A tee.
    Tee,
    /// A valve.
    Valve,
    /// Anything else.
    Other,
}

/// How a person gets to a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum Access {
    /// Standing on the floor.
    Floor,
    /// From a ladder.
    Ladder,
    /// From a lift or scaffold.
    Lift,
    /// Not without opening the building.
    None,
}

impl Access {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Floor => "from the floor",
            Self::Ladder => "from a ladder",
            Self::Lift => "from a lift or scaffold",
            Self::None => "not without opening the building",
        }
    }
}

record!(Route, "a tube with its entry and legs", entry, legs, traps);
record!(DuctEntry, "a place and side of the duct", place, side);
words!(Side; Side = "side", Top = "top", Bottom = "bottom");
record!(
    Leg,
    "a leg with its fields",
    id,
    space,
    length_m,
    rise_m,
    fall_as,
    tube,
    emissivity,
    insulation,
    heat_tracing_w_m,
    hanger_spacing_m,
    fittings,
    access,
);
words!(
    FallForm, or Ratio;
    Ratio = "ratio",
    Percent = "percent",
    MmPerM = "mm_per_m",
    InPerFt = "in_per_ft",
);
record!(
    TubeWall,
    "bore, outside diameter and conductivity",
    bore_mm,
    outside_diameter_mm,
    conductivity_w_mk,
    stuff,
);
record!(
    Insulation,
    "thickness and conductivity",
    thickness_mm,
    conductivity_w_mk,
);
record!(
    Fitting,
    "a fitting with its fields",
    kind,
    at_m,
    loss_coefficient,
);
words!(
    FittingKind;
    Bend = "bend",
    Elbow = "elbow",
    Tee = "tee",
    Valve = "valve",
    Other = "other",
);
words!(
    Access;
    Floor = "floor",
    Ladder = "ladder",
    Lift = "lift",
    None = "none",
);
