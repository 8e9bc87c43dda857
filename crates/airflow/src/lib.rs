//! What still comes through a line: the flow at which fan, duct, tubes, leaks and standing water balance,
//! how much of it is duct air, how long it takes, and what airflow limits can see of it.
//!
//! [`airflow()`] takes a [`Line`] as built and a [`State`] it is in. All pressures are total pressures against the detector's room.
//!
//! ```
//! use dewrun_airflow::friction::{churchill_1977, straight_tube_pa};
//! let f = churchill_1977(1404.0, 0.0);
//! let loss = straight_tube_pa(f, 3.0, 0.010, 1.204, 2.122);
//! assert!((loss - 37.1).abs() < 0.1);
//! ```

mod airflow;
mod budget;
mod chain;
mod error;
mod fan;
mod filter;
mod fitting;
pub mod friction;
mod hole;
mod layout;
mod line;
mod loss;
mod network;
mod operating;
mod part;
mod pool;
mod range;
mod sections;
mod sensor;
mod share;
mod state;
mod story;
mod supervision;
mod transport_time;
mod usual;

pub use airflow::{Airflow, CoursePoint, Direction, PressureAt};
pub use budget::{Budget, TubeBudget};
pub use error::{AirflowError, AirflowNote};
pub use fan::FanCurve;
pub use filter::filter_loss;
pub use fitting::{duct_pressure, fitting_loss};
pub use hole::{effective_area, hole_flow};
pub use line::{
    Air, Detector, DuctPressures, Fitting, Hole, Inlet, Line, OpenEnd, Side, Stretch, Trap, Tube,
};
pub use network::airflow;
pub use part::Place;
pub use pool::pool_ends_coefficient;
pub use sensor::{FlowSensor, Reads};
pub use share::sample_share;
pub use state::{Leak, Parted, Pool, PoolShape, State};
pub use supervision::{
    AirflowLimits, BLIND_SHARE, InTheWay, Judgement, Observed, Tightest, Trip, Verdict, in_the_way,
    judge, tightest_limits,
};
pub use transport_time::{TransportTime, arrival, fill_time};
pub use usual::{Expected, Fault, Usual};
