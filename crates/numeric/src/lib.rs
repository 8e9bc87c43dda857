//! Numbers only: elementary functions that give the same bits everywhere, root finding, integration, segments of a circle. No word of the domain.
//!
//! ```
//! use dewrun_numeric::elementary::exp;
//! assert!((exp(1.0) - core::f64::consts::E).abs() < 1e-15);
//! ```

mod bracket;
pub mod circular_segment;
pub mod elementary;
pub mod fast;
pub mod integrate;
pub mod interpolate;
pub mod plain;
pub mod polynomial;
pub mod quantile;
mod root;
pub mod sobol;

pub use bracket::{RootError, itp, within};
pub use root::fast_cbrt;
