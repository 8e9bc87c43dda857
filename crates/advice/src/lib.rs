//! What would change an answer: searches over [`dewrun_run::evaluate`], no physics of its own.
//!
//! ```
//! use dewrun_advice::{Limit, staying_dry};
//! use dewrun_quantity::{Conductivity, Length, PowerPerLength, Pressure, RelativeHumidity, Speed, Temperature, VolumeFlow};
//! use dewrun_run::air::{Humidity, Over, Pair};
//! use dewrun_run::{Detector, Flow, FlowAt, Leg, Run, Space, TubeWall, evaluate};
//! let leg = Leg {
//!     space: 0, length: Length::metres(8.0), rise: Length::metres(-0.16),
//!     tube: TubeWall { bore: Length::millimetres(19.0), outside_diameter: Length::millimetres(22.0), conductivity: Conductivity::watts_per_metre_kelvin(0.19) },
//!     insulation: None, emissivity: 0.9, tracing: PowerPerLength::ZERO,
//! };
//! let run = Run {
//!     pressure: Pressure::pascals(101_325.0),
//!     duct_air: Pair::Temperature(Temperature::celsius(32.0), Humidity::DewPoint(Temperature::celsius(26.0))),
//!     flow: Flow { volume: VolumeFlow::litres_per_minute(30.0), at: FlowAt::Intake },
//!     spaces: vec![Space {
//!         temperature: Temperature::celsius(20.0),
//!         humidity: Humidity::Relative { value: RelativeHumidity::percent(50.0), over: Over::Water },
//!         radiant: None, wind: Speed::ZERO,
//!     }],
//!     intake: vec![leg], detector: Detector::default(), exhaust: vec![],
//! };
//! let now = evaluate(&run).unwrap().value;
//! let Limit::At(dew_point) = staying_dry(&run, &now).unwrap().duct_air else { panic!("a wet run has a limit") };
//! // No wall is colder than the space around it, and that long a tube comes near it.
//! assert!(20.0 < dew_point.to_celsius() && dew_point.to_celsius() < 21.5);
//! ```

mod assumption;
mod boundary;
mod doubt;
mod geometry;
mod over_duct;
mod rests_on;

pub use assumption::{Assumption, assumptions};
pub use boundary::{
    BoundaryError, BoundaryPoint, Limit, SpaceLimit, StayingDry, TubeLimit, coldest_space,
    dry_boundary, longest_tube, most_humid_duct_air, staying_dry,
};
pub use doubt::{
    Relation, Share, Spread, SteadyDoubt, SteadyDoubts, TubeDoubt, Varied, first_order_shares,
    seed_of, weighted_shares,
};
pub use geometry::{
    Change, Kind as RemedyKind, Left, Regrade, Remedy, Subject, changed, missing_traps, regrades,
    remedies_of_geometry,
};
pub use over_duct::{OverDuct, over_duct};
pub use rests_on::{Resting, rests_on, rests_on_whole};
