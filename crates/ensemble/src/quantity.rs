//! What a year comes to, in the few numbers whose doubt is told.

use dewrun_season::YearOutcome;

/// What is told of a year.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Water and frost that formed in the tubes, kg.
    Water,
    /// Water that ran off the walls, kg.
    RanOff,
    /// Wet hours.
    WetHours,
    /// Hours in which mist reaches the sensor.
    MistHours,
    /// Hours in which ice lies on a wall.
    FrostHours,
    /// Hours in which the detector does not sample its duct.
    BlindHours,
    /// Hours in which the airflow lies outside its limits.
    LimitHours,
    /// Hours in which the chamber is more humid than its rating.
    HumidHours,
    /// Times that a trap becomes full.
    Fillings,
}

/// What a year comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Totals {
    /// In the order of [`Quantity::ALL`]; none where it is not known.
    values: [Option<f64>; Quantity::ALL.len()],
}

impl Quantity {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Water,
        Self::RanOff,
        Self::WetHours,
        Self::MistHours,
        Self::FrostHours,
        Self::BlindHours,
        Self::LimitHours,
        Self::HumidHours,
        Self::Fillings,
    ];

    /// A short name that stands for it in files, with its unit.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Water => "water_kg",
            Self::RanOff => "ran_off_kg",
            Self::WetHours => "wet_hours",
            Self::MistHours => "mist_hours",
            Self::FrostHours => "frost_hours",
            Self::BlindHours => "blind_hours",
            Self::LimitHours => "limit_hours",
            Self::HumidHours => "humid_hours",
            Self::Fillings => "trap_fillings",
        }
    }

    fn of(self, year: &YearOutcome) -> Option<f64> {
        let (sum, water) = (&year.sum, year.water.as_ref().ok().map(|water| &water.sum));
        match self {
            Self::Water => Some(sum.condensed_kg),
            Self::RanOff => Some(sum.drained_kg),
            Self::WetHours => Some(sum.wet_hours),
            Self::MistHours => Some(sum.mist_hours),
            Self::FrostHours => Some(sum.frost_hours),
            Self::BlindHours => Some(water?.hours.blind),
            Self::LimitHours => Some(water?.hours.low + water?.hours.high),
            Self::HumidHours => sum.hours_above_rating,
            Self::Fillings => Some(f64::from(water?.fillings)),
        }
    }
}

impl Totals {
    /// Of a year that was marched.
    #[must_use]
    pub fn of(year: &YearOutcome) -> Self {
        Self {
            values: Quantity::ALL.map(|quantity| quantity.of(year)),
        }
    }

    /// In the order of [`Quantity::ALL`].
    pub(crate) const fn from_values(values: [Option<f64>; Quantity::ALL.len()]) -> Self {
        Self { values }
    }

    /// One of them; none where it is not known.
    #[must_use]
    pub fn get(&self, quantity: Quantity) -> Option<f64> {
        let at = Quantity::ALL.iter().position(|one| *one == quantity)?;
        self.values.get(at).copied().flatten()
    }
}
