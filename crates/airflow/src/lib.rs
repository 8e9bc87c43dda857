//! What still comes through a tube: friction and the pressure that it costs.
//!
//! ```
//! use dewrun_airflow::friction::{churchill_1977, straight_tube_pa};
//! let f = churchill_1977(1404.0, 0.0);
//! let loss = straight_tube_pa(f, 3.0, 0.010, 1.204, 2.122);
//! assert!((loss - 37.1).abs() < 0.1);
//! ```

pub mod friction;
