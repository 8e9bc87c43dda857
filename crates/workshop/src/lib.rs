//! What the page shows and finds beyond the first answer, as text and numbers in and text and numbers out.
//!
//! The page loads it once the first answer stands and asks it in each frame; a worker loads it for long work.
//! Nothing here knows which of both it is, nor a browser or a clock: only the binary's one file does.
//!
//! To add a kind of question: a variant of `dewrun_desk::Work` with its name, a function in `kinds` that answers it, and the arm there that calls it.
//!
//! ```
//! use dewrun_workshop::{Answer, Workshop};
//! let project = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json"));
//! let mut workshop = Workshop::default();
//! let Answer::Numbers(found) = workshop.ask("staying-dry", project, 0, &[]) else { panic!("it has limits") };
//! assert!(dewrun_desk::limits_of(&found).is_some());
//! assert!(matches!(workshop.ask("staying-dry", "{}", 0, &[]), Answer::Sentence(_)));
//! ```

mod answer;
mod asked;
mod doubted;
mod job;
mod kinds;
mod last;
mod open;
mod workshop;

pub use answer::{Answer, Turn};
pub use workshop::Workshop;
