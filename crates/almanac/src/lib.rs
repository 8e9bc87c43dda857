//! The page's third module: it reads weather files piece by piece and marches a run through the year that they make.
//!
//! A worker loads it once a weather file is opened, or is kept for the open project; the page itself never does.
//! Text, numbers and pieces of files go in, text and numbers come out; only the binary's one file knows a browser.
//!
//! ```
//! use dewrun_almanac::{Almanac, Place, Told};
//! let mut almanac = Almanac::default();
//! almanac.begin_reading(("", 0), Place::Weather, None).expect("nothing is said");
//! almanac.take_piece(b"time,temp_c,rh\n2026-07-01 00:00,21.5,70\n").expect("a table");
//! almanac.end_reading("tower.csv").expect("a row");
//! assert!(almanac.files_told("", 0, &[]).contains("tower.csv"));
//! ```

mod almanac;
mod at_hour;
mod cures;
mod doubted;
mod file_told;
mod granted;
mod held;
mod members;
mod opened;
mod troubles;
mod year;

pub use almanac::{Almanac, Told};
pub use held::Place;
pub use troubles::Carried;
