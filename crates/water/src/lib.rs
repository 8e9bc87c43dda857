//! Where liquid water goes in a sampling tube and where it stands: drainage, low points, pools, traps, hangers, ice.
//!
//! Public signatures take quantities; inside an equation a bare number carries its unit in its name.
//! Positions count along the tube in the direction of normal flow.
//!
//! ```
//! use dewrun_quantity::{Density, Pressure};
//! let water = Density::kilograms_per_cubic_metre(998.2);
//! let head = dewrun_water::trap::head(Pressure::pascals(300.0), water);
//! assert!((head.to_millimetres() - 30.65).abs() < 0.01);
//! ```

pub mod drain;
pub mod drainage;
pub mod drying;
pub mod duct_entry;
pub mod hanger;
pub mod held;
pub mod ice;
mod incline;
mod liquid_water;
pub mod moving;
pub mod pool;
pub mod time_to_trouble;
pub mod trap;
pub mod water_lock;

pub use incline::Incline;
pub use liquid_water::Water;

/// Standard acceleration of free fall, m/s2 (the third CGPM, 1901).
pub const GRAVITY_M_S2: f64 = 9.80665;
