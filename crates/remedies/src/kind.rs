//! Kinds of remedies, and what work each is.

/// What a remedy does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Traps where they are missing.
    Trap,
    /// Traps that drain themselves where traps are missing.
    DrainingTrap,
    /// A trap that takes more.
    TrapSize,
    /// Legs with another fall.
    Fall,
    /// Insulation around legs.
    Insulate,
    /// Heat tracing of legs, under insulation.
    Trace,
    /// The air is warmed at the detector.
    Warm,
    /// A bare length on purpose before a trap, and warming after it.
    Shed,
    /// The detector draws more air.
    MoreFlow,
    /// The detector draws less air.
    LessFlow,
    /// Legs led through another space.
    Space,
    /// A narrower tube.
    Narrower,
    /// A wider tube.
    Wider,
    /// The detector sits in another place.
    DetectorPlace,
}

/// How much work something is, the least first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Work {
    /// A setting at the detector.
    Setting,
    /// The tube is cut once.
    Cut,
    /// The tube is hung anew.
    Hang,
    /// Something is laid around the tube.
    Wrap,
    /// Something that needs power.
    Power,
    /// The tube is led another way.
    Reroute,
    /// New tube.
    Replace,
    /// The detector is moved, with its cable and its labels.
    Move,
}

impl Kind {
    /// All of them.
    pub const ALL: [Self; 14] = [
        Self::Trap,
        Self::DrainingTrap,
        Self::TrapSize,
        Self::Fall,
        Self::Insulate,
        Self::Trace,
        Self::Warm,
        Self::Shed,
        Self::MoreFlow,
        Self::LessFlow,
        Self::Space,
        Self::Narrower,
        Self::Wider,
        Self::DetectorPlace,
    ];

    /// A short name that stands for it in files.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Trap => "trap",
            Self::DrainingTrap => "draining_trap",
            Self::TrapSize => "trap_size",
            Self::Fall => "fall",
            Self::Insulate => "insulate",
            Self::Trace => "trace",
            Self::Warm => "warm_detector",
            Self::Shed => "shed",
            Self::MoreFlow => "more_flow",
            Self::LessFlow => "less_flow",
            Self::Space => "space",
            Self::Narrower => "narrower",
            Self::Wider => "wider",
            Self::DetectorPlace => "detector_place",
        }
    }

    /// What work it is.
    #[must_use]
    pub const fn work(self) -> Work {
        match self {
            Self::MoreFlow | Self::LessFlow => Work::Setting,
            Self::Trap | Self::DrainingTrap | Self::TrapSize => Work::Cut,
            Self::Fall => Work::Hang,
            Self::Insulate => Work::Wrap,
            Self::Trace | Self::Warm | Self::Shed => Work::Power,
            Self::Space => Work::Reroute,
            Self::Narrower | Self::Wider => Work::Replace,
            Self::DetectorPlace => Work::Move,
        }
    }

    /// The work in words.
    #[must_use]
    pub const fn work_words(self) -> &'static str {
        match self {
            Self::MoreFlow | Self::LessFlow => "set the detector; device's listed range",
            Self::Trap | Self::DrainingTrap => "cut the tube once for each",
            Self::TrapSize => "exchange the trap",
            Self::Fall => "hang the legs anew, with a level",
            Self::Insulate => "lay insulation, joints glued",
            Self::Trace => "heating cable and insulation; power point, residual-current protection",
            Self::Warm => "heater at the detector; power point, residual-current protection",
            Self::Shed => {
                "lengthen the tube, trap; heating cable, power point, residual-current protection"
            }
            Self::Space => "lead the tube another way; penetrations sealed",
            Self::Narrower | Self::Wider => "new tube all along",
            Self::DetectorPlace => "new place, cable and labels",
        }
    }
}
