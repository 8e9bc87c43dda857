//! Heat and vapour along one sampling tube: films, wall, insulation, heat tracing, condensation, frost, mist and sweat.
//!
//! One relation is one function, named for its author, on bare numbers with the unit in the name;
//! [`march()`] joins them along the tube.
//!
//! How far to trust them: outside natural convection of thin tubes 20 %, inside mixed convection at low speed 25 %, diffusivity 3 %.
//! No printed experiment was found for humid air at 5 to 60 °C inside a 4 to 25 mm tube; measurements are welcome.

pub mod film_inside;
pub mod film_outside;
pub mod layers;
mod march;
mod phase;
pub mod vapour_flux;
mod wall_balance;

pub use march::{
    Accuracy, Factors, NearWall, STAGNANT_KG_S, Segment, SegmentSum, Station, Stream, StreamState,
    Trace, fog_film_1992_bound_kg_sm, highest_saturation_ratio, march,
};
pub use phase::frozen_share;
