//! What part of a run a figure is about.

use super::Figure;

/// What part of a run a figure is about, and so what has to be said of where it is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// The run as a whole, its duct air or its sensor.
    Run,
    /// A tube.
    Tube,
    /// A leg.
    Leg,
    /// A point along a tube.
    Point,
}

impl Figure {
    /// What part of a run it is about; for an input of the run, the part that has it.
    #[must_use]
    pub fn scope(self) -> Scope {
        match self {
            Self::TubeWater
            | Self::TubeFrost
            | Self::TubeSweat
            | Self::WetFrom
            | Self::WetTo
            | Self::WetStretches
            | Self::FrostFrom
            | Self::ColdestWall
            | Self::ColdestWallAt
            | Self::MostMist
            | Self::NearWallRatio
            | Self::NearWallAt
            | Self::NearWallBound => Scope::Tube,
            Self::LegFrom
            | Self::LegTo
            | Self::LegWater
            | Self::LegFrost
            | Self::LegSweat
            | Self::LegRime
            | Self::LegWetFrom
            | Self::LowestWall
            | Self::AirAtEnd
            | Self::RatioAtEnd
            | Self::MistAtEnd
            | Self::HumidityAtEnd
            | Self::DewPointAtEnd
            | Self::HeatToSpace => Scope::Leg,
            Self::PlaceAlong
            | Self::AirAlong
            | Self::WallAlong
            | Self::SurfaceAlong
            | Self::DewPointAlong
            | Self::RatioAlong
            | Self::MistAlong
            | Self::HumidityAlong
            | Self::FormedSoFar
            | Self::RunsPast
            | Self::Deposit
            | Self::FrozenShare
            | Self::SweatAlong
            | Self::Reynolds
            | Self::Prandtl
            | Self::Schmidt
            | Self::Nusselt
            | Self::Sherwood
            | Self::FilmInside
            | Self::FilmOutside
            | Self::Radiation
            | Self::WallResistance
            | Self::Diffusivity
            | Self::Viscosity
            | Self::AirConductivity
            | Self::Density
            | Self::Saturation
            | Self::HeatOfDeposition => Scope::Point,
            Self::Length
            | Self::Rise
            | Self::Bore
            | Self::OutsideDiameter
            | Self::TubeConductivity
            | Self::Emissivity
            | Self::InsulationThickness
            | Self::InsulationConductivity
            | Self::Tracing => Scope::Leg,
            _ => Scope::Run,
        }
    }
}
