//! A run's year again and again, with everything that is assumed or measured taken anywhere within its span: one ensemble, many answers.
//!
//! No physics of its own: years are those of [`dewrun_season`]. Members are asked for by their number, one by one and in any order,
//! so that as many threads or workers as there are share them; what they come to is kept and told under any weights.

mod carried;
mod gathered;
mod hours;
mod measured;
mod member;
mod plan;
mod quantity;
mod season_input;
mod span;
mod told;
mod weights;
mod wet_along;

pub use gathered::Gathered;
pub use hours::{HourTold, Kept, StateFlags};
pub use measured::{Measured, Measurement, OnSiteTold, usual_error};
pub use member::{Member, MemberWork};
pub use plan::{Climate, Inputs, Plan, Usual};
pub use quantity::{Quantity, Totals};
pub use season_input::{Follow, SeasonInput, SeasonSpan, set_season};
pub use span::{Origin, Span, Varied, measuring_spread};
pub use told::{EnsembleTold, InputTold, QuantityTold, SpanShare, told};
pub use weights::{MeasurementTold, Reweighted, reweighted};
