//! Relations whose spread is known.

use dewrun_numeric::quantile::triangular;
use dewrun_run::Factors;

/// A relation whose spread is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Relation {
    /// The film inside the tubes: mixed convection at low speed.
    InsideFilm,
    /// Natural convection around the tubes.
    OutsideFilm,
    /// Diffusivity of vapour in air.
    Diffusivity,
    /// Friction of air whose flow is neither laminar nor turbulent.
    Friction,
}

/// How far the flow may lie off where friction is known no better.
const FLOW_SPREAD: f64 = 0.14;

impl Relation {
    /// All of them.
    pub const ALL: [Self; 4] = [
        Self::InsideFilm,
        Self::OutsideFilm,
        Self::Diffusivity,
        Self::Friction,
    ];
    /// Those of heat and vapour, which alone decide what forms at a given flow.
    pub const OF_HEAT: [Self; 3] = [Self::InsideFilm, Self::OutsideFilm, Self::Diffusivity];

    /// The lowest and the highest factor on it.
    ///
    /// # Source
    /// Inside, mixed convection at low speed 25 %; outside, natural convection of thin tubes 20 %: Morgan 1975 lies as far above Churchill & Chu 1975; diffusivity 3 %: Marrero & Mason 1972.
    /// Friction between laminar and turbulent flow to 14 % of the flow, whose square it goes against: from memory.
    ///
    /// ```
    /// assert_eq!(dewrun_advice::Relation::OutsideFilm.span(), (0.80, 1.20));
    /// ```
    #[must_use]
    pub const fn span(self) -> (f64, f64) {
        match self {
            Self::InsideFilm => (0.75, 1.25),
            Self::OutsideFilm => (0.80, 1.20),
            Self::Diffusivity => (0.97, 1.03),
            Self::Friction => {
                let (more, less) = (1.0 + FLOW_SPREAD, 1.0 - FLOW_SPREAD);
                (1.0 / (more * more), 1.0 / (less * less))
            }
        }
    }

    /// The factor on it below which a share of all cases lies.
    #[must_use]
    pub fn factor(self, share: f64) -> f64 {
        let (low, high) = self.span();
        triangular(low, 1.0, high, share)
    }

    /// Puts a factor on it among those of the relations of heat and vapour; friction is none of them.
    pub const fn put(self, factor: f64, factors: &mut Factors) {
        match self {
            Self::InsideFilm => factors.inside = factor,
            Self::OutsideFilm => factors.outside = factor,
            Self::Diffusivity => factors.diffusivity = factor,
            Self::Friction => {}
        }
    }

    /// A short name that stands for it in files.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::InsideFilm => "inside_film",
            Self::OutsideFilm => "outside_film",
            Self::Diffusivity => "diffusivity",
            Self::Friction => "friction",
        }
    }

    /// What it is, in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::InsideFilm => "film inside the tubes, ±25 %",
            Self::OutsideFilm => "film outside the tubes, ±20 %",
            Self::Diffusivity => "diffusivity of vapour in air, ±3 %",
            Self::Friction => "friction between laminar and turbulent flow, ±14 % of the flow",
        }
    }
}
