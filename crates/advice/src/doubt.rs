//! How sure an answer is: the run again and again, with assumed values and relations taken anywhere within their spans.

mod relation;
mod share;
mod spread;
mod steady;
mod varied;

pub use relation::Relation;
pub use share::{first_order_shares, weighted_shares};
pub use spread::Spread;
pub use steady::{Share, SteadyDoubt, SteadyDoubts, TubeDoubt, seed_of};
pub use varied::Varied;
