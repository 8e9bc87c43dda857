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
}

impl Relation {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::InsideFilm, Self::OutsideFilm, Self::Diffusivity];

    /// How far it may lie off either way, as a share.
    ///
    /// # Source
    /// Inside, mixed convection at low speed 25 %; outside, natural convection of thin tubes 20 %: Morgan 1975 lies as far above Churchill & Chu 1975; diffusivity 3 %: Marrero & Mason 1972.
    ///
    /// ```
    /// assert_eq!(dewrun_advice::Relation::OutsideFilm.spread(), 0.20);
    /// ```
    #[must_use]
    pub const fn spread(self) -> f64 {
        match self {
            Self::InsideFilm => 0.25,
            Self::OutsideFilm => 0.20,
            Self::Diffusivity => 0.03,
        }
    }

    /// The factor on it below which a share of all cases lies.
    #[must_use]
    pub fn factor(self, share: f64) -> f64 {
        let spread = self.spread();
        triangular(1.0 - spread, 1.0, 1.0 + spread, share)
    }

    /// Puts a factor on it among those of all relations.
    pub const fn put(self, factor: f64, factors: &mut Factors) {
        match self {
            Self::InsideFilm => factors.inside = factor,
            Self::OutsideFilm => factors.outside = factor,
            Self::Diffusivity => factors.diffusivity = factor,
        }
    }

    /// A short name that stands for it in files.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::InsideFilm => "inside_film",
            Self::OutsideFilm => "outside_film",
            Self::Diffusivity => "diffusivity",
        }
    }

    /// What it is, in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::InsideFilm => "film inside the tubes, ±25 %",
            Self::OutsideFilm => "film outside the tubes, ±20 %",
            Self::Diffusivity => "diffusivity of vapour in air, ±3 %",
        }
    }
}
