//! What a run is made of: duct air, spaces, the legs of both tubes, the detector and the flow.

use dewrun_moist_air::Pair;
use dewrun_quantity::{
    Conductivity, Length, Power, PowerPerLength, Pressure, RelativeHumidity, Speed, Temperature,
    VolumeFlow,
};

use dewrun_moist_air::Humidity;

/// The intake tube, the detector and the exhaust tube of one detector, in the duct air and the spaces they meet.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// Absolute pressure in the tube, taken as constant along it.
    pub pressure: Pressure,
    /// The air in the duct, where the intake draws it.
    pub duct_air: Pair,
    /// How much air the fan draws, and where that is counted.
    pub flow: Flow,
    /// The spaces that the legs pass; a leg names its space by position in this list.
    pub spaces: Vec<Space>,
    /// The legs from the duct to the detector, in flow order.
    pub intake: Vec<Leg>,
    /// The detector between both tubes.
    pub detector: Detector,
    /// The legs from the detector back to the duct, in flow order; may be empty.
    pub exhaust: Vec<Leg>,
}

/// A volume flow of moist air and the place where it is counted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flow {
    /// The volume flow at the state of the air at `at`.
    pub volume: VolumeFlow,
    /// Where it is counted.
    pub at: FlowAt,
}

/// The place whose air state turns a volume flow into a mass flow.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum FlowAt {
    /// The duct air as it enters the intake tube.
    Intake,
    /// The air in the detector's chamber, where most devices measure it.
    #[default]
    Sensor,
}

/// What surrounds a leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Space {
    /// Temperature of its air.
    pub temperature: Temperature,
    /// Humidity of its air at that temperature.
    pub humidity: Humidity,
    /// Temperature of the surfaces that the tube radiates to; none: that of the air.
    pub radiant: Option<Temperature>,
    /// Air speed across the tube; zero in still air.
    pub wind: Speed,
}

/// One straight stretch with one fall in one space.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leg {
    /// Position of its space in [`Run::spaces`].
    pub space: usize,
    /// Length along the tube.
    pub length: Length,
    /// Rise from its start to its end in the direction of normal flow; negative where it falls.
    pub rise: Length,
    /// The tube it is made of.
    pub tube: TubeWall,
    /// Insulation around it.
    pub insulation: Option<Insulation>,
    /// Emissivity of its outermost surface.
    pub emissivity: f64,
    /// Heat tracing at the tube's outer face, under the insulation.
    pub tracing: PowerPerLength,
}

impl Leg {
    /// Steeper than 45 degrees: the outside film is that of a riser.
    #[must_use]
    pub fn is_steep(&self) -> bool {
        self.length.to_metres() * core::f64::consts::FRAC_1_SQRT_2 < self.rise.to_metres().abs()
    }
}

/// The wall of a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TubeWall {
    /// Inside diameter.
    pub bore: Length,
    /// Outside diameter.
    pub outside_diameter: Length,
    /// Conductivity of the wall.
    pub conductivity: Conductivity,
}

/// A layer of insulation around a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Insulation {
    /// Thickness of the layer.
    pub thickness: Length,
    /// Conductivity of the layer.
    pub conductivity: Conductivity,
}

/// The detector between intake and exhaust tube.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Detector {
    /// Heat that its fan and electronics give to the air passing through.
    pub heat: Power,
    /// Highest relative humidity (over water) that the device is rated for, where known.
    pub humidity_rating: Option<RelativeHumidity>,
}
