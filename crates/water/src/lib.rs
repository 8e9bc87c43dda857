//! Where liquid water goes in a sampling tube and where it stands: drainage, low points, pools, traps, hangers, ice.
//!
//! Public signatures take quantities; inside an equation a bare number carries its unit in its name.
//! Positions count along the tube in the direction of normal flow, falls as positive.
//!
//! ```
//! use dewrun_quantity::Length;
//! use dewrun_water::{Incline, pool::PoolShape};
//! let fall = Incline::per_horizontal(0.02);
//! let low_point = PoolShape::between(Length::millimetres(19.0), fall, fall).unwrap();
//! assert!((low_point.seal_volume().to_millilitres() - 269.35).abs() < 0.01);
//! ```

pub mod drain;
pub mod drying;
pub mod hanger;
mod incline;
pub mod trap;

pub use incline::Incline;

/// Standard acceleration of free fall, m/s2 (the third CGPM, 1901).
pub const GRAVITY_M_S2: f64 = 9.80665;
