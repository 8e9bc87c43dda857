//! A trap or drain: the place where water is taken out of a tube.

use crate::json::{record, words};
use schemars::JsonSchema;

use super::Input;

/// A trap or drain in a tube.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Trap {
    /// Distance along the tube from its start, m.
    pub at_m: Input<f64>,
    /// How it is emptied.
    pub kind: TrapKind,
    /// Whether water or a shut valve keeps air from passing.
    #[schemars(default, extend("default" = "shut"))]
    pub condition: TrapCondition,
    /// How its seal stands.
    #[schemars(default, extend("default" = "equal_legs"))]
    pub form: TrapForm,
    /// What it takes until it has to be emptied, mL; left out: not known.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub capacity_ml: Option<Input<f64>>,
    /// Height of the water that seals it, mm; left out: not known.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub seal_mm: Option<Input<f64>>,
    /// How far its outlet lies below the floor of the tube, mm; left out: not known.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub outlet_drop_mm: Option<Input<f64>>,
    /// Inside diameter of the drain, or of the dip tube, mm; left out: that of the tube.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub bore_mm: Option<Input<f64>>,
    /// Inside diameter of the pot around a dip tube, mm; left out: three times that of the dip tube.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub pot_bore_mm: Option<Input<f64>>,
}

/// How a trap is emptied.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum TrapKind {
    /// By hand, at a visit.
    HandDrained,
    /// By itself, over a standing seal.
    SelfDraining,
    /// A bare stub that is open below.
    OpenStub,
}

/// Whether a trap keeps air from passing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum TrapCondition {
    /// Water or a valve shuts it.
    #[default]
    Shut,
    /// It is dry, or its valve stands open: air passes.
    Open,
}

/// How the seal of a trap stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum TrapForm {
    /// In a U of one bore.
    #[default]
    EqualLegs,
    /// In a pot of the sampling tube, around a dip tube that is open to the room.
    DipOpenToRoom,
    /// In a pot that is open to the room, around a dip tube of the sampling tube.
    DipOnTube,
}

record!(
    Trap,
    "a trap with its fields",
    at_m,
    kind,
    condition,
    form,
    capacity_ml,
    seal_mm,
    outlet_drop_mm,
    bore_mm,
    pot_bore_mm;
    left_out_where_none
);
words!(
    TrapKind;
    HandDrained = "hand_drained",
    SelfDraining = "self_draining",
    OpenStub = "open_stub",
);
words!(TrapCondition, or Shut; Shut = "shut", Open = "open");
words!(
    TrapForm, or EqualLegs;
    EqualLegs = "equal_legs",
    DipOpenToRoom = "dip_open_to_room",
    DipOnTube = "dip_on_tube",
);
