//! Where the air in a duct comes from, and what surrounds a tube: processes, spaces, schedules.
//!
//! ```
//! use dewrun_duct_air::process::{Coil, cooled};
//! use dewrun_duct_air::FogAir;
//! let outdoors = FogAir { t_c: 32.0, w: 0.018_12, mist: 0.0 };
//! let supply = cooled(outdoors, Coil { apparatus_c: 10.0, bypass: 0.12 }, 101_325.0).air;
//! assert!((supply.t_c - 12.66).abs() < 0.05);
//! ```

pub mod process;
pub mod schedule;
pub mod space;

pub use dewrun_moist_air::fog::FogAir;
