//! The library holds every list that is promised, and every row of it can be believed.

mod belief;
mod figures;
mod lists;
