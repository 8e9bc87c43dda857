//! What can cause troubles.

/// A cause.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// Water in a low point.
    LowPointWater,
    /// Mist or damp at the sensor.
    Mist,
    /// Frost and thaw.
    Frost,
    /// The filter loads.
    FilterLoading,
    /// The filter is missing, or a wrong one.
    FilterMissing,
    /// The tube is parted or leaks.
    PartedTube,
    /// A trap is dry, or draws air.
    DryTrap,
    /// The sampling holes are fouled.
    HolesFouled,
    /// The duct's fan or a damper goes on and off.
    DuctSwitching,
    /// The detector's fan is weak, or its supply low.
    FanWeak,
    /// The limits are set badly.
    LimitsBad,
    /// None of these.
    None,
}

impl Cause {
    /// All of them, in the order in which a technician would look.
    pub const ALL: [Self; 12] = [
        Self::LowPointWater,
        Self::Mist,
        Self::Frost,
        Self::FilterLoading,
        Self::FilterMissing,
        Self::PartedTube,
        Self::DryTrap,
        Self::HolesFouled,
        Self::DuctSwitching,
        Self::FanWeak,
        Self::LimitsBad,
        Self::None,
    ];

    /// A short name that stands for it in files.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::LowPointWater => "low_point_water",
            Self::Mist => "mist",
            Self::Frost => "frost",
            Self::FilterLoading => "filter_loading",
            Self::FilterMissing => "filter_missing",
            Self::PartedTube => "parted_tube",
            Self::DryTrap => "dry_trap",
            Self::HolesFouled => "holes_fouled",
            Self::DuctSwitching => "duct_switching",
            Self::FanWeak => "fan_weak",
            Self::LimitsBad => "limits_bad",
            Self::None => "none_of_these",
        }
    }

    /// What it is, in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::LowPointWater => "Water in a low point",
            Self::Mist => "Mist at the sensor",
            Self::Frost => "Frost and thaw",
            Self::FilterLoading => "Filter loading",
            Self::FilterMissing => "Filter missing or wrong",
            Self::PartedTube => "Parted or leaking tube",
            Self::DryTrap => "Dry or sucking trap",
            Self::HolesFouled => "Sampling holes fouled",
            Self::DuctSwitching => "Duct fan or damper switching",
            Self::FanWeak => "Fan weak or supply low",
            Self::LimitsBad => "Limits set badly",
            Self::None => "None of these",
        }
    }

    /// What cures it, in words: common practice, no source.
    #[must_use]
    pub const fn cure(self) -> &'static str {
        match self {
            Self::LowPointWater => {
                "Let the water out; then a trap at the low point within reach, or a fall without a low point; the section Remedies has the smallest of each."
            }
            Self::Mist => {
                "Shed the water before the detector on a bare length that falls to a trap, then warm the air a little; the section Remedies has the sizes."
            }
            Self::Frost => {
                "Insulate or warm the tube where it is coldest, and drain what thaws; the section Remedies has the sizes and what a failed heating leaves."
            }
            Self::FilterLoading => {
                "Change the filter, and sooner the next time; what loads it so fast is looked for in the duct."
            }
            Self::FilterMissing => "Fit the filter that belongs to the device.",
            Self::PartedTube => {
                "Push joints home and seal them, sleeves through walls too; then smoke at the duct end."
            }
            Self::DryTrap => {
                "Fill the seal, and see why it dries: its depth against the suction, and how long no water comes."
            }
            Self::HolesFouled => "Clean the holes and blow the tube through from the detector off.",
            Self::DuctSwitching => {
                "Measure with the duct fan off and on, and set limits that both keep, within the listed range."
            }
            Self::FanWeak => "Mend the supply, or replace the fan or the detector.",
            Self::LimitsBad => {
                "Set the limits anew from the airflow as fitted, within the listed range, and never wider to cure water."
            }
            Self::None => {
                "Nothing that is known here cures it: note what comes when, and look again."
            }
        }
    }

    /// Whether its troubles follow the weather.
    #[must_use]
    pub const fn follows_weather(self) -> bool {
        matches!(
            self,
            Self::LowPointWater | Self::Mist | Self::Frost | Self::DryTrap | Self::LimitsBad
        )
    }

    /// Its position in [`Cause::ALL`].
    #[must_use]
    pub fn place(self) -> usize {
        Self::ALL.iter().position(|one| *one == self).unwrap_or(0)
    }
}
